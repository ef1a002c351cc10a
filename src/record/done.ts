// Which steps are done, in the eyes of whoever asks: a thing undone again is no longer made good.

import { passedOver } from './before.ts';
import { clearCalls, isYes } from './isolation.ts';
import { stepIdOf } from './kinds.ts';
import { concurrent, type Ledger, openingsOf, roundFull, roundOf, unclosed } from './ledger.ts';
import type { Said, View } from './said.ts';
import { isCountedSeal } from './seal-counts.ts';
import { type Looking, lookCounts } from './second-look.ts';

export type Reports = {
  readonly said: readonly Said[];
  readonly ledger: Ledger;
  readonly looking: Looking;
  readonly byStep: ReadonlyMap<string, readonly Said[]>;
};

/** Groups acts by the step they report; one gone past by name reports its step too. */
export function reportsOf(said: readonly Said[], ledger: Ledger, looking: Looking): Reports {
  const byStep = new Map<string, Said[]>();
  for (const s of said)
    for (const key of stepsOf(s)) {
      const list = byStep.get(key);
      if (list === undefined) byStep.set(key, [s]);
      else list.push(s);
    }
  return { said, ledger, looking, byStep };
}

function stepsOf(s: Said): readonly string[] {
  if (s.act.kind === 'cannot-run') return passedOver(s.pack, s.body.thing).map((step) => step.id);
  const id = s.act.kind === 'used-anyway' ? (s.body.step ?? null) : stepIdOf(s.act.kind, s.body);
  return id === null ? [] : [String(id)];
}

/** The act by which a step is done in this view, or null. */
export function doneBy(reports: Reports, step: string, view: View): Said | null {
  const acts = (reports.byStep.get(step) ?? []).filter((s) => view(s.index));
  return acts.findLast((s) => counts(reports, s, acts, view)) ?? null;
}

function counts(reports: Reports, s: Said, acts: readonly Said[], view: View): boolean {
  const { ledger } = reports;
  const thing = String(s.body.thing);
  switch (s.act.kind) {
    case 'used-anyway':
      return !reportsLook(s) || lookCounts(reports.looking, s, view);
    case 'second-look':
      return lookCounts(reports.looking, s, view);
    case 'cannot-run':
      return true;
    case 'people-clear':
      return clearCalls(reports.said, ledger.isAncestor, view).includes(s);
    case 'proved-dead':
      return isYes(s.body.sawRun) && isYes(s.body.diedAway) && afterShut(reports, s, view);
    case 'made': {
      const since = openingsOf(ledger, thing, view).map((o) => o.said);
      const round = roundOf(s);
      return round !== null && roundFull(ledger, thing, round, since, view, s.facts);
    }
    case 'proof':
      if (s.row.closes(s.body, s.facts).length === 0) return false;
  }
  const closes = s.row.closes(s.body, s.facts);
  if (closes.length === 0) return true;
  return closes.every(
    (t) =>
      openingsOf(ledger, t, view).every((o) => ledger.isAncestor(o.said.index, s.index)) &&
      (!isCountedSeal(t) || unclosed(ledger, t, view).length === 0) &&
      !acts.some((other) => concurrent(ledger, s, other)),
  );
}

const reportsLook = (s: Said): boolean => String(s.body.step).startsWith('second-look ');

/** A proof of a drain lapses when a closure it rested on was given back since. */
function afterShut(reports: Reports, p: Said, view: View): boolean {
  const closures = p.facts?.isolation.closures ?? [];
  const restored = reports.said.filter(
    (s) =>
      s.act.kind === 'restored' &&
      view(s.index) &&
      closures.includes(String(s.body.thing).slice('closure/'.length)),
  );
  const shutAgain = (r: Said) =>
    reports.said.some(
      (s) =>
        s.act.kind === 'shut' &&
        s.body.thing === r.body.thing &&
        view(s.index) &&
        reports.ledger.isAncestor(r.index, s.index) &&
        !reports.ledger.isAncestor(s.index, p.index),
    );
  // Given back at the end of the job is no fault of the proof; only shut again asks for a new one.
  return !restored.some((r) => !reports.ledger.isAncestor(r.index, p.index) && shutAgain(r));
}
