// Spanish: the state something was found in, in five taps, and the hunt for missing pieces.

import type { Words } from '../en/index.ts';

export const asFound: Words['asFound'] = {
  button: 'Cómo estaba',
  title: 'Cómo estaba',
  grade: 'Su estado',
  failed: 'Qué falló',
  photo: 'Foto',
  takePhoto: 'Hacer una foto',
  taken: 'foto hecha',
  noPhoto: 'sin foto',
  hours: 'Horas de marcha',
  lastRead: (hours) => `${hours} h, última lectura`,
  another: 'otra',
  notRead: 'no se pueden leer',
  missing: 'Piezas que faltan',
  none: 'ninguna',
  stillToSay: (list) => `Falta decir: ${list}. La última respuesta lo anota.`,
  recordIt: 'Anotarlo',
  leaveIt: 'Dejarlo',
  whoHolds: 'quién tiene este teléfono',
  why: (reason) => `Por qué: ${reason}.`,
  couldNot: 'No se pudo hacer',
  found: 'Se encontró algo',
  anyway: 'Usar de todos modos, sin esto',
  head: 'Cómo estaba',
  hoursAt: (hours) => `a las ${hours} h`,
  hoursNotRead: 'horas sin leer',
  failedWas: (what) => `falló: ${what}`,
  missingWas: (n) => `piezas que faltan: ${n}`,
  pictureOf: 'como se encontró',
};

export const hunt: Words['hunt'] = {
  head: 'Piezas que faltan',
  hint:
    'Mire en lo que sigue en el flujo: el primer codo, el filtro, el enfriador que sigue ' +
    '(práctica común, sin fuente).',
  found: 'Encontradas',
  goOn: 'Seguir sin ellas',
  where: 'Dónde se encontraron',
  places: {
    inside: 'dentro',
    bend: 'el primer codo que sigue',
    strainer: 'el filtro',
    cooler: 'el enfriador que sigue',
    bilge: 'la sentina',
  },
  left: 'Siguen faltando',
  reason: 'Razón',
  limits: 'Qué limita el riesgo',
  byName: (name) => `Queda anotado como desviación de ${name}.`,
  recordIt: 'Anotarlo',
  leaveIt: 'Dejarlo',
};
