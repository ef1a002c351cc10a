// Spanish: the sheets of a printed pack, and the screen on which they are entered afterwards.

import type { Words } from '../en/index.ts';

export const paper: Words['paper'] = {
  sheet: (letter, name) => `Hoja ${letter} · ${name}`,
  phases: {
    before: 'Antes de empezar',
    isolate: 'Aislar',
    strip: 'Desmontar',
    inspect: 'Mirar y medir',
    fit: 'Montar',
    'box-up': 'Cerrar la máquina',
    'line-up': 'Alinear el circuito',
    prove: 'Probar',
  },
};
