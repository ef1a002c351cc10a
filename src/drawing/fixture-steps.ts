// The steps of the hand-written pack: one of every verb, and every caution at least once.

import type { ShownValue, Step, StepVerb } from '../pack/types.ts';
import { cautionFor, type Hazard } from '../quantity/authority.ts';

export const labels = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => String(i + 1));

export const mountingValue: ShownValue = {
  id: 'pump-mounting',
  name: 'Pump mounting nuts',
  shown: '48 N.m',
  origin: 'issued for this joint',
  issue: 'C',
  date: '2026-02-03',
  authority: 'chief engineer (invented)',
  threadCondition: 'oiled',
  was: { issue: 'B', value: '42 N.m' },
  source: {
    kind: 'issued',
    authority: 'chief engineer (invented)',
    issue: 'C',
    date: '2026-02-03',
  },
};

export const noValue: ShownValue = {
  id: 'suction-flange',
  name: 'Suction flange bolts',
  shown: null,
  origin: 'none',
  issue: null,
  date: null,
  authority: null,
  threadCondition: null,
  was: null,
  source: null,
};

type Given = { readonly verb: StepVerb; readonly thing: string; readonly text: string } & Partial<
  Omit<Step, 'id' | 'cautions'>
> & { readonly hazards?: readonly Hazard[] };

export const fixtureStep = ({ hazards = [], ...given }: Given): Step => ({
  phase: 'strip',
  reason: 'on the way to the pump',
  place: 'port side, forward end',
  tool: '17 mm ring spanner',
  needs: [],
  count: null,
  holes: [],
  perHole: false,
  values: [],
  asks: [],
  fixed: {},
  minutes: 5,
  hands: 1,
  stop: null,
  ...given,
  id: `${given.verb} ${given.thing}${given.round === undefined ? '' : ` ${given.round}`}`,
  cautions: hazards.map(cautionFor),
});

const order8 = ['1', '5', '3', '7', '2', '6', '4', '8'];

