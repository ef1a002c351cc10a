// A seeded stream of chance, and the mean, spread and quantiles of what is drawn with it.

/** Mulberry32: small, quick, the same everywhere; its stream is fixed by the seed. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Standard normal deviates from a stream (polar method of Marsaglia), two at a time. */
export function normals(next: () => number): () => number {
  let kept: number | null = null;
  return () => {
    if (kept !== null) {
      const other = kept;
      kept = null;
      return other;
    }
    let [x, y, square] = [0, 0, 0];
    do {
      x = 2 * next() - 1;
      y = 2 * next() - 1;
      square = x * x + y * y;
    } while (square >= 1 || square === 0);
    const scale = Math.sqrt((-2 * Math.log(square)) / square);
    kept = y * scale;
    return x * scale;
  };
}

/** Mean and sample standard deviation (n − 1). */
export function meanAndSd(values: ArrayLike<number>): { mean: number; sd: number } {
  const count = values.length;
  let sum = 0;
  for (let at = 0; at < count; at += 1) sum += values[at] ?? 0;
  const mean = sum / count;
  let squares = 0;
  for (let at = 0; at < count; at += 1) squares += ((values[at] ?? 0) - mean) ** 2;
  return { mean, sd: count > 1 ? Math.sqrt(squares / (count - 1)) : 0 };
}

/** The value at a rank, found without sorting all; it reorders what it is given. */
function valueAtRank(values: Float64Array, rank: number): number {
  let from = 0;
  let to = values.length - 1;
  while (from < to) {
    const pivot = values[(from + to) >>> 1] ?? 0;
    let left = from;
    let right = to;
    while (left <= right) {
      while ((values[left] ?? 0) < pivot) left += 1;
      while ((values[right] ?? 0) > pivot) right -= 1;
      if (left <= right) {
        const held = values[left] ?? 0;
        values[left] = values[right] ?? 0;
        values[right] = held;
        left += 1;
        right -= 1;
      }
    }
    if (rank <= right) to = right;
    else if (rank >= left) from = left;
    else break;
  }
  return values[rank] ?? 0;
}

/** Between the two nearest ranks, in proportion. */
export function quantile(values: Float64Array, share: number): number {
  const exact = share * (values.length - 1);
  const below = Math.floor(exact);
  const low = valueAtRank(values, below);
  if (exact === below) return low;
  // What stands after a rank is not below it: the next in order is the least of that.
  let next = Number.POSITIVE_INFINITY;
  for (let at = below + 1; at < values.length; at += 1) next = Math.min(next, values[at] ?? next);
  return low + (exact - below) * (next - low);
}
