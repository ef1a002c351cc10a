// English: how each weight of a job is carried, on screens, sheets and in the steps.

export const liftingSentences = {
  hoistFor: (part: string) => `hoist for ${part}`,
  jackFor: (part: string) => `jack under ${part}`,
  slingFor: (part: string) => `sling for ${part}`,
  supportFor: (part: string) => `support for ${part} (not stated which)`,
  takeWeight: (where: string, name: string, n: number) =>
    `${where}: take its weight with ${name} (number ${n}), before its joints are loose.`,
  takeWeightWhy: 'what loses its last joint falls or swings: gear carries it by then, never a hand',
  weightOff: (name: string, n: number) => `Its bolts started by hand: ${name} (number ${n}) away.`,
  startHeld: (joint: string, fasteners: string, held: readonly string[]) =>
    `${joint}: start ${fasteners} by hand, all of them; the weight stays on ${held.join(', ')}.`,

  askMass: 'what does it weigh?',
  askWet: 'what does it weigh wet, with what stays in it?',
  askHow: (kg: string) =>
    `it weighs ${kg} kg or more, and neither reach nor gear is stated: by what is it carried?`,
  askReach: (lacks: readonly string[]) =>
    `a lift by hand can not be checked without ${lacks.join(', ')}`,
  notByHand: (verdict: string, reasons: readonly string[]) =>
    `not by hand as stated (${verdict}): ${reasons.join('; ')}`,
  askAngle: 'at which angle from straight down do the legs hang?',
  askFrom: 'from which lift point does it hang?',
  askRated: (point: string, kg: string) => `${point}: what is it rated for? It must bear ${kg} kg`,
  ratedLess: (point: string, has: string, must: string) =>
    `${point} is rated for ${has} kg and must bear ${must} kg`,
  gearMissing: (n: number, kind: string, kg: string, against: readonly string[]) =>
    `${n} × ${kind} marked ${kg} kg or more is missing` +
    (against.length === 0 ? '' : ` (${against.join('; ')})`),
  askHolder: 'what holds it while its joints are loose?',

  liftFits: 'fits',
  liftSome: 'too heavy for some',
  liftNearlyAll: 'too heavy for nearly all',
  liftOutside: 'outside the method: use gear or a second person',
  helpCloser: 'Bring the load closer to the body.',
  helpHeight: 'Begin or end the lift nearer to knuckle height, 75 cm.',
  helpWay: 'Shorten the way up or down.',
  helpTwist: 'Turn with the feet in place of twisting.',
  helpOften: 'Lift less often, or rest longer between.',
  helpGrip: 'Give it handles, or a better grip.',
  helpLighter: 'Make it lighter, or share it.',
  legsStraight:
    'Laid straight, each leg in one length: choked or wrapped it bears less than is marked.',
  legsFour: 'Four legs: counted as two, for two opposite ones may hold it all.',
  legsWide:
    'Legs more than 60° from straight down pull far more than the weight (from memory): ' +
    'use longer legs.',

  howLifted: (part: string, asks: readonly string[]) => `${part}: ${asks.join('; ')}`,
  howLiftedWhy:
    'a weight is settled before anything is shut: what carries it, and that it bears it',
  sailsFirst: (sails: string, latest: string) =>
    `Sailing at ${sails}: the job would have to begin by ${latest} at the latest. What now?`,
  sailsFirstWhy: (hangs: readonly string[]) =>
    hangs.length === 0
      ? 'the hands-on minutes alone end after the sailing'
      : `the vessel would move with a weight hanging: ${hangs.join(', ')}`,
};

export const lifting = {
  title: 'Weights and how they are carried',
  weight: (kg: string, wet: boolean) => `${kg} kg${wet ? ' wet' : ''}`,
  noWeight: 'weight not stated',
  off: 'off',
  aside: 'aside',
  atBench: 'at the bench',
  how: {
    'by hand': 'by hand',
    gear: 'by lifting gear',
    light: 'light: by hand, its reach not stated and not weighed',
    slid: 'stays where it rests, is not lifted',
    asked: 'NOT SETTLED: not to be lifted like this',
  },
  people: (n: number) => (n === 1 ? 'one person' : `${n} people`),
  verdict: (verdict: string) => `verdict: ${verdict}`,
  share: (share: string, least: string) =>
    `${share} kg counts for each, ${least} kg is recommended at most`,
  bestCase: 'the figure is the best case on a dry floor, no limit to lift to',
  rests: (on: string) => `rests on what is ${on}`,
  holdsFor:
    'holds for a person standing upright on a firm, still floor, in mild air, holding nothing; ' +
    'who can not lift it says so',
  helps: (advice: string) => `What helps most: ${advice}`,
  legs: (n: number, angles: string) =>
    n === 1 ? 'one leg, straight down' : `${n} legs, ${angles}° from straight down`,
  tension: (newtons: string) => `${newtons} N in the worst leg`,
  need: (n: number, kind: string, kg: string) => `${n} × ${kind}, marked ${kg} kg or more`,
  use: (names: string) => `use ${names}`,
  notHeld: 'no list of gear is at hand: read what is marked on it, and its examination',
  inDate: (day: string) => `in date on ${day}`,
  point: (name: string, kg: string, rated: string | null) =>
    `${name} must bear ${kg} kg` +
    (rated === null ? ', its rating not stated' : `, rated ${rated} kg`),
  held: (names: string) =>
    `While its joints are loose it hangs or stands on: ${names}; never on a hand`,
  ask: 'To be settled',
  working: 'Working',
  sails: (sails: string, latest: string) =>
    `Sailing ${sails}: hands-on work alone must begin by ${latest}; ` +
    'isolating and proving come on top.',
  late: (hangs: string) =>
    'TOO LATE: the vessel would sail with the job open' +
    `${hangs === '' ? '' : ` and this hanging: ${hangs}`}.`,
  each: (kg: string) => `${kg} each`,
  onLeg: (kg: string) => `${kg} on a leg`,
  drawn: 'ahead of the ankles →, above the floor ↑',
  nextSailing: 'Next sailing or shift of berth',
  kinds: {
    'chain block': 'chain block',
    sling: 'sling',
    shackle: 'shackle',
    'eye bolt': 'eye bolt',
    jack: 'jack',
  },
};
