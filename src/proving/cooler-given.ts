// Reads what was given of a cooler: the arrangement, each side's heat capacity and flow, in SI.

import { type FluidSpelling, fluidOf } from '../media/fluid.ts';
import type { Quantity } from '../quantity/types.ts';
import { convert } from '../quantity/units.ts';
import type { CoolerInput, SideInput } from './cooler-model.ts';
import type { Arrangement } from './exchanger.ts';

export type Heat =
  | { readonly kind: 'capacity'; readonly JKgK: number }
  | { readonly kind: 'latent'; readonly JKg: number }
  | { readonly kind: 'named'; readonly name: FluidSpelling; readonly saltGKg: number | null };

export type SideGiven = {
  readonly heat: Heat | null;
  readonly densityKgM3: number | null;
  readonly flow: Quantity | null;
  readonly inC: number | null;
  readonly outC: number | null;
};

type Layout = Exclude<NonNullable<CoolerInput['arrangement']>, string>;

export function arrangementOf(input: CoolerInput): Arrangement | null {
  const { arrangement } = input;
  if (arrangement === undefined) return null;
  const { shells, tubePasses, hotMixed, coldMixed, hotPasses, coldPasses } = input;
  const beside = { shells, tubePasses, hotMixed, coldMixed, hotPasses, coldPasses };
  const given = Object.entries(beside).filter(([, value]) => value !== undefined);
  const inner = typeof arrangement === 'string' ? { kind: arrangement } : arrangement;
  const layout: Layout = { ...Object.fromEntries(given), ...inner };
  switch (layout.kind) {
    case 'counterflow':
    case 'parallel':
      return { kind: layout.kind };
    case 'shell-and-tube':
      return { kind: layout.kind, shells: layout.shells ?? 1, tubePasses: layout.tubePasses ?? 2 };
    case 'crossflow': {
      const { hotMixed: hot = false, coldMixed: cold = false } = layout;
      return { kind: layout.kind, hotMixed: hot, coldMixed: cold };
    }
    case 'plate': {
      const { hotPasses: hot = 1, coldPasses: cold = 1 } = layout;
      return { kind: layout.kind, hotPasses: hot, coldPasses: cold };
    }
  }
}

/** Which of the numbers of the arrangement are taken and were not given. */
export function takenLayout(input: CoolerInput): string | null {
  const { arrangement } = input;
  const inner = typeof arrangement === 'object' ? arrangement : {};
  const kind = typeof arrangement === 'object' ? arrangement.kind : arrangement;
  const has = (name: keyof Layout) =>
    name in inner || (name !== 'kind' && input[name] !== undefined);
  if (kind === 'shell-and-tube' && !(has('shells') && has('tubePasses'))) {
    const one = arrangementOf(input);
    if (one?.kind !== 'shell-and-tube') return null;
    return `Taken as ${one.shells} shell with ${one.tubePasses} tube passes: give both.`;
  }
  if (kind === 'crossflow' && !(has('hotMixed') && has('coldMixed'))) {
    return 'A side of which nothing is said is taken as unmixed: give hotMixed and coldMixed.';
  }
  if (kind === 'plate' && !(has('hotPasses') && has('coldPasses'))) {
    return 'Passes that are not given are taken as 1: give hotPasses and coldPasses.';
  }
  return null;
}

function heatOf(side: SideInput): Heat | null {
  if (side.heatCapacity !== undefined) return { kind: 'capacity', JKgK: side.heatCapacity.value };
  if (side.latentHeat !== undefined) {
    return { kind: 'latent', JKg: 1_000 * side.latentHeat.value };
  }
  const { fluid } = side;
  if (fluid === undefined) return null;
  if (typeof fluid === 'string') return { kind: 'named', name: fluid, saltGKg: null };
  if ('name' in fluid) {
    return { kind: 'named', name: fluid.name, saltGKg: fluid.salinity?.value ?? null };
  }
  return 'heatCapacity' in fluid
    ? { kind: 'capacity', JKgK: fluid.heatCapacity.value }
    : { kind: 'latent', JKg: 1_000 * fluid.latentHeat.value };
}

export function sideOf(side: SideInput | undefined): SideGiven {
  if (side === undefined) {
    return { heat: null, densityKgM3: null, flow: null, inC: null, outC: null };
  }
  const heat = heatOf(side);
  const { fluid } = side;
  const inFluid =
    typeof fluid === 'object' && 'density' in fluid ? fluid.density?.value : undefined;
  const [inC, outC] = [side.in?.value ?? null, side.out?.value ?? null];
  // What condenses or boils stays at its temperature.
  const still = heat?.kind === 'latent';
  return {
    heat,
    densityKgM3: side.density?.value ?? inFluid ?? null,
    flow: side.flow ?? null,
    inC: inC ?? (still ? outC : null),
    outC: outC ?? (still ? inC : null),
  };
}

/** kg/s; null where a volume flow has no density. */
export function massFlow({ flow, heat, densityKgM3, inC }: SideGiven, meanC: number | null) {
  if (flow === null) return null;
  if (flow.unit === 'kg/s') return flow.value;
  const at = inC ?? meanC;
  const known =
    densityKgM3 ??
    (heat?.kind === 'named' && at !== null
      ? (fluidOf(heat.name, at, heat.saltGKg ?? undefined)?.densityKgM3 ?? null)
      : null);
  return known === null ? null : convert(flow.value, flow.unit, 'm3/s') * known;
}

/** J/(kg·K) at the mean temperature; null where it is not known or the fluid is out of range. */
export function capacityAt({ heat }: SideGiven, meanC: number | null): number | null {
  if (heat === null || heat.kind === 'latent') return null;
  if (heat.kind === 'capacity') return heat.JKgK;
  if (meanC === null) return null;
  return fluidOf(heat.name, meanC, heat.saltGKg ?? undefined)?.heatCapacityJKgK ?? null;
}