export const fixtureSteps: readonly Step[] = [
  fixtureStep({
    verb: 'shut',
    thing: 'closure/sea-suction',
    text: 'Shut the sea suction valve.',
    phase: 'isolate',
    hazards: ['flooding'],
    stop: 'isolation',
  }),
  fixtureStep({
    verb: 'tagged',
    thing: 'tag/1',
    text: 'Hang tag 1 on the sea suction valve, at the valve.',
    phase: 'isolate',
    tool: null,
  }),
  fixtureStep({
    verb: 'shut',
    thing: 'closure/start-breaker',
    text: 'Switch off the start battery breaker.',
    phase: 'isolate',
    hazards: ['electricity', 'rotation'],
  }),
  fixtureStep({
    verb: 'drain-opened',
    thing: 'closure/casing-drain',
    text: 'Open the pump casing drain.',
    phase: 'isolate',
    hazards: ['stored energy'],
  }),
  fixtureStep({
    verb: 'proved-dead',
    thing: 'closure/casing-drain',
    text: 'See the water run and die away at the casing drain.',
    phase: 'isolate',
    stop: 'isolation',
  }),
  fixtureStep({
    verb: 'told',
    thing: 'job',
    text: 'Tell the wheelhouse that the port main engine stays stopped.',
    phase: 'before',
    place: 'wheelhouse',
    tool: null,
  }),
  fixtureStep({
    verb: 'undone',
    thing: 'joint/suction-flange',
    text: 'Undo 4 bolts M12 of the suction flange.',
    count: { n: 4, what: 'bolts M12' },
    holes: labels(4),
    perHole: true,
    hazards: ['flooding', 'heat', 'fuel', 'chemicals'],
  }),
  fixtureStep({
    verb: 'seal-out',
    thing: 'seal/suction-flange:gasket',
    text: 'Take out 1 old gasket.',
    count: { n: 1, what: 'gasket' },
  }),
  fixtureStep({
    verb: 'put-in',
    thing: 'temp/suction-blank',
    text: 'Put the blank on the suction pipe.',
  }),
  fixtureStep({
    verb: 'undone',
    thing: 'joint/pump-mounting',
    text: 'Undo 8 nuts M10 of the pump mounting.',
    count: { n: 8, what: 'nuts M10' },
    holes: labels(8),
    perHole: true,
  }),
  fixtureStep({
    verb: 'loose-out',
    thing: 'loose/pump-mounting:dowel',
    text: 'Take out 2 dowels and count them.',
    count: { n: 2, what: 'dowels' },
  }),
  fixtureStep({
    verb: 'moved-off',
    thing: 'part/pump',
    text: 'Take the pump off, 23 kg.',
    hazards: ['lifting'],
    hands: 2,
  }),
  fixtureStep({
    verb: 'item-out',
    thing: 'item/pump',
    text: 'Take out the old pump and read its serial.',
    asks: [{ name: 'serial', label: 'Serial', kind: 'text', optional: true }],
  }),
  fixtureStep({
    verb: 'moved-aside',
    thing: 'part/filter',
    text: 'Move the fuel filter aside and tie it up.',
  }),
  fixtureStep({
    verb: 'measured',
    thing: 'setting/pump-mounting:backlash',
    round: 'found',
    text: 'Measure the backlash as found.',
    phase: 'inspect',
    tool: 'dial indicator',
    asks: [{ name: 'backlash', label: 'Backlash', kind: 'number', unit: 'mm' }],
  }),
  fixtureStep({
    verb: 'checked',
    thing: 'check/faces',
    text: 'Clean both faces and look at them.',
    phase: 'inspect',
    hazards: ['confined space'],
  }),
  fixtureStep({
    verb: 'item-in',
    thing: 'item/pump',
    text: 'Offer up the new pump on two guide studs.',
    phase: 'fit',
  }),
  fixtureStep({
    verb: 'refitted',
    thing: 'part/pump',
    text: 'Put the pump back, 23 kg.',
    phase: 'fit',
    hazards: ['lifting'],
    hands: 2,
  }),
  fixtureStep({
    verb: 'seal-in',
    thing: 'seal/suction-flange:gasket',
    text: 'Fit 1 new gasket.',
    phase: 'box-up',
    count: { n: 1, what: 'gasket' },
  }),
  ...['hand', '60 %', '100 %'].map((round) =>
    fixtureStep({
      verb: 'made',
      thing: 'joint/pump-mounting',
      round,
      text:
        round === 'hand'
          ? 'Start 8 nuts M10 of the pump mounting by hand.'
          : `Tighten the pump mounting, 8 nuts M10, to ${round} of 48 N.m.`,
      phase: 'box-up',
      tool: round === 'hand' ? 'by hand' : 'torque wrench 20 N.m to 100 N.m',
      count: { n: 8, what: 'nuts M10' },
      holes: order8,
      perHole: true,
      values: round === 'hand' ? [] : [mountingValue],
    }),
  ),
  fixtureStep({
    verb: 'made',
    thing: 'joint/suction-flange',
    round: 'made',
    text: 'Make up the suction flange, 4 bolts M12.',
    phase: 'box-up',
    count: { n: 4, what: 'bolts M12' },
    holes: labels(4),
    perHole: true,
    values: [noValue],
  }),
  fixtureStep({
    verb: 'taken-away',
    thing: 'temp/suction-blank',
    text: 'Take the blank away.',
    phase: 'box-up',
  }),
  fixtureStep({
    verb: 'restored',
    thing: 'closure/sea-suction',
    text: 'Crack the sea suction valve with a hand at the joints, then open it fully.',
    phase: 'line-up',
    hazards: ['flooding'],
  }),
  fixtureStep({
    verb: 'people-clear',
    thing: 'job',
    text: 'Call everyone clear and hear the answer.',
    phase: 'prove',
    hazards: ['rotation'],
    stop: 'clear',
  }),
  fixtureStep({
    verb: 'turned',
    thing: 'proof/turn',
    text: 'Turn the engine by hand, clockwise seen from forward.',
    phase: 'prove',
    hazards: ['rotation'],
    stop: 'clear',
  }),
  fixtureStep({
    verb: 'proof',
    thing: 'proof/running',
    text: 'Look at every disturbed joint at 600 rpm, 1200 rpm and 1800 rpm.',
    phase: 'prove',
    asks: [
      {
        name: 'result',
        label: 'Result',
        kind: 'choice',
        choices: ['pass', 'fail', 'cannot tell'],
      },
    ],
  }),
];
