// Small choices kept on this device: who holds it, and which palette.

import { useCallback, useState } from 'react';

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

export function useKept(name: string, start: string): [string, (value: string) => void] {
  const key = `boxup.${name}`;
  const [value, setValue] = useState(() => read(key) ?? start);
  const keep = useCallback(
    (next: string) => {
      write(key, next);
      setValue(next);
    },
    [key],
  );
  return [value, keep];
}
