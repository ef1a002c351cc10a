// How many hands are aboard: asked once, when the pack is made or a strip begins.

import { HANDS_ABOARD } from '../../pack/request.ts';
import type { HandsAboard } from '../../pack/types.ts';
import { Choice } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';

type AboardProps = {
  readonly value: HandsAboard | '';
  readonly onChange: (value: HandsAboard | '') => void;
};

export function Aboard({ value, onChange }: AboardProps) {
  const { eyes: w } = useWords();
  return (
    <>
      <Choice
        label={w.handsAboard}
        value={value === '' ? '' : w.aboard[value]}
        onChange={(words) => onChange(HANDS_ABOARD.find((n) => w.aboard[n] === words) ?? '')}
        choices={HANDS_ABOARD.map((n) => w.aboard[n])}
      />
      <p className="small">{w.handsAboardWhy}</p>
    </>
  );
}
