// Spanish: how each weight of a job is carried, on screens, sheets and in the steps.

import type { liftingSentences as english, lifting as englishLifting } from '../en/lifting.ts';
import type { Translated } from '../en/sentences.ts';

export const liftingSentences: Translated<typeof english> = {
  hoistFor: (part) => `polipasto para ${part}`,
  jackFor: (part) => `gato bajo ${part}`,
  slingFor: (part) => `eslinga para ${part}`,
  supportFor: (part) => `apoyo para ${part} (no consta cuál)`,
  takeWeight: (where, name, n) =>
    `${where}: tomar su peso con ${name} (número ${n}), antes de soltar sus uniones.`,
  takeWeightWhy:
    'lo que pierde su última unión cae o se balancea: para entonces lo lleva un aparejo, ' +
    'nunca una mano',
  weightOff: (name, n) => `Sus tornillos empezados a mano: fuera ${name} (número ${n}).`,
  startHeld: (joint, fasteners, held) =>
    `${joint}: empezar a mano ${fasteners}, todos; el peso sigue en ${held.join(', ')}.`,

  askMass: '¿cuánto pesa?',
  askWet: '¿cuánto pesa mojado, con lo que queda dentro?',
  askHow: (kg) =>
    `pesa ${kg} kg o más y no constan ni el alcance ni el aparejo: ¿con qué se lleva?`,
  askReach: (lacks) => `no se puede comprobar a mano sin ${lacks.join(', ')}`,
  notByHand: (verdict, reasons) => `no a mano como consta (${verdict}): ${reasons.join('; ')}`,
  askAngle: '¿con qué ángulo desde la vertical cuelgan los ramales?',
  askFrom: '¿de qué punto de izado cuelga?',
  askRated: (point, kg) => `${point}: ¿cuánto admite? Debe soportar ${kg} kg`,
  ratedLess: (point, has, must) => `${point} admite ${has} kg y debe soportar ${must} kg`,
  gearMissing: (n, kind, kg, against) =>
    `falta: ${n} × ${kind} marcado con ${kg} kg o más` +
    (against.length === 0 ? '' : ` (${against.join('; ')})`),
  askHolder: '¿qué lo sujeta mientras sus uniones están sueltas?',

  liftFits: 'vale',
  liftSome: 'demasiado pesado para algunos',
  liftNearlyAll: 'demasiado pesado para casi todos',
  liftOutside: 'fuera del método: usar un aparejo u otra persona',
  helpCloser: 'Acercar la carga al cuerpo.',
  helpHeight: 'Empezar o acabar más cerca de la altura de los nudillos, 75 cm.',
  helpWay: 'Acortar el recorrido hacia arriba o hacia abajo.',
  helpTwist: 'Girar con los pies en vez de torcerse.',
  helpOften: 'Levantar menos a menudo, o descansar más entre medias.',
  helpGrip: 'Ponerle asas, o un mejor agarre.',
  helpLighter: 'Hacerlo más ligero, o repartirlo.',
  legsStraight:
    'Puesta recta, cada ramal de una pieza: ahorcada o enrollada soporta menos de lo marcado.',
  legsFour: 'Cuatro ramales: se cuentan dos, pues dos opuestos pueden llevarlo todo.',
  legsWide:
    'Los ramales a más de 60° de la vertical tiran mucho más que el peso (de memoria): ' +
    'usar ramales más largos.',

  howLifted: (part, asks) => `${part}: ${asks.join('; ')}`,
  howLiftedWhy: 'un peso se decide antes de cerrar nada: qué lo lleva, y que lo soporta',
  sailsFirst: (sails, latest) =>
    `Salida a las ${sails}: el trabajo tendría que empezar a las ${latest} como muy tarde. ` +
    '¿Y ahora?',
  sailsFirstWhy: (hangs) =>
    hangs.length === 0
      ? 'solo los minutos de trabajo terminan después de la salida'
      : `el buque se movería con un peso colgado: ${hangs.join(', ')}`,
};

export const lifting: typeof englishLifting = {
  title: 'Los pesos y cómo se llevan',
  weight: (kg, wet) => `${kg} kg${wet ? ' mojado' : ''}`,
  noWeight: 'peso no indicado',
  off: 'fuera',
  aside: 'a un lado',
  atBench: 'en el banco',
  how: {
    'by hand': 'a mano',
    gear: 'con aparejo de izado',
    light: 'ligero: a mano, sin alcance indicado y sin comprobar',
    slid: 'se queda donde descansa, no se levanta',
    asked: 'SIN DECIDIR: no se levanta así',
  },
  people: (n) => (n === 1 ? 'una persona' : `${n} personas`),
  verdict: (verdict) => `veredicto: ${verdict}`,
  share: (share, least) =>
    `a cada uno le cuentan ${share} kg, se recomiendan ${least} kg como mucho`,
  bestCase: 'la cifra es el mejor caso sobre suelo seco, no un límite hasta el que levantar',
  rests: (on) => `se apoya en lo que es ${on}`,
  holdsFor:
    'vale para una persona erguida sobre suelo firme y quieto, con aire templado, sin sostener ' +
    'nada; quien no pueda levantarlo lo dice',
  helps: (advice) => `Lo que más ayuda: ${advice}`,
  legs: (n, angles) =>
    n === 1 ? 'un ramal, a plomo' : `${n} ramales, a ${angles}° de la vertical`,
  tension: (newtons) => `${newtons} N en el peor ramal`,
  need: (n, kind, kg) => `${n} × ${kind}, marcado con ${kg} kg o más`,
  use: (names) => `usar ${names}`,
  notHeld: 'no hay lista de aparejos a mano: leer lo marcado en ellos y su revisión',
  inDate: (day) => `vigente el ${day}`,
  point: (name, kg, rated) =>
    `${name} debe soportar ${kg} kg` +
    (rated === null ? ', no consta cuánto admite' : `, admite ${rated} kg`),
  held: (names) => `Con sus uniones sueltas cuelga o se apoya en: ${names}; nunca en una mano`,
  ask: 'Por decidir',
  working: 'Cálculo',
  sails: (sails, latest) =>
    `Salida ${sails}: solo el trabajo debe empezar a las ${latest}; aislar y probar van aparte.`,
  late: (hangs) =>
    'DEMASIADO TARDE: el buque saldría con el trabajo abierto' +
    `${hangs === '' ? '' : ` y esto colgado: ${hangs}`}.`,
  each: (kg) => `${kg} cada uno`,
  onLeg: (kg) => `${kg} por ramal`,
  drawn: 'delante de los tobillos →, sobre el suelo ↑',
  nextSailing: 'Próxima salida o cambio de atraque',
  kinds: {
    'chain block': 'polipasto de cadena',
    sling: 'eslinga',
    shackle: 'grillete',
    'eye bolt': 'cáncamo',
    jack: 'gato',
  },
};
