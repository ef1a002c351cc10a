// Solves a cooler for whatever is not known: heat balances, effectiveness, transfer, in W and °C.

import { type Equation, eliminate } from './eliminate.ts';
import {
  type Arrangement,
  effectivenessOf,
  leastOf,
  ntuOf,
  ratioOf,
  type Streams,
} from './exchanger.ts';

export const TEMPERATURES = ['hotIn', 'hotOut', 'coldIn', 'coldOut'] as const;
export type TemperatureName = (typeof TEMPERATURES)[number];

/** Null is not known. A capacity of infinity is a side that condenses or boils. */
export type Known = { readonly [K in TemperatureName]: number | null } & {
  readonly dutyW: number | null;
  readonly hotWK: number | null;
  readonly coldWK: number | null;
  readonly effectiveness: number | null;
  readonly uaWK: number | null;
};

const ROUNDS = 6;
const FIELDS = ['dutyW', ...TEMPERATURES] as const;

function equationsOf(known: Known, scale: number): readonly Equation[] {
  const { hotWK, coldWK, effectiveness } = known;
  const found: Equation[] = [];
  // Order: duty/scale, hotIn, hotOut, coldIn, coldOut.
  const balance = (capacity: number | null, from: number, to: number) => {
    if (capacity === null) return;
    const factors = [0, 0, 0, 0, 0];
    const still = !Number.isFinite(capacity);
    factors[0] = still ? 0 : -1;
    factors[from] = still ? 1 : capacity / scale;
    factors[to] = still ? -1 : -capacity / scale;
    found.push({ factors, right: 0 });
  };
  balance(hotWK, 1, 2);
  balance(coldWK, 4, 3);
  if (effectiveness !== null && hotWK !== null && coldWK !== null) {
    const least = (effectiveness * Math.min(hotWK, coldWK)) / scale;
    if (Number.isFinite(least)) found.push({ factors: [-1, least, 0, -least, 0], right: 0 });
  }
  FIELDS.forEach((name, at) => {
    const value = known[name];
    if (value === null) return;
    const factors = [0, 0, 0, 0, 0];
    factors[at] = 1;
    found.push({ factors, right: at === 0 ? value / scale : value });
  });
  return found;
}

function balanced(known: Known): Known {
  const sizes = [known.hotWK, known.coldWK].filter(
    (one): one is number => one !== null && Number.isFinite(one),
  );
  const scale = sizes.length > 0 ? Math.max(...sizes) : 1_000;
  const values = eliminate(equationsOf(known, scale), FIELDS.length);
  const found: Record<string, number | null> = {};
  FIELDS.forEach((name, at) => {
    const value = values[at] ?? null;
    found[name] = known[name] ?? (value === null ? null : at === 0 ? value * scale : value);
  });
  return { ...known, ...found };
}

/** Capacity flows, or flows in their proportion where temperatures alone are known. */
export function streamsOf(known: Known): Streams | null {
  const { hotWK, coldWK, hotIn, hotOut, coldIn, coldOut } = known;
  if (hotWK !== null && coldWK !== null) return { hot: hotWK, cold: coldWK };
  if (hotIn === null || hotOut === null || coldIn === null || coldOut === null) return null;
  const [fall, rise] = [hotIn - hotOut, coldOut - coldIn];
  if (fall < 0 || rise < 0 || (fall === 0 && rise === 0)) return null;
  return {
    hot: fall === 0 ? Number.POSITIVE_INFINITY : 1 / fall,
    cold: rise === 0 ? Number.POSITIVE_INFINITY : 1 / rise,
  };
}

function capacities(known: Known): Known {
  const { dutyW, hotIn, hotOut, coldIn, coldOut } = known;
  const from = (capacity: number | null, a: number | null, b: number | null) => {
    if (capacity !== null || dutyW === null || a === null || b === null) return capacity;
    return a === b ? Number.POSITIVE_INFINITY : dutyW / (a - b);
  };
  return {
    ...known,
    hotWK: from(known.hotWK, hotIn, hotOut),
    coldWK: from(known.coldWK, coldOut, coldIn),
  };
}

export function effectivenessFrom(known: Known): number | null {
  const { hotIn, hotOut, coldIn, coldOut, dutyW } = known;
  if (hotIn === null || coldIn === null || hotIn === coldIn) return null;
  const streams = streamsOf(known);
  const most = hotIn - coldIn;
  if (streams !== null && dutyW !== null && known.hotWK !== null && known.coldWK !== null) {
    return dutyW / (leastOf(streams) * most);
  }
  if (hotOut === null || coldOut === null) return null;
  return Math.max(hotIn - hotOut, coldOut - coldIn) / most;
}

// Where four temperatures and the transfer are known and no flow: U A times the mean difference.
function dutyByTransfer(known: Known, arrangement: Arrangement): number | null {
  const streams = streamsOf(known);
  const { uaWK, effectiveness, hotIn, coldIn } = known;
  if (!done(known) || streams === null || uaWK === null || effectiveness === null) return null;
  const ntu = ntuOf(arrangement, effectiveness, streams);
  if (ntu === null || ntu === 0) return null;
  return effectiveness * (uaWK / ntu) * ((hotIn ?? 0) - (coldIn ?? 0));
}

