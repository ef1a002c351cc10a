// Sun, shade, lamp or red lamp: as the device is set, or as the person holding it wants.

import { useEffect } from 'react';
import { Choice } from './controls.tsx';
import { useKept } from './kept.ts';

const PALETTES = ['as the device', 'sun', 'shade', 'lamp', 'red lamp'] as const;

export function PaletteSwitch() {
  const [palette, setPalette] = useKept('palette', PALETTES[0]);
  useEffect(() => {
    const root = document.documentElement;
    if (palette === PALETTES[0]) delete root.dataset.palette;
    else root.dataset.palette = palette.replace(' ', '-');
  }, [palette]);
  return <Choice label="Light" value={palette} onChange={setPalette} choices={PALETTES} />;
}
