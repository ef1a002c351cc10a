// Sums of powers, as a figure and as the arithmetic a working shows: both from the same terms.

export type Term = readonly [factor: number, power: number];

/** Σ factor × base^power, the powers ascending from nought and few: by repeated multiplication. */
export function powerSum(terms: readonly Term[], base: number): number {
  let sum = 0;
  for (const [factor, power] of terms) sum += factor * base ** power;
  return sum;
}

/** The same as arithmetic over a symbol. */
export function powerSumText(terms: readonly Term[], symbol: string): string {
  const parts = terms.map(([factor, power]) => {
    if (power === 0) return String(factor);
    return `${factor}*${symbol}${power === 1 ? '' : `^${power}`}`;
  });
  return parts.length === 0 ? '0' : parts.join('+').replaceAll('+-', '-');
}
