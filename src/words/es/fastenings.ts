// Spanish: the fastenings of a pack, their values weighed and their tools, on screens and sheets.

import type { fasteningSentences as english } from '../en/fastenings.ts';
import type { Words } from '../en/index.ts';
import type { Translated } from '../en/sentences.ts';

export const fasteningSentences: Translated<typeof english> = {
  partOfJoint: (joint, what) => `${joint}, ${what}`,
  noSingleTorque: (value) => `${value} no es un solo par`,
  mayUseTool: (tool, fastening) => `${tool}: ¿se puede usar para ${fastening}?`,
  mayUseToolWhy: (against) =>
    `ninguna llave disponible sirve; esta es la más próxima, pero: ${against.join('; ')}`,
  mayUseNamedWhy: (against) => `se usa con el nombre de alguien o no se usa: ${against.join('; ')}`,
  whichTool: (fastening) => `${fastening}: ¿qué herramienta sirve y de dónde sale?`,
  whichToolWhy: (why) => `con las herramientas disponibles no se puede hacer: ${why}`,
  valueRight: (fastening, value) => `${fastening}: ¿es correcto ${value}?`,
  valueRightWhy: (share) =>
    `aun con el rozamiento más alto este par lleva el perno al ${share} % de su límite elástico`,
};

export const fastenings: Words['fastenings'] = {
  title: 'Uniones roscadas',
  value: 'Valor',
  condition: 'Rosca',
  noCondition: 'estado de la rosca sin indicar: se muestra el apriete para ambos',
  clamp: (min, max) => `aprieta de ${min} a ${max}`,
  needed: (force) => `la unión necesita ${force} de cada perno, sin contar el asiento`,
  ofYield: (min, max) => `del ${min} al ${max} % del límite elástico del perno`,
  strips: (load, weaker) =>
    `la rosca ${weaker === 'hole' ? 'del agujero' : 'del perno'} aguanta ${load}`,
  surface: {
    'as received': 'como viene',
    oiled: 'aceitada',
    'anti-seize': 'con antigripante',
    threadlock: 'con fijador de roscas',
  },
  verdicts: {
    'cannot be right': 'no puede ser correcto: el perno cede con cualquier rozamiento',
    'may yield': 'puede ceder donde el rozamiento es más bajo',
    'may strip': 'puede arrancar la rosca más débil donde el rozamiento es más bajo',
    'too loose': 'demasiado flojo donde el rozamiento es más alto',
    fits: 'conviene al perno y al agujero',
  },
  notJudged: 'sin juzgar',
  notChecked: (why) => `No se puede comprobar: ${why}.`,
  setTo: (wrench, setting) => `${wrench}: ajustada a ${setting}`,
  grip: (mm) => `la mano en la marca del mango, a ${mm} mm del cuadrado`,
  gripMm: (mm) => `la mano aquí, ${mm} mm`,
  working: 'Desarrollo',
  gripUnknown: 'no se conoce la longitud hasta la marca del mango',
  crowfoot: (mm, angle) => `boca abierta a ${mm} mm, ${angle}`,
  square: 'a escuadra con la llave',
  ahead: 'recta hacia delante',
  back: 'vuelta hacia atrás',
  atAngle: (deg) => `a ${deg}° de la llave`,
  below: 'por debajo de lo que admite su escala: a mano, cuenta la vuelta siguiente',
  anyway: (by, against) => `Usada de todos modos por ${by}: ${against}`,
  tools: 'Herramientas que preparar',
  fewest: (n) => `${n} herramientas bastan para todo el trabajo; con menos no se puede.`,
  notProven: (n, bound) => `${n} herramientas; hacen falta al menos ${bound}.`,
  missing: 'Falta antes de abrir nada',
  nearest: (tool, whyNot) => `lo más próximo: ${tool} (${whyNot})`,
  laidAside: 'Se queda en el cajón',
  instead: (tools) => `en su lugar: ${tools}`,
  asks: 'Hay que medirlo o decirlo antes',
  noList: 'No hay lista de herramientas: valen las que dice la descripción de la máquina.',
  inDateOn: (day) => `vigente el ${day}`,
  tight: 'apretado',
  notTight: 'sin apretar',
};
