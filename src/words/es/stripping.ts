// Spanish: stripping a machine nobody has written down, and boxing it up again.

import type { Words } from '../en/index.ts';

export const stripping: Words['stripping'] = {
  beginTitle: 'Desmontar sobre la marcha',
  on: 'En',
  noFile:
    'Ningún archivo describe esta máquina. Lo que quite, cierre y ponga se guarda sobre la ' +
    'marcha, y queda en la lista de pendientes hasta que se resuelva.',
  machine: 'Máquina',
  side: 'Banda',
  component: 'Componente',
  itWillBe: 'Se hará',
  hands: 'Gente',
  begin: 'Empezar a desmontar',
  machineLack: 'máquina',
  componentLack: 'componente',
  stillToSay: (list) => `Falta decir: ${list}.`,
  title: 'Desmontar',
  boxUpLink: (n) => `Volver a montar: ${n} por resolver`,
  openLast: 'Pendiente, lo último primero',
  whenFound: (what) => `cuando se encontró: ${what}`,
  leaveIt: 'Dejarlo',
  keepIt: 'Guardarlo',
  photo: 'Foto',
  takePhoto: 'Hacer una foto',
  takeAnother: 'Hacer otra foto',
  asFound: 'como se encontró',
  another: 'otro número',
};

export const tookOff: Words['tookOff'] = {
  head: 'Quitado',
  what: 'Qué',
  wet: '¿Tiene líquido?',
  itIs: 'Está',
  off: 'fuera',
  loosened: 'flojo, se queda ahí',
  held: 'Qué lo sujetaba',
  howMany: 'Cuántos',
  bag: 'Número de bolsa',
  sealsOut: 'Juntas viejas fuera',
  sealsIn: 'Juntas viejas todavía dentro',
  whatLack: 'qué',
  heldLack: 'qué lo sujetaba',
  howManyLack: 'cuántos',
  wetLack: 'si tiene líquido',
  usual: {
    cover: 'tapa',
    pipe: 'tubo',
    hose: 'manguera',
    guard: 'resguardo',
    pump: 'bomba de agua de mar',
    cooler: 'enfriador',
    strainerLid: 'tapa del filtro de mar',
    bracket: 'soporte',
  },
};

export const shutForm: Words['shutForm'] = {
  head: 'Cerrado o desenchufado',
  what: 'Qué',
  kind: 'Clase',
  positionFound: 'Posición encontrada',
  turns: 'Vueltas',
  tag: 'Tarjeta',
  hung: (n) => `tarjeta ${n} colgada`,
  noTag: 'todavía sin tarjeta',
  whatLack: 'qué',
  kindLack: 'de qué clase',
  foundLack: 'la posición en que se encontró',
  usual: {
    suction: 'válvula de fondo',
    overboard: 'válvula de descarga al mar',
    freshWater: 'válvula de agua dulce',
    battery: 'batería de arranque',
  },
};

export const putIn: Words['putIn'] = {
  head: 'Puesto',
  what: 'Qué',
  where: 'Dónde',
  whatLack: 'qué',
  whereLack: 'dónde',
};

export const drains: Words['drains'] = {
  hang: (tag, what) => `Colgar la tarjeta ${tag} en: ${what}`,
  look: 'Mirar una purga',
  which: 'Qué purga',
  ran: 'Se vio correr',
  died: 'Dejó de correr y no volvió',
  whichLack: 'qué purga',
  ranLack: 'si se vio correr',
  diedLack: 'si dejó de correr',
  everyoneClear: 'Todos avisados de apartarse, y contestaron',
  turned: 'Girada a mano',
  started: 'Arrancada',
};

export const boxUp: Words['boxUp'] = {
  title: 'Montar',
  nothingOpen: 'No hay nada pendiente. Ir al registro',
  upTo: 'Hasta qué',
  stillOff: 'Otra cosa se quitó después y sigue fuera: mire primero.',
  order: 'Montaje, en este orden',
  proposed:
    'Al revés de como se quitó. Es solo una propuesta: ponga uno antes o después, o púlselo para ' +
    'hacerlo primero.',
  now: (text) => `Ahora: ${text}`,
  waits: (text) => `(espera) ${text}`,
  earlier: 'Antes',
  later: 'Después',
};

export const drafts: Words['drafts'] = {
  head: 'Borrador de la descripción de esta máquina',
  written:
    'Escrito con lo visto en este trabajo. Cada campo dice visto una vez, por quién y cuándo, o ' +
    'supuesto: repáselo y corríjalo antes de que nadie se fíe de él.',
  save: (file) => `Guardar ${file}`,
};
