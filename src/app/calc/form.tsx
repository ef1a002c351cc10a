// The fields of one calculation, drawn from its schema; each figure in the unit the person picks.

import { unitOf, unitsLike } from '../../quantity/units.ts';
import { Pick, Plain, Field as TextField } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { emptyOf, type Field, joinFigure, type Row, splitFigure, wayOf } from './fields.ts';

type EditorProps = {
  readonly field: Field;
  readonly label: string;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
};

export function Editor(props: EditorProps) {
  const { field, label, value, onChange } = props;
  const w = useWords().calcForm;
  switch (field.kind) {
    case 'figure':
      return <FigureField {...props} unit={field.unit} />;
    case 'choice':
      return (
        <Pick
          label={label}
          value={value === undefined ? '' : String(value)}
          onChange={(next) => onChange(next === '' ? undefined : next)}
          options={field.options.map((name) => ({ id: name, name }))}
          empty={w.notSaid}
        />
      );
    case 'yesno':
      return (
        <Pick
          label={label}
          value={value === true ? 'yes' : value === false ? 'no' : ''}
          onChange={(next) => onChange(next === '' ? undefined : next === 'yes')}
          options={[
            { id: 'yes', name: w.yes },
            { id: 'no', name: w.no },
          ]}
          empty={w.notSaid}
        />
      );
    case 'group':
      return <Group rows={field.rows} label={label} value={value} onChange={onChange} />;
    case 'list':
      return <List {...props} of={field.of} />;
    case 'either':
      return <Either {...props} ways={field.ways} />;
    case 'number':
      return (
        <TextField
          label={label}
          value={value === undefined ? '' : String(value)}
          onChange={(text) => onChange(numberOf(text))}
        />
      );
    case 'free':
      return <FreeField {...props} />;
    default:
      return (
        <TextField
          label={label}
          value={value === undefined ? '' : String(value)}
          onChange={(text) => onChange(text === '' ? undefined : text)}
        />
      );
  }
}

/** What is no number yet stays as it was typed; the calculation says what is wrong with it. */
const numberOf = (text: string): unknown => {
  if (text.trim() === '') return undefined;
  return /^[-+]?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : text;
};

function FigureField({ label, value, onChange, unit }: EditorProps & { readonly unit: string }) {
  const w = useWords().calcForm;
  const typed = splitFigure(value, unit);
  const own = unitOf(unit);
  const units = own === undefined ? [] : unitsLike(own);
  const chosen = unitOf(typed.unit)?.code ?? typed.unit;
  const change = (amount: string, next: string) =>
    onChange(joinFigure({ amount, unit: next }, unit));
  return (
    <div className="figure-field">
      <TextField label={label} value={typed.amount} onChange={(text) => change(text, typed.unit)} />
      {units.length < 2 || unit === '1' ? (
        <span className="unit">{own?.symbol ?? unit}</span>
      ) : (
        <select
          aria-label={w.unitOf(label)}
          value={chosen}
          onChange={(event) => change(typed.amount, event.target.value)}
        >
          {units.map((each) => (
            <option key={each.code} value={each.code}>
              {each.symbol || each.code}
            </option>
          ))}
        </select>
      )}
    </div>
  );
}

type GroupProps = {
  readonly rows: readonly Row[];
  readonly label: string;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
};

export function Group({ rows, label, value, onChange }: GroupProps) {
  const now: Readonly<Record<string, unknown>> =
    typeof value === 'object' && value !== null ? { ...value } : {};
  const change = (name: string, next: unknown) => {
    const { [name]: _, ...rest } = now;
    onChange(next === undefined ? rest : { ...rest, [name]: next });
  };
  return (
    <fieldset className="calc-group">
      {label === '' ? null : <legend>{label}</legend>}
      {rows.map((row) => (
        <GroupRow key={row.name} row={row} value={now[row.name]} onChange={change} />
      ))}
    </fieldset>
  );
}

type GroupRowProps = {
  readonly row: Row;
  readonly value: unknown;
  readonly onChange: (name: string, value: unknown) => void;
};

/** A group or list that nobody needs is out of the way until it is wanted. */
function GroupRow({ row, value, onChange }: GroupRowProps) {
  const w = useWords().calcForm;
  const { name, field, needed } = row;
  const label = wordsOf(name);
  const large = field.kind === 'group' || field.kind === 'list' || field.kind === 'either';
  if (large && value === undefined && !needed) {
    return (
      <p>
        <Plain onPress={() => onChange(name, emptyOf(field))}>{w.add(label)}</Plain>
      </p>
    );
  }
  return (
    <div className="calc-row" data-field={name}>
      <Editor field={field} label={label} value={value} onChange={(next) => onChange(name, next)} />
      {row.help === null ? null : <p className="small">{row.help}</p>}
      {large && !needed ? (
        <Plain onPress={() => onChange(name, undefined)}>{w.leaveOut(label)}</Plain>
      ) : null}
    </div>
  );
}

/** `clampNeeded` → `Clamp needed`: the names of the contract, as words. */
export const wordsOf = (name: string): string => {
  const spaced = name.replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();
  return spaced.charAt(0).toUpperCase() + spaced.slice(1);
};

function List(props: EditorProps & { readonly of: Field }) {
  const { label, value, onChange, of } = props;
  const w = useWords().calcForm;
  const rows: readonly unknown[] = Array.isArray(value) ? value : [];
  const put = (at: number, next: unknown) =>
    onChange(rows.map((each, i) => (i === at ? (next ?? '') : each)));
  return (
    <fieldset className="calc-group">
      <legend>{label}</legend>
      {rows.map((each, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other name than their place
        <div key={i} className="calc-row">
          <Editor
            field={of}
            label={w.row(label, i + 1)}
            value={each}
            onChange={(next) => put(i, next)}
          />
          <Plain onPress={() => onChange(rows.filter((_, at) => at !== i))}>
            {w.leaveOut(w.row(label, i + 1))}
          </Plain>
        </div>
      ))}
      <Plain onPress={() => onChange([...rows, emptyOf(of)])}>{w.another(label)}</Plain>
    </fieldset>
  );
}

type EitherProps = EditorProps & {
  readonly ways: readonly { readonly name: string; readonly field: Field }[];
};

function Either({ label, value, onChange, ways }: EitherProps) {
  const w = useWords().calcForm;
  const at = wayOf(ways, value);
  const way = ways[at];
  return (
    <div className="calc-either">
      <Pick
        label={w.givenAs(label)}
        value={String(at)}
        onChange={(next) => {
          const chosen = ways[Number(next)];
          onChange(chosen === undefined ? undefined : emptyOf(chosen.field));
        }}
        options={ways.map(({ name }, i) => ({ id: String(i), name }))}
      />
      {way === undefined || way.field.kind === 'fixed' ? null : (
        <Editor field={way.field} label={label} value={value} onChange={onChange} />
      )}
    </div>
  );
}

/** What no field fits is typed as JSON. */
function FreeField({ label, value, onChange }: EditorProps) {
  const text = value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value);
  const read = (typed: string): unknown => {
    try {
      return JSON.parse(typed);
    } catch {
      return typed === '' ? undefined : typed;
    }
  };
  return <TextField label={label} value={text} onChange={(typed) => onChange(read(typed))} />;
}
