// Sun (paper) or shade (slate): as the device is set, or as the person holding it wants.

import { useEffect } from 'react';
import { Choice } from './controls.tsx';
import { useKept } from './kept.ts';

const PALETTES = ['as the device', 'sun', 'shade'] as const;

export function PaletteSwitch() {
  const [palette, setPalette] = useKept('palette', PALETTES[0]);
  useEffect(() => {
    const root = document.documentElement;
    if (palette === 'sun' || palette === 'shade') root.dataset.palette = palette;
    else delete root.dataset.palette;
  }, [palette]);
  return <Choice label="Light" value={palette} onChange={setPalette} choices={PALETTES} />;
}
