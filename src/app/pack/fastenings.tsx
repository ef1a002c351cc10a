// The fastenings of a pack: each value as issued, what it does to bolt and hole, and the tools.

import type { Fastening } from '../../pack/fastening-types.ts';
import {
  asideLines,
  askLines,
  fasteningLines,
  missingLines,
  toolLines,
} from '../../pack/fastening-words.ts';
import type { Pack } from '../../pack/types.ts';
import { WorkingTable } from '../shared/figure.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';

export function FasteningList({ pack }: { readonly pack: Pack }) {
  const { fastenings: w } = useWords();
  const all = pack.fastenings;
  if (all === undefined || all.list.length === 0) return null;
  const { tools } = all;
  return (
    <section aria-labelledby="fastenings-head">
      <h2 id="fastenings-head">{w.title}</h2>
      {tools === null ? null : (
        <>
          <Lines head={w.missing} rows={missingLines(tools, w)} />
          <Lines head={w.asks} rows={askLines(tools)} />
        </>
      )}
      <Lines head={w.tools} rows={toolLines(tools, w)} />
      {tools === null ? null : <Lines head={w.laidAside} rows={asideLines(tools, w)} />}
      {all.list.map((one) => (
        <OneFastening key={one.id} one={one} />
      ))}
    </section>
  );
}

function Lines({ head, rows }: { readonly head: string; readonly rows: readonly string[] }) {
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{head}</h3>
      <ul className="ruled-list">
        {rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </>
  );
}

function OneFastening({ one }: { readonly one: Fastening }) {
  const { fastenings: w, packSheet } = useWords();
  const told = useTold();
  const making = useMaking();
  const working = one.bands.flatMap((band) => band.working);
  return (
    <article className="fastening" data-fastening={one.id}>
      <p className="step-value">
        <b data-issued>{one.value.shown ?? packSheet.notStated}</b> · {one.jointName},{' '}
        {told(one.what)}
        {one.value.threadCondition === null ? '' : ` · ${one.value.threadCondition}`}
      </p>
      <ul className="small">
        {making(() => fasteningLines(one, w)).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {working.length === 0 ? null : (
        <details>
          <summary>{w.working}</summary>
          {one.bands.map((band) => (
            <WorkingTable key={band.surface} working={band.working} />
          ))}
        </details>
      )}
    </article>
  );
}
