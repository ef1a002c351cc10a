// A photograph taken while something is being written down, kept before it is said.

import { useRef } from 'react';
import { Plain } from '../shared/controls.tsx';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';

type PhotoPickProps = {
  readonly hash: string;
  readonly onKept: (hash: string) => void;
};

export function PhotoPick({ hash, onKept }: PhotoPickProps) {
  const input = useRef<HTMLInputElement>(null);
  const { keepPhoto } = useVessel();
  const { stripping: w } = useWords();
  const keep = async (file: File) => {
    const kept = await keepPhoto(file);
    if (kept !== null) onKept(kept.hash);
  };
  return (
    <div className="field seen-photo">
      {hash === '' ? null : <KeptPhoto hash={hash} alt={w.asFound} />}
      <Plain onPress={() => input.current?.click()}>
        {hash === '' ? w.takePhoto : w.takeAnother}
      </Plain>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={w.photo}
        accept="image/jpeg,image/png"
        capture="environment"
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file !== undefined) void keep(file);
          e.target.value = '';
        }}
      />
    </div>
  );
}
