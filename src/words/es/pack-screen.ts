// Spanish: the pack on its sheet; its own sentences are the core's.

import type { Words } from '../en/index.ts';

export const packSheet: Words['packSheet'] = {
  title: 'Pliego',
  notHere: 'Este pliego no está guardado aquí.',
  machine: 'Máquina',
  plate: 'Placa',
  notStated: 'sin indicar',
  values: (sheet) => `Valores, ${sheet}`,
  issue: (issue, date, authority) => `edición ${issue}, ${date}, ${authority}`,
  pack: 'Pliego',
  comesOff: 'Lo que se quita, por orden',
  atBench: 'En el banco',
  noReason: 'Sin motivo ni día.',
  figures: 'Cifras',
  wholeJob: 'para todo el trabajo',
  hand: 'persona',
  hands: 'personas',
  toUndo: 'uniones por soltar',
  off: 'piezas fuera o apartadas',
  toDo: 'cosas por hacer y anotar',
  chosenBy: 'con los que se eligió por dónde quitarlo',
  proven: 'Demostrado: de ninguna otra forma se quita en menos minutos.',
  notProven: (least, gap) => `Sin demostrar: al menos ${least} min; diferencia ${gap}.`,
  interval: 'Intervalo',
  differencesFrom: (other) => `diferencias con ${other}`,
  sameJob: 'El mismo trabajo en las dos.',
  whatDiffers: 'Qué es distinto aquí',
  inWords: 'En palabras, con el motivo de cada cosa',
  movement: {
    undo: (name) => `Soltar ${name}`,
    off: (name) => `${name}, fuera`,
    aside: (name) => `${name}, a un lado`,
  },
  cannotCheck: 'No se puede comprobar',
  saidOfBoxUp: 'Dicho sobre el montaje',
  counted: (n, name) => `${n} · ${name}`,
};

export const lists: Words['lists'] = {
  head: 'Para preparar y consultar',
  values: 'Valores',
  tools: 'Herramientas',
  toolFor: (tool, what) => `${tool} · para ${what}`,
  seals: 'Juntas y anillos',
  loose: 'Piezas sueltas, contadas',
  consumables: 'Consumibles',
  temporary: 'Tapas ciegas, apoyos y otras cosas provisionales',
  number: (n, name, where) => `Número ${n}: ${name} · ${where}`,
  weights: 'Pesos',
  weightUnknown: 'peso desconocido',
  proofs: 'Pruebas debidas',
  limits: 'Límites',
  followUps: 'Seguimientos',
  after: (after, what) => `Después de ${after}: ${what}`,
  noValue: 'SIN VALOR INDICADO',
  issue: (issue) => `, edición ${issue}`,
  ofDate: (date) => ` de ${date}`,
  threads: (condition) => ` · roscas ${condition}`,
  was: (value, issue) => ` · era ${value} en la edición ${issue}`,
  invented: ' · inventado para la demostración',
};

export const isolationSheet: Words['isolationSheet'] = {
  head: 'Dejar seguro',
  by: (name, on) => `. Por ${name}, ${on}.`,
  normally: (position) => `normalmente ${position}`,
  notStatedLoud: 'SIN INDICAR',
  tagAt: (tag, place) => `tarjeta ${tag}, ${place}`,
  placeNotStated: 'lugar sin indicar',
  provedAt: (list) => `Se comprueba en: ${list}.`,
  another: 'Escribir otra lista a mano',
  write: 'Escribir la lista a mano',
  explain: 'De cada cierre en que se apoya la faena, escriba la posición en que se pone.',
  closure: (name, normal) => `${name} (normalmente ${normal})`,
  where: 'Dónde se ve correr y dejar de correr',
  listedBy: 'Lista hecha por',
  workOut: 'Calcular el pliego con esta lista',
};

export const decisions: Words['decisions'] = {
  toSettle: 'Por decidir bajo nombre:',
  of: (n) => `de ${n}`,
  settledBy: (name, reason) => `Decidido por ${name}: ${reason}`,
  by: 'Decidido por',
  what: 'Qué se decide, y el motivo',
  limits: 'Qué limita el riesgo',
  settleIt: 'Decidirlo',
  leaveIt: 'Dejarlo',
  settle: (question) => `Decidir: ${question}`,
};

export const startJob: Words['startJob'] = {
  head: 'Empezar el trabajo',
  started: 'Empezado',
  startedBy: (name) => `Empezado por ${name}.`,
  toWork: 'Ir a la faena',
  by: 'Empezado por',
  hands: 'Gente en el trabajo',
  competent: 'Persona competente que verifica',
  unsettled: (n, name) =>
    `${n} sin decidir arriba. Para seguir de todos modos, diga por qué; queda en el registro ` +
    `como desviación de ${name}.`,
  name: 'nombre',
  reason: 'Motivo para usarlo de todos modos',
  limits: 'Qué limita el riesgo mientras tanto',
};

export const sentences: Words['sentences'] = {
  every: 'Todas las frases del trabajo, con su motivo',
  caution: (text) => ` Precaución, ${text}`,
  phases: {
    before: 'Antes de abrir nada',
    isolate: 'Dejar seguro',
    strip: 'Quitar',
    inspect: 'Limpiar y mirar',
    fit: 'Poner',
    'box-up': 'Volver a montar',
    'line-up': 'Alinear válvulas',
    prove: 'Probar',
  },
  onPaper: 'En papel',
  printed: 'Pliego impreso (PDF)',
  saveRequest: 'Guardar la petición (JSON)',
};
