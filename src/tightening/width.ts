// What fits on a fastener: its width across flats or its key, as stated or by its thread.

import type { Source } from '../quantity/types.ts';
import {
  DIN_KEYS,
  WIDTH_DIN,
  WIDTH_ISO,
  WIDTH_KEY,
  WIDTH_KEY_MEMORY,
  WIDTHS,
} from './tables/widths.ts';

export type HeadKind = 'hexagon' | 'flanged hexagon' | 'socket' | 'slotted' | 'cross' | 'wing';

export type HeadGiven = {
  readonly head: HeadKind;
  readonly thread?: string | undefined;
  /** As the model or the machine says it; it comes first. */
  readonly acrossFlatsMm?: number | undefined;
  readonly standard?: 'ISO' | 'DIN' | undefined;
};

export type Width =
  | { readonly mm: number; readonly source: Source }
  | { readonly asked: string; readonly either: readonly number[] };

const asked = (text: string, either: readonly number[] = []): Width => ({ asked: text, either });

/** The width, or what must be asked: never one of two that may be. */
export function widthOf({ head, thread, acrossFlatsMm, standard }: HeadGiven): Width {
  if (head === 'slotted' || head === 'cross' || head === 'wing') {
    return asked(`a ${head} head has no width across flats: which tool drives it?`);
  }
  if (acrossFlatsMm !== undefined) {
    return { mm: acrossFlatsMm, source: { kind: 'entered', by: 'the model of the machine' } };
  }
  const name = /^M\d+(?:\.\d+)?/.exec(thread?.trim() ?? '')?.[0];
  const row = WIDTHS.find((one) => one.thread === name);
  if (row === undefined || head === 'flanged hexagon') {
    const of = thread === undefined ? 'without a thread' : `of ${thread}`;
    return asked(`the width across flats of a ${head} ${of} is in no table at hand: measure it`);
  }
  if (head === 'socket') {
    if (row.key === null) return asked(`no key size of ${row.thread} is at hand: measure it`);
    const source = DIN_KEYS.includes(row.thread) ? WIDTH_KEY_MEMORY : WIDTH_KEY;
    return { mm: row.key, source };
  }
  if (standard === 'DIN') return { mm: row.din, source: WIDTH_DIN };
  if (standard === 'ISO' || row.iso === row.din) return { mm: row.iso, source: WIDTH_ISO };
  const text = `${row.thread} is ${row.iso} mm by ISO and ${row.din} mm by DIN: measure which`;
  return asked(text, [row.iso, row.din]);
}
