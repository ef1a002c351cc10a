// Spanish: the screen on which a person sets this phone up for themselves.

import type { Words } from '../en/index.ts';

export const setup: Words['setup'] = {
  language: 'Idioma',
  units: 'Unidades',
  unitsAre:
    'Las lecturas se teclean y se releen en estas. Lo emitido queda como se emitió; la ' +
    'conversión solo va al lado.',
  asIssued: 'como se emitió',
  dimensions: {
    pressure: 'Presión',
    temperature: 'Temperatura',
    length: 'Longitud',
    torque: 'Par de apriete',
    'volume flow': 'Caudal',
  },
  forWhom: (name) => `El idioma y las unidades son de ${name}; lo demás es del teléfono.`,
  forAll: 'Todavía sin nombre: idioma y unidades valen para quien no haya elegido los suyos.',
  size: 'Tamaño de los mandos',
  layCard:
    'Ponga una tarjeta de banco sobre la pantalla, con el lado largo de arriba abajo y el ' +
    'extremo en la línea de arriba. Mueva la línea de abajo con los botones hasta que la tarjeta ' +
    'acabe en ella.',
  card: 'Una tarjeta mide 85,60 mm de largo (ISO/IEC 7810, de memoria).',
  frame: (px) => `Las líneas están a ${px} px`,
  longer: (px) => `+ ${px}`,
  shorter: (px) => `− ${px}`,
  longerBy: (px) => `Más largo ${px} px`,
  shorterBy: (px) => `Más corto ${px} px`,
  fits: 'La tarjeta encaja: guardarlo',
  measured: (mm, px) => `Medido: ${px} px por milímetro. Mandos principales: ${mm} mm.`,
  notMeasured: 'Todavía sin medir: los mandos principales miden unos 20 mm en un teléfono normal.',
  forget: 'Olvidar la medida',
  toLog: 'Ir al diario',
};
