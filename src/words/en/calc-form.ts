// English: the form of a calculation and what it gives.

export const calcForm = {
  notSaid: 'not said',
  yes: 'yes',
  no: 'no',
  unitOf: (label: string) => `Unit of ${label.toLowerCase()}`,
  add: (label: string) => `Say: ${label.toLowerCase()}`,
  leaveOut: (label: string) => `Leave out ${label.toLowerCase()}`,
  another: (label: string) => `One more: ${label.toLowerCase()}`,
  row: (label: string, n: number) => `${label} ${n}`,
  givenAs: (label: string) => `${label}, given as`,
  startOver: 'Begin again with the example',
  kept: 'The last case is kept on this phone.',
  asText: 'The whole case as text (JSON)',
  cannot: 'It cannot be worked out',
  expected: (path: string, why: string, expected: string) =>
    `${path}: ${why}; expected ${expected}`,
  result: 'Result',
  cautions: 'Note',
  notWorkedOut: 'Not worked out from this',
  needs: (output: string, needs: string) => `${output}: needs ${needs}`,
  workingOut: 'Working',
  wholeResult: 'The whole result (JSON)',
  uncertain: (spread: string) => `± ${spread} (k = 2)`,
  nothing: 'none',
};
