// Spanish: what is read before the machine is stopped, and how a closure was found.

import type { Words } from '../en/index.ts';

export const before: Words['before'] = {
  button: 'Antes de pararla',
  title: 'Antes de pararla',
  now: 'Ahora',
  done: 'Hecho',
  keepIt: 'Guardar',
  leaveIt: 'Dejarlo',
  cannotRun: 'No puede marchar',
  neitherRuns: 'Ninguna puede marchar',
  notRunning: 'No está en marcha',
  nothingRead: 'una lectura, fugas o ruido',
  whichMachine: 'Qué máquina',
  thisMachine: 'esta',
  otherMachine: 'la de la otra banda',
  why: (reason) => `Por qué: ${reason}.`,
  lacks: (list) => `Antes de «Hecho»: ${list}.`,
  whoHolds: 'quién tiene este teléfono',
  whoVerified: 'quién lo verificó',
  moreSpeeds: 'Cada velocidad es una fila: guarde una y lea la siguiente.',
  beforeJob: (value, at) => `antes del trabajo: ${value} a ${at}`,
  head: 'Antes de pararla',
  none: 'No se leyó nada.',
  couldNotRun: (by) => `No podía marchar antes del trabajo (${by}).`,
  otherCouldNotRun: (by) => `La de la otra banda no estaba en marcha (${by}).`,
  onOther: 'otra banda',
  readBy: (label, at, by) => `${label}, a ${at}, ${by}`,
  foundHead: 'Cómo se encontró cada cierre',
  wasFound: (position, by) => `Encontrado: ${position} (${by}).`,
  pictureOf: 'como se encontró',
};
