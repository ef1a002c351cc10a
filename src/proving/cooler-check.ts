// What is given of a cooler more than once and does not agree, and what is missing for the rest.

import type { Problem } from '../quantity/types.ts';
import type { Solved } from './cooler.ts';
import type { CoolerInput } from './cooler-model.ts';
import { streamsOf } from './cooler-solve.ts';
import { effectivenessOf, leastOf } from './exchanger.ts';

/** Figures given twice may differ by so much: what readings and rounding do. */
export const AGREE = 0.01;

export function disagreements(input: CoolerInput, found: Solved): Problem[] {
  const { known, surface, arrangement } = found;
  const problems: Problem[] = [];
  const differ = (path: string, got: number, wanted: number, why: string) => {
    if (Math.abs(got - wanted) <= AGREE * Math.max(Math.abs(got), Math.abs(wanted))) return;
    const expected = `${Number(wanted.toPrecision(5))}, by what else is given`;
    problems.push({ path, got: Number(got.toPrecision(5)), expected, why });
  };
  const { dutyW, hotIn, hotOut, coldIn, coldOut, hotWK, coldWK } = known;
  const heat = (capacity: number | null, from: number | null, to: number | null) =>
    capacity === null || !Number.isFinite(capacity) || from === null || to === null
      ? null
      : capacity * (from - to);
  const sides = [
    ['hot', heat(hotWK, hotIn, hotOut), found.hot, found.hotKgS],
    ['cold', heat(coldWK, coldOut, coldIn), found.cold, found.coldKgS],
  ] as const;
  for (const [name, watts, side, kgS] of sides) {
    const latent = side.heat?.kind === 'latent' && kgS !== null ? kgS * side.heat.JKg : null;
    const own = watts ?? latent;
    if (own !== null && dutyW !== null) {
      differ(`${name}`, own / 1_000, dutyW / 1_000, `the heat of the ${name} side, kW, disagrees`);
    }
  }
  const streams = streamsOf(known);
  const share = found.effectiveness;
  const both = hotWK !== null && coldWK !== null;
  if (
    streams !== null &&
    share !== null &&
    hotIn !== null &&
    coldIn !== null &&
    both &&
    dutyW !== null
  ) {
    const wanted = dutyW / (leastOf(streams) * (hotIn - coldIn));
    differ('effectiveness', share, wanted, 'the effectiveness disagrees with the heat');
  }
  if (known.uaWK !== null && arrangement !== null && streams !== null && both && share !== null) {
    const reached = effectivenessOf(arrangement, known.uaWK / leastOf(streams), streams);
    if (Number.isFinite(reached)) {
      differ('area', reached, share, 'the effectiveness of this area and U disagrees');
    }
  }
  if (input.U !== undefined && surface.cleanUWM2K !== null && input.fouling !== undefined) {
    const wanted = 1 / (1 / surface.cleanUWM2K + input.fouling.value);
    differ('U', input.U.value, wanted, 'U, cleanU and fouling disagree');
  }
  return problems;
}

/** What each output that is null would need. */
export function needsOf(
  input: CoolerInput,
  found: Solved,
): Readonly<Record<string, readonly string[]>> {
  const { known, arrangement } = found;
  const side = (name: 'hot' | 'cold') => {
    const given = found[name];
    const lacks: string[] = [];
    if (given.heat === null) lacks.push(`${name}.fluid`);
    if ((name === 'hot' ? found.hotKgS : found.coldKgS) === null) lacks.push(`${name}.flow`);
    if ((name === 'hot' ? known.hotIn : known.coldIn) === null) lacks.push(`${name}.in`);
    if ((name === 'hot' ? known.hotOut : known.coldOut) === null) lacks.push(`${name}.out`);
    return lacks;
  };
  const [hot, cold] = [side('hot'), side('cold')];
  const form = arrangement === null ? ['arrangement'] : [];
  const temperatures = [...hot, ...cold].filter((one) => /\.(?:in|out)$/.test(one));
  const or = (needs: readonly string[]) => (needs.length > 0 ? needs : ['more of the readings']);
  const all = or([...form, ...hot, ...cold]);
  const transfer = or(known.uaWK === null ? all : []);
  const ends = or([
    ...form,
    ...temperatures,
    ...(found.lmtd === null ? ['ends that do not cross'] : []),
  ]);
  return {
    duty: or([...hot, ...cold]),
    lmtd: ends,
    correction: ends,
    ua: all,
    effectiveness: or(temperatures),
    ntu: or([...form, ...temperatures]),
    capacityRatio: or([...hot, ...cold]),
    U: [...(input.area === undefined ? ['area'] : []), ...(known.uaWK === null ? transfer : [])],
    area: [...(input.U === undefined ? ['U'] : []), ...(known.uaWK === null ? transfer : [])],
    fouling: [
      ...(input.cleanU === undefined ? ['cleanU'] : []),
      ...(found.surface.uWM2K === null ? ['U, or area with the readings'] : []),
    ],
    ...Object.fromEntries(
      (['hot', 'cold'] as const).flatMap((name) =>
        (['flow', 'in', 'out'] as const).map((field) => {
          const others = (name === 'hot' ? [...hot, ...cold] : [...cold, ...hot]).filter(
            (one) => one !== `${name}.${field}`,
          );
          return [`${name}.${field}`, or(others)];
        }),
      ),
    ),
  };
}
