// Spanish: what a pack says besides its steps: decisions, what can't be checked, the other side.

import type { packSentences as english } from '../en/pack-sheet.ts';
import type { Translated } from '../en/sentences.ts';

/** What a step speaks of, from its own sentence: `48 N.m · Pump mounting: apretar 6 tuercas.` */
const nameIn = (text: string): string => {
  const whole = text.replace(/\.$/, '').split(' · ').at(-1) ?? text;
  return whole.split(':')[0] ?? whole;
};
const bare = (text: string): string => text.replace(/\.$/, '');

const onlyIn = (here: string, there: string, named: string): string => {
  const parts = (text: string) => bare(text).split(/[.;] /);
  const only = parts(here).filter((p) => !parts(there).includes(p));
  return only.join('; ').replace(`${nameIn(named)}: `, '') || 'como siempre';
};

export const packSentences: Translated<typeof english> = {
  packTitle: (part, machine, doing) => `${part}, ${machine}: ${doing}`,
  rangeOf: (min, max) => `de ${min} a ${max}`,
  atLeast: (min) => `al menos ${min}`,
  atMost: (max) => `como mucho ${max}`,
  fastenersOf: (joint, n, thread) => `${joint}, ${n} × ${thread}`,
  settingOf: (joint, setting) => `${joint}: ${setting}`,
  looseOf: (name, joint) => `${name} (${joint})`,

  whichClosures: '¿Qué cierres lo cortan, y en qué purga se comprueba?',
  whichClosuresWhy:
    'AISLAMIENTO SIN INDICAR: ninguna unión mojada está lista hasta que alguien lo rellene ' +
    'con su nombre',
  whichWater: '¿Qué cierres retienen el agua?',
  whichWaterWhy: 'ninguno de los cierres anotados a mano está en una línea con líquido',
  whichDrain: '¿En qué purga se ve que el agua corre y cesa?',
  whichDrainWhy: 'la lista no nombra ninguna purga entre los cierres y las uniones',
  whoLooksAgain: '¿Cuánta gente hay a bordo: 1, 2, 3 o más? ¿Quién mira por segunda vez?',
  whoLooksAgainWhy:
    'se piden otros ojos antes de abrir nada mojado y antes de arrancar; ' +
    'solo donde hay una persona a bordo puede mirar ella misma otra vez, sola',
  whatFastens: (joint) => `${joint}: ¿qué la sujeta, y cuántos son? Contarlos al quitarlos.`,
  whatFastensWhy: 'la descripción no lo dice, así que nada se puede contar a la vuelta',
  whatValue: (joint) => `${joint}: ¿a qué valor se aprieta, y quién lo dice?`,
  whatValueWhy:
    'no hay valor emitido para esta unión; un valor que falta se pregunta, nunca se adivina',
  dryOrOiled: (joint) => `${joint}: ¿su valor es para roscas secas o aceitadas?`,
  dryOrOiledWhy: 'un valor sin el estado de la rosca está incompleto',
  mayTable: (joint) => `${joint}: ¿se puede usar el valor de la tabla general?`,
  mayTableWhy: 'el valor no se emitió para esta unión',
  mayUndo: (joint) => `${joint}: ¿se puede soltar?`,
  noWayRound: (why) => `no se encontró cómo evitarla: ${why}`,
  itHolds: (medium) => `contiene ${medium}`,
  whatShouldStay: 'algo que debe seguir cerrado',
  howLong: (what) => `¿Cuánto tiempo para ${what.join(', ')}?`,
  howLongWhy:
    'se suponen 15 min cada uno (práctica común, sin fuente); el plan solo está probado para eso',
  noValueIsStated: 'no hay ningún valor indicado',
  threadNotStated: 'la rosca no está indicada',
  classNotStated: 'la clase de resistencia no está indicada',
  frictionInNoTable: 'el rozamiento de esta rosca no está en ninguna tabla a mano',
  whatMass: (part) => `${part}: ¿cuánto pesa, y con qué se lleva?`,
  whatMassWhy: 'su masa no está indicada',

  noAccess: (joint) => `${joint}: no se puede comprobar si se alcanza (acceso sin indicar)`,
  noBetween: (joint) => `${joint}: no se puede comprobar qué partes une, ni si está mojada`,
  noPositions: (joint) =>
    `${joint}: posiciones desconocidas, así que el orden no se puede comprobar`,
  unknownField: (what) => `${what} desconocido, no se puede comprobar`,
  assumedField: (what, by) => `${what} supuesto${by === null ? '' : ` por ${by}`}`,
  fieldOf: (name, field) => `${name}: ${field.join(', ')}`,
  minutesNotStated:
    'Los minutos de aislar, llenar y probar no están indicados, así que no van en el total',

  onlyHere: (step) => `Solo aquí: ${bare(step)}`,
  notHere: (step) => `Aquí no: ${bare(step)}`,
  place: 'sitio',
  tool: 'herramienta',
  fastenedBy: 'sujeción',
  count: 'cantidad',
  value: 'valor',
  otherwise: (step, what, here, there) =>
    `${nameIn(step)}: ${what} ${here}, en el otro lado ${there}`,
  criticalHere: (step) => `${nameIn(step)}: crítica solo aquí`,
  criticalThere: (step) => `${nameIn(step)}: crítica solo en el otro lado`,
  saysOtherwise: (here, there) =>
    `${nameIn(here)}: ${onlyIn(here, there, here)}, en el otro lado: ${onlyIn(there, here, here)}`,
  orderDiffers: (step, after) =>
    `Orden: ${nameIn(step)} vuelve solo después de unir ${nameIn(after)}`,

  machineMinutes: 'soltar y volver a unir en la máquina',
  benchMinutes: 'soltar y volver a unir en el banco',
  handsOn: 'minutos de manos a la obra; aislar, llenar y probar no van incluidos',
  mostHands: 'la mayor cantidad de personas que pide un solo paso',
  atBench: (why) => `en el banco: ${why}`,
};
