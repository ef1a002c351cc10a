// Small choices kept on this device: who holds it, which palette, language and units.

import { useCallback, useSyncExternalStore } from 'react';

/** A private window may refuse to keep anything; the choice then lasts as long as the page. */
function read(key: string): string | null {
  try {
    return window.localStorage.getItem(key);
  } catch {
    return null;
  }
}

function write(key: string, value: string): void {
  try {
    window.localStorage.setItem(key, value);
  } catch {
    // Said above: nothing else depends on it.
  }
}

const now = new Map<string, string | null>();
const listeners = new Set<() => void>();

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function kept(key: string): string | null {
  const value = now.get(key);
  if (value !== undefined) return value;
  const first = read(key);
  now.set(key, first);
  return first;
}

/** What is kept, asked once; a screen that must follow it uses the hook below. */
export const keptNow = (name: string, start: string): string => kept(`boxup.${name}`) ?? start;

/** Two places on one screen that keep the same choice show the same. */
export function useKept(name: string, start: string): [string, (value: string) => void] {
  const key = `boxup.${name}`;
  const value = useSyncExternalStore(subscribe, () => kept(key)) ?? start;
  const keep = useCallback(
    (next: string) => {
      write(key, next);
      now.set(key, next);
      for (const listener of listeners) listener();
    },
    [key],
  );
  return [value, keep];
}
