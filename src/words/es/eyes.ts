// Spanish: a second pair of eyes on the closures, and how many hands are aboard.

import type { Words } from '../en/index.ts';

export const eyes: Words['eyes'] = {
  title: 'Una segunda mirada',
  handsAboard: 'Gente a bordo',
  handsAboardWhy:
    'Todos los que podrían mirar por segunda vez, también los de cubierta. Si hay ' +
    'una sola persona a bordo, vuelve a mirar ella sola.',
  aboard: { '1': '1', '2': '2', '3': '3', more: 'más' },
  moments: { isolation: 'Aislamiento', 'line-up': 'Puesta en línea' },
  isolation: 'Antes de abrir nada mojado: ¿cómo está cada cierre?',
  lineUp: 'Antes del primer arranque: ¿cómo está cada cierre?',
  byAnother:
    'Cualquiera que esté instruido, también de cubierta, pero no quien lo hizo. ' +
    'Vaya a cada uno y diga lo que ve.',
  whoLooks: '¿Quién mira?',
  didIt: (name) => `${name} (lo hizo)`,
  otherName: 'Otro nombre',
  looksNow: (name) => `Mira ${name}`,
  change: 'Mira otra persona',
  open: 'Abierto',
  shut: 'Cerrado',
  soManyTurns: 'Abierto, tantas vueltas',
  turnsOpen: (n) => `abierto ${n} vueltas`,
  howManyTurns: '¿Cuántas vueltas abierto?',
  anotherCount: 'Otra cantidad',
  thatMany: 'Esas',
  cannotTell: 'No se sabe',
  another: 'Otra posición',
  seen: 'Visto hasta ahora',
  still: (n) => (n === 1 ? 'El último: este toque lo dice todo.' : `Faltan ${n} por ver`),
  lookAgain: (name) => `${name}: mirar otra vez`,
  notYet: (names) => `Todavía no. Nadie ha dicho que esté como debe: ${names}.`,
  otherwise: (by, names) =>
    `${by} lo vio de otra manera en: ${names}. Corríjase y se vuelve a mirar.`,
  moved: 'Algo se movió desde que se miró: se vuelve a mirar.',
  notAlone: (name) =>
    `Lo hizo ${name}, así que no vale como segunda mirada. Mira otra persona, o se ` +
    'usa de todos modos con nombre.',
  alone: (name) =>
    `Lo hizo ${name} y vuelve a mirar sin nadie más; el registro dice «comprobado ` +
    'a solas» (práctica común, sin fuente).',
  notBefore: (at, now) => `No antes de las ${at} según el reloj de este aparato; son las ${now}.`,
  passed: (name) => `Lo miró ${name}: está como debe.`,
  passedAlone: (name) => `Comprobado a solas por ${name} (práctica común, sin fuente).`,
  goneWithout: (name) => `Se siguió sin segunda mirada, por ${name}.`,
  nothing: 'Ahora no hay nada que mirar por segunda vez.',
  toWork: 'Volver a la faena',
  hereToo: 'En otro teléfono: abra allí este trabajo y luego',
  useAnyway: 'Usar de todos modos, sin esto',
  couldNot: 'No se pudo',
  found: 'Se encontró algo',
  stripLink: 'Una segunda mirada a lo que está cerrado',
  stripWhy:
    'Nadie lo ha mirado por segunda vez todavía. Nada espera por ello; el registro lo dice.',
  head: 'Segundas miradas',
  said: (name, at) => `lo miró ${name}, ${at} según el reloj del aparato`,
  saidAlone: (name, minutes, at) =>
    `comprobado a solas por ${name}, ${minutes} min después de decirse el último ` +
    `cierre, ${at} según el reloj del aparato (práctica común, sin fuente)`,
  anyway: (name, reason) => `se dejó sin hacer, usado de todos modos por ${name}: ${reason}`,
  checkedAlone: 'comprobado a solas (práctica común, sin fuente)',
  none: 'nadie lo miró por segunda vez',
};
