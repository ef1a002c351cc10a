// Set this phone up: language and units of the person who holds it, its light, its true size.

import { OWN_UNITS, type OwnDimension } from '../../quantity/own-units.ts';
import { isLanguage, LANGUAGES } from '../../words/words.ts';
import { Choice } from '../shared/controls.tsx';
import { PaletteSwitch } from '../shared/palette.tsx';
import { useHolder } from '../shared/person.tsx';
import { to } from '../shared/route.ts';
import { useLanguage, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { useOwnUnits } from '../shared/units.tsx';
import { unitSign } from '../shared/words.ts';
import { Calibrate } from './calibrate.tsx';

export function SetupScreen() {
  const { sheet, setup: w } = useWords();
  const { name } = useHolder();
  const [language, choose] = useLanguage();
  return (
    <Sheet title={sheet.setUp}>
      <p className="small">{name === '' ? w.forAll : w.forWhom(name)}</p>
      <Choice
        label={w.language}
        value={language}
        onChange={choose}
        choices={Object.keys(LANGUAGES)}
        say={(each) => (isLanguage(each) ? LANGUAGES[each] : each)}
      />
      <PaletteSwitch />
      <Units />
      <Calibrate />
      <p>
        <a href={to.log()}>{w.toLog}</a>
      </p>
    </Sheet>
  );
}

/** Nothing is asked or shown in another unit until somebody wants it. */
const AS_ISSUED = 'as-issued';

function Units() {
  const { setup: w } = useWords();
  const [own, choose] = useOwnUnits();
  return (
    <section aria-labelledby="units-head">
      <h2 id="units-head">{w.units}</h2>
      <p className="small">{w.unitsAre}</p>
      {(Object.keys(OWN_UNITS) as OwnDimension[]).map((each) => (
        <Choice
          key={each}
          label={w.dimensions[each]}
          value={own[each] ?? AS_ISSUED}
          onChange={(unit) => choose({ ...own, [each]: unit === AS_ISSUED ? '' : unit })}
          choices={[AS_ISSUED, ...OWN_UNITS[each]]}
          say={(unit) => (unit === AS_ISSUED ? w.asIssued : unitSign(unit))}
        />
      ))}
    </section>
  );
}
