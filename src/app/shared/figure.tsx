// A figure with its unit; tapped, it opens its working: formula, inputs, where each came from.

import { useId, useState } from 'react';
import { Button } from 'react-aria-components/Button';
import type { Quantity, Source, Working } from '../../quantity/types.ts';

export function sourceWords(source: Source): string {
  switch (source.kind) {
    case 'published':
      return `published: ${source.title}, ${source.edition}, ${source.place}`;
    case 'issued':
      return `issued by ${source.authority}, issue ${source.issue}, ${source.date}`;
    case 'from memory':
      return `from memory: ${source.of}`;
    case 'computed':
      return `computed by ${source.by}`;
    case 'measured':
      return `measured: ${source.instrument}`;
    case 'entered':
      return `entered: ${source.by}`;
    default:
      return source.kind;
  }
}

export function WorkingTable({ working }: { readonly working: Working }) {
  if (working.length === 0) return <p className="small">No working: this is counted or typed.</p>;
  return (
    <table className="working">
      <thead>
        <tr>
          <th scope="col">Row</th>
          <th scope="col">Worked out</th>
          <th scope="col">From</th>
        </tr>
      </thead>
      <tbody>
        {working.map((row) => (
          <tr key={row.symbol}>
            <th scope="row">{row.symbol}</th>
            <td>
              {row.text}
              <br />
              {row.expression} = <b>{row.value}</b> {row.unit}
            </td>
            <td>{sourceWords(row.source)}</td>
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

const UNITS: Readonly<Record<string, string>> = { min: 'min', h: 'h', kg: 'kg', '1': '' };

export function Figure({ name, value, unit = '', working, field }: FigureProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const shown = (
    <>
      <span className="figure-value">
        <b data-figure={field}>{value}</b> {UNITS[unit] ?? unit}
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
        {shown} <span className="figure-open">{open ? 'put the working away' : 'working'}</span>
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
