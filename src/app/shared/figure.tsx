// A figure with its unit; tapped, it opens its working: formula, inputs, where each came from.

import { useId, useState } from 'react';
import { Button } from 'react-aria-components/Button';
import type { Quantity, Source, Working } from '../../quantity/types.ts';
import type { Words } from '../../words/words.ts';
import { useTold, useWords } from './say.tsx';
import { unitSign } from './words.ts';

export function sourceWords(source: Source, { figures: w }: Words): string {
  switch (source.kind) {
    case 'published':
      return w.published(source.title, source.edition, source.place);
    case 'issued':
      return w.issued(source.authority, source.issue, source.date);
    case 'from memory':
      return w.fromMemory(source.of);
    case 'computed':
      return w.computed(source.by);
    case 'measured':
      return w.measured(source.instrument);
    case 'entered':
      return w.entered(source.by);
    default:
      return w.others[source.kind];
  }
}

export function WorkingTable({ working }: { readonly working: Working }) {
  const w = useWords();
  const told = useTold();
  const { figures } = w;
  if (working.length === 0) return <p className="small">{figures.noWorking}</p>;
  return (
    <table className="working">
      <thead>
        <tr>
          <th scope="col">{figures.row}</th>
          <th scope="col">{figures.workedOut}</th>
          <th scope="col">{figures.from}</th>
        </tr>
      </thead>
      <tbody>
        {working.map((row) => (
          <tr key={row.symbol}>
            <th scope="row">{row.symbol}</th>
            <td>
              {told(row.text)}
              <br />
              {row.expression} = <b>{row.value}</b> {unitSign(row.unit)}
            </td>
            <td>{sourceWords(row.source, w)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type FigureProps = {
  readonly name: string;
  /** Exactly as the core gave it; the browser test compares it. */
  readonly value: string | number;
  readonly unit?: string;
  readonly working?: Working;
  readonly field: string;
};

export function Figure({ name, value, unit = '', working, field }: FigureProps) {
  const [open, setOpen] = useState(false);
  const { figures: w } = useWords();
  const id = useId();
  const shown = (
    <>
      <span className="figure-value">
        <b data-figure={field}>{value}</b> {unitSign(unit)}
      </span>{' '}
      <span className="figure-name">{name}</span>
    </>
  );
  if (working === undefined || working.length === 0) return <p className="figure">{shown}</p>;
  return (
    <div className="figure">
      <Button
        className="figure-button"
        aria-expanded={open}
        aria-controls={id}
        onPress={() => setOpen(!open)}
      >
        {shown} <span className="figure-open">{open ? w.putAway : w.working}</span>
      </Button>
      <div id={id} hidden={!open}>
        <WorkingTable working={working} />
      </div>
    </div>
  );
}

export const quantityFigure = (quantity: Quantity) => ({
  value: quantity.value,
  unit: quantity.unit,
});
