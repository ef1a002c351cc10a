// Spanish: the form of a calculation and what it gives.

import type { Words } from '../en/index.ts';

export const calcForm: Words['calcForm'] = {
  notSaid: 'sin indicar',
  yes: 'sí',
  no: 'no',
  unitOf: (label) => `Unidad de ${label.toLowerCase()}`,
  add: (label) => `Indicar: ${label.toLowerCase()}`,
  leaveOut: (label) => `Quitar ${label.toLowerCase()}`,
  another: (label) => `Uno más: ${label.toLowerCase()}`,
  row: (label, n) => `${label} n.º ${n}`,
  givenAs: (label) => `${label}, dado como`,
  startOver: 'Empezar de nuevo con el ejemplo',
  kept: 'El último caso queda guardado en este teléfono.',
  asText: 'El caso completo como texto (JSON)',
  cannot: 'No se puede calcular',
  expected: (path, why, expected) => `${path}: ${why}; se espera ${expected}`,
  result: 'Resultado',
  cautions: 'Atención',
  notWorkedOut: 'No se obtiene de estos datos',
  needs: (output, needs) => `${output}: hace falta ${needs}`,
  workingOut: 'Desarrollo',
  wholeResult: 'El resultado completo (JSON)',
  uncertain: (spread) => `± ${spread} (k = 2, incertidumbre)`,
  nothing: 'ninguno',
};
