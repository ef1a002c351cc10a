// Spanish: the page of the log, and beginning a job.

import type { Words } from '../en/index.ts';

export const log: Words['log'] = {
  title: (vessel) => `Diario de ${vessel}`,
  openJobs: 'Trabajos abiertos',
  none: 'Ninguno.',
  begin: 'Empezar un trabajo',
  closedJobs: 'Trabajos cerrados',
  waiting: (n) => `${n} anotaciones esperan a otra que no ha llegado.`,
  unknown: (n) => `${n} son de una clase que aquí no se conoce. Se guardan todas.`,
  leaveIt: 'Dejarlo',
  writeDown: 'Anotarlo',
};

export const watch: Words['watch'] = {
  head: 'Guardia',
  nobody: 'Nadie ha tomado la guardia.',
  since: (name, at, proved) => `${name}, desde ${at} (${proved})`,
  who: 'Quién toma la guardia',
  take: 'Tomar la guardia',
  handOver: 'Entregar la guardia',
};

export const followUps: Words['followUps'] = {
  head: 'Por mirar otra vez',
  owner: (name) => `a cargo de ${name}`,
  done: 'Hecho',
  doneBy: (name) => `hecho por ${name}`,
};

export const sailings: Words['sailings'] = {
  head: 'Salidas',
  wanted: 'Se necesita en servicio',
  none: 'Ninguna anotada.',
  strikeOut: 'Tachar',
  dayAndTime: 'Día y hora',
  boundFor: 'Con destino a',
  whatFor: 'Para qué',
  by: 'Anotado por',
  add: 'Añadir una salida',
  addDay: 'Añadir un día',
};

export const hoursWords: Words['hoursWords'] = {
  head: 'Horas desde la última vez',
  beside: 'Junto al intervalo tal como se emitió. No se hace ninguna previsión.',
  noReading: 'Todavía sin lectura de sus horas.',
  onMeter: (hours, day) => `${hours} h en el contador, ${day}`,
  noInterval: 'sin intervalo emitido',
  interval: (shown, issue, date) => `intervalo ${shown}, edición ${issue} de ${date}`,
  cannotTell: (why, interval) => `No se puede decir: ${why}; ${interval}`,
  since: (interval) => `desde la última vez; ${interval}`,
  write: 'Anotar sus horas',
  meter: 'Horas en el contador (h)',
  readBy: 'Leído por',
};

export const begin: Words['begin'] = {
  title: 'Empezar un trabajo',
  noFile: 'Esta máquina no tiene archivo: desmontar sobre la marcha',
  machine: 'Máquina',
  chooseMachine: 'elija una máquina',
  component: 'Componente',
  chooseComponent: 'elija un componente',
  whatIsDone: 'Qué se hace',
  why: 'Por qué',
  when: 'Cuándo',
  hands: 'Gente',
  workOut: 'Calcular el pliego',
  reasons: {
    interval: 'por intervalo',
    failed: 'falló',
    worn: 'gastado o con pérdidas',
    open: 'de todos modos está abierto',
  },
};
