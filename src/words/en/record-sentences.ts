// English: what the record says: entries of the open list, findings, the isolation, handing over.

export const recordSentences = {
  // Entries of the open list.
  jointUndone: (joint: string) => `${joint}: undone`,
  jointOff: (joint: string, fasteners: readonly string[]) =>
    `${joint}: ${fasteners.join(', ')} off`,
  oldSealOpen: (joint: string, n: number, seal: string) =>
    `${joint}: old ${n} × ${seal} not accounted for`,
  newSealOwed: (joint: string, n: number, seal: string) => `${joint}: new ${n} × ${seal} owed`,
  looseOpen: (joint: string, n: number, name: string) => `${joint}: ${n} × ${name} out`,
  oldSealOfUnknown: (id: string) => `old ${id} not accounted for`,
  newSealOfUnknown: (id: string) => `new ${id} owed`,
  partAway: (part: string, aside: boolean) => `${part} ${aside ? 'aside' : 'off'}`,
  itemOut: (item: string) => `${item} out`,
  closureStands: (closure: string, position: string, normal: string | null) =>
    `${closure}: ${position}${normal === null ? '' : `, normally ${normal}`}`,
  tagHung: (n: string) => `Tag ${n} hung`,
  tagHangs: (n: string, closure: string) => `Tag ${n} on ${closure}`,
  standsOpen: (name: string) => `${name} open`,
  temporaryThing: (n: string) => `temporary thing ${n}`,
  /** Only a pack numbers what is put in; without one the id is no word for a person. */
  temporaryIn: (name: string, n: string) =>
    /^\d+$/.test(n) ? `${name} (number ${n}) in` : `${name} in`,
  asFoundOwed: (name: string) => `${name}: as found not said`,
  piecesMissingOf: (name: string, missing: string) => `${name}: ${missing}`,
  piecesMissingNow: (n: string) => `pieces missing: ${n}`,
  proofOwed: (proof: string) => `Proof owed: ${proof}`,
  inBag: (n: number) => `bag ${n}`,

  // Findings.
  outOfOrder: (step: string, before: string, text: string) =>
    `out of order: ${step} before ${before} (${text})`,
  outOfOrderOpen: (step: string, thing: string) => `out of order: ${step} while ${thing} is open`,
  together: (sentences: readonly string[]) => sentences.join('; '),
  openedWet: (thing: string, why: string) =>
    `${thing} opened wet before the isolation was proved: ${why}`,
  notUndone: (act: string, why: string) => `${act}: ${why}`,
  madeGoodBefore: 'it was made good before',
  nobodyUndid: 'nobody had undone it',
  countDiffers: (act: string, counts: readonly string[]) => `${act}: ${counts.join('; ')}`,
  countedWhere: (n: number, expected: number) => `${n} where ${expected} are expected`,
  answeredWhere: (label: string, n: number | string, expected: number | string) =>
    `${label}: ${n}, expected ${expected}`,
  noSuchHole: (holes: readonly string[]) => `no such hole: ${holes.join(', ')}`,
  positionDiffers: (closure: string, got: string, want: string) =>
    `${closure}: ${got}, not ${want}`,
  answeredBadly: (step: string, label: string, answer: string, note: string | null) =>
    `${step} ${label}: ${answer}${note === null ? '' : `. ${note}`}`,
  proofFailed: (proof: string, result: string) => `${proof}: ${result}`,
  atTheSameTime: (thing: string, acts: readonly string[]) => `${thing}: ${acts.join(', ')}`,
  actBy: (act: string, by: string) => `${act} by ${by}`,
  twoPacks: (whys: readonly string[]) => `Two packs amend one: ${whys.join('; ')}`,
  closedOpen: (by: string, things: readonly string[]) =>
    `closed by ${by} with entries open: ${things.join(', ')}`,
  notKnown: (act: string, by: string) => `${act} by ${by} was not known at the closing`,
  passedOnlyTo: (proof: string, upTo: string) => `${proof}: passed up to ${upTo}, not proved above`,
  followUp: (after: string, what: string) => `${after}: ${what}`,
  passedTo: (upTo: string) => `passed up to ${upTo}`,
  enteredFrom: (sheet: string) => `entered from paper, sheet ${sheet}`,
  writtenOn: (at: string) => `written ${at}`,
  enteredBy: (by: string) => `entered by ${by}`,
  foundTurns: (found: string, turns: number) =>
    `${found}, ${turns} ${turns === 1 ? 'turn' : 'turns'}`,
  runningSeenWhat: 'every disturbed joint dry and quiet, at each speed',
  serialNotGiven: 'serial not given',
  speedItRanAt: 'the speed it ran at',

  // The isolation.
  proved: 'proved',
  packNotHere: 'the pack of this job is not here',
  isolationUnstated: 'the isolation is not stated: a named person has to list the closures',
  noClosure: 'no closure is listed',
  notShut: (names: readonly string[]) => `not shut: ${names.join(', ')}`,
  notTagged: (names: readonly string[]) => `not tagged: ${names.join(', ')}`,
  noDrainNamed: 'no drain is named at which flow is seen to run and die away',
  notSeenToDie: (names: readonly string[]) =>
    `not seen to run and die away after all was shut, at: ${names.join(', ')}`,
  noValveShut: 'no valve is shut',
  nowhereSeenToDie: 'at no drain was flow seen to run and die away after all was shut',
  notProvedBecause: (why: string) => `not proved: ${why}`,
  isolationNotProved: 'isolation not proved',
  someoneNotClear: 'someone not clear',
  notLookedAt: 'not looked at',
  valueSuperseded: 'value superseded',
  sealsStop: 'seals not counted',
  notClosed: 'not closed',

  // Values replaced since the pack was made.
  withdrawn: 'withdrawn',
  withCondition: (shown: string, condition: string) => `${shown} (${condition})`,
  superseded: (
    value: string,
    was: string,
    wasIssue: string,
    is: string,
    issue: string,
    date: string,
    why: string | null,
  ) =>
    `${value}: ${was}, issue ${wasIssue}, is now ${is}, issue ${issue} of ${date}` +
    (why === null ? '' : `: ${why}`),

  // Handing over.
  placed: (what: string, place: string) => `${what} (${place})`,
  nothingTightened: (what: string) => `${what}: nothing tightened`,
  tightenedTo: (what: string, round: string, holes: string) =>
    `${what}: as far as "${round}", ${holes}`,
  allHoles: 'all',
  theseHoles: (holes: readonly string[]) => `bolts ${holes.join(' ')}`,

  // Boxing up what was only seen.
  putBack: (name: string) => `Put back: ${name}.`,
  madeUp: (name: string) => `${name}: made up.`,
  inAndTight: (name: string, fasteners: string, bag: number | null) =>
    `${name}: ${fasteners}${bag === null ? '' : ` (bag ${bag})`} in and tightened.`,
  takeSealsOut: (name: string, n: number, seals: string) => `${name}: take out ${n} old ${seals}.`,
  fitSeals: (name: string, n: number, seals: string) => `${name}: fit ${n} new ${seals}.`,
  fitAgain: (name: string) => `Fit again: ${name}.`,
  putLooseBack: (what: string) => `${what}: put back.`,
  takeAway: (what: string) => `Take away: ${what}.`,
  shutAndPlugIt: (name: string) => `Shut and plug: ${name}.`,
  takeDown: (tag: string) => `Take down: ${tag}.`,
  tagNamed: (n: string, closure: string) => `tag ${n} on ${closure}`,
  asStands: (what: string) => `${what}.`,
  foundOrNot: (what: string) => `${what}. Found, or gone on without?`,
  lookAndSay: (proof: string) => `${proof}: look and say.`,
  backToNormal: (name: string) => `${name}: back to its normal position.`,
  backTo: (name: string, position: string, turns: number | null) =>
    `${name}: back to ${position}${turns === null ? '' : `, ${turns} turns`}.`,
  studsAndNuts: 'studs and nuts',

  // Done to here.
  togetherIsolation: 'what isolates is said at its own step',
  togetherWet: 'what may be wet is said by itself',
  togetherLook: 'a second look is said by who looked',
  togetherClear: 'everyone clear is called and answered at its time',
  togetherProof: 'a proof is said by itself',
  togetherFound: 'what was found is said by itself',
  togetherCount: 'a count is said by itself',
  togetherReading: 'a reading is typed at its step',
  togetherLastRound: 'the last round of this joint is ticked bolt by bolt',
  togetherNotProved: 'the isolation is not proved',
  togetherSuperseded: 'its value was superseded: somebody looks at it first',
} as const;
