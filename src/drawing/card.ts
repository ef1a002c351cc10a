// How large a screen truly is, by laying a bank card on it, and how large a control must be then.

// ISO/IEC 7810, size ID-1: 85.60 mm × 53.98 mm. From memory; a ruler on the screen is the check.
export const CARD_LENGTH_MM = 85.6;
export const CARD_WIDTH_MM = 53.98;

/** What a gloved thumb meets. */
const CONTROL_MM = 20;
/** Also where a screen was not measured: about 20 mm on a phone. */
const CONTROL_PX = 124;
const KEY_PX = 76;

/** A computer's is what browsers take for 1/96 inch; phones lie closer together than that. */
const USUAL = { computer: 96 / 25.4, phone: 6 } as const;
const LEAST = 2;
const MOST = 12;

export const firstGuess = (screenWidthPx: number): number =>
  screenWidthPx < 700 ? USUAL.phone : USUAL.computer;

/** The length of the frame in CSS px, whole, as the buttons move it. */
export const cardPx = (pxPerMm: number): number => Math.round(pxPerMm * CARD_LENGTH_MM);

/** The frame made longer or shorter by so many px, within what a screen can be. */
export function withCard(pxPerMm: number, byPx: number): number {
  const next = (cardPx(pxPerMm) + byPx) / CARD_LENGTH_MM;
  return Math.min(MOST, Math.max(LEAST, next));
}

/** What was kept, or null where it is no size a screen can have. */
export function readScale(kept: string): number | null {
  const scale = Number(kept);
  return kept !== '' && scale >= LEAST && scale <= MOST ? scale : null;
}

export type ControlSizes = { readonly mainPx: number; readonly keyPx: number };

/** At least 20 mm on the screen that was measured, and never less than on one that was not. */
export function controlSizes(pxPerMm: number | null): ControlSizes {
  const wanted = pxPerMm === null ? 0 : Math.ceil(pxPerMm * CONTROL_MM);
  return { mainPx: Math.max(CONTROL_PX, wanted), keyPx: Math.max(KEY_PX, wanted) };
}
