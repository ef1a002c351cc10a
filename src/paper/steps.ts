// The steps as they are printed: what to tick, what to read, what to write, under its caution.

import { jointDrawing } from '../drawing/joint.ts';
import { countWords, jointInputOf } from '../drawing/step.ts';
import { PHONE_WIDTH, widthOf } from '../drawing/svg.ts';
import { wrenchWords } from '../pack/fastening-words.ts';
import { sheetName, sheetsOf } from '../pack/sheets.ts';
import type { Pack, ShownValue, Step } from '../pack/types.ts';
import { now, say } from '../words/heard.ts';
import { type Language, wordsOf as wordsIn } from '../words/words.ts';
import { type CautionView, cautionView, type Picture, picture } from './block.ts';

const STOPS = {
  isolation: 'stopIsolation',
  clear: 'stopClear',
} as const;

export type StepView = {
  readonly text: string;
  readonly words: string;
  readonly stop: string | null;
  readonly cautions: readonly CautionView[];
  readonly values: readonly ValueView[];
  /** How a torque wrench is set, a line each. */
  readonly sets: readonly { readonly head: string; readonly rest: string }[];
  readonly asks: readonly {
    readonly label: string;
    readonly unit: string;
    readonly note: string;
    readonly choices: readonly string[];
  }[];
  readonly holes: readonly { readonly label: string; readonly width: number }[];
  readonly 'boxes-words': string;
  readonly drawing: (Picture & { readonly points: number }) | null;
};

export type ValueView = {
  readonly name: string;
  readonly shown: string | null;
  readonly words: string;
};

export type SheetView = {
  readonly name: string;
  readonly steps: readonly StepView[];
};

/** `Sheet C · Take off, Port main engine`: the screen on which it is entered calls it the same. */
export const stepSheetsOf = (pack: Pack, language: Language = 'en'): readonly SheetView[] => {
  const { paper } = wordsIn(language);
  const drawn = new Set<string>();
  return sheetsOf(pack).map((sheet) => {
    const steps = sheet.steps.map((step, i) =>
      stepView({ pack, language, drawn }, step, sheet.steps[i - 1]?.reason ?? ''),
    );
    const name = paper.sheet(sheet.letter, sheetName(sheet, paper.phases, paper.partOf));
    return { name, steps };
  });
};

/** A joint's pattern is printed at its first round; later rounds have their boxes. */
type Sheets = {
  readonly pack: Pack;
  readonly language: Language;
  readonly drawn: Set<string>;
};

const stepView = ({ pack, language, drawn }: Sheets, step: Step, before: string): StepView => {
  const holes = holesOf(pack, step);
  const drawing = drawn.has(step.thing) ? null : patternOf(pack, step, holes.length);
  if (drawing !== null) drawn.add(step.thing);
  return {
    text: now(step.text),
    words: wordsOf(step, before),
    stop: step.stop === null ? null : say(STOPS[step.stop]),
    cautions: step.cautions.map(cautionView),
    values: step.values.map((value) => valueAt(value, step.round ?? '')),
    sets: setsOf(step, language),
    asks: step.asks.map((ask) => ({
      label: now(ask.label),
      unit: ask.unit ?? '',
      note: [
        ask.expected === undefined ? '' : say('expectedIs', ask.expected),
        ask.optional === true ? say('ifItCan') : '',
      ]
        .filter((word) => word !== '')
        .join(' '),
      choices: (ask.choices ?? []).map(now),
    })),
    holes: holes.map((label) => ({ label, width: Math.max(26, widthOf(label, 11) + 8) })),
    'boxes-words': boxesWords(pack, step),
    drawing,
  };
};

const setsOf = (step: Step, language: Language): StepView['sets'] =>
  (step.sets ?? []).map((line) => {
    const [head = '', ...rest] = wrenchWords(
      line,
      step.round ?? null,
      wordsIn(language).fastenings,
    );
    return { head, rest: rest.join(' · ') };
  });

/**
 * The pattern of a joint, once, at the first round of known order and positions; drawn at one unit
 * a point, so that its words are as large as the sheet's.
 */
const patternOf = (pack: Pack, step: Step, holes: number): StepView['drawing'] => {
  const input = jointInputOf({ pack, step });
  if (step.verb !== 'made' || step.round === 'hand' || holes < 2 || input === null) return null;
  if (input.joint.layout.kind !== 'positions') return null;
  const width = holes > 8 ? PHONE_WIDTH : 260;
  const made = jointDrawing({ ...input, round: null, value: null }, { surface: 'paper', width });
  return { ...picture(made), points: width };
};

/** A box a hole at every round of making up, and wherever the step is ticked by holes. */
export const holesOf = (pack: Pick<Pack, 'facts'>, step: Step): readonly string[] => {
  const joint = pack.facts.joints[step.thing.replace('joint/', '')];
  const holes = step.holes.length > 0 ? step.holes : (joint?.holes ?? []);
  return step.perHole || (step.verb === 'made' && holes.length > 1) ? holes : [];
};

const boxesWords = (pack: Pack, step: Step): string => {
  if (step.verb === 'undone') return say('asUndone');
  const round = step.round === 'hand' ? 'by hand' : (step.round ?? '');
  const layout = pack.facts.joints[step.thing.replace('joint/', '')]?.layout.kind;
  return say(
    'inThisOrder',
    round === '' || round === 'made' ? null : round,
    layout === 'positions',
  );
};

const countedIn = (step: Step): string =>
  step.count === null || /^\d/.test(step.count.what)
    ? countWords(step)
    : say('counted', step.count.n, step.count.what);

/** A reason that goes on is not said again; unknown minutes are listed once. */
const wordsOf = (step: Step, before: string): string =>
  [
    step.place === null ? '' : say('atPlace', step.place),
    step.tool === null ? '' : say('withTool', step.tool),
    step.count === null ? '' : say('countIs', countedIn(step)),
    step.minutes === null ? '' : `${step.minutes} min`,
    step.hands > 1 ? say('peopleNeeded', step.hands) : '',
    step.reason === '' || step.reason === before ? '' : say('whyIs', step.reason),
  ]
    .filter((word) => word !== '')
    .join(' · ');

/**
 * At a round that is a share, the share stands before the figure: the issued figure alone, in the
 * largest type of the step, would be taken for the round's own.
 */
const valueAt = (value: ShownValue, round: string): ValueView => {
  const view = valueView(value);
  const share = /^\d+ %$/.test(round) && round !== '100 %';
  return share && view.shown !== null
    ? { ...view, shown: say('shareOfIssued', round, view.shown) }
    : view;
};

export const valueView = (value: ShownValue): ValueView => ({
  name: now(value.name),
  shown: value.shown === null ? null : now(value.shown),
  words: [
    now(value.origin),
    value.issue === null ? '' : say('issueNumber', value.issue),
    value.date ?? '',
    value.authority ?? '',
    value.shown === null || value.threadCondition === null
      ? ''
      : say('threadIs', value.threadCondition),
    value.was === null ? '' : say('valueWas', value.was.value, value.was.issue),
  ]
    .filter((word) => word !== '')
    .join(' · '),
});
