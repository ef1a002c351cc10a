// A calculation's result as lines: the figure with its unit first, lists and objects under it.

import type { Quantity, Working } from '../../quantity/types.ts';
import { useWords } from '../shared/say.tsx';

export const isWorking = (value: unknown): value is Working =>
  Array.isArray(value) &&
  value.every((row) => typeof row === 'object' && row !== null && 'symbol' in row);

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === 'object' && value !== null && 'value' in value && 'unit' in value;

function words(value: unknown, none: string): string {
  if (value === null) return none;
  if (isQuantity(value))
    return `${value.given ?? value.value} ${value.unit === '1' ? '' : value.unit}`;
  if (typeof value === 'object') return JSON.stringify(value);
  return String(value);
}

export function ResultRows({ result }: { readonly result: Readonly<Record<string, unknown>> }) {
  const { calcSheet: w } = useWords();
  const rows = Object.entries(result).filter(([name]) => name !== 'working');
  return (
    <dl className="result">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <b>{words(value, w.notWorkedOut)}</b>
          </dd>
        </div>
      ))}
    </dl>
  );
}
