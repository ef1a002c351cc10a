// Spanish: the authority line and the cautions.

import type { cautions as english } from '../en/cautions.ts';

export const cautions: Readonly<Record<keyof typeof english, string>> = {
  authority:
    'Esto no es ninguna autoridad. El manual del fabricante, el procedimiento en vigor, el ' +
    'sistema de gestión de la seguridad del buque, la clase y la ley local van primero; el ' +
    'trabajo reservado a personas con licencia o autorización sigue siendo de ellas.',
  namesNotProved: 'nombres sin comprobar',
  isolationByHand: 'Anotado a mano, ni calculado ni contrastado con el esquema',
  isolationNotStated: 'AISLAMIENTO SIN INDICAR',
  hazardEnergy: 'energía acumulada',
  hazardFlooding: 'inundación',
  hazardHeat: 'calor',
  hazardLifting: 'izado',
  hazardRotation: 'giro',
  hazardConfined: 'espacio cerrado',
  hazardChemicals: 'productos químicos',
  energy: 'Energía acumulada: presión, muelles o un peso en alto pueden soltarse al abrir esto.',
  energyVerify: 'sin presión, y muelles o pesos sujetos',
  flooding: 'Inundación: esto abre una línea que da al mar o a un tanque.',
  floodingVerify: 'todos los cierres al mar cerrados y comprobados, y una tapa ciega a mano',
  heat: 'Caliente: superficies, agua o aceite pueden quemar. Manda la temperatura medida.',
  heatVerify: 'temperatura medida y presión cero',
  lifting: 'Izado: nadie bajo la carga; manos fuera del hueco.',
  liftingVerify: 'aparejo marcado con su carga segura y enganchado donde la carga cuelga nivelada',
  rotation: 'Giro: la máquina puede girar o arrancar sola.',
  rotationVerify:
    'arranque, virador y arranque automático cortados; todos apartados, llamados y con respuesta',
  confined: 'Espacio cerrado: el aire puede no mantenerle con vida.',
  confinedVerify: 'atmósfera medida y una persona de guardia fuera',
  electricityCaution: 'Electricidad: trátelo como con tensión hasta comprobar que no la hay.',
  electricityVerify: 'alimentación cortada, con candado y comprobada sin tensión',
  chemicals:
    'Productos químicos: refrigerante, limpiador o sellador pueden dañar piel, ojos y pulmones.',
  chemicalsVerify: 'ficha de datos de seguridad leída y protección puesta',
  fuel: 'Combustible o aceite: rociado o goteando sobre una superficie caliente arde.',
  fuelVerify: 'superficies calientes tapadas, goteo recogido, ninguna llama cerca',
};
