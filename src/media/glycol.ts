// Ethylene glycol in water, as engines are filled with: density, heat capacity, viscosity.

import { glycol } from './tables/glycol.ts';

type Table = readonly (readonly number[])[];

function sum(table: Table, fraction: number, temperatureC: number): number {
  const [x, t] = [fraction - glycol.baseFraction, temperatureC - glycol.baseC];
  return table.reduce(
    (all, row, i) => all + row.reduce((part, c, j) => part + c * x ** j, 0) * t ** i,
    0,
  );
}

export type Mixture = {
  readonly densityKgM3: number;
  readonly heatCapacityJKgK: number;
  readonly viscosityPas: number;
};

export const freezesAtC = (fraction: number): number =>
  glycol.freezing.reduce((all, c, j) => all + c * (fraction - glycol.baseFraction) ** j, 0);

/** Null outside 0 to 60 % by mass, below where ice forms, above 100 °C. */
export function glycolMixture(fraction: number, temperatureC: number): Mixture | null {
  if (fraction < 0 || fraction > glycol.mostFraction) return null;
  if (temperatureC < freezesAtC(fraction) || temperatureC > 100) return null;
  return {
    densityKgM3: sum(glycol.density, fraction, temperatureC),
    heatCapacityJKgK: sum(glycol.heatCapacity, fraction, temperatureC),
    viscosityPas: Math.exp(sum(glycol.viscosity, fraction, temperatureC)) / 1_000,
  };
}
