// Spanish: the calculations, each tried with its own example.

import type { Words } from '../en/index.ts';

export const calcSheet: Words['calcSheet'] = {
  title: 'Cálculos',
  one: (name) => `Cálculo: ${name}`,
  reading: 'Leyendo la lista …',
  cannotBeRead: 'no se puede leer',
  oneObject: 'un objeto JSON',
  input: 'Datos (JSON; dentro está el ejemplo)',
  workOut: 'Calcularlo',
  problems: 'Problemas',
  cannot: 'No se puede calcular',
  result: 'Resultado',
  whole: 'El resultado entero (JSON)',
  notWorkedOut: 'no calculado',
};
