// English: the words on drawings, and what they say where they can't be seen.

export const drawnSentences = {
  ordinal: (n: number) => {
    const tens = n % 100;
    if (tens >= 11 && tens <= 13) return `${n}th`;
    const last = n % 10;
    return `${n}${last === 1 ? 'st' : last === 2 ? 'nd' : last === 3 ? 'rd' : 'th'}`;
  },
  shareOf: (shown: string) => `of ${shown}`,
  noValue: 'no value',
  toUndo: 'undo',
  byHand: 'by hand',
  jointDrawn: (
    joint: string,
    holes: number,
    known: boolean,
    round: string | null,
    order: string | null,
    ticks: string | null,
  ) =>
    `${joint}: ${holes} holes${known ? '' : ', positions not known'}` +
    `${round === null ? '' : `; ${round}`}${order === null ? '' : `; order ${order}`}` +
    `${ticks === null ? '' : `; ${ticks}`}`,
  positionsNotKnown: 'positions not known',
  stateCount: (state: string, n: number) => `${state} ${n}`,
  notYet: 'not yet',
  earlier: 'earlier',
  earlierRound: 'earlier round',
  thisRound: 'this round',
  isolationOf: (medium: string, devices: readonly string[]) =>
    `Isolation, ${medium}: ${devices.join('; ')}`,
  isolationAll: (devices: readonly string[], note: string) =>
    `Isolation: ${devices.join('; ')}. ${note}.`,
  deviceStands: (name: string, position: string, proved: boolean) =>
    `${name} ${position}${proved ? ', proved here' : ''}`,
  lineNotStated: 'line not stated',
  mediumNotStated: 'medium not stated',
  positionNotStated: 'position not stated',
  normalPositionNotStated: 'normal position not stated',
  tagsAre: (tags: string) => `tags ${tags}`,
  seenToDie: 'seen to run and die away',
  diesToNothing: 'runs, then dies away to nothing',
  toldByName: 'told by name',
  lookAndFeel: 'look and feel',
  secondLook: 'Second look',
  blankList: 'blank list, another person',
  asFoundDrawn: 'as found',
  asLeftDrawn: 'as left',
  measuredDrawn: (name: string, when: string) => `${name}: measured ${when}`,
  comesOff: 'comes off',
  movedAsideSupported: 'moved aside, supported',
  movedAside: 'moved aside',
  goesBack: 'goes back',
  comesOut: 'comes out',
  lookedAtAsFound: 'looked at as found',
  goesIn: 'goes in',
  partMoves: (name: string, move: string, weight: string | null) =>
    `${name}: ${move}${weight === null ? '' : `, ${weight}`}`,
  putInDrawn: 'put in',
  takenAwayDrawn: 'taken away',
  sealDrawn: (n: number, goesIn: boolean) => `${n} ${goesIn ? 'new in' : 'old out'}`,
  speedsDrawn: (name: string, speeds: string | null) =>
    `${name}: ${speeds === null ? 'no speeds stated' : `speeds ${speeds}`}`,
  noSpeeds: 'no speeds stated',
  turnDrawn: (rotation: string) => `Turn by hand: ${rotation}`,
  directionNotStated: 'direction not stated',
  clearDrawn: 'Everyone clear, called and answered',
  clearWords: 'everyone clear, called and answered',
  machineDrawn: 'machine',
  removalOrder: (steps: readonly string[]) => `Removal order: ${steps.join('; ')}`,
  nothingOff: 'nothing comes off',
  nothingOffAlt: 'Removal order: nothing comes off',
  undoDrawn: (joint: string) => `undo ${joint}`,
  afterDrawn: (numbers: string) => `after ${numbers}`,
  cautionDrawn: (hazard: string) => `Caution: ${hazard}`,
  nothingOpen: 'nothing open',
  openCount: (n: number) => `${n} open`,
  tallyDrawn: (open: string, good: number) => `${open}, ${good} made good`,
} as const;
