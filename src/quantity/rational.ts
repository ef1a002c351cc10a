// Exact fractions, so that a conversion never leaves dust such as 20.000000000000057 °C behind.

/** numerator over denominator; the denominator is positive. */
export type Rational = { readonly n: bigint; readonly d: bigint };

const DECIMAL = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d{1,4}))?$/;

/** The fraction that a decimal text such as `-9.50e3` stands for, or undefined if it is none. */
export function rationalOf(text: string): Rational | undefined {
  const match = DECIMAL.exec(text);
  if (match === null) return undefined;
  const [, sign = '', whole = '', fraction = '', exponent = '0'] = match;
  if (whole === '' && fraction === '') return undefined;
  const digits = BigInt(`${whole}${fraction}`) * (sign === '-' ? -1n : 1n);
  const power = Number(exponent) - fraction.length;
  return power >= 0 ? { n: digits * 10n ** BigInt(power), d: 1n } : over(digits, -power);
}

const over = (n: bigint, power: number): Rational => ({ n, d: 10n ** BigInt(power) });

export const add = (a: Rational, b: Rational): Rational => ({
  n: a.n * b.d + b.n * a.d,
  d: a.d * b.d,
});

export const subtract = (a: Rational, b: Rational): Rational => add(a, { n: -b.n, d: b.d });

export const multiply = (a: Rational, b: Rational): Rational => ({ n: a.n * b.n, d: a.d * b.d });

export function divide(a: Rational, b: Rational): Rational {
  if (b.n === 0n) throw new RangeError('division of a fraction by zero');
  const sign = b.n < 0n ? -1n : 1n;
  return { n: a.n * b.d * sign, d: a.d * b.n * sign };
}

/** The nearest number: thirty digits are written out, and the reading of them is exact enough. */
export function toNumber({ n, d }: Rational): number {
  if (n === 0n) return 0;
  const size = n < 0n ? -n : n;
  const shift = 30 - (size.toString().length - d.toString().length);
  const scaled =
    shift >= 0 ? (size * 10n ** BigInt(shift)) / d : size / (d * 10n ** BigInt(-shift));
  return Number(`${n < 0n ? '-' : ''}${scaled}e${-shift}`);
}
