// Spanish: why an act may not be recorded now, and what a second look found.

import type { refusalSentences as english } from '../en/refusals.ts';
import type { Translated } from '../en/sentences.ts';

const NO_WAY_PAST = 'Este alto no tiene salida.';

export const refusalSentences: Translated<typeof english> = {
  ofAnotherJob: (job, here) => `la anotación es del trabajo ${job}, no de ${here}`,
  hasBegun: (title) => `el trabajo ${title} ya ha empezado`,
  noSuchJob: (job) => `no existe el trabajo ${job}`,
  notTogether: (why) => `esto no se puede anotar junto con otros: ${why}`,
  notFromPaper: (why) => `esto no se puede pasar del papel: ${why}`,
  notCorrectedAway: 'un trabajo empezado se cierra, no se borra con una corrección',
  noSuchKind: (kind) => `«${kind}» no es ninguna clase de anotación`,
  whoDoesIt: '¿quién lo hace? falta un nombre',
  wrongStream: (kind, streams, stream) =>
    `«${kind}» pertenece a ${streams.join(' o ')}, no a ${stream}`,
  badBody: (kind, faults) => `${kind}: ${faults.join('; ')}`,
  wasClosed: (by) => `el trabajo lo cerró ${by}`,
  closedNow: (by) => `el trabajo lo cerró ${by}: empiece otro, o corrija el cierre`,
  packIsNotHere: (pack) => `el pliego ${pack} no está aquí`,
  unsettled:
    'el pliego pide decisiones que nadie ha tomado: tómelas, o úselo de todos modos con su nombre',
  listedThing: (thing, what) => `${thing}: ${what}`,
  wetNotProved: (name, wet) =>
    `${name} ${
      wet ? 'está mojada' : 'no está en ningún pliego de este trabajo, así que puede estar mojada,'
    } y el aislamiento está sin comprobar. ${NO_WAY_PAST}`,
  inThePack: (thing) => `${thing} está en el pliego de este trabajo: anote su propio paso`,
  takingNotProved: (name, wet) =>
    `${name} ${wet ? 'contiene líquido' : 'puede contener líquido'} y el aislamiento está sin ` +
    'comprobar: cierre lo que lo alimenta, cuelgue la tarjeta, vea correr y cesar el flujo en ' +
    `una purga. ${NO_WAY_PAST}`,
  movingNotProved: (thing) =>
    `${thing} puede contener líquido y el aislamiento está sin comprobar. ${NO_WAY_PAST}`,
  notGivenBack: (closure) =>
    `${closure} no se puede devolver mientras haya una unión mojada abierta. ${NO_WAY_PAST}`,
  nothingHandedOver: 'no se entregó nada',
  notHandedOver: 'no está en la lista entregada',
  noneMissing: (thing) => `${thing}: ahí no faltan piezas`,
  nobodyCalled: `Nadie ha llamado a apartarse desde que se soltó o abrió algo. ${NO_WAY_PAST}`,
  starting: 'Arrancar',
  whichRound: (thing, rounds) => `¿qué vuelta de ${thing}? una de ${rounds.join(', ')}`,
  wrongRound: (thing, round, rounds) =>
    `la vuelta de ${thing} es «${round}» (se esperaba ${rounds.join(', ')})`,
  noWayPast: (step) => `${step}: este alto no tiene salida.`,
  noSuchFollowUp: (id) => `no existe nada por mirar otra vez «${id}»`,
  followUpDone: (by) => `lo hizo ${by}`,
  noSuchFinding: (finding) => `no existe el hallazgo «${finding}»`,
  whichPack: '¿qué pliego queda en vigor? uno de',
  inForceIs: (pack, from) => `el pliego en vigor es ${pack}, no ${from}`,
  notDecided: 'sin decidir',
  sameInForce: 'el pliego siguiente es el que está en vigor',
  notBeenDone: (title) => `trabajo: ${title} no se ha hecho`,
  findingOpen: (finding, what) => `hallazgo «${finding}»: ${what} (sin decidir)`,
  inForceUndecided: 'no está decidido qué pliego está en vigor',
  actWaits: (act) => `${act}: espera a otra anotación que no ha llegado`,
  sideBySideRecords: (n) =>
    `hay registros de ${n} aparatos uno junto a otro: mire los dos y añada una nota`,
  deviationNotOpen: (thing) => `${thing}: se declara una desviación pero no está pendiente`,
  cannotClose: (n) => `el trabajo no se puede cerrar: ${n} cosas lo impiden`,

  supersededStop:
    'el valor de esta unión se sustituyó después de hacer el pliego: alguien lo mira antes, con ' +
    'su nombre, o entra en vigor otro pliego',
  noneTookItsPlace: 'el valor se retiró y ninguno ocupó su lugar: pida uno, o úselo de todos modos',
  noneSuperseded: (value, thing) => `no se sustituyó ningún valor ${value} de ${thing}`,
  issueSays: (issue, is, said) => `la edición ${issue} dice ${is}, no ${said}`,

  paperUnnamed: 'lo que se pasa del papel nombra su hoja',
  paperWhen: (sheet) => `hoja ${sheet}: ¿cuándo se hizo, según pone en ella?`,
  paperWho: (sheet) => `hoja ${sheet}: ¿quién la pasa?`,
  paperNoSheet: (sheet) => `el pliego de este trabajo no tiene la hoja ${sheet}`,
  paperNotOn: (step, sheet) => `${step} no está en la hoja ${sheet}`,

  notLookedIsolation: 'nadie más ha mirado el aislamiento tal como está ahora',
  notLookedLineUp: 'nadie más ha mirado la puesta en línea tal como está ahora',
  waitsForLook: (what, why, step) =>
    `${what}: ${why}. Que alguien lo mire, o úselo de todos modos con su nombre («${step}»).`,
  oldSealsFirst: (n) =>
    `¿cuántas viejas salieron? ${n} ${n === 1 ? 'ranura' : 'ranuras'} sin contar vacía; ` +
    'sáquelas y cuéntelas, o úselo de todos modos con su nombre',
  sealsNotCounted: (n) =>
    `${n} de sus juntas sin contar, viejas fuera y nuevas dentro: una unión no se cierra sobre ` +
    'una junta doble ni una ranura vacía; cuente, o úselo de todos modos con su nombre',
  nothingToLookAt: (thing) => `${thing}: no hay nada que mirar`,
  notAllStands: 'no de todo se ha dicho que está donde debe',
  notAllLookedAt: 'no se miraron todos los cierres de la lista',
  notListedClosure: 'un cierre no está en la lista, o está dos veces',
  lookIsAlone: (by) =>
    `${by} lo cerró o lo puso en línea: si mira la misma persona, es una mirada en solitario`,
  lookIsNotAlone: (by) =>
    `${by} no cerró ni puso en línea nada de esto: no es una mirada en solitario`,
  anotherMustLook: (by, step) =>
    `${by} lo cerró o lo puso en línea y hay más gente a bordo: tiene que mirar otra persona. ` +
    `Si nadie más puede, úselo de todos modos con su nombre («${step}»).`,
  aloneTooSoon: (by, least, minutes) =>
    `${by} mira en solitario, así que no antes de ${least} min desde el último cierre anotado ` +
    `(práctica común, sin fuente); van ${minutes} min según el reloj de este aparato.`,

  lookNotLookedAt: 'sin mirar',
  seenUnsaid: (seen) => `visto «${seen}», nadie lo había anotado`,
  seenOtherwise: (seen, said, wanted) =>
    `visto «${seen}», anotado «${said}»${wanted === null ? '' : `, debía ser «${wanted}»`}`,
  moreAboard: 'por quien lo cerró o lo puso en línea, y hay más gente a bordo',
  aloneSooner: (minutes, least) => `en solitario, a los ${minutes} min, antes de ${least} min`,
  nobodyLooked: 'nadie lo ha mirado por segunda vez',
  sawOtherwise: (by, differs) => `${by} lo vio de otro modo: ${differs.join('; ')}`,
  lookByWhy: (by, why) => `${by}: ${why}`,
  twoSawOtherwise: 'dos personas lo vieron de otro modo',
  movedSince: (by) => `se movió un cierre desde que miró ${by}`,
  lookDiffers: (by, lineUp, differs) =>
    `${by} miró ${lineUp ? 'la puesta en línea' : 'el aislamiento'} por segunda vez: ` +
    differs.join('; '),
  lookIsNone: (lineUp, by, why) =>
    `esta mirada ${lineUp ? 'a la puesta en línea' : 'al aislamiento'} no vale como segunda: ` +
    `${by}, ${why}`,
  openedUnseen: (name) => `${name}: nadie más miró el aislamiento antes de abrirlo`,
};
