// English: why an act may not be recorded now, and what a second look found.

const NO_WAY_PAST = 'There is no way past this stop.';

export const refusalSentences = {
  ofAnotherJob: (job: string, here: string) => `the act is of job ${job}, not of ${here}`,
  hasBegun: (title: string) => `the job ${title} has already begun`,
  noSuchJob: (job: string) => `there is no job ${job}`,
  notTogether: (why: string) => `this cannot be entered together with others: ${why}`,
  notFromPaper: (why: string) => `this cannot be entered from paper: ${why}`,
  notCorrectedAway: 'a job that has begun is closed, not corrected away',
  noSuchKind: (kind: string) => `"${kind}" is no kind of act`,
  whoDoesIt: 'who does it? a name is missing',
  wrongStream: (kind: string, streams: readonly string[], stream: string) =>
    `"${kind}" belongs to a ${streams.join(' or ')}, not to a ${stream}`,
  badBody: (kind: string, faults: readonly string[]) => `${kind}: ${faults.join('; ')}`,
  wasClosed: (by: string) => `the job was closed by ${by}`,
  closedNow: (by: string) => `the job was closed by ${by}: start a new one, or correct the closing`,
  packIsNotHere: (pack: string) => `the pack ${pack} is not here`,
  unsettled:
    'the pack asks for decisions that nobody has settled: settle them, or use it anyway by name',
  listedThing: (thing: string, what: string) => `${thing}: ${what}`,
  wetNotProved: (name: string, wet: boolean) =>
    `${name} ${wet ? 'is wet' : 'is in no pack of this job, so it may be wet,'} and the ` +
    `isolation is not proved. ${NO_WAY_PAST}`,
  inThePack: (thing: string) => `${thing} is in the pack of this job: report its own step`,
  takingNotProved: (name: string, wet: boolean) =>
    `${name} ${wet ? 'holds liquid' : 'may hold liquid'} and the isolation is not proved: ` +
    `shut what feeds it, tag it, see the flow run and die away at a drain. ${NO_WAY_PAST}`,
  movingNotProved: (thing: string) =>
    `${thing} may hold liquid and the isolation is not proved. There is no way past.`,
  notGivenBack: (closure: string) =>
    `${closure} cannot be given back while a wet joint is open. ${NO_WAY_PAST}`,
  nothingHandedOver: 'nothing was handed over',
  notHandedOver: 'it is not on the list handed over',
  noneMissing: (thing: string) => `${thing}: no pieces are missing there`,
  nobodyCalled:
    'Nobody has called everyone clear since something was last undone or opened. ' +
    'There is no way past this stop.',
  starting: 'Starting',
  whichRound: (thing: string, rounds: readonly string[]) =>
    `which round of ${thing}? one of ${rounds.join(', ')}`,
  wrongRound: (thing: string, round: string, rounds: readonly string[]) =>
    `round of ${thing} is "${round}" (expected ${rounds.join(', ')})`,
  noWayPast: (step: string) => `${step}: there is no way past this stop.`,
  noSuchFollowUp: (id: string) => `there is no follow-up "${id}"`,
  followUpDone: (by: string) => `it was done by ${by}`,
  noSuchFinding: (finding: string) => `there is no finding "${finding}"`,
  whichPack: 'which pack shall be in force? one of',
  inForceIs: (pack: string, from: string) => `the pack in force is ${pack}, not ${from}`,
  notDecided: 'not decided',
  sameInForce: 'the next pack is the one in force',
  notBeenDone: (title: string) => `job: ${title} has not been done`,
  findingOpen: (finding: string, what: string) => `finding "${finding}": ${what} (not decided)`,
  inForceUndecided: 'which pack is in force is not decided',
  actWaits: (act: string) => `${act}: it waits for one that has not come`,
  sideBySideRecords: (n: number) =>
    `${n} devices' records stand side by side: look at both and add a note`,
  deviationNotOpen: (thing: string) => `${thing}: a deviation is stated but it is not open`,
  cannotClose: (n: number) => `the job cannot be closed: ${n} things stand against it`,

  supersededStop:
    'the value of this joint was superseded since the pack was made: somebody looks at it by ' +
    'name first, or another pack comes in force',
  noneTookItsPlace:
    'the value was withdrawn and none took its place: ask for one, or use it anyway',
  noneSuperseded: (value: string, thing: string) => `no value ${value} of ${thing} was superseded`,
  issueSays: (issue: string, is: string, said: string) => `issue ${issue} says ${is}, not ${said}`,

  paperUnnamed: 'what is entered from paper names its sheet',
  paperWhen: (sheet: string) => `sheet ${sheet}: when was it done, as it stands there?`,
  paperWho: (sheet: string) => `sheet ${sheet}: who enters it?`,
  paperNoSheet: (sheet: string) => `this job's pack has no sheet ${sheet}`,
  paperNotOn: (step: string, sheet: string) => `${step} does not stand on sheet ${sheet}`,

  notLookedIsolation: 'no second pair of eyes has looked at the isolation as it stands now',
  notLookedLineUp: 'no second pair of eyes has looked at the line-up as it stands now',
  waitsForLook: (what: string, why: string, step: string) =>
    `${what}: ${why}. Have it looked at, or use it anyway by name ("${step}").`,
  oldSealsFirst: (n: number) =>
    `how many old ones came out? ${n} ${n === 1 ? 'groove' : 'grooves'} not counted empty; ` +
    'take them out and count, or use it anyway by name',
  sealsNotCounted: (n: number) =>
    `${n} of its seals ${n === 1 ? 'is' : 'are'} not counted, old out and new in: a joint is not ` +
    'closed over a double ring or an empty groove; count, or use it anyway by name',
  nothingToLookAt: (thing: string) => `${thing}: there is nothing to look at`,
  notAllStands: 'not everything has been said to stand where it should',
  notAllLookedAt: 'not every closure of the list was looked at',
  notListedClosure: 'a closure is not on the list, or there twice',
  lookIsAlone: (by: string) =>
    `${by} shut or lined it up: a look by the same person is a look alone`,
  lookIsNotAlone: (by: string) => `${by} shut or lined up none of it: this is no look alone`,
  anotherMustLook: (by: string, step: string) =>
    `${by} shut or lined it up and more hands are aboard: another has to look. Where ` +
    `nobody else can, use it anyway by name ("${step}").`,
  aloneTooSoon: (by: string, least: number, minutes: number) =>
    `${by} looks alone, so not before ${least} min after the last closure was said ` +
    `(common practice, no source); it is ${minutes} min by this device's clock.`,

  lookNotLookedAt: 'not looked at',
  seenUnsaid: (seen: string) => `seen ${seen}, not said by anybody`,
  seenOtherwise: (seen: string, said: string, wanted: string | null) =>
    `seen ${seen}, said ${said}${wanted === null ? '' : `, wanted ${wanted}`}`,
  moreAboard: 'by who shut or lined it up, and more are aboard',
  aloneSooner: (minutes: number, least: number) =>
    `alone, ${minutes} min after, sooner than ${least} min`,
  nobodyLooked: 'nobody has looked at it a second time',
  sawOtherwise: (by: string, differs: readonly string[]) =>
    `${by} saw it otherwise: ${differs.join('; ')}`,
  lookByWhy: (by: string, why: string) => `${by}: ${why}`,
  twoSawOtherwise: 'two people saw it otherwise',
  movedSince: (by: string) => `a closure was moved since ${by} looked`,
  lookDiffers: (by: string, lineUp: boolean, differs: readonly string[]) =>
    `${by} looked at ${lineUp ? 'the line-up' : 'the isolation'} a second time: ` +
    differs.join('; '),
  lookIsNone: (lineUp: boolean, by: string, why: string) =>
    `this look at ${lineUp ? 'the line-up' : 'the isolation'} is no second pair of eyes: ` +
    `${by}, ${why}`,
  openedUnseen: (name: string) =>
    `${name}: isolation not looked at by a second pair of eyes before it was opened`,
} as const;
