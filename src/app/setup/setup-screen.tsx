// Set this phone up: language, light, units, and the size of its controls.

import { isLanguage, LANGUAGES } from '../../words/words.ts';
import { Choice } from '../shared/controls.tsx';
import { PaletteSwitch } from '../shared/palette.tsx';
import { useLanguage, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';

export function SetupScreen() {
  const { sheet, setup: w } = useWords();
  const [language, choose] = useLanguage();
  return (
    <Sheet title={sheet.setUp}>
      <Choice
        label={w.language}
        value={language}
        onChange={choose}
        choices={Object.keys(LANGUAGES)}
        say={(each) => (isLanguage(each) ? LANGUAGES[each] : each)}
      />
      <PaletteSwitch />
    </Sheet>
  );
}
