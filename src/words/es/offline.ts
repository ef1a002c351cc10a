// Spanish: a phone without signal: what is here only, what is missing, what went wrong.

import type { Words } from '../en/index.ts';

export const offline: Words['offline'] = {
  acts: (n) => `${n} ${n === 1 ? 'anotación' : 'anotaciones'}`,
  photos: (n) => `${n} foto${n === 1 ? '' : 's'}`,
  and: ' y ',
  here: (what) => `${what} solo en este teléfono, sin enviar`,
  keepOpen: 'Deje abierta esta página: lo anotado queda en este teléfono y se envía después.',
  notSecure: 'Sin señal, este teléfono no puede arrancar: la conexión no es segura.',
  noWorker: 'Sin señal, este teléfono no puede arrancar: su navegador no guarda la aplicación.',
  full: 'este teléfono está lleno: libere espacio y vuelva a decirlo',
  keepsNothing:
    'este navegador no guarda nada en el teléfono: ventana privada o almacenamiento desactivado',
  couldNot: (why) => `este teléfono no ha podido guardarlo (${why}): vuelva a decirlo`,
  toBeKept: 'guardarlo en este teléfono',
  tooLarge: 'es demasiado grande',
  atMost: (bytes) => `como mucho ${bytes} bytes`,
  aPicture: 'una foto JPEG o PNG',
  noPicture: 'no es ninguna de las dos cosas',
  newsNotKept: (why) => `no se ha podido guardar lo nuevo: ${why}`,
  broken: (why) => `Aquí no se puede anotar nada: ${why}`,
  notTaken: (n, why) => `; el servidor no ha aceptado ${n}: ${why}`,
  elsewhere: (n) => `${n} de otro buque o estación, todavía solo en este teléfono`,
  cutOff: (why) =>
    `Sin conexión: ${why}. Puede seguir: lo que anote queda guardado en este teléfono.`,
};
