// Issued values in lines of text: a sheet, what changed, where one is used.

import type { IssuedValue, Machine } from '../plant/types.ts';
import type { Use } from '../record/values-used.ts';
import { monthsBetween, type Standing, standing } from '../values/confirm.ts';
import { isIncomplete, issuedText, type ValueChange } from '../values/issue.ts';

export type SheetInForce = {
  readonly sheet: string;
  readonly issue: string;
  readonly date: string;
  readonly authority: string;
  readonly standing: Standing;
  readonly values: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: IssuedValue['kind'];
    readonly shown: string | null;
    readonly scope: string | null;
    readonly threadCondition: string | null;
    readonly incomplete: boolean;
    readonly was: IssuedValue['supersedes'] | null;
    readonly why: string | null;
    readonly machines: readonly string[];
  }[];
};

/** Values by the sheet they stand on; one that several machines share is listed once. */
export function sheetsInForce(machines: readonly Machine[], on: string): readonly SheetInForce[] {
  const sheets = new Map<string, Map<string, { value: IssuedValue; machines: string[] }>>();
  for (const machine of machines)
    for (const value of Object.values(machine.values)) {
      const key = `${value.sheet} ${value.issue}`;
      const values = sheets.get(key) ?? new Map();
      const held = values.get(value.id) ?? { value, machines: [] };
      held.machines.push(machine.id);
      values.set(value.id, held);
      sheets.set(key, values);
    }
  return [...sheets.values()].flatMap((values): SheetInForce[] => {
    const [first] = values.values();
    if (first === undefined) return [];
    const { sheet, issue, date, authority } = first.value;
    return [
      {
        sheet,
        issue,
        date,
        authority,
        standing: standing(first.value, on),
        values: [...values.values()].map(({ value, machines: own }) => ({
          id: value.id,
          name: value.name,
          kind: value.kind,
          shown: issuedText(value),
          scope: value.scope ?? null,
          threadCondition: value.threadCondition ?? null,
          incomplete: isIncomplete(value),
          was: value.supersedes ?? null,
          why: value.why ?? null,
          machines: own,
        })),
      },
    ];
  });
}

export function sheetLines(sheet: SheetInForce, on: string): readonly string[] {
  const { last, by, until, over } = sheet.standing;
  const who = by === null ? '' : ` by ${by}`;
  const age = `last confirmed ${last}${who}, ${monthsBetween(last, on)} months ago`;
  const stands =
    until === null ? '' : over ? `; IT STOOD UNTIL ${until}` : `; stands until ${until}`;
  return [
    `${sheet.sheet}, issue ${sheet.issue} of ${sheet.date}, ${sheet.authority}; ${age}${stands}`,
    ...sheet.values.map((v) => {
      const threads = v.threadCondition === null ? '' : ` · threads ${v.threadCondition}`;
      const lacks = v.incomplete ? ' · INCOMPLETE: no thread condition issued' : '';
      const table = v.scope === 'general table' ? ' · general table' : '';
      const was = v.was ? ` · was ${v.was.value} in issue ${v.was.issue}` : '';
      const figure = v.shown ?? 'NO VALUE STATED';
      return `  ${figure}  ${v.id}  ${v.name}${threads}${lacks}${table}${was}`;
    }),
    '',
  ];
}

const figure = (shown: string | null, condition: string | null): string =>
  shown === null ? '–' : condition === null ? shown : `${shown} (${condition})`;

export const changeLines = (changes: readonly ValueChange[]): readonly string[] =>
  changes.map((c) => {
    const was = figure(c.was, c.wasCondition);
    const is = figure(c.is, c.isCondition);
    const why = c.why ?? 'no reason given';
    return `  ${c.change}  ${c.id}  ${c.name}: was ${was} → is ${is}; ${why}`;
  });

export const linesOfUses = (uses: readonly Use[]): readonly string[] =>
  uses.map((u) => {
    const state = u.job === null ? 'pack, not begun' : u.closed ? 'closed job' : 'open job';
    const now =
      u.now === null
        ? 'not replaced as far as the record knows'
        : `SUPERSEDED: ${u.now} in issue ${u.nowIssue}`;
    return `  ${state}  ${u.title}  ${u.thing}: ${u.shown}, issue ${u.issue ?? 'none'}; ${now}`;
  });
