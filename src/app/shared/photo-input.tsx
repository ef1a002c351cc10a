// The camera, or a picture already taken: opened by a control of the screen it stands on.

import { type ReactNode, useRef } from 'react';
import { useVessel } from './replica.tsx';

type Kept = { readonly hash: string; readonly type: string };

/** `input` is put beside the control that calls `open`. */
export function usePhoto(label: string, onKept: (photo: Kept) => void) {
  const input = useRef<HTMLInputElement>(null);
  const { keepPhoto } = useVessel();
  const keep = async (file: File) => {
    const kept = await keepPhoto(file);
    if (kept !== null) onKept(kept);
  };
  const field: ReactNode = (
    <input
      ref={input}
      type="file"
      hidden
      aria-label={label}
      accept="image/jpeg,image/png"
      capture="environment"
      onChange={(e) => {
        const file = e.target.files?.[0];
        if (file !== undefined) void keep(file);
        e.target.value = '';
      }}
    />
  );
  return { open: () => input.current?.click(), input: field };
}
