// The steps as they are printed: what to tick, what to read, what to write, under its caution.

import { jointDrawing } from '../drawing/joint.ts';
import { jointInputOf } from '../drawing/step.ts';
import { widthOf } from '../drawing/svg.ts';
import type { Pack, Phase, ShownValue, Step } from '../pack/types.ts';
import { type CautionView, cautionView, type Picture, picture } from './block.ts';

const PHASES: Readonly<Record<Phase, string>> = {
  before: 'Before you start',
  isolate: 'Isolate',
  strip: 'Take off',
  inspect: 'Look and measure',
  fit: 'Fit',
  'box-up': 'Box up',
  'line-up': 'Line up',
  prove: 'Prove',
};

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
  readonly asks: readonly {
    readonly label: string;
    readonly unit: string;
    readonly note: string;
    readonly choices: readonly string[];
  }[];
  readonly holes: readonly { readonly label: string; readonly width: number }[];
  readonly 'boxes-words': string;
  readonly drawing: Picture | null;
};

export type ValueView = {
  readonly name: string;
  readonly shown: string | null;
  readonly words: string;
};

/** Runs of steps of one phase, in the pack's order; a phase that comes back gets its title again. */
export const phasesOf = (
  pack: Pack,
): readonly { readonly title: string; readonly steps: readonly StepView[] }[] => {
  const drawn = new Set<string>();
  const runs: { phase: Phase; steps: StepView[] }[] = [];
  for (const step of pack.steps) {
    const last = runs.at(-1);
    const view = stepView(pack, step, drawn);
    if (last?.phase === step.phase) last.steps.push(view);
    else runs.push({ phase: step.phase, steps: [view] });
  }
  return runs.map(({ phase, steps }) => ({ title: PHASES[phase], steps }));
};

/** A joint's pattern is printed at its first round; later rounds have their boxes. */
const stepView = (pack: Pack, step: Step, drawn: Set<string>): StepView => {
  const holes = holesOf(pack, step);
  const input = jointInputOf({ pack, step });
  const draws =
    step.verb === 'made' && input !== null && holes.length > 1 && !drawn.has(step.thing);
  if (draws) drawn.add(step.thing);
  return {
    text: step.text,
    words: wordsOf(step),
    stop: step.stop === null ? null : STOPS[step.stop],
    cautions: step.cautions.map(cautionView),
    values: step.values.map(valueView),
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
    holes: holes.map((label) => ({ label, width: Math.max(30, widthOf(label, 11) + 8) })),
    'boxes-words': boxesWords(step),
    drawing:
      draws && input !== null
        ? picture(jointDrawing({ ...input, round: null, value: null }, { surface: 'paper' }))
        : null,
  };
};

/** A box a hole wherever the step is ticked by holes, even when the step lists none itself. */
export const holesOf = (pack: Pick<Pack, 'facts'>, step: Step): readonly string[] => {
  if (!step.perHole) return [];
  if (step.holes.length > 0) return step.holes;
  return pack.facts.joints[step.thing.replace('joint/', '')]?.holes ?? [];
};

const boxesWords = (step: Step): string => {
  if (step.verb === 'undone') return 'each one as it is undone';
  const round = step.round === 'hand' ? 'by hand' : (step.round ?? '');
  return `${round === '' || round === 'made' ? '' : `${round}, `}in this order`;
};

const wordsOf = (step: Step): string =>
  [
    step.place === null ? '' : `at: ${step.place}`,
    step.tool === null ? '' : `with: ${step.tool}`,
    step.count === null ? '' : `count: ${step.count.n} ${step.count.what}`,
    step.minutes === null ? 'minutes not known' : `${step.minutes} min`,
    step.hands > 1 ? `${step.hands} people` : '',
    step.reason === '' ? '' : `why: ${step.reason}`,
  ]
    .filter((word) => word !== '')
    .join(' · ');

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
