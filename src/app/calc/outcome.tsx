// What a calculation gave: its verdict in words first, each figure in the unit the person picks.

import { AUTHORITY_LINE } from '../../quantity/authority.ts';
import { formatNumber } from '../../quantity/quantity.ts';
import type { Quantity } from '../../quantity/types.ts';
import { convert, convertSpan, unitOf, unitsLike } from '../../quantity/units.ts';
import { WorkingTable } from '../shared/figure.tsx';
import { useKept } from '../shared/kept.ts';
import { useWords } from '../shared/say.tsx';
import { wordsOf } from './form.tsx';
import { isWorking } from './result.tsx';

type Result = Readonly<Record<string, unknown>>;

const APART = ['working', 'cautions', 'notWorkedOut', 'authority', 'id'];
const FIRST = ['verdict', 'decision', 'usable', 'isolable', 'feasible'];

export function Outcome({ result }: { readonly result: Result }) {
  const w = useWords().calcForm;
  const names = Object.keys(result).filter((name) => !APART.includes(name));
  const first = [
    ...names.filter((name) => FIRST.includes(name)).map((name) => [name, result[name]] as const),
    ...names.flatMap((name) => verdictIn(name, result[name])),
  ];
  const rest = names.filter((name) => !FIRST.includes(name));
  const cautions = Array.isArray(result.cautions) ? result.cautions.map(String) : [];
  return (
    <section aria-labelledby="result-head">
      <h2 id="result-head">{w.result}</h2>
      {first.map(([name, value]) => (
        <p key={name} className="verdict" data-verdict={name}>
          {name === 'verdict' || name === 'decision' ? '' : `${wordsOf(name)}: `}
          <b>{wordOf(value)}</b>
        </p>
      ))}
      {cautions.length === 0 ? null : (
        <ul className="calc-cautions" aria-label={w.cautions}>
          {cautions.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
      <Rows value={Object.fromEntries(rest.map((name) => [name, result[name]]))} />
      <NotWorkedOut rows={result.notWorkedOut} />
      <p className="small" data-with-result>
        {AUTHORITY_LINE}
      </p>
      {isWorking(result.working) && result.working.length > 0 ? (
        <details>
          <summary>{w.workingOut}</summary>
          <WorkingTable working={result.working} />
        </details>
      ) : null}
      <details>
        <summary>{w.wholeResult}</summary>
        <pre data-result>{JSON.stringify(result, null, 2)}</pre>
      </details>
    </section>
  );
}

/** A verdict on one part of the answer stands with the others, before the figures. */
const verdictIn = (name: string, value: unknown): (readonly [string, unknown])[] =>
  isObject(value) && typeof value.verdict === 'string' ? [[name, value.verdict]] : [];

const wordOf = (value: unknown): string =>
  value === true ? 'yes' : value === false ? 'no' : String(value);

const isObject = (value: unknown): value is Result =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isQuantity = (value: unknown): value is Quantity =>
  isObject(value) && typeof value.value === 'number' && typeof value.unit === 'string';

function Rows({ value }: { readonly value: Result }) {
  return (
    <dl className="result">
      {Object.entries(value)
        .filter(([, each]) => each !== null)
        .map(([name, each]) => (
          <div key={name} data-output={name}>
            <dt>{wordsOf(name)}</dt>
            <dd>
              <Shown value={each} />
            </dd>
          </div>
        ))}
    </dl>
  );
}

function Shown({ value }: { readonly value: unknown }) {
  const w = useWords().calcForm;
  if (isQuantity(value)) return <QuantityShown quantity={value} />;
  if (typeof value === 'number') return <b>{formatNumber(value, 4)}</b>;
  if (isObject(value)) return <Rows value={value} />;
  if (!Array.isArray(value)) return <b>{wordOf(value)}</b>;
  if (value.length === 0) return <>{w.nothing}</>;
  if (value.every((each) => typeof each !== 'object' || each === null))
    return <b>{value.map(wordOf).join(', ')}</b>;
  return (
    <ol>
      {value.map((each, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other name than their place
        <li key={i}>
          <Shown value={each} />
        </li>
      ))}
    </ol>
  );
}

/** The unit is the person's: kept by kind of figure, not by field. */
function QuantityShown({ quantity }: { readonly quantity: Quantity }) {
  const w = useWords().calcForm;
  const [kept, keep] = useKept(`unit.${quantity.unit}`, quantity.unit);
  const own = unitOf(quantity.unit);
  const units = own === undefined ? [] : unitsLike(own);
  const chosen = units.find((each) => each.code === kept) ?? own;
  if (own === undefined || chosen === undefined)
    return (
      <b>
        {formatNumber(quantity.value, 4)} {quantity.unit}
      </b>
    );
  const value = convert(quantity.value, own.code, chosen.code);
  const spread = quantity.u === undefined ? null : convertSpan(quantity.u, own.code, chosen.code);
  return (
    <span className="quantity">
      <b>{formatNumber(value, 4)}</b>{' '}
      {spread === null || spread === 0 ? null : w.uncertain(formatNumber(2 * spread, 2))}{' '}
      {units.length < 2 || own.code === '1' ? (
        (chosen.symbol ?? chosen.code)
      ) : (
        <select
          aria-label={w.unitOf(chosen.symbol || chosen.code)}
          value={chosen.code}
          onChange={(event) => keep(event.target.value)}
        >
          {units.map((each) => (
            <option key={each.code} value={each.code}>
              {each.symbol || each.code}
            </option>
          ))}
        </select>
      )}
    </span>
  );
}

function NotWorkedOut({ rows }: { readonly rows: unknown }) {
  const w = useWords().calcForm;
  if (!Array.isArray(rows) || rows.length === 0) return null;
  return (
    <>
      <h3>{w.notWorkedOut}</h3>
      <ul>
        {rows.filter(isObject).map((row) => (
          <li key={String(row.output)}>
            {w.needs(
              wordsOf(String(row.output)),
              (Array.isArray(row.needs) ? row.needs : [])
                .map((each) => wordsOf(String(each)).toLowerCase())
                .join(', '),
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
