// Whether one stored thing does for one need: the same, ready, in date, free, of the right hand.

import type { Seal } from '../plant/schema.ts';
import type { Machine } from '../plant/types.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { storageEnd, storageGroup } from '../sealing/storage.ts';
import { STORAGE_RULES, type StorageRule } from '../sealing/tables/storage.ts';
import { readCured } from '../stores/cured.ts';
import type { StoredItem } from '../stores/item.ts';
import type { Speech } from '../words/say.ts';

export type FitAsk = {
  readonly machine: Pick<Machine, 'side'>;
  readonly on: string;
  readonly rule: StorageRule | null;
  /** What the job is called, and its target: a thing reserved for it is free for it. */
  readonly job: readonly string[];
  readonly say: Speech['say'];
};

export type Fit = {
  readonly why: readonly string[];
  readonly notChecked: readonly string[];
  readonly until: string | null;
};

export const ruleOf = (name: string | undefined): StorageRule | null =>
  STORAGE_RULES.find((rule) => rule === name) ?? null;

const plain = (text: string): string =>
  text.toLowerCase().replaceAll(',', '.').replaceAll('×', 'x').replace(/\s+/g, ' ').trim();

export const same = (a: string | undefined, b: string | undefined): boolean =>
  a !== undefined && b !== undefined && plain(a) === plain(b);

const mmOf = (text: string | undefined): number | null => {
  const read = text === undefined ? null : readQuantity(text, 'mm', '');
  return read?.ok === true ? read.quantity.value : null;
};

/** Of the same size, or named for this very seal: only such a thing is looked at further. */
export function isNear(item: StoredItem, seal: Seal, key: string): boolean {
  if (item.kind !== 'seal' || item.seal !== seal.kind) return false;
  return item.serves?.includes(key) === true || same(item.size, seal.size);
}

export function sealFits(item: StoredItem, seal: Seal, ask: FitAsk): Fit {
  const age = ageOf(item, ask);
  const { say } = ask;
  const why = [
    ...(seal.size !== undefined && item.size !== undefined && !same(item.size, seal.size)
      ? [say('storeOther', item.size, seal.size)]
      : []),
    ...compoundWhy(item, seal, ask),
    ...thicknessWhy(item, seal, ask),
    ...age.why,
    ...freeWhy(item, ask),
  ];
  return { why, notChecked: age.notChecked, until: age.until };
}

function compoundWhy(item: StoredItem, seal: Seal, { say }: FitAsk): readonly string[] {
  if (seal.compound === undefined || same(item.compound, seal.compound)) return [];
  return [
    item.compound === undefined
      ? say('storeNoCompound', seal.compound)
      : say('storeOther', item.compound, seal.compound),
  ];
}

function thicknessWhy(item: StoredItem, seal: Seal, { say }: FitAsk): readonly string[] {
  const wanted = mmOf(seal.thickness);
  if (wanted === null || seal.thickness === undefined) return [];
  const held = mmOf(item.thickness);
  if (held === null) return [say('storeNoThickness', seal.thickness)];
  return Math.abs(held - wanted) <= 1e-9 * wanted
    ? []
    : [say('storeOther', item.thickness ?? '', seal.thickness)];
}

/** Not ready, kept for another job, of the other hand: said of seals, parts and consumables. */
export function freeWhy(item: StoredItem, { machine, job, say }: FitAsk): readonly string[] {
  const { condition, reservedFor, hand } = item;
  const other = hand !== undefined && hand !== 'either' && hand !== machine.side;
  return [
    ...(condition === 'ready to fit' ? [] : [say('storeNotReady', condition)]),
    ...(reservedFor === undefined || job.some((name) => same(name, reservedFor))
      ? []
      : [say('storeReserved', reservedFor)]),
    ...(other && machine.side !== undefined ? [say('storeOtherHand', hand, machine.side)] : []),
    ...(other && machine.side === undefined ? [say('storeHandUnknown', hand)] : []),
  ];
}

const RUBBER = ['ring', 'shaft seal'];

/** The label's own last day holds whatever a rule says; without either nothing is guessed. */
export function ageOf(item: StoredItem, { on, rule, say }: FitAsk): Fit {
  const { expires, cured, compound, seal } = item;
  const label = expires !== undefined && on > expires ? [say('storeLabelEnded', expires)] : [];
  const group = rule === null || compound === undefined ? null : storageGroup(compound, rule);
  const counted = cured === undefined ? null : (readCured(cured)?.counted ?? null);
  const rubber = RUBBER.includes(seal ?? '') || cured !== undefined;
  if (group === null || counted === null || rule === null) {
    const open =
      expires !== undefined || !rubber
        ? []
        : counted === null
          ? [say('storeNoCure')]
          : rule === null
            ? [say('storeNoRule')]
            : [say('storeNoGroup', compound ?? say('storeNoName'), rule)];
    return { why: label, notChecked: open, until: expires ?? null };
  }
  if (counted > on && (readCured(cured ?? '')?.from ?? '') > on)
    return { why: [...label, say('storeCuredLater', cured ?? '')], notChecked: [], until: null };
  const { expiresOn, extendableTo } = storageEnd(counted, group);
  const until = [expires, expiresOn].flatMap((day) => day ?? []).sort()[0] ?? null;
  if (expiresOn === null || on <= expiresOn) return { why: label, notChecked: [], until };
  const memory = group.source.kind === 'from memory';
  const ended =
    extendableTo !== null && on <= extendableTo
      ? say('storeInspect', expiresOn, rule, memory, extendableTo)
      : say('storeEnded', expiresOn, rule, memory);
  return { why: [...label, ended], notChecked: [], until };
}
