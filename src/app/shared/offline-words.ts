// What is said about a phone without signal: what is here only, what is missing, what went wrong.

type Unsent = { readonly acts: number; readonly photos: number };

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** Null when the server has everything. */
export function unsentWords({ acts, photos }: Unsent): string | null {
  const parts = [
    ...(acts > 0 ? [counted(acts, 'act')] : []),
    ...(photos > 0 ? [counted(photos, 'photo')] : []),
  ];
  return parts.length === 0 ? null : `${parts.join(' and ')} on this phone only, not yet sent`;
}

export type Means = { readonly secure: boolean; readonly worker: boolean };

/** Null where the browser can start the app without its server. */
export function startWords({ secure, worker }: Means): string | null {
  const open = 'Keep this page open: what is recorded stays on this phone and is sent later.';
  if (!secure) {
    return `No start without signal on this phone: not a secure connection. ${open}`;
  }
  if (!worker) {
    return `No start without signal on this phone: its browser keeps no app. ${open}`;
  }
  return null;
}

/** A browser's error by its name, in words a person can act on. */
export function notKeptWords(error: unknown): string {
  const inner = error instanceof Error && 'inner' in error ? error.inner : null;
  const names = [error, inner].map((each) => (each instanceof Error ? each.name : ''));
  if (names.includes('QuotaExceededError')) {
    return 'this phone is full: free some space, then say it again';
  }
  if (names.some((name) => /^(MissingAPI|OpenFailed|InvalidState|Security)Error$/.test(name))) {
    return 'this browser keeps nothing on this phone: a private window, or storage is turned off';
  }
  const words = error instanceof Error ? error.message : String(error);
  return `this phone could not keep it (${words}): say it again`;
}
