// Spanish: the steps that look at, fit and put back.

import type { backSentences as english } from '../en/back.ts';
import type { Translated } from '../en/sentences.ts';

const given = (text: string | null, before: string, behind = ''): string =>
  text === null ? '' : `${before}${text}${behind}`;

export const backSentences: Translated<typeof english> = {
  asFoundLook: (part) =>
    `${part} como se encontró, antes de limpiar: estado, qué falló, piezas que faltan.`,
  asFoundLookWhy:
    'la vida y las causas se aprenden de lo que se encuentra, y solo ahora se puede ver',
  lookAt: (part, what) => `${part}, mirar: ${what}.`,
  lookAtWhy: 'solo se puede ver mientras está fuera',
  faces: (joint, groove) =>
    `${joint}: las dos caras limpias, repasadas con la uña` +
    `${groove ? '; alojamiento sin marcas' : ''}; roscas y agujeros ciegos limpios y secos.`,
  facesWhy: 'un resto de junta vieja deja pasar; la suciedad en la rosca se come el par',
  sealsIn: (joint, n, seal, size, wetWith, sealant) =>
    `${joint}: ${n} ${seal}, lo nuevo${given(size, ' (', ')')}` +
    `${given(wetWith, '; mojar solo con ')}` +
    `${sealant === null ? '; sin sellador' : `; sellador: ${sealant}`}.`,
  sealsInWhy: 'toda junta de una unión abierta se renueva y se cuenta',
  looseIn: (joint, n, name) => `${joint}: ${n} × ${name} en su sitio.`,
  looseInWhy: 'salió con esta unión',

  backInPlace: (part) => `${part} de vuelta en su sitio.`,
  onGuides: ' sobre los espárragos guía',
  onStuds: ' sobre sus espárragos',
  offerUp: (part, on, carried, shaft) =>
    `Presentar ${part}${on}${given(carried, '; se lleva con: ')}` +
    `${carried !== null || shaft ? '; nunca colgada de su eje' : ''}.`,
  backAfter: (parts) => `vuelve después de ${parts.join(', ')}, a lo que estorbaba`,
  backWhy: 'se quitó, luego vuelve',
  sideBySide: (part) =>
    `Poner ${part}, viejo y nuevo, uno junto a otro: bocas, brida, extremo de eje, giro, largo.`,
  sideBySideWhy: 'lo que parece igual puede no serlo',
  asItIs: (part) => `${part}: gira libre, nada olvidado dentro, marcas legibles.`,
  asItIsWhy: 'vuelve tal como está ahora',
  toBeFitted: (part) => `${part} que se va a montar: anotar su número de serie o lote.`,
  toBeFittedWhy: 'el registro nombra lo que queda en la máquina desde ahora',
  awayWhy: 'todo lo provisional se cuenta al salir',
  blankOff: (name, n, where) => `${name} (número ${n}) fuera de ${where}; mirar dentro.`,
  supportAway: (name, n) => `Quitar el apoyo: ${name} (número ${n}).`,
  guidesIn: (name, n, where) => `${name} (número ${n}) en ${where}, uno frente al otro.`,
  guidesInWhy: 'la pieza se presenta sobre guías, nunca colgada de su eje',
  guidesAway: (name, n) =>
    `Empezar a mano los otros pernos y luego quitar ${name.toLowerCase()} (número ${n}).`,

  startByHand: (joint, fasteners) => `${joint}: empezar ${fasteners} a mano, todos.`,
  startByHandWhy: 'un perno que no entra a mano va cruzado o desalineado',
  makeUp: (joint, fasteners, locking) =>
    `${joint}: unir${given(fasteners, ' ', '; dar un tirón')}.${given(locking, ' Frenar: ', '.')}`,
  makeUpWhy: 'se soltó, luego se vuelve a unir',
  handTight: (joint, fasteners, locking) =>
    `${joint}: ${fasteners} con llave corriente, a mano; no hay valor emitido.` +
    `${given(locking, ' Frenar: ', '.')}`,
  askedValue: (joint, fasteners, locking) =>
    `${joint}: ${fasteners} al valor que alguien dio de antemano; no hay valor emitido.` +
    `${given(locking, ' Frenar: ', '.')}`,
  noValueStated: 'SIN VALOR INDICADO',
  shareOfValue: (figure, round, shown) => `${figure} (${round} de ${shown})`,
  figures: (all) => all.join(' / '),
  onceMore: (figure, joint, locking) =>
    `${figure} · ${joint}: una vuelta más, perno a perno por orden, hasta que ninguno se mueva.` +
    `${given(locking, ' Frenar: ', '.')}`,
  onceMoreWhy: 'los pernos apretados primero se aflojan al apretar los demás',
  tightenTo: (figure, joint, fasteners, order) =>
    `${figure} · ${joint}: apretar ${fasteners}${order ? ' en el orden dibujado' : ''}.`,
  roundWhy: 'por vueltas, las caras se juntan parejas',
  meetsSquare: (joint) => `${joint}: el tubo llega a su cara a escuadra y libre, sin forzarlo.`,
  meetsSquareWhy: 'un tubo forzado contra su cara carga la pieza y después se agrieta o gotea',
  measureLeft: (setting) => `Medir ${setting} tal como queda.`,
  measureLeftWhy: 'se tocó la unión, luego su ajuste se mide otra vez',

  bothNamed: (pipe, mounting) => `${pipe} y ${mounting}`,
  pipeInTheWay: (joints) =>
    `${joints}: el tubo estorba al apriete de la fijación, así que primero se aprieta la ` +
    'fijación y después se presenta el tubo; aun así debe llegar a su cara a escuadra y libre.',
  mountingFirst:
    'Primero la fijación, al final los tubos (práctica común, sin fuente): un tubo forzado ' +
    'contra su cara carga la pieza.',
};
