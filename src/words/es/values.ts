// Spanish: values superseded since a pack was made, and what changed since a person's last job.

import type { Words } from '../en/index.ts';

export const values: Words['values'] = {
  holding: (n) =>
    n === 1
      ? '1 trabajo abierto tiene un valor reemplazado'
      : `${n} trabajos abiertos tienen un valor reemplazado`,
  superseded: 'Reemplazado desde que se hizo el pliego',
  usedSince: 'Valores usados aquí y reemplazados después',
  inForce: 'En vigor ahora',
  withdrawn: 'retirado, ninguno en su lugar',
  wasIn: (was, issue) => `era ${was} en la edición ${issue}`,
  from: (issue, date, authority) => `edición ${issue} de ${date}, ${authority}`,
  threads: (condition) => `roscas ${condition}`,
  noCondition: 'incompleto: no se emitió el estado de la rosca',
  lookFirst: 'Mire el valor antes de la última vuelta.',
  alreadyTight: 'Esta unión se apretó con el valor anterior.',
  looked: (figure) => `Lo he mirado: ${figure}`,
  lookedSaid: (is, issue, was) => `${is} de la edición ${issue}, antes ${was}`,
  lookedBy: (name) => `Lo miró ${name}`,
  goneOn: (name) => `Siguió sin ello ${name}`,
  notLooked: 'Nadie lo ha mirado todavía',
  askForOne: 'No hay valor en vigor: pídalo, haga otro pliego o use de todos modos.',
  changedSince: (name) => `Cambiado desde la última vez que lo hizo ${name}`,
  lastDone: (title, on) => `Última vez: ${title}, cerrado ${on}`,
  nothingChanged: 'Ningún valor ha cambiado.',
  added: 'nuevo',
  gone: 'ya no está en el pliego',
  makeAgain: 'Haga otra vez este pliego: tiene valores que ya no están en vigor.',
};
