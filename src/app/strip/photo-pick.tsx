// A photograph taken while something is being written down, kept before it is said.

import { Plain } from '../shared/controls.tsx';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { usePhoto } from '../shared/photo-input.tsx';
import { useWords } from '../shared/say.tsx';

type PhotoPickProps = {
  readonly hash: string;
  readonly onKept: (hash: string) => void;
};

export function PhotoPick({ hash, onKept }: PhotoPickProps) {
  const { stripping: w } = useWords();
  const { open, input } = usePhoto(w.photo, (kept) => onKept(kept.hash));
  return (
    <div className="field seen-photo">
      {hash === '' ? null : <KeptPhoto hash={hash} alt={w.asFound} />}
      <Plain onPress={open}>{hash === '' ? w.takePhoto : w.takeAnother}</Plain>
      {input}
    </div>
  );
}
