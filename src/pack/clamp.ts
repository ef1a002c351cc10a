// What each bolt of a joint must clamp: as stated, or from the line's pressure and the seal's seat.

import type { Fastener } from '../plant/schema.ts';
import type { Machine } from '../plant/types.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Source, Working } from '../quantity/types.ts';
import { clampNeededKN } from '../tightening/clamp.ts';
import type { Fastening } from './fastening-types.ts';

const MODEL: Source = { kind: 'entered', by: 'the description of the machine' };
const OURS: Source = { kind: 'computed', by: 'pack' };

const figure = (text: string | undefined, unit: string): number | null => {
  const read = text === undefined ? null : readQuantity(text, unit, '');
  return read?.ok === true ? read.quantity.value : null;
};

/** The highest pressure of the lines that meet in the joint, as the model states it. */
const pressureMPa = (machine: Machine, joint: string): number | null => {
  const lines = (machine.joints[joint]?.between ?? []).map((id) => machine.parts[id]?.line);
  const bars = lines.flatMap((id) => {
    const bar = figure(machine.lines[id ?? '']?.pressure, 'bar');
    return bar === null ? [] : [bar];
  });
  return bars.length === 0 ? null : Math.max(...bars) / 10;
};

/**
 * In kN a bolt. Embedding is not counted here, for the model does not state the faces. Null where
 * neither the clamp nor the sealed diameter with a pressure is stated: nothing is guessed.
 */
export function clampFor(machine: Machine, id: string, f: Fastener): Fastening['clampNeeded'] {
  const stated = figure(f.clampNeeded, 'kN');
  if (stated !== null) {
    const text = 'clamp a bolt must give';
    const row = { symbol: 'F', text, expression: String(stated), value: stated, unit: 'kN' };
    return { force: { value: stated, unit: 'kN' }, working: [{ ...row, source: MODEL }] };
  }
  const joint = machine.joints[id];
  const mm = figure(joint?.sealedDiameter, 'mm');
  const mpa = pressureMPa(machine, id);
  if (joint === undefined || mm === null || mpa === null) return null;
  const seatingKN = figure(joint.seating, 'kN') ?? 0;
  const bolts = Object.values(joint.fasteners ?? {}).reduce((sum, one) => sum + one.count, 0);
  if (bolts === 0) return null;
  const areaMm2 = (Math.PI * mm * mm) / 4;
  const value = clampNeededKN({ pressureMPa: mpa, areaMm2, seatingKN, bolts, embeddingLossKN: 0 });
  const row = (
    symbol: string,
    text: string,
    expression: string,
    figureOf: number,
    unit: string,
  ) => ({
    symbol,
    text,
    expression,
    value: figureOf,
    unit,
    source: /^[-\d.e]+$/.test(expression) ? MODEL : OURS,
  });
  const working: Working = [
    row('p', 'pressure of the line', String(mpa), mpa, 'MPa'),
    row('D', 'diameter on which it pushes', String(mm), mm, 'mm'),
    row('A', 'area on which it pushes', 'pi * D^2 / 4', areaMm2, 'mm2'),
    row('S', 'seating of the seal', String(seatingKN), seatingKN, 'kN'),
    row('n', 'bolts', String(bolts), bolts, '1'),
    row('F', 'clamp a bolt must give', '(p * A / 1000 + S) / n', value, 'kN'),
  ];
  return { force: { value, unit: 'kN' }, working };
}
