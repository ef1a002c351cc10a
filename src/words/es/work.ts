// Spanish: Work, the open list and what is done at a step.

import type { Words } from '../en/index.ts';

export const work: Words['work'] = {
  title: 'Faena',
  openTitle: 'Lista de pendientes',
  jobClosed: 'Este trabajo está cerrado.',
  toItsRecord: 'Ir a su registro',
  readyInProof: (n) => `Listo en la prueba: ${n}`,
  nothingLeft: 'Aquí no queda nada por hacer. Ir al registro',
  alsoReady: 'También listo',
  nothingIsOpen: 'No hay nada pendiente.',
  madeGoodHead: 'Resuelto',
  open: 'pendiente',
  madeGood: 'resuelto',
  now: 'Ahora',
  done: 'Hecho',
  couldNot: 'No se pudo',
  found: 'Encontré algo',
  photo: 'Foto',
  onlyThis: 'Solo este',
  anotherThan: (n) => `Otra cuenta que ${n}`,
  useAnyway: 'Usar de todos modos, sin esto',
  before: (list) => `Antes de Hecho: ${list}.`,
  and: (text) => `Y: ${text}`,
  handsFor: (n) => `${n} personas`,
  why: (reason) => `Por qué: ${reason}.`,
  bothTags: 'las dos tarjetas',
  allTags: (n) => `las ${n} tarjetas`,
  allOf: (n) => `los ${n}`,
  all: (n) => `, los ${n}`,
  thisOne: ', solo este',
  nOfN: (n, of) => `${n} de ${of}`,
  tick: (n) => `Marque ${n} en el dibujo`,
  noneMissing: 'ninguno',
  anotherCount: 'otra cuenta',
  ifRead: ' (si se leyó)',
  hole: (label, state) => `Taladro ${label}, ${state}`,
  takeBack: (what) => `Retirar: ${what}`,
  mistake: 'pulsado por error',
  whoHolds: 'quién lleva este teléfono',
  whoVerified: 'quién lo verificó',
};

export const cautionWords: Words['cautionWords'] = {
  section: 'Precaución',
  caution: 'Precaución.',
  verify: 'Verifique:',
  verifiedBy: 'Verificado por (persona competente)',
  cautionWord: 'Precaución',
  asAbove: (hazard) => `, la misma de arriba: ${hazard}.`,
};

export const together: Words['together'] = {
  head: '¿Ya está hecho?',
  tapLast:
    'Pulse el último que esté hecho: con él se marcan todos los de arriba, como «anotados ' +
    'juntos, después».',
  notFurther: (text, why) => `No más allá: ${text} (${why})`,
  doneToHere: 'Hecho hasta aquí',
  firstOne: 'Y:',
  doneWith: (label, choice) => `Hecho hasta aquí, ${label}: ${choice}`,
};

export const sideActs: Words['sideActs'] = {
  couldNot: 'No se pudo',
  whyNot: 'Por qué no',
  found: 'Encontré algo',
  whatFound: 'Qué se encontró',
  anyway: 'Usar de todos modos',
  reason: 'Motivo',
  goesOn: (name) => `Se sigue sin hacer esto. Queda en el registro como desviación de ${name}.`,
  nameInHand: 'quien lo lleva',
  limits: 'Qué limita el riesgo',
  sayFirst: 'Diga antes quién lleva este teléfono.',
  recordIt: 'Anotarlo',
  leaveIt: 'Dejarlo',
  reasons: {
    seized: 'agarrotado',
    noRoom: 'no entra la herramienta',
    notOnBoard: 'el repuesto no está a bordo',
    calledAway: 'me llamaron a otra cosa',
  },
  findings: {
    worn: 'gastado',
    cracked: 'agrietado',
    corroded: 'corroído',
    leaking: 'pierde',
    boltMissing: 'falta un perno',
    notAsDrawn: 'no es como el dibujo',
  },
};

export const stops: Words['stops'] = {
  isolation: 'Alto: aislamiento sin comprobar',
  wetJoint:
    'Antes de comprobarlo no se abre ninguna unión con líquido. Este alto no tiene salida. Falta:',
  mayHold:
    'Antes de comprobarlo no se abre nada que pueda tener líquido. Este alto no tiene salida. Si ' +
    'estas válvulas son todas las que hay lo juzga usted: no se ha mirado ningún plano. Falta:',
  clear: 'Alto: alguien sin apartarse',
  notTurned:
    'No se gira ni se arranca nada hasta que todos hayan sido avisados de apartarse y hayan ' +
    'contestado, después de soltar o abrir lo último. Este alto no tiene salida.',
};
