// What a reading may have been meant to be: a digit wrong, two changed about, a wrong unit.

export type Meant = {
  readonly kind: 'wrong digit' | 'transposed' | 'unit x1000';
  readonly hours: number;
};

/** What stands for "not available" in a stream: all bits set, in seconds, 0.05 h or hours. */
const ALL_BITS = [0xffff_ffff, 0xffff_fffe, 0xffff_fffd, 0x7fff_ffff, 0xffff_ff, 0xffff];
const UNITS = [1 / 3_600, 0.05, 1];

/** Two bytes of whole hours are a likely reading, so only the long ones are told by themselves. */
const TOLD_ALONE = 1e5;

export function isNotAvailable(hours: number | null): boolean {
  if (hours === null) return true;
  return ALL_BITS.some((bits) =>
    UNITS.some((unit) => bits * unit > TOLD_ALONE && Math.abs(hours - bits * unit) < 0.01),
  );
}

/** Every reading that one slip of the pen turns into this one. */
export function meantBy(hours: number): Meant[] {
  const meant: Meant[] = [
    { kind: 'unit x1000', hours: hours / 1_000 },
    { kind: 'unit x1000', hours: hours * 1_000 },
  ];
  const digits = String(Math.floor(hours));
  const part = hours - Math.floor(hours);
  // A nought that came to stand in front is not written: 606 becomes 66.
  const full = `0${digits}`;
  for (let at = 0; at + 1 < full.length; at += 1) {
    const [a, b] = [full[at] ?? '', full[at + 1] ?? ''];
    if (a === b) continue;
    const turned = full.slice(0, at) + b + a + full.slice(at + 2);
    meant.push({ kind: 'transposed', hours: Number(turned) + part });
  }
  for (let place = 1; place <= Math.max(4, digits.length - 1); place += 1) {
    for (let count = -9; count <= 9; count += 1) {
      if (count === 0) continue;
      const other = hours + count * 10 ** place;
      // One place up or down may carry into the next; more than that is one digit for another.
      const one = Math.abs(count) === 1 || oneDigit(digits, String(Math.floor(other)));
      if (other >= 0 && one) meant.push({ kind: 'wrong digit', hours: other });
    }
  }
  return meant;
}

function oneDigit(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  return [...a].filter((digit, at) => digit !== b[at]).length === 1;
}
