// What is said about a phone without signal: what is here only, what is missing, what went wrong.

import type { Words } from '../../words/words.ts';

type Unsent = { readonly acts: number; readonly photos: number };

/** Null when the server has everything. */
export function unsentWords({ acts, photos }: Unsent, { offline: w }: Words): string | null {
  const parts = [...(acts > 0 ? [w.acts(acts)] : []), ...(photos > 0 ? [w.photos(photos)] : [])];
  return parts.length === 0 ? null : w.here(parts.join(w.and));
}

export type Means = { readonly secure: boolean; readonly worker: boolean };

/** Null where the browser can start the app without its server. */
export function startWords({ secure, worker }: Means, { offline: w }: Words): string | null {
  if (secure && worker) return null;
  return `${secure ? w.noWorker : w.notSecure} ${w.keepOpen}`;
}

/** A browser's error by its name, in words a person can act on. */
export function notKeptWords(error: unknown, { offline: w }: Words): string {
  const inner = error instanceof Error && 'inner' in error ? error.inner : null;
  const names = [error, inner].map((each) => (each instanceof Error ? each.name : ''));
  if (names.includes('QuotaExceededError')) {
    return w.full;
  }
  if (names.some((name) => /^(MissingAPI|OpenFailed|InvalidState|Security)Error$/.test(name))) {
    return w.keepsNothing;
  }
  const words = error instanceof Error ? error.message : String(error);
  return w.couldNot(words);
}
