// English: slackening, joints that are tight already, and what is said of bolts with one tap.

const given = (text: string | null, before: string, behind = ''): string =>
  text === null ? '' : `${before}${text}${behind}`;

export const tightSentences = {
  slacken: (
    joint: string,
    fasteners: string,
    known: boolean,
    order: string | null,
    far: string | null,
    wet: boolean,
    leave: string | null,
    weight: string | null,
  ) =>
    `${joint}: undo ${fasteners}. ` +
    (known
      ? `Far side first${given(far, ' (', ')')}${given(order, ': ')}; `
      : 'Stand clear of the side that opens first; far side first. ' +
        given(order, 'Numbered across: ', '; ')) +
    `${!known && order === null ? 'Each' : 'each'} a part of a turn, round after round. ` +
    'Break the joint with all of them still on, away from you, and watch; only then take them off' +
    (wet ? '. Keep what makes it up again beside it' : '') +
    given(leave, '. DO NOT DISTURB without leave: ') +
    `.${given(weight, ' Weight taken first: ', '.')}`,

  whyNotScrewed: 'nothing on it is screwed to a torque',
  whyNoTorque: 'no torque is issued for it: there is no value to bring it to again',
  whyThreadlocked: 'it is threadlocked: turned, it is loose; undo it and make it up anew',
  whyLocked: 'a washer, plate, pin or wire locks it: undo it and make it up anew',
  whyByAngle: 'it is tightened by angle or to yield: turned again, it is stretched further',
  whyMetalToMetal: 'its faces meet metal to metal round a ring: nothing in it relaxes',
  whyNoGasket: 'it has no gasket that could relax',
  whyNotIssued: 'no value is issued for re-tightening it',

  studCameOut: 'Stud came out with the nut',
  boltBroken: 'Broken',
  wontTighten: "Won't tighten",
  isTight: 'tight',
  isNotTight: 'not tight',
  isNotJudged: 'not judged',
  notTightInFile: (bolt: string, figure: string) => `Not tight: hole ${bolt}, ${figure}`,
  notJudgedInFile: (bolt: string, figure: string) => `Not judged: hole ${bolt}, ${figure}`,

  theFirstRun: 'the first run',
  reTightened: 're-tightened',
  retightenLater: (joint: string, value: string, when: string) =>
    `${joint}: re-tighten the gasket once round to ${value}, nothing backed off (${when}).`,
  roundAtHoles: (round: string, holes: readonly string[]) => `${round}, hole ${holes.join(', ')}`,
  openNotTight: (joint: string) => `${joint} is open: it is made up, not checked`,
  noSuchJoint: (thing: string) => `no pack of this job knows ${thing}`,
  notOffered: (joint: string, why: readonly string[]) => `${joint}: ${why.join('; ')}`,
  notOfferedHole: (joint: string, hole: string, why: readonly string[]) =>
    `${joint}, hole ${hole}: ${why.join('; ')}`,
  whichHoles: (joint: string) => `${joint}: which of its holes?`,
  checkedUnder: (joint: string) =>
    `${joint} is wet: a nut backed off opens it, and the isolation is not proved. ` +
    'This stop has no way past it.',
  threeAnswers: (lacks: readonly string[]) =>
    `Not yet said with a yes: ${lacks.join(', ')}. Cold, no pressure, start isolated: all three.`,
  saidCold: 'cold',
  saidNoPressure: 'no pressure',
  saidStartIsolated: 'start isolated',
  startNotShut: (names: readonly string[]) =>
    `The start is not isolated: ${names.join(', ')} not recorded as the work needs it`,
  wholeRound: (joint: string) => `${joint}: a gasket is re-tightened once round, every hole`,
  otherValue: (joint: string, value: string, said: string) =>
    `${joint}: the value is ${value}, not ${said}`,
} as const;

export const tight = {
  title: 'A joint that is tight',
  link: 'A joint that is tight',
  intro:
    'Two different acts. A check backs a nut off and brings it to its value again. A ' +
    're-tightening takes up a soft gasket that has relaxed, and backs nothing off.',
  none: 'Every joint of this job is open.',
  another: 'Another joint',
  checkHead: 'Check of a nut that is tight',
  checkHow: (value: string) =>
    `Back the nut off with a plain wrench, about half a turn. Then one smooth pull to ${value}. ` +
    'A click on a nut that is tight tells nothing.',
  checkNoted: 'It is noted as “re-tightened”, and the proofs of this joint are owed again.',
  checkWhich: 'Which did you back off and re-tighten?',
  checkDone: (n: number) => `Re-tightened: ${n}`,
  retightenHead: 'Re-tighten a relaxed gasket',
  retightenWhen: (when: string) => `When: ${when}.`,
  retightenHow: (value: string) =>
    `Back nothing off. Once round in order, one smooth pull at each to ${value}.`,
  retightenNoted: 'Only as a value is issued for it. The look for leaks is owed again.',
  retightenDone: 'Once round, re-tightened',
  cold: 'Cold?',
  noPressure: 'No pressure in it?',
  startIsolated: 'Start isolated?',
  notOffered: 'Not offered:',
  hole: (label: string) => `Hole ${label}`,
  back: 'Back',
  boltHead: 'A bolt says no',
  boltKept: (what: string) => `Kept as a finding: ${what}`,
  standing: 'How tight',
  standingNone: 'No joint was undone.',
  standingLine: (joint: string, word: string) => `${joint}: ${word}`,
  holesAs: (holes: string, word: string) => `holes ${holes} ${word}`,
  round: (name: string) => `last round: ${name}`,
  fileIn: 'Take in results of a tool (file)',
  fileTaken: (n: number) => `Taken in from the file: ${n}`,
  fileBad: 'Nothing was recorded. The file says:',
  fileOut: 'Results of tightening (file)',
};
