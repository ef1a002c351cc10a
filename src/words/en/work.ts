// English: Work, the open list and what is done at a step.

export const work = {
  title: 'Work',
  openTitle: 'Open list',
  jobClosed: 'This job is closed.',
  toItsRecord: 'Go to its record',
  readyInProof: (n: number) => `Ready in the proof: ${n}`,
  nothingLeft: 'Nothing is left to do here. Go to the record',
  alsoReady: 'Also ready',
  nothingIsOpen: 'Nothing is open.',
  madeGoodHead: 'Made good',
  open: 'open',
  madeGood: 'made good',
  now: 'Now',
  done: 'Done',
  couldNot: 'Could not do',
  found: 'Found something',
  photo: 'Photo',
  onlyThis: 'Only this one',
  anotherThan: (n: number) => `Another count than ${n}`,
  useAnyway: 'Use anyway, without this',
  before: (list: string) => `Before Done: ${list}.`,
  and: (text: string) => `And: ${text}`,
  handsFor: (n: number) => `${n} hands`,
  why: (reason: string) => `Why: ${reason}.`,
  bothTags: 'both tags',
  allTags: (n: number) => `all ${n} tags`,
  allOf: (n: number) => `all ${n}`,
  all: (n: number) => `, all ${n}`,
  thisOne: ', this one',
  nOfN: (n: number, of: number) => `${n} of ${of}`,
  tick: (n: number) => `Tick ${n} on the drawing`,
  noneMissing: 'none',
  anotherCount: 'another count',
  ifRead: ' (if read)',
  hole: (label: string, state: string) => `Hole ${label}, ${state}`,
  takeBack: (what: string) => `Take back: ${what}`,
  mistake: 'tapped by mistake',
  whoHolds: 'who is holding this phone',
  whoVerified: 'who verified it',
};

export const cautionWords = {
  section: 'Caution',
  caution: 'Caution.',
  verify: 'Verify:',
  verifiedBy: 'Verified by (competent person)',
  cautionWord: 'Caution',
  asAbove: (hazard: string) => ` as above: ${hazard}.`,
};

export const together = {
  head: 'Carried out already?',
  tapLast:
    'Tap the last one that is done: all above it are ticked with it, marked “entered together, ' +
    'afterwards”.',
  notFurther: (text: string, why: string) => `Not further: ${text} (${why})`,
  doneToHere: 'Done to here',
  firstOne: 'And:',
  doneWith: (label: string, choice: string) => `Done to here, ${label}: ${choice}`,
};

export const sideActs = {
  couldNot: 'Could not do',
  whyNot: 'Why not',
  found: 'Found something',
  whatFound: 'What was found',
  anyway: 'Use anyway',
  reason: 'Reason',
  goesOn: (name: string) =>
    `Goes on without this being done. It stands on the record as a deviation by ${name}.`,
  nameInHand: 'the name in hand',
  limits: 'What limits the risk',
  sayFirst: 'Say first who is holding this phone.',
  recordIt: 'Record it',
  leaveIt: 'Leave it',
  reasons: {
    seized: 'seized',
    noRoom: 'no room for the tool',
    notOnBoard: 'part not on board',
    calledAway: 'called away',
  },
  findings: {
    worn: 'worn',
    cracked: 'cracked',
    corroded: 'corroded',
    leaking: 'leaking',
    boltMissing: 'a bolt missing',
    notAsDrawn: 'not as drawn',
  },
};

export const stops = {
  isolation: 'Stop: isolation not proved',
  wetJoint: 'No wet joint is opened before it is. There is no way past this stop. Missing:',
  mayHold:
    'Nothing that may hold liquid is opened before it is. There is no way past this stop. ' +
    'Whether these valves are all there are is for you to judge: no drawing was checked. Missing:',
  clear: 'Stop: someone not clear',
  notTurned:
    'Nothing is turned or started before everyone has been called clear and has answered, after ' +
    'the last thing was undone or opened. There is no way past this stop.',
};
