// The title block of every sheet, after the fields of ISO 7200 (from memory), and shared wording.

import { signDrawing } from '../drawing/caution.ts';
import type { Drawing } from '../drawing/svg.ts';
import type { Pack } from '../pack/types.ts';
import { AUTHORITY_LINE, type Caution, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import type { Quantity, Source, Working } from '../quantity/types.ts';
import { now, say } from '../words/heard.ts';
import type { Language } from '../words/words.ts';
import { sheetWords } from './words.ts';

export type TitleBlock = {
  readonly title: string;
  readonly kind: string;
  readonly owner: string;
  readonly id: string;
  readonly issue: string;
  readonly by: string;
  readonly names: string;
  readonly authority: string;
  readonly mark: string | null;
  readonly lang: Language;
  /** The words of the sheets themselves. */
  readonly w: Readonly<Record<string, string>>;
};

/** `ratio`: height over width, so that the template can keep it on the sheet. */
export type Picture = Pick<Drawing, 'svg' | 'alt'> & { readonly ratio: number };

export const picture = ({ svg, alt, viewBox }: Drawing): Picture => ({
  svg,
  alt,
  ratio: viewBox.height / viewBox.width,
});

export const DEMO_MARK = 'INVENTED FOR THE DEMO: no vessel, machine or figure here is real.';

export const titleBlock = (
  pack: Pack,
  kind: string,
  title: string = pack.title,
  lang: Language = 'en',
): TitleBlock => ({
  title,
  kind,
  owner: pack.vessel.name,
  id: pack.id.slice(0, 12),
  issue: `${pack.plantIssue.number}, ${pack.plantIssue.date}`,
  by: 'Boxup',
  names: now(NAMES_NOT_PROVED),
  // Worded here and not taken from the pack, so that no file can print a sheet without it.
  authority: now(AUTHORITY_LINE),
  mark: pack.invented ? now(DEMO_MARK) : null,
  lang,
  w: sheetWords(),
});

/** At most one decimal, and no zero after the point. */
export const figure = ({ value, unit }: Quantity): string =>
  `${String(Math.round(value * 10) / 10)} ${unit}`;

export type CautionView = {
  readonly word: string;
  readonly text: string;
  readonly verify: string;
  readonly picture: Picture;
  readonly w: { readonly verify: string; readonly by: string };
};

const withoutWord = (text: string, word: string): string =>
  text.toLowerCase().startsWith(`${word}:`) ? text.slice(word.length + 1).trim() : text;

/** The word first, in capitals; a text that opens with the same word does not say it twice. */
export const cautionView = (caution: Caution): CautionView => ({
  word: `${now(caution.hazard).toUpperCase()}:`,
  text: withoutWord(now(caution.text), now(caution.hazard)),
  verify: now(caution.verify),
  w: { verify: say('pVerify'), by: say('pVerifiedBy') },
  picture: picture(signDrawing(caution, { surface: 'paper' })),
});

export const sourceWords = (source: Source): string => {
  switch (source.kind) {
    case 'published':
      return [source.title, source.edition, source.place].filter((word) => word !== '').join(', ');
    case 'issued':
      return say('sourceIssued', source.authority, source.issue, source.date);
    case 'from memory':
      return say('sourceMemory', source.of);
    case 'computed':
      return say('sourceComputed', source.by);
    case 'measured':
      return say('sourceMeasured', source.instrument);
    case 'entered':
      return say('sourceEntered', source.by);
    case 'common practice, no source':
    case 'invented for the demo':
      return now(source.kind);
  }
};

export const workingRows = (working: Working): readonly (readonly string[])[] =>
  working.map((row) => [
    row.symbol,
    now(row.text),
    row.expression,
    `${Number(row.value.toPrecision(6))} ${row.unit}`,
    sourceWords(row.source),
  ]);

/** Lets a word longer than its column break, so that nothing runs off the sheet. */
export const breakable = (text: string): string =>
  text.replaceAll(/\S{24}(?=\S)/g, (run) => `${run}\u200b`);
