// The scale of this screen, measured with a card and kept on the device: controls are sized by it.

import { useEffect } from 'react';
import { controlSizes, readScale } from '../../drawing/card.ts';
import { useKept } from './kept.ts';

export function useScale(): readonly [number | null, (scale: number | null) => void] {
  const [kept, keep] = useKept('px-per-mm', '');
  return [readScale(kept), (scale) => keep(scale === null ? '' : String(scale))];
}

/** For the whole page: the style sheets read these two. */
export function useControlSizes(): void {
  const [scale] = useScale();
  useEffect(() => {
    const { mainPx, keyPx } = controlSizes(scale);
    document.documentElement.style.setProperty('--main-control', `${mainPx}px`);
    document.documentElement.style.setProperty('--key', `${keyPx}px`);
  }, [scale]);
}
