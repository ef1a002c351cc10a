// Spanish: the steps that make safe and take off.

import type { offSentences as english } from '../en/off.ts';
import type { Translated } from '../en/sentences.ts';

const given = (text: string | null, before: string, behind = ''): string =>
  text === null ? '' : `${before}${text}${behind}`;

export const offSentences: Translated<typeof english> = {
  and: (words) => {
    const last = words[words.length - 1] ?? '';
    if (words.length < 2) return last;
    const and = /^h?i(?!e)/i.test(last) ? 'e' : 'y';
    return `${words.slice(0, -1).join(', ')} ${and} ${last}`;
  },
  listed: (words) => words.join(', '),
  ofThread: (what, thread) => `${what} ${thread}`,
  counted: (n, what) => `${n} ${what}`,

  tellVessel: 'Avisar al puente y al maquinista a cargo de que se va a abrir el lado de mar.',
  tellStation:
    'Avisar a la sala de control y a la persona a cargo de que se va a abrir el lado de agua.',
  tellWhy: 'quien no está en la faena debe saberlo en el primer minuto si entra agua',
  bringTo: (name, position, at, secure) =>
    `${name}: llevar a la posición «${position}».${given(at, ' ', '.')} ` +
    `Anotar cómo estaba.${given(secure, ' Asegurar: ', '.')}`,
  listedByHand: (by) => `en la lista hecha a mano por ${by}`,
  nobody: 'nadie',
  tagOn: (n, name, position, station) => `Tarjeta ${n} en ${name} (${position}), ${station}.`,
  tagOnWhy: 'una tarjeta en cada sitio desde el que se mueve; quien cierra la cuelga',
  openDrain: (name, liquid) => `Abrir ${name}${liquid ? '; recoger lo que salga' : ''}.`,
  openDrainWhy: 'lo que quedó encerrado debe salir antes de abrir nada',
  seeItDie: (name) =>
    `En ${name}: ver correr el agua, ver que cesa y que no vuelve. ` +
    'Si no salió nada: pasar una varilla por la purga; eso no es prueba.',
  hearItDie: (name) =>
    `En ${name}: oír que sopla, que cesa y que no vuelve. ` +
    'Si no salió nada: despejar el paso; eso no es prueba.',
  proveWhy:
    'un cierre que parece cerrado puede dejar pasar; ninguna unión mojada se abre antes de esto',

  lookIsolation:
    'Una segunda mirada al aislamiento, antes de abrir nada mojado. Alguien que no lo hizo, ' +
    'cualquiera con formación, va a cada cierre con la lista en blanco y dice cómo está.',
  lookIsolationWhy:
    'quien cierra ve lo que quería hacer; otro ve lo que hay (práctica común, sin fuente)',
  lookLineUp:
    'Una segunda mirada a la puesta en línea, antes del primer arranque. Alguien que no la hizo, ' +
    'cualquiera con formación, va a cada cierre con la lista en blanco y dice cómo está.',
  lookLineUpWhy:
    'un cierre olvidado arruina la máquina en el primer minuto (práctica común, sin fuente)',

  matchMark: (name) =>
    `Marcar la posición de ${name}, anotar hacia dónde miran sus bocas ` +
    'y hacer una foto antes del primer perno.',
  matchMarkWhy: 'puede volver al revés, y entonces el caudal se invierte',
  measureFound: (setting) => `Medir ${setting} tal como está, antes de tocarlo.`,
  measureFoundWhy: 'lo encontrado dice el desgaste; lo dejado se compara con ello',
  undo: (joint, fasteners, careful, leave, weight) =>
    (fasteners === null ? `Soltar ${joint}` : `${joint}: soltar ${fasteners}`) +
    (careful
      ? '. Aflojar primero el lado opuesto, despegar la unión con la tornillería aún puesta, ' +
        'mirar; solo entonces quitarla del todo'
      : '') +
    given(leave, '. NO TOCAR sin permiso: ') +
    `.${given(weight, ' Antes, el peso sujeto con: ', '.')}`,
  sealsOut: (joint, n, seal) => `${joint}: fuera ${n} ${seal}, lo viejo. ¿Cuántas han salido?`,
  sealsOutWhy: 'una vieja que quede en el alojamiento no se ve con la nueva encima',
  looseOut: (joint, n, name) => `${joint}: ${n} × ${name} fuera y en su bolsa.`,
  looseOutWhy: 'las piezas sueltas se cuentan como los pernos',
  massNotStated: 'masa no indicada',
  move: (part, mass, off, way, carried, support, drawOff) =>
    `${part} (${mass}) ${off ? 'fuera' : 'a un lado y con apoyo'}${given(way, ': ')}` +
    `${given(carried, '. Se lleva con: ')}${given(support, '. Apoyo: ')}` +
    `${given(drawOff, '. Sacar ', ' hasta librar los espárragos')}.`,
  putSupport: (where, name, n) => `Apoyar ${where}: ${name} (número ${n}).`,
  putSupportWhy: 'lo que se deja a un lado no debe colgar de sus uniones',
  putBlank: (name, n, where) => `${name} (número ${n}) en el extremo abierto de ${where}.`,
  putOther: (name, n, where) => `${name} (número ${n}) puesto en ${where}.`,
  putBlankWhy: 'un extremo abierto sin tapa ciega deja entrar el mar y caer cosas dentro',
  blankFor: (joint) => `Tapa ciega para ${joint}`,
  twoGuideStuds: 'Dos espárragos guía',
  noteItem: (part) => `${part}: anotar su número de serie o lote y las horas de marcha.`,
  noteItemWhy: 'dónde estaba y cuánto marchó: de aquí salen los datos de vida',

  holdsUntil: (part, off) => `sujeta ${part} hasta que ${off ? 'sale' : 'se aparta'}`,
  withItsWay: 'se suelta con las demás de su camino',
  theTarget: 'es la pieza del trabajo',
  inTheWayOfJoint: (joint) => `estorba para llegar a la unión ${joint} en este lado`,
  inTheWayOf: (part) => `estorba para ${part} en este lado`,
  undoingJoint: (joint) => `soltar la unión ${joint}`,
  makingJoint: (joint) => `unir ${joint}`,
  wayOfPart: (way, part) => `camino ${way} de ${part}`,
  minutesAssumed: (proven, minutes, what) =>
    `${
      proven ? 'El plan está probado para los minutos supuestos' : 'Los minutos son supuestos'
    }: ${minutes} min (práctica común, sin fuente) cada uno para ${what.join(', ')}.`,
  noAccessStated: (joints) =>
    `Sin acceso indicado para ${joints.join(', ')}: se toma por libre, no se puede comprobar.`,
  noWayKnown: (parts) =>
    `No se conoce camino para ${parts.join(', ')}: el plan lo deja donde está.`,
  jointsMade: (joints) => `uniones sueltas y vueltas a unir: ${joints}`,
  partsAway: (parts) => `partes quitadas y devueltas: ${parts}`,
  inAll: 'en total',
  minutesCounted: 'minutos contados por cada dato que no se conoce',
  clearForNext: 'debe estar apartado para lo que sigue',
};
