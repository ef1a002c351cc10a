// Handing over the watch: what was open then, and what the relief has since seen at the machine.

import { type Ledger, unclosed } from './ledger.ts';
import { type Said, viewOf } from './said.ts';
import type { HandedOver } from './types.ts';

/** The last handing over; a look at the machine counts when it was made knowing of it. */
export function handedOverIn(all: readonly Said[], ledger: Ledger): HandedOver | null {
  const last = all.filter((s) => s.act.kind === 'handed-over').at(-1);
  if (last === undefined) return null;
  const view = viewOf(last, ledger.isAncestor);
  const looks = all.filter(
    (s) => s.act.kind === 'seen-at-machine' && ledger.isAncestor(last.index, s.index),
  );
  const open = [...ledger.accounts.keys()].filter((t) => unclosed(ledger, t, view).length > 0);
  const { hash, by, at } = last.act;
  return {
    act: hash,
    by,
    to: String(last.body.to),
    at,
    list: open.map((thing) => ({
      thing,
      seenBy: looks.find((l) => l.body.thing === thing)?.act.by ?? null,
    })),
  };
}
