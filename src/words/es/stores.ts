// Spanish: the stores on the phone: by place, short for open jobs, drawn and received.

import type { Words } from '../en/index.ts';

export const stores: Words['stores'] = {
  title: 'Pañol',
  find: 'Escaneado o escrito: etiqueta, código, nombre, tamaño',
  nothing: 'Nada de esto está en la lista.',
  short: 'Falta para trabajos abiertos',
  noneShort: 'No falta nada para los trabajos abiertos.',
  shortFor: (seal, n, job) => `faltan ${n}: ${seal} · ${job}`,
  none: 'Aquí no se lleva lista de pañol.',
  noPlace: 'sitio sin indicar',
  held: (n, unit) => `${n} ${unit === 'pieces' ? (n === '1' ? 'pieza' : 'piezas') : unit}`,
  draw: 'Sacar 1',
  receive: 'Recibir 1',
  drawThis: (what) => `Sacar 1: ${what}`,
  receiveThis: (what) => `Recibir 1: ${what}`,
  condition: { 'ready to fit': 'listo para montar', 'needs work': 'por reparar', core: 'casco' },
  keptFor: (job) => `guardado para ${job}`,
  serial: (serial) => `serie ${serial}`,
  batch: (batch) => `lote ${batch}`,
  cured: (cured) => `vulcanizado ${cured}`,
  lastDay: (day) => `usar antes de ${day}`,
  ended: 'su etiqueta ha vencido: no está en orden',
  kits: 'Juegos incompletos',
  kitShort: (kit, what) => `${kit}: falta ${what}`,
  whoFirst: 'Diga quién lleva este teléfono antes de sacar o recibir nada.',
};
