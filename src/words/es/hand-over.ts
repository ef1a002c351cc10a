// Spanish: handing over the watch on a job.

import type { Words } from '../en/index.ts';

export const handOver: Words['handOver'] = {
  title: 'Entregar la guardia',
  given: (by, to, at) => `${by} a ${to}, ${at}.`,
  allSeen: 'Todo visto en la máquina.',
  someNotSeen: (n, of) => `${n} de ${of} sin ver.`,
  temporary: 'Puesto por ahora',
  notTight: 'Pernos sin apretar',
  findings: 'Pide una decisión',
  isolation: 'Aislamiento',
  next: 'Lo siguiente',
  handItOver: 'Entregarla',
  handsItOver: (name) => `${name} la entrega`,
  who: 'Quién toma la guardia',
  open: 'Pendiente, y dónde',
  nothingOpen: 'No hay nada pendiente.',
  notSeen: 'sin ver',
  seenBy: (name) => `visto por ${name}`,
  seen: 'Visto',
};
