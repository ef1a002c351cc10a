// Sun, shade, lamp or red lamp: as the device is set, or as the person holding it wants.

import { useEffect } from 'react';
import { Choice } from './controls.tsx';
import { useKept } from './kept.ts';
import { useWords } from './say.tsx';

const PALETTES = ['as the device', 'sun', 'shade', 'lamp', 'red lamp'] as const;

export function PaletteSwitch() {
  const { sheet: w } = useWords();
  const [palette, setPalette] = useKept('palette', PALETTES[0]);
  useEffect(() => {
    const root = document.documentElement;
    if (palette === PALETTES[0]) delete root.dataset.palette;
    else root.dataset.palette = palette.replace(' ', '-');
  }, [palette]);
  const named = (choice: string) => PALETTES.find((each) => each === choice);
  const say = (choice: string) => w.palettes[named(choice) ?? PALETTES[0]];
  return (
    <Choice label={w.light} value={palette} onChange={setPalette} choices={PALETTES} say={say} />
  );
}
