// English: the screen on which a person sets this phone up for themselves.

export const setup = {
  language: 'Language',
  units: 'Units',
  unitsAre:
    'Readings are keyed in and read back in these. What was issued stays as it was issued; the ' +
    'conversion only stands beside it.',
  asIssued: 'as issued',
  dimensions: {
    pressure: 'Pressure',
    temperature: 'Temperature',
    length: 'Length',
    torque: 'Torque',
    'volume flow': 'Flow',
  },
  forWhom: (name: string) => `Language and units are those of ${name}; the rest is the phone’s.`,
  forAll: 'No name is chosen yet: language and units are for whoever has not chosen their own.',
  size: 'Size of the controls',
  layCard:
    'Lay a bank card on the screen, its long side up and down, its end on the upper line. Move ' +
    'the lower line with the buttons until the card ends on it.',
  card: 'A card is 85.60 mm long (ISO/IEC 7810, from memory).',
  frame: (px: number) => `The lines are ${px} px apart`,
  longer: (px: number) => `+ ${px}`,
  shorter: (px: number) => `− ${px}`,
  longerBy: (px: number) => `Longer by ${px} px`,
  shorterBy: (px: number) => `Shorter by ${px} px`,
  fits: 'The card fits: keep it',
  measured: (mm: string, px: string) =>
    `Measured: ${px} px to a millimetre. Main controls: ${mm} mm.`,
  notMeasured: 'Not measured yet: main controls are about 20 mm on a usual phone.',
  forget: 'Forget the measuring',
  toLog: 'Go to the log',
};
