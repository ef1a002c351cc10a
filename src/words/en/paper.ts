// English: the sheets of a printed pack, and the screen on which they are entered afterwards.

export const paper = {
  sheet: (letter: string, name: string) => `Sheet ${letter} · ${name}`,
  phases: {
    before: 'Before you start',
    isolate: 'Isolate',
    strip: 'Take off',
    inspect: 'Look and measure',
    fit: 'Fit',
    'box-up': 'Box up',
    'line-up': 'Line up',
    prove: 'Prove',
  },
};
