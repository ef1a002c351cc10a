// Effectiveness of a heat exchanger from its transfer units, and back, by its arrangement.

export type Arrangement =
  | { readonly kind: 'counterflow' | 'parallel' }
  | { readonly kind: 'shell-and-tube'; readonly shells: number; readonly tubePasses: number }
  | { readonly kind: 'crossflow'; readonly hotMixed: boolean; readonly coldMixed: boolean }
  | { readonly kind: 'plate'; readonly hotPasses: number; readonly coldPasses: number };

/** Heat capacity flows, W/K; infinite where a side condenses or boils. */
export type Streams = { readonly hot: number; readonly cold: number };

export const leastOf = ({ hot, cold }: Streams): number => Math.min(hot, cold);
export const ratioOf = ({ hot, cold }: Streams): number => {
  const most = Math.max(hot, cold);
  return Number.isFinite(most) ? Math.min(hot, cold) / most : 0;
};

const countercurrent = (n: number, c: number): number => {
  if (Math.abs(1 - c) < 1e-9) return n / (1 + n);
  const e = Math.exp(-n * (1 - c));
  return (1 - e) / (1 - c * e);
};

const parallel = (n: number, c: number): number => (1 - Math.exp(-n * (1 + c))) / (1 + c);

const oneShell = (n: number, c: number): number => {
  const root = Math.sqrt(1 + c * c);
  const e = Math.exp(-n * root);
  return 2 / (1 + c + (root * (1 + e)) / (1 - e));
};

function shells(n: number, c: number, count: number): number {
  const one = oneShell(n / count, c);
  if (count === 1) return one;
  if (Math.abs(1 - c) < 1e-9) return (count * one) / (1 + (count - 1) * one);
  const z = ((1 - one * c) / (1 - one)) ** count;
  return (z - 1) / (z - c);
}

const SERIES_TERMS = 2_000;

/** Crossflow with both sides unmixed: the exact series, each factor the tail of a Poisson sum. */
function bothUnmixed(n: number, c: number): number {
  if (c === 0) return 1 - Math.exp(-n);
  const m = c * n;
  let [termN, termM] = [Math.exp(-n), Math.exp(-m)];
  let [belowN, belowM] = [termN, termM];
  let sum = 0;
  for (let at = 1; at < SERIES_TERMS; at += 1) {
    const added = (1 - belowN) * (1 - belowM);
    sum += added;
    if (at > n && added < sum * 1e-17) break;
    termN *= n / at;
    termM *= m / at;
    belowN = Math.min(1, belowN + termN);
    belowM = Math.min(1, belowM + termM);
  }
  return sum / m;
}

const leastUnmixed = (n: number, c: number): number =>
  c === 0 ? 1 - Math.exp(-n) : (1 - Math.exp(-c * (1 - Math.exp(-n)))) / c;
const leastMixed = (n: number, c: number): number =>
  c === 0 ? 1 - Math.exp(-n) : 1 - Math.exp(-(1 - Math.exp(-n * c)) / c);
const bothMixed = (n: number, c: number): number =>
  c === 0 ? 1 - Math.exp(-n) : 1 / (1 / (1 - Math.exp(-n)) + c / (1 - Math.exp(-c * n)) - 1 / n);

/** One pass beside two: half runs with the stream, half against it. `one` is the single pass. */
function onePassToTwo(ua: number, one: number, two: number): number {
  const n = ua / one;
  const r = one / two;
  const [with_, against] = [parallel(n, r / 2), countercurrent(n, r / 2)];
  const share = (with_ + against - (with_ * against * r) / 2) / 2;
  return (share * one) / Math.min(one, two);
}

/** Whether a formula is kept for it. */
export const isKnown = (one: Arrangement): boolean =>
  one.kind !== 'plate' ||
  one.hotPasses === one.coldPasses ||
  (Math.min(one.hotPasses, one.coldPasses) === 1 && Math.max(one.hotPasses, one.coldPasses) === 2);

/** Share of the greatest possible duty; NaN where no formula is kept. */
export function effectivenessOf(one: Arrangement, ntu: number, streams: Streams): number {
  const c = ratioOf(streams);
  if (ntu === 0) return 0;
  if (c === 0) return 1 - Math.exp(-ntu);
  switch (one.kind) {
    case 'counterflow':
      return countercurrent(ntu, c);
    case 'parallel':
      return parallel(ntu, c);
    case 'shell-and-tube':
      // One tube pass in one shell runs against the stream.
      return one.tubePasses === 1 ? countercurrent(ntu, c) : shells(ntu, c, one.shells);
    case 'crossflow': {
      if (one.hotMixed && one.coldMixed) return bothMixed(ntu, c);
      if (!one.hotMixed && !one.coldMixed) return bothUnmixed(ntu, c);
      const mixedIsLeast = one.hotMixed ? streams.hot <= streams.cold : streams.cold < streams.hot;
      return mixedIsLeast ? leastMixed(ntu, c) : leastUnmixed(ntu, c);
    }
    case 'plate': {
      if (one.hotPasses === one.coldPasses) return countercurrent(ntu, c);
      if (!isKnown(one)) return Number.NaN;
      const ua = ntu * leastOf(streams);
      return one.hotPasses === 1
        ? onePassToTwo(ua, streams.hot, streams.cold)
        : onePassToTwo(ua, streams.cold, streams.hot);
    }
  }
}

const MOST_NTU = 300;

/** Transfer units for a share of the greatest duty; null where the arrangement can't reach it. */
export function ntuOf(one: Arrangement, effectiveness: number, streams: Streams): number | null {
  if (effectiveness === 0) return 0;
  if (!(effectiveness > 0 && effectiveness < 1)) return null;
  // Some rise, then fall again: the first place that reaches it is meant.
  let low = 0;
  let high = 1e-6;
  while (effectivenessOf(one, high, streams) < effectiveness) {
    low = high;
    high *= 1.15;
    if (high > MOST_NTU) return null;
  }
  for (let halve = 0; halve < 200; halve += 1) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (effectivenessOf(one, middle, streams) < effectiveness) low = middle;
    else high = middle;
  }
  const found = (low + high) / 2;
  return Number.isFinite(effectivenessOf(one, found, streams)) ? found : null;
}

/** K: of the ends as for counterflow (as for parallel flow there); null where they cross. */
export function meanDifference(kind: Arrangement['kind'], temperatures: Temperatures) {
  const { hotIn, hotOut, coldIn, coldOut } = temperatures;
  const [a, b] =
    kind === 'parallel' ? [hotIn - coldIn, hotOut - coldOut] : [hotIn - coldOut, hotOut - coldIn];
  if (!(a > 0 && b > 0)) return null;
  const ratio = a / b;
  // Where the ends are all but alike the logarithm loses its digits.
  if (Math.abs(ratio - 1) < 1e-6) return (a + b) / 2;
  return (a - b) / Math.log(ratio);
}

export type Temperatures = {
  readonly hotIn: number;
  readonly hotOut: number;
  readonly coldIn: number;
  readonly coldOut: number;
};
