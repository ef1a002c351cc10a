// Colours: only the media in the lines and the cautions have any, and always beside their word.

import type { Surface } from './svg.ts';

/**
 * Main colours of ISO 14726 for the media of a vessel's lines: from memory, the standard was not
 * at hand. `variable` is the CSS variable a palette may set; the word always stands beside it.
 */
export const MEDIA_COLOURS = {
  'sea water': { group: 'green', colour: '#1f7a3d' },
  'fresh water': { group: 'blue', colour: '#1b5fae' },
  'jacket water': { group: 'blue', colour: '#1b5fae' },
  coolant: { group: 'blue', colour: '#1b5fae' },
  'lube oil': { group: 'orange', colour: '#d2691e' },
  fuel: { group: 'brown', colour: '#7a4a21' },
  bilge: { group: 'black', colour: '#111111' },
  'start air': { group: 'grey', colour: '#7d8288' },
  'charge air': { group: 'grey', colour: '#7d8288' },
  exhaust: { group: 'grey', colour: '#7d8288' },
} as const satisfies Record<string, { group: string; colour: string }>;

export type ColouredMedium = keyof typeof MEDIA_COLOURS;

const isColoured = (medium: string): medium is ColouredMedium =>
  Object.hasOwn(MEDIA_COLOURS, medium);

/** The line's colour, or null for a medium the standard gives none (electricity, signal). */
export const mediumColour = (medium: string | null, surface: Surface): string | null => {
  if (medium === null || !isColoured(medium)) return null;
  const { group, colour } = MEDIA_COLOURS[medium];
  return surface === 'paper' ? colour : `var(--medium-${group}, ${colour})`;
};

/** Warning yellow of ISO 3864, from memory. A lamp palette sets the variable to `transparent`. */
export const cautionGround = (surface: Surface): string =>
  surface === 'paper' ? '#f9c80e' : 'var(--caution-ground, #f9c80e)';

export const cautionInk = (surface: Surface): string =>
  surface === 'paper' ? '#000' : 'var(--caution-ink, #000)';

/** The ground under a drawing, to clear a line behind a letter. */
export const ground = (surface: Surface): string =>
  surface === 'paper' ? '#fff' : 'var(--ground, #fff)';
