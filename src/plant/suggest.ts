// Which known name was probably meant by a misspelt one.

import { limits } from '../limits.ts';

/** Fewest single-letter changes (one swap of neighbours counts one) from `a` to `b`. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const now = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((last[j] ?? 0) + 1, (now[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) best = Math.min(best, (before[j - 2] ?? 0) + 1);
      now.push(best);
    }
    before = last;
    last = now;
  }
  return last[b.length] ?? 0;
}

/** The nearest known names, none when all are far off. */
export function nearest(got: string, known: Iterable<string>): string[] {
  const most = Math.max(1, Math.floor(got.length / 3));
  const near = [...known]
    .filter((name) => Math.abs(name.length - got.length) <= most)
    .map((name) => ({ name, far: editDistance(got, name) }))
    .filter(({ far }) => far <= most)
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1));
  // Beside a name one letter off, another that is four off was hardly meant.
  const [best] = near;
  return near
    .filter(({ far }) => far <= 2 * (best?.far ?? 0))
    .slice(0, limits.plant.suggestions)
    .map(({ name }) => name);
}

export function didYouMean(got: unknown, known: Iterable<string>): string | undefined {
  if (typeof got !== 'string') return undefined;
  const names = nearest(got, known);
  return names.length === 0 ? undefined : `did you mean ${names.join(' or ')}?`;
}
