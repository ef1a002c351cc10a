// The open list of a job, worked out from its ledger: one entry a thing, open or made good.

import { closedBy, type Ledger, roundsOf, tallied, unclosed } from './ledger.ts';
import { everything, type Said } from './said.ts';
import { wording } from './things.ts';
import type { Entry } from './types.ts';

/** Entries in the order in which they were opened; `facts` word them, from the pack in force. */
export function entriesOf(ledger: Ledger, facts: Said['facts']): readonly Entry[] {
  const rows = [...ledger.accounts].flatMap(([thing, account]) => {
    const last = account.opened.at(-1);
    const first = account.opened[0];
    if (last === undefined || first === undefined) return [];
    const open = unclosed(ledger, thing);
    // What was put aside first and taken off later is off: the last undoing words the entry.
    const shown = open.at(-1) ?? last;
    const closers = open.length > 0 ? [] : (closedBy(ledger, thing, last.said, everything) ?? []);
    const { act, body } = shown.said;
    const openedBy = (open[0] ?? last).said.act.hash;
    const worded = wording(shown.opening, facts ?? shown.said.facts, { ...body, kind: act.kind });
    const since = open.length > 0 ? open.map((o) => o.said) : [last.said];
    const entry: Entry = {
      thing,
      ...worded,
      kind: shown.opening.kind,
      openedBy,
      closedBy: closers.map((c) => c.act.hash),
      open: open.length > 0,
      ...(shown.opening.kind === 'joint' ? { tally: tallyOf(ledger, thing, since, facts) } : {}),
    };
    return [{ entry, at: first.said.index }];
  });
  // Entries that one act opens stand in the order of the table of kinds; the sort is stable.
  return rows.sort((a, b) => a.at - b.at).map((r) => r.entry);
}

function tallyOf(ledger: Ledger, thing: string, since: readonly Said[], facts: Said['facts']) {
  const known = facts ?? since[0]?.facts ?? null;
  return Object.fromEntries(
    roundsOf(thing, known).map((round) => {
      const holes = tallied(ledger, thing, round, since, everything);
      return [round, [...holes].sort(byLabel)];
    }),
  );
}

const byLabel = (a: string, b: string): number => Number(a) - Number(b) || (a < b ? -1 : 1);
