// A bank card laid on the screen tells its true size: two lines, and buttons that move the lower.

import { useState } from 'react';
import { cardPx, controlSizes, firstGuess, withCard } from '../../drawing/card.ts';
import { Plain } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { useScale } from '../shared/scale.tsx';

const MOVES = [10, 1] as const;

export function Calibrate() {
  const { setup: w } = useWords();
  const [kept, keep] = useScale();
  const [scale, setScale] = useState(kept ?? firstGuess(window.innerWidth));
  const length = cardPx(scale);
  return (
    <section aria-labelledby="size-head" data-scale={kept ?? ''}>
      <h2 id="size-head">{w.size}</h2>
      <p data-measured>
        {kept === null
          ? w.notMeasured
          : w.measured((controlSizes(kept).mainPx / kept).toFixed(1), kept.toFixed(2))}
      </p>
      <p>{w.layCard}</p>
      <p className="small">{w.card}</p>
      <p className="acts-row">
        {MOVES.map((px) => (
          <Plain key={px} onPress={() => setScale(withCard(scale, px))} label={w.longerBy(px)}>
            {w.longer(px)}
          </Plain>
        ))}
        {MOVES.toReversed().map((px) => (
          <Plain key={px} onPress={() => setScale(withCard(scale, -px))} label={w.shorterBy(px)}>
            {w.shorter(px)}
          </Plain>
        ))}
      </p>
      <div className="card-frame" style={{ height: `${length}px` }} data-card={length}>
        <p className="small" role="status">
          {w.frame(length)}
        </p>
      </div>
      <p className="acts-row">
        <Plain onPress={() => keep(scale)}>{w.fits}</Plain>
        {kept === null ? null : <Plain onPress={() => keep(null)}>{w.forget}</Plain>}
      </p>
    </section>
  );
}
