// The seals of a pack: short ones first, then each against the stores, and the map by joint.

import { sealMap } from '../../drawing/seal-map.ts';
import type { SealNeed } from '../../pack/seal-types.ts';
import {
  consumableWords,
  doubtLines,
  nearWords,
  needLines,
  needWords,
  restsOn,
  shortLines,
  spareLines,
} from '../../pack/seal-words.ts';
import type { Pack } from '../../pack/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';
import { tallyWidth } from '../shared/width.ts';

export function Seals({ pack }: { readonly pack: Pack }) {
  const { seals: w } = useWords();
  const told = useTold();
  const making = useMaking();
  const { seals } = pack;
  if (seals === undefined || seals.needs.length + seals.spares.length === 0) return null;
  const total = seals.needs.reduce((sum, { count }) => sum + count, 0);
  const words = { ...w, alt: w.mapAlt(total), noSize: w.size };
  const width = tallyWidth();
  return (
    <section aria-labelledby="seals-head">
      <h2 id="seals-head">{w.title}</h2>
      <p className="small">{restsOn(seals, w)}</p>
      <Lines head={w.short} rows={shortLines(seals, w, told)} />
      {seals.needs.map((need) => (
        <OneSeal key={need.thing} need={need} />
      ))}
      <Lines head={w.spares} rows={seals.spares.flatMap((one) => spareLines(one, w, told))} />
      <Lines
        head={w.consumables}
        rows={seals.consumables.map((one) => consumableWords(one, w, told))}
      />
      <Lines head={w.near} rows={seals.near.map((one) => nearWords(one, w, told))} />
      <h3>{w.map}</h3>
      <Drawn drawing={making(() => sealMap(seals.needs, words, { width }))} className="drawn map" />
    </section>
  );
}

function Lines({ head, rows }: { readonly head: string; readonly rows: readonly string[] }) {
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{head}</h3>
      <ul className="ruled-list">
        {[...new Set(rows)].map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </>
  );
}

function OneSeal({ need }: { readonly need: SealNeed }) {
  const { seals: w } = useWords();
  const told = useTold();
  const doubts = doubtLines(need, told);
  return (
    <article className="fastening" data-need={need.thing}>
      <p className="step-value">{needWords(need, w, told)}</p>
      <ul className="small">
        {needLines(need, w, told).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {doubts.length === 0 ? null : (
        <details>
          <summary>{w.notDrawn}</summary>
          <ul className="small">
            {doubts.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </article>
  );
}
