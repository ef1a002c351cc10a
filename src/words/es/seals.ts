// Spanish: the seals of a pack against the stores, in sentences and on screens and sheets.

import type { Words } from '../en/index.ts';
import type { sealSentences as english } from '../en/seals.ts';
import type { Translated } from '../en/sentences.ts';

const RATINGS: Readonly<Record<number, string>> = { 3: 'dudoso', 4: 'no apto' };

export const sealSentences: Translated<typeof english> = {
  storeOther: (is, wanted) => `es ${is}, hace falta ${wanted}`,
  storeNoCompound: (wanted) => `su compuesto no consta en la bolsa, hace falta ${wanted}`,
  storeNoThickness: (wanted) => `su espesor no se conoce, hace falta ${wanted}`,
  storeNotReady: (condition) => `no está listo para montar: ${condition}`,
  storeReserved: (job) => `guardado para otro trabajo: ${job}`,
  storeOtherHand: (hand, side) => `de la otra mano: es para ${hand}, esta máquina está a ${side}`,
  storeHandUnknown: (hand) => `es para ${hand}, y nadie ha dicho a qué banda está esta máquina`,
  storeLabelEnded: (day) => `su etiqueta venció el ${day}`,
  storeEnded: (day, rule, memory) =>
    `su vida en pañol terminó el ${day} según ${rule}${memory ? ' (de memoria)' : ''}`,
  storeInspect: (day, rule, memory, to) =>
    `su vida en pañol terminó el ${day} según ${rule}${memory ? ' (de memoria)' : ''}; ` +
    `tras inspección puede usarse hasta ${to}`,
  storeCuredLater: (cured) => `vulcanizado ${cured}, después del día del trabajo`,
  storeNoCure: 'sin fecha de vulcanizado: su edad no se puede comprobar',
  storeNoRule: 'no se nombra regla de almacenamiento: su edad no se puede comprobar',
  storeNoGroup: (compound, rule) =>
    `${rule} no dice nada de ${compound}: su edad no se puede comprobar`,
  storeNoName: 'un compuesto sin indicar',
  storeAllDrawn: 'todo está sacado para otras uniones de este trabajo',
  storeMayNotTouch: (compound) => `no puede tocar ${compound}`,
  storeOnly: (item, why) => `${item}: ${why.join('; ')}`,
  storeNone: 'no hay',
  amountPractice: 'película fina; práctica común, sin fuente',

  sealNoSize: 'su tamaño no está indicado: cuál lleva no se puede comprobar',
  sealNoCompound: 'su compuesto no está indicado: grasa y fluido no se pueden comprobar',
  sealBadIn: (compound, medium, rating) =>
    `${compound} en ${medium}: ${RATINGS[rating] ?? rating} (de memoria)`,
  sealBadGrease: (compound, grease, rating) =>
    `${grease} sobre ${compound}: ${RATINGS[rating] ?? rating}, lo hincha o ablanda (de memoria)`,
  sealBadHeat: (compound, is, least, most) =>
    `${is} °C en su línea; ${compound} aguanta de ${least} a ${most} °C`,
  sealJudged: (compound, verdict) => `${compound}: ${verdict} aquí`,
  sealGreaseUnknown: (grease, compound) =>
    `${grease} sobre ${compound} no está en ninguna tabla: no se puede comprobar`,
  sealMediumUnknown: (compound, medium) =>
    `${compound} en ${medium} no está en ninguna tabla: no se puede comprobar`,
  sealDuty: (limit, is) => `su límite es ${limit}, su línea tiene ${is}`,
  sealNoLimits: 'qué calor y presión aguanta no está indicado: no se puede comprobar',
  'sealNo-heat-limit': 'límite de temperatura sin indicar: no se puede comprobar',
  'sealNo-heat-line': 'temperatura de su línea sin indicar: no se puede comprobar',
  'sealNo-pressure-limit': 'límite de presión sin indicar: no se puede comprobar',
  'sealNo-pressure-line': 'presión de su línea sin indicar: no se puede comprobar',
  sealForbidden: (sealant, why) => `aquí nada de ${sealant}: ${why}`,
  sealNoSealantHere: (sealant) => `nada de ${sealant}: esta junta fija un juego`,
  sealSetsClearance: (thickness) =>
    `fija un juego: una sola junta de ${thickness}, ni una más, sin sellador`,
  thicknessMissing: 'el espesor emitido',
  sealBlind: 'agujeros ciegos limpios y secos: ni grasa ni sellador en ellos',
  sealReuse: (rule) => `puede volver solo si alguien por su nombre lo ve bien: ${rule}`,

  mayUseSeal: (item, seal, joint) => `${item}: ¿se puede usar como ${seal} de ${joint}?`,
  mayUseSealWhy: (short, against) =>
    `faltan ${short}, esto es lo más próximo, pero: ${against.join('; ')}`,
  whereFrom: (seal, joint) => `${seal} de ${joint}: ¿de dónde sale?`,
  whereFromWhy: (short, needed) => `faltan ${short} de ${needed} en el pañol`,
  sealRight: (seal, joint) => `${seal} de ${joint}: ¿es correcto?`,
  sealRightWhy: (against) => against.join('; '),
  mayUseItem: (item, mark, part) =>
    `${item}${mark === null ? '' : ` ${mark}`}: ¿puede montarse como ${part}?`,
  mayUseItemWhy: (against) =>
    `ninguno está listo para montar aquí; este es el más próximo, pero: ${against.join('; ')}`,
  itemFrom: (part) => `${part}: ¿de dónde sale el que se monta?`,
  itemFromWhy: 'no hay ninguno que convenga',
  consumableFrom: (name, joints) => `${name} para ${joints.join(', ')}: ¿de dónde sale?`,
  consumableFromWhy: (against) => against.join('; '),
};

export const seals: Words['seals'] = {
  title: 'Juntas y retenes',
  noList: 'No se lleva lista de pañol: no se saca nada y no se sabe de nada que falte.',
  inDateOn: (day) => `en fecha el ${day}`,
  rule: (rule) => (rule === null ? 'sin regla de almacenamiento' : `según ${rule}`),
  short: 'Falta antes de abrir nada',
  shortOf: (short, count) => `faltan ${short} de ${count}`,
  draw: (count, place) => `sacar ${count}${place === null ? '' : `, ${place}`}`,
  from: (place) => `de ${place}`,
  until: (day) => `hasta ${day}`,
  anyway: (by, against) => `usado de todos modos por ${by}: ${against}`,
  notDrawn: 'Próximo, y por qué no',
  against: 'Habla en contra',
  notChecked: 'No se puede comprobar',
  grease: (name) => `grasa: ${name}`,
  noGrease: 'grasa sin indicar',
  sealant: (name) => `sellador: ${name}`,
  noSealant: 'sin sellador',
  size: 'tamaño sin indicar',
  spares: 'Se monta nuevo',
  consumables: 'Grasa, sellador y demás',
  amountOpen: 'cantidad sin indicar',
  near: 'El paso queda abierto a estas',
  nearOld: (years, limit) => `${years} años, se renueva a los ${limit}: hacerla ahora también`,
  nearAge: (years) => `${years} años`,
  nearLimit: (limit) => `se renueva a los ${limit} años`,
  nearUnknown: 'edad desconocida',
  map: 'Plano de juntas',
  mapAlt: (n) => `Juntas por unión, ${n} en total`,
  counted: 'Cuéntelo al sacarlo del cajón, antes de cerrar nada',
  lSeal: 'Junta',
  lDraw: 'Sacar',
  lNear: 'Próximo y por qué no; sin comprobar',
  lCounted: 'En mano',
};
