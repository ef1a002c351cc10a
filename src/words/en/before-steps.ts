// English: the steps that read a machine before it is stopped, and say how things were found.

export const beforeSentences = {
  beforeAt: (speed: string, what: readonly string[]) =>
    `Before you stop it, at ${speed}: read ${what.join(', ').toLowerCase()}.`,
  beforeAtWhy: 'a reading after the job says little without one from before it',
  otherAt: (machine: string, speed: string, what: readonly string[]) =>
    `${machine}, if it runs, at ${speed}: read ${what.join(', ').toLowerCase()}.`,
  otherAtWhy: 'a like machine in the same water is the nearest thing to compare with',
  speedItRunsAt: 'the speed it runs at',
  speed: 'Speed',
  pumpPressure: 'Pump pressure',
  seaWaterIn: 'Sea water in',
  seaWaterOut: 'Sea water out',
  jacketTemperature: 'Jacket temperature',
  leaksAsked: 'Leaks',
  dry: 'dry',
  weeps: 'weeps',
  leaks: 'leaks',
  noiseAsked: 'Noise',
  asUsual: 'as usual',
  oddNoise: 'odd',
  turnsFromShut: 'Turns from shut',
  matchMarkPipes: (name: string) =>
    `Match mark across the flanges of ${name}; its port direction, hoses and leads photographed, ` +
    'before the first bolt.',
  asFoundStep: (name: string) =>
    `${name}, as found, before cleaning: its state, what failed, a photo, hours, pieces missing.`,
  asFoundWhy: 'what nobody wrote down when it came off nobody knows the next time',
  itsState: 'Its state',
  asNew: 'as new',
  wornGoneOn: 'worn, would have gone on',
  nearItsEnd: 'near its end',
  hasFailed: 'failed',
  whatFailed: 'What failed',
  nothing: 'nothing',
  somethingElse: 'other',
  piecesMissing: 'Pieces missing',
  noteSerial: (part: string) => `${part}: note its serial or batch.`,
  noteSerialWhy: 'which one it was: with what was found of it, this is where life data comes from',
} as const;
