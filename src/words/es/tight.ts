// Spanish: slackening, joints that are tight already, and what is said of bolts with one tap.

import type { Translated } from '../en/sentences.ts';
import type { tightSentences as english, tight as englishTight } from '../en/tight.ts';

const given = (text: string | null, before: string, behind = ''): string =>
  text === null ? '' : `${before}${text}${behind}`;

export const tightSentences: Translated<typeof english> = {
  slacken: (joint, fasteners, known, order, far, wet, leave, weight) =>
    `${joint}: soltar ${fasteners}. ` +
    (known
      ? `Primero el lado opuesto${given(far, ' (', ')')}${given(order, ': ')}; `
      : 'Apartarse del lado que se abre primero; primero el lado opuesto. ' +
        given(order, 'Numerado en cruz: ', '; ')) +
    `${!known && order === null ? 'Cada' : 'cada'} uno parte de una vuelta, una y otra vez. ` +
    'Despegar la unión con todos aún puestos, lejos de uno, y mirar; solo entonces quitarlos' +
    (wet ? '. Tener al lado lo necesario para volver a unirla' : '') +
    given(leave, '. NO TOCAR sin permiso: ') +
    `.${given(weight, ' Antes, el peso sujeto con: ', '.')}`,

  whyNotScrewed: 'nada en ella se aprieta a un par',
  whyNoTorque: 'no hay par emitido para ella: no hay valor al que volver a llevarla',
  whyThreadlocked: 'lleva fijador de roscas: si se gira queda floja; soltarla y unirla de nuevo',
  whyLocked: 'la traba una arandela, chapa, pasador o alambre: soltarla y unirla de nuevo',
  whyByAngle: 'se aprieta por ángulo o hasta el límite elástico: girarla otra vez la estira más',
  whyMetalToMetal:
    'sus caras se tocan metal con metal alrededor de un anillo: nada en ella se relaja',
  whyNoGasket: 'no tiene junta que pueda relajarse',
  whyNotIssued: 'no hay valor emitido para volver a apretarla',

  studCameOut: 'El espárrago salió con la tuerca',
  boltBroken: 'Roto',
  wontTighten: 'No aprieta',
  isTight: 'apretado',
  isNotTight: 'sin apretar',
  isNotJudged: 'sin juzgar',
  notTightInFile: (bolt, figure) => `Sin apretar: agujero ${bolt}, ${figure}`,
  notJudgedInFile: (bolt, figure) => `Sin juzgar: agujero ${bolt}, ${figure}`,

  theFirstRun: 'la primera marcha',
  reTightened: 'reapretada',
  retightenLater: (joint, value, when) =>
    `${joint}: reapretar la junta una vez alrededor a ${value}, sin aflojar nada (${when}).`,
  roundAtHoles: (round, holes) => `${round}, agujero ${holes.join(', ')}`,
  openNotTight: (joint) => `${joint} está abierta: se une, no se comprueba`,
  noSuchJoint: (thing) => `ningún pliego de este trabajo conoce ${thing}`,
  notOffered: (joint, why) => `${joint}: ${why.join('; ')}`,
  notOfferedHole: (joint, hole, why) => `${joint}, agujero ${hole}: ${why.join('; ')}`,
  whichHoles: (joint) => `${joint}: ¿cuáles de sus agujeros?`,
  checkedUnder: (joint) =>
    `${joint} está mojada: una tuerca aflojada la abre, y el aislamiento no está probado. ` +
    'Este alto no tiene paso.',
  threeAnswers: (lacks) =>
    `Falta decir que sí: ${lacks.join(', ')}. Fría, sin presión, arranque aislado: las tres cosas.`,
  saidCold: 'fría',
  saidNoPressure: 'sin presión',
  saidStartIsolated: 'arranque aislado',
  startNotShut: (names) =>
    `El arranque no está aislado: ${names.join(', ')} no consta como lo pide la faena`,
  wholeRound: (joint) => `${joint}: una junta se reaprieta una vez alrededor, todos los agujeros`,
  otherValue: (joint, value, said) => `${joint}: el valor es ${value}, no ${said}`,
};

export const tight: typeof englishTight = {
  title: 'Una unión ya apretada',
  link: 'Una unión ya apretada',
  intro:
    'Dos actos distintos. Una comprobación afloja una tuerca y vuelve a llevarla a su valor. Un ' +
    'reapriete recoge una junta blanda que se ha relajado, y no afloja nada.',
  none: 'Todas las uniones de este trabajo están abiertas.',
  another: 'Otra unión',
  checkHead: 'Comprobar una tuerca ya apretada',
  checkHow: (value) =>
    `Aflojar la tuerca con una llave sencilla, como media vuelta. Luego un solo tirón suave a ` +
    `${value}. Un clic sobre una tuerca ya apretada no dice nada.`,
  checkNoted: 'Se anota como «reapretada», y las pruebas de esta unión vuelven a deberse.',
  checkWhich: '¿Cuáles ha aflojado y vuelto a apretar?',
  checkDone: (n) => `Reapretadas: ${n}`,
  retightenHead: 'Reapretar una junta relajada',
  retightenWhen: (when) => `Cuándo: ${when}.`,
  retightenHow: (value) =>
    `No aflojar nada. Una vez alrededor, por orden, un solo tirón suave en cada una a ${value}.`,
  retightenNoted: 'Solo con un valor emitido para ello. La mirada de fugas vuelve a deberse.',
  retightenDone: 'Reapretada, una vez alrededor',
  cold: '¿Fría?',
  noPressure: '¿Sin presión dentro?',
  startIsolated: '¿Arranque aislado?',
  notOffered: 'No se ofrece:',
  hole: (label) => `Agujero ${label}`,
  back: 'Volver',
  boltHead: 'Un perno dice que no',
  boltKept: (what) => `Guardado como hallazgo: ${what}`,
  standing: 'Cómo está de apretado',
  standingNone: 'No se soltó ninguna unión.',
  standingLine: (joint, word) => `${joint}: ${word}`,
  holesAs: (holes, word) => `agujeros ${holes} ${word}`,
  round: (name) => `última vuelta: ${name}`,
  fileIn: 'Tomar resultados de una herramienta (archivo)',
  fileTaken: (n) => `Tomados del archivo: ${n}`,
  fileBad: 'No se anotó nada. El archivo dice:',
  fileOut: 'Resultados del apriete (archivo)',
};
