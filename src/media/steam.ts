// Pure water and its steam up to 90 °C (IAPWS-95): what each pressure does to their potential.

import { steamIdeal, steamTerms } from './tables/gibbs.ts';

const R = 461.51805;
const CRITICAL_K = 647.096;
const CRITICAL_KG_M3 = 322;
const TRIES = 50;

type Helmholtz = { readonly rest: number; readonly slope: number };

// Terms 52 to 56 act near the critical point alone: below 453 K they are under 1e-20.
function residual(delta: number, tau: number): Helmholtz {
  let rest = 0;
  let slope = 0;
  for (const [c, d, t, n] of steamTerms) {
    const power = c === 0 ? 0 : delta ** c;
    const term = n * delta ** d * tau ** t * (c === 0 ? 1 : Math.exp(-power));
    rest += term;
    slope += term * (d - c * power);
  }
  return { rest, slope };
}

function ideal(delta: number, tau: number): number {
  let sum = Math.log(delta);
  steamIdeal.forEach(([n, gamma], at) => {
    if (at === 0) sum += n;
    else if (at === 1) sum += n * tau;
    else if (at === 2) sum += n * Math.log(tau);
    else sum += n * Math.log(1 - Math.exp(-gamma * tau));
  });
  return sum;
}

const pressureOf = (rho: number, kelvin: number): number =>
  rho * R * kelvin * (1 + residual(rho / CRITICAL_KG_M3, CRITICAL_K / kelvin).slope);

/** kg/m³ of steam or of the liquid at a pressure: by the slope between two tries. */
export function densityOf(phase: 'steam' | 'liquid', pressurePa: number, kelvin: number): number {
  let before = phase === 'steam' ? pressurePa / (R * kelvin) : 1_000;
  let now = before * (phase === 'steam' ? 1.001 : 0.999);
  let offBefore = pressureOf(before, kelvin) - pressurePa;
  for (let tries = 0; tries < TRIES; tries += 1) {
    const off = pressureOf(now, kelvin) - pressurePa;
    const next = off === offBefore ? now : now - (off * (now - before)) / (off - offBefore);
    before = now;
    offBefore = off;
    now = next;
    if (Math.abs(now - before) <= 1e-13 * now) break;
  }
  return now;
}

/** J/kg: the chemical potential at a density. */
export function potentialJKg(rho: number, kelvin: number): number {
  const [delta, tau] = [rho / CRITICAL_KG_M3, CRITICAL_K / kelvin];
  const { rest, slope } = residual(delta, tau);
  return R * kelvin * (1 + ideal(delta, tau) + rest + slope);
}

/** Pa at which steam and water balance; `shiftJKg`: what salt takes from the water there. */
export function balancePa(kelvin: number, shiftJKg: (pressurePa: number) => number): number {
  let pressure = startPa(kelvin);
  for (let tries = 0; tries < TRIES; tries += 1) {
    const rho = densityOf('steam', pressure, kelvin);
    const liquid = potentialJKg(densityOf('liquid', pressure, kelvin), kelvin);
    const off = potentialJKg(rho, kelvin) - liquid - shiftJKg(pressure);
    const next = pressure * Math.exp((-off * rho) / pressure);
    const done = Math.abs(next - pressure) <= 1e-12 * pressure;
    pressure = next;
    if (done) break;
  }
  return pressure;
}

// A start is all that is asked of it (Magnus).
const startPa = (kelvin: number): number =>
  611.2 * Math.exp((17.62 * (kelvin - 273.15)) / (kelvin - 30.03));
