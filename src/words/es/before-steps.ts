// Spanish: the steps that read a machine before it is stopped, and say how things were found.

import type { beforeSentences as english } from '../en/before-steps.ts';
import type { Translated } from '../en/sentences.ts';

export const beforeSentences: Translated<typeof english> = {
  beforeAt: (speed, what) => `Antes de pararla, a ${speed}: leer ${what.join(', ').toLowerCase()}.`,
  beforeAtWhy: 'una lectura después del trabajo dice poco sin otra de antes',
  otherAt: (machine, speed, what) =>
    `${machine}, si marcha, a ${speed}: leer ${what.join(', ').toLowerCase()}.`,
  otherAtWhy: 'una máquina igual en la misma agua es lo más cercano para comparar',
  speedItRunsAt: 'la velocidad a la que marcha',
  speed: 'Velocidad',
  pumpPressure: 'Presión de la bomba',
  seaWaterIn: 'Agua de mar, entrada',
  seaWaterOut: 'Agua de mar, salida',
  jacketTemperature: 'Temperatura de camisas',
  leaksAsked: 'Fugas',
  dry: 'seco',
  weeps: 'rezuma',
  leaks: 'con fugas',
  noiseAsked: 'Ruido',
  asUsual: 'como siempre',
  oddNoise: 'raro',
  turnsFromShut: 'Vueltas desde cerrado',
  matchMarkPipes: (name) =>
    `Marca a través de las bridas de ${name}; sus bocas, mangueras y cables fotografiados, ` +
    'antes del primer perno.',
  asFoundStep: (name) =>
    `${name}, cómo estaba, antes de limpiar: ` +
    'estado, qué falló, una foto, horas, piezas que faltan.',
  asFoundWhy: 'lo que nadie anotó al quitarlo nadie lo sabe la próxima vez',
  itsState: 'Su estado',
  asNew: 'como nuevo',
  wornGoneOn: 'gastado, habría seguido',
  nearItsEnd: 'cerca de su fin',
  hasFailed: 'averiado',
  whatFailed: 'Qué falló',
  nothing: 'nada',
  somethingElse: 'otro',
  piecesMissing: 'Piezas que faltan',
  noteSerial: (part) => `${part}: anotar su número de serie o lote.`,
  noteSerialWhy: 'cuál era: con lo que se encontró, de aquí salen los datos de vida',
};
