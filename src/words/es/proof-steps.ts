// Spanish: line-up, filling and proof.

import type { proofSentences as english } from '../en/proof-steps.ts';
import type { Translated } from '../en/sentences.ts';

export const proofSentences: Translated<typeof english> = {
  proofFill: 'Llenar y mirar',
  proofFillWhat: 'toda unión mojada que se tocó, seca con la presión de la columna',
  proofAlarms: 'Alarmas y sensores',
  proofAlarmsWhat: 'toda alarma y todo sensor que se tocó, hechos actuar',
  proofRunning: 'Mirar en marcha',
  proofRunningWhat:
    'toda unión que se tocó, seca y sin ruido, lecturas dentro de lo emitido, en cada velocidad',
  proofHot: 'Mirar en caliente tras parar',
  proofHotWhat: 'toda unión que se tocó, orificio testigo, sentina y aceite, mirados recién parada',

  toolsCounted:
    'Herramientas, trapos, bolsas y juntas viejas contados: nada dentro ni bajo el forro.',
  toolsCountedWhy: 'un trapo olvidado se quema o atasca en la primera marcha',
  shutAndPlug: (name) => `Cerrar ${name} y ponerle su tapón.`,
  shutAndPlugWhy: 'se abrió para este trabajo',
  shutVent: (name) => `${name}: esperar a que salga agua sin aire y cerrar.`,
  shutVentWhy: 'el aire que queda en un punto alto corta el caudal',
  prime: (how) => `Cebar: ${how}.`,
  primeWhy: 'una bomba arrancada en seco o con aire no mueve nada',
  standingHead: (joints) =>
    `10 min con la presión de la columna, cartón seco en cada una: ${joints.join('; ')}.`,
  standingHeadWhy:
    'una fuga nunca sale más barata que antes de girar la máquina (práctica común, sin fuente)',
  tagOff: (n, name, station) => `Quitar la tarjeta ${n} de ${name}, ${station}.`,
  tagOffWhy: 'solo cuando lo han dicho todos los que dependen de ella',
  normalNotStated: 'SIN INDICAR, preguntar',
  giveBack: (name, crack, normal) =>
    `${name}. ${
      crack
        ? 'Abrir una rendija con una mano en las uniones y mirar; después llevar del todo a '
        : 'Llevar a '
    }su posición normal: ${normal}.`,
  giveBackWhy: 'todo cierre vuelve a su posición normal',
  speedsOfProcedure: 'las velocidades del procedimiento',
  runningLook: (speeds) =>
    `Mirar en marcha a ${speeds}: en cada una esperar a que las lecturas se asienten; ` +
    'toda unión que se tocó, ruidos, descarga al mar.',
  runningLookWhy: 'una marcha en vacío solo prueba el vacío',
  hotLook:
    'Recién parada y caliente: mirar otra vez toda unión que se tocó, el orificio testigo, ' +
    'la sentina y el aceite.',
  hotLookWhy: 'hay fugas que solo salen en caliente, o solo al caer la presión',
  handTurn: (rotation) =>
    `Girar a mano un ciclo completo, ${rotation}; el arranque sigue cortado. ¿Gira libre?`,
  handTurnWhy: 'lo que se agarra se encuentra a mano antes que lo encuentre el motor',
  everyoneClear: (start) =>
    `Todos apartados para ${start ? 'arrancar' : 'girar a mano'}: ` +
    'cada uno llamado por su nombre y con respuesta; herramientas fuera.',
  everyoneClearWhy: 'nada gira mientras alguien no esté apartado',
  makeAlarmsAct: (what) => `Hacer actuar cada alarma o sensor que se tocó: ${what.join('; ')}.`,
  makeAlarmsActWhy: 'un sensor desenchufado no avisa ni para nada',
  firstStart: (part, flowAt) =>
    `Primer arranque, velocidad mínima; una persona en ${part}, otra en la parada.` +
    `${flowAt === null ? '' : ` Hay que ver caudal en ${flowAt}.`} ` +
    'Sin caudal, con una fuga o un ruido raro: parar.',
  firstStartWhy: 'los primeros minutos enseñan lo que se olvidó',
};
