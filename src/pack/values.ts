// Issued values as a pack shows them: as issued, with origin, issue, date and thread condition.

import type { Joint } from '../plant/schema.ts';
import type { IssuedValue, Machine } from '../plant/types.ts';
import type { Source } from '../quantity/types.ts';
import { issuedText } from '../values/issue.ts';
import { isThreaded } from './joint-shape.ts';
import type { ShownValue } from './types.ts';

export const shownValue = (machine: Machine, id: string, name: string): ShownValue => {
  const value = machine.values[id];
  if (value === undefined) return noValue(id, name);
  return {
    id,
    name: value.name,
    shown: issuedText(value),
    origin: value.scope === 'general table' ? 'general table' : 'issued for this joint',
    issue: value.issue,
    date: value.date,
    authority: value.authority,
    threadCondition: value.threadCondition ?? null,
    was: value.supersedes ?? null,
    why: value.why ?? null,
    source: sourceOf(value),
  };
};

export const noValue = (id: string, name: string): ShownValue => ({
  id,
  name,
  shown: null,
  origin: 'none',
  issue: null,
  date: null,
  authority: null,
  threadCondition: null,
  was: null,
  why: null,
  source: null,
});

const sourceOf = (value: IssuedValue): Source => ({
  kind: 'issued',
  authority: value.authority,
  issue: value.issue,
  date: value.date,
});

/** The tightening values of a joint, one a kind of fastener; none stated shows as none. */
export const tighteningValues = (machine: Machine, joint: Joint): ShownValue[] => {
  const rows = Object.entries(joint.fasteners ?? {}).filter(([, f]) => isThreaded(f));
  return rows.map(([id, f]) =>
    f.tightening === undefined
      ? noValue(`${joint.name}: ${id}`, `${joint.name}, ${f.count} × ${f.thread ?? id}`)
      : shownValue(machine, f.tightening, joint.name),
  );
};

/** A share of an issued figure as the round wants it, in the unit it was issued in. */
export const shareOf = (shown: string, share: number): string | null => {
  const match = /^\s*(\d+(?:\.\d+)?)\s*(\S.*)$/.exec(shown);
  if (match === null) return null;
  const figure = Number(match[1]) * share;
  return `${Number(figure.toPrecision(3))} ${match[2]}`;
};

/** The unit of an issued figure, for a reading that is compared with it. */
export const unitOf = (value: IssuedValue | undefined): string | null => {
  const text = value?.value ?? value?.min ?? value?.max;
  const match = /^\s*[-+]?\d+(?:\.\d+)?\s*(\S.*)$/.exec(text ?? '');
  return match?.[1] ?? value?.unit ?? null;
};
