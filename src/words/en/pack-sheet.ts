// English: what a pack says besides its steps: decisions, what can't be checked, the other side.

/** What a step speaks of, from its own sentence: `48 N.m · Pump mounting: 6 nuts.` */
const nameIn = (text: string): string => {
  const bare = text.replace(/\.$/, '').split(' · ').at(-1) ?? text;
  return bare.split(':')[0] ?? bare;
};
const bare = (text: string): string => text.replace(/\.$/, '');

/** The clauses of one step's sentence that the other side's does not say, without its name. */
export const onlyIn = (here: string, there: string, named: string): string => {
  const parts = (text: string) => bare(text).split(/[.;] /);
  const only = parts(here).filter((p) => !parts(there).includes(p));
  return only.join('; ').replace(`${nameIn(named)}: `, '');
};

export const packSentences = {
  packTitle: (part: string, machine: string, doing: string) => `${part}, ${machine}: ${doing}`,
  rangeOf: (min: string, max: string) => `${min} to ${max}`,
  atLeast: (min: string) => `at least ${min}`,
  atMost: (max: string) => `at most ${max}`,
  fastenersOf: (joint: string, n: number, thread: string) => `${joint}, ${n} × ${thread}`,
  settingOf: (joint: string, setting: string) => `${joint}: ${setting}`,
  looseOf: (name: string, joint: string) => `${name} (${joint})`,

  whichClosures: 'Which closures cut this off, and at which drain is it proved?',
  whichClosuresWhy:
    'ISOLATION NOT STATED: no wet joint is ready until a named person has filled it in',
  whichWater: 'Which closures keep the water back?',
  whichWaterWhy: 'none of the closures listed by hand stands in a line with a liquid',
  whichDrain: 'At which drain is it seen that water runs and dies away?',
  whichDrainWhy: 'the list names no drain between the closures and the joints',
  whoLooksAgain: 'How many hands are aboard: 1, 2, 3 or more? Who looks a second time?',
  whoLooksAgainWhy:
    'a second pair of eyes is asked for before anything wet is opened and before start; ' +
    'only where one hand is aboard may that one look again alone',
  whatFastens: (joint: string) =>
    `${joint}: what fastens it, and how many? Count them as they come off.`,
  whatFastensWhy: 'the plant file does not say, so nothing can be counted back',
  whatValue: (joint: string) => `${joint}: to what value is it tightened, by whose word?`,
  whatValueWhy: 'no value is issued for this joint; a missing value is asked for, never guessed',
  dryOrOiled: (joint: string) => `${joint}: is its value for dry or for oiled threads?`,
  dryOrOiledWhy: 'a value without thread condition is incomplete',
  mayTable: (joint: string) => `${joint}: may the general table's value be used?`,
  mayTableWhy: 'the value was not issued for this joint',
  mayUndo: (joint: string) => `${joint}: may it be undone?`,
  noWayRound: (why: string) => `no way round it was found: ${why}`,
  itHolds: (medium: string) => `it holds ${medium}`,
  whatShouldStay: 'what should stay shut',
  howLong: (what: readonly string[]) => `How long for ${what.join(', ')}?`,
  howLongWhy:
    '15 min each is assumed (common practice, no source); the plan is proven for that only',
  noValueIsStated: 'no value is stated',
  threadNotStated: 'the thread is not stated',
  classNotStated: 'the strength class is not stated',
  frictionInNoTable: 'friction of this thread is in no table at hand',
  whatMass: (part: string) => `${part}: what does it weigh, and what carries it?`,
  whatMassWhy: 'its mass is not stated',

  noAccess: (joint: string) =>
    `${joint}: cannot be checked whether it can be reached (no access stated)`,
  noBetween: (joint: string) =>
    `${joint}: cannot be checked which parts it joins, nor whether it is wet`,
  noPositions: (joint: string) => `${joint}: positions not known, so the order cannot be checked`,
  unknownField: (what: string) => `${what} unknown, cannot be checked`,
  assumedField: (what: string, by: string | null) =>
    `${what} assumed${by === null ? '' : ` by ${by}`}`,
  fieldOf: (name: string, field: readonly string[]) => `${name}: ${field.join(', ')}`,
  minutesNotStated:
    'Minutes for isolating, filling and proving are not stated, so they are not in the total',

  onlyHere: (step: string) => `Only here: ${bare(step)}`,
  notHere: (step: string) => `Not here: ${bare(step)}`,
  place: 'place',
  tool: 'tool',
  fastenedBy: 'fastened by',
  count: 'count',
  value: 'value',
  otherwise: (step: string, what: string, here: string, there: string) =>
    `${nameIn(step)}: ${what} ${here}, on the other side ${there}`,
  criticalHere: (step: string) => `${nameIn(step)}: critical here only`,
  criticalThere: (step: string) => `${nameIn(step)}: critical on the other side only`,
  saysOtherwise: (here: string, there: string) =>
    `${nameIn(here)}: ${onlyIn(here, there, here) || 'as usual'}, ` +
    `on the other side: ${onlyIn(there, here, here) || 'as usual'}`,
  orderDiffers: (step: string, after: string) =>
    `Order: ${nameIn(step)} goes back only after ${nameIn(after)} is made up`,

  machineMinutes: 'undoing and making good at the machine',
  benchMinutes: 'undoing and making good at the bench',
  handsOn: 'hands-on minutes; isolating, filling and proving are not in it',
  mostHands: 'the most hands any one step asks for',
  atBench: (why: string) => `at the bench: ${why}`,
} as const;