/** One pass over all relations but the transfer, which stands at `uaWK`. */
function round(known: Known, arrangement: Arrangement | null, useTransfer: boolean): Known {
  let now = capacities(balanced(known));
  const streams = streamsOf(now);
  const both = now.hotWK !== null && now.coldWK !== null;
  if (now.effectiveness === null && useTransfer && arrangement !== null && both) {
    if (now.uaWK !== null && streams !== null) {
      const ntu = now.uaWK / leastOf(streams);
      const share = effectivenessOf(arrangement, ntu, streams);
      if (Number.isFinite(share)) now = { ...now, effectiveness: share };
    }
  }
  if (now.effectiveness === null) now = { ...now, effectiveness: effectivenessFrom(now) };
  if (now.dutyW === null && useTransfer && arrangement !== null) {
    now = { ...now, dutyW: dutyByTransfer(now, arrangement) };
  }
  return now;
}

export function transferOf(known: Known, arrangement: Arrangement | null): number | null {
  const streams = streamsOf(known);
  const share = known.effectiveness ?? effectivenessFrom(known);
  if (arrangement === null || streams === null || share === null) return null;
  if (known.hotWK === null || known.coldWK === null) return null;
  const ntu = ntuOf(arrangement, share, streams);
  return ntu === null ? null : ntu * leastOf(streams);
}

function rounds(known: Known, arrangement: Arrangement | null, useTransfer: boolean): Known {
  let now = known;
  for (let at = 0; at < ROUNDS; at += 1) {
    const next = round(now, arrangement, useTransfer);
    const same = Object.entries(next).every(([name, value]) => now[name as keyof Known] === value);
    now = next;
    if (same) break;
  }
  return now;
}

const done = (known: Known): boolean => TEMPERATURES.every((name) => known[name] !== null);

/** All that follows; a temperature that stands inside the transfer alone is found by trial. */
export function solveCooler(given: Known, arrangement: Arrangement | null): Known {
  const first = rounds(given, arrangement, true);
  const settled = done(first) && first.dutyW !== null;
  if (settled || arrangement === null) return withTransfer(first, arrangement);
  const wanted = given.uaWK ?? given.effectiveness;
  if (wanted === null) return first;
  for (const name of TEMPERATURES) {
    if (first[name] !== null) continue;
    const value = byTrial(given, first, name, arrangement, wanted);
    if (value === null) continue;
    const next = rounds(
      { ...first, [name]: value, effectiveness: given.effectiveness },
      arrangement,
      true,
    );
    return withTransfer(next, arrangement);
  }
  return first;
}

const withTransfer = (known: Known, arrangement: Arrangement | null): Known => ({
  ...known,
  uaWK: known.uaWK ?? transferOf(known, arrangement),
});

const TRIALS = 400;

function byTrial(
  given: Known,
  first: Known,
  name: TemperatureName,
  arrangement: Arrangement,
  wanted: number,
): number | null {
  const known = TEMPERATURES.map((one) => first[one]).filter((one): one is number => one !== null);
  if (known.length === 0) return null;
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const low = name === 'coldIn' ? Math.max(-273, least - 300) : least;
  const high = name === 'hotIn' ? most + 500 : most;
  const off = (value: number): number => {
    const tried = rounds(
      { ...first, [name]: value, uaWK: null, effectiveness: null },
      arrangement,
      false,
    );
    if (!done(tried) || !possible(tried)) return Number.NaN;
    const found = given.uaWK === null ? effectivenessFrom(tried) : transferOf(tried, arrangement);
    return found === null ? Number.NaN : Math.log(found / wanted);
  };
  const step = (high - low) / TRIALS;
  let before = Number.NaN;
  const crossings: (readonly [number, number])[] = [];
  for (let at = 0; at <= TRIALS; at += 1) {
    const here = off(low + at * step);
    if (before * here <= 0) crossings.push([low + (at - 1) * step, low + at * step]);
    before = here;
  }
  const [only, ...others] = crossings;
  if (only === undefined || others.length > 0) return null;
  let [a, b] = only;
  const sign = Math.sign(off(a)) || -Math.sign(off(b));
  for (let halve = 0; halve < 100; halve += 1) {
    const middle = (a + b) / 2;
    if (middle === a || middle === b) break;
    if (Math.sign(off(middle)) === sign) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Heat goes from hot to cold, and no stream passes the other's inlet. */
export function possible({ hotIn, hotOut, coldIn, coldOut }: Known): boolean {
  const ordered = (a: number | null, b: number | null) => a === null || b === null || a >= b;
  return (
    ordered(hotIn, hotOut) &&
    ordered(coldOut, coldIn) &&
    ordered(hotIn, coldOut) &&
    ordered(hotOut, coldIn)
  );
}

export const capacityRatio = (known: Known): number | null => {
  const streams = streamsOf(known);
  return streams === null ? null : ratioOf(streams);
};
