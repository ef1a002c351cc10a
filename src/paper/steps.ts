// The steps as they are printed: what to tick, what to read, what to write, under its caution.

import { jointDrawing } from '../drawing/joint.ts';
import { countWords, jointInputOf } from '../drawing/step.ts';
import { PHONE_WIDTH, widthOf } from '../drawing/svg.ts';
import { wrenchWords } from '../pack/fastening-words.ts';
import { sheetName, sheetsOf } from '../pack/sheets.ts';
import type { Pack, ShownValue, Step } from '../pack/types.ts';
import { en } from '../words/en/index.ts';
import { type CautionView, cautionView, type Picture, picture } from './block.ts';

const STOPS = {
  isolation: 'Stop: not before the isolation is proved. There is no way past this.',
  clear: 'Stop: not before everyone is clear, called and answered. There is no way past this.',
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
export const stepSheetsOf = (pack: Pack): readonly SheetView[] => {
  const drawn = new Set<string>();
  return sheetsOf(pack).map((sheet) => {
    const steps = sheet.steps.map((step, i) =>
      stepView(pack, step, sheet.steps[i - 1]?.reason ?? '', drawn),
    );
    const name = en.paper.sheet(sheet.letter, sheetName(sheet, en.paper.phases));
    return { name, steps };
  });
};

/** A joint's pattern is printed at its first round; later rounds have their boxes. */
const stepView = (pack: Pack, step: Step, before: string, drawn: Set<string>): StepView => {
  const holes = holesOf(pack, step);
  const drawing = drawn.has(step.thing) ? null : patternOf(pack, step, holes.length);
  if (drawing !== null) drawn.add(step.thing);
  return {
    text: step.text,
    words: wordsOf(step, before),
    stop: step.stop === null ? null : STOPS[step.stop],
    cautions: step.cautions.map(cautionView),
    values: step.values.map((value) => valueAt(value, step.round ?? '')),
    sets: setsOf(step),
    asks: step.asks.map((ask) => ({
      label: ask.label,
      unit: ask.unit ?? '',
      note: [
        ask.expected === undefined ? '' : `expected ${ask.expected}`,
        ask.optional === true ? '(if it can be had)' : '',
      ]
        .filter((word) => word !== '')
        .join(' '),
      choices: ask.choices ?? [],
    })),
    holes: holes.map((label) => ({ label, width: Math.max(26, widthOf(label, 11) + 8) })),
    'boxes-words': boxesWords(pack, step),
    drawing,
  };
};

const setsOf = (step: Step): StepView['sets'] =>
  (step.sets ?? []).map((line) => {
    const [head = '', ...rest] = wrenchWords(line, step.round ?? null, en.fastenings);
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
  if (step.verb === 'undone') return 'each as it is undone';
  const round = step.round === 'hand' ? 'by hand' : (step.round ?? '');
  const layout = pack.facts.joints[step.thing.replace('joint/', '')]?.layout.kind;
  const where = layout === 'positions' ? '' : ' (positions not known)';
  return `${round === '' || round === 'made' ? '' : `${round}, `}in this order${where}`;
};

/** A reason that goes on is not said again; unknown minutes are listed once. */
const wordsOf = (step: Step, before: string): string =>
  [
    step.place === null ? '' : `at: ${step.place}`,
    step.tool === null ? '' : `with: ${step.tool}`,
    step.count === null ? '' : `count: ${countWords(step)}`,
    step.minutes === null ? '' : `${step.minutes} min`,
    step.hands > 1 ? `${step.hands} people` : '',
    step.reason === '' || step.reason === before ? '' : `why: ${step.reason}`,
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
  return share && view.shown !== null ? { ...view, shown: `${round} of ${view.shown}` } : view;
};

export const valueView = (value: ShownValue): ValueView => ({
  name: value.name,
  shown: value.shown,
  words: [
    value.origin,
    value.issue === null ? '' : `issue ${value.issue}`,
    value.date ?? '',
    value.authority ?? '',
    value.shown === null || value.threadCondition === null ? '' : `thread ${value.threadCondition}`,
    value.was === null ? '' : `was ${value.was.value} (issue ${value.was.issue})`,
  ]
    .filter((word) => word !== '')
    .join(' · '),
});
