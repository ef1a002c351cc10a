// The blank second-look sheets, read back from the print: every closure, no position told.

import { expect, test } from 'vitest';
import { fixturePack } from '../drawing/fixture.ts';
import type { Pack } from '../pack/types.ts';
import { looksOf } from './looks.ts';
import { packPdf } from './pack-pdf.ts';
import { letters, pagesOf } from './pdf-text.ts';

const things = fixturePack.facts.isolation.closures.map((id) => `closure/${id}`);
const pack: Pack = {
  ...fixturePack,
  facts: { ...fixturePack.facts, looks: { isolation: things, 'line-up': things } },
};
const pages = pagesOf(packPdf(pack)).map(letters);

const pageOf = (title: string): string => {
  const found = pages.filter((page) => page.includes(letters(title)));
  expect(found, title).toHaveLength(1);
  return found[0] ?? '';
};

test('each look has a page of its own with every closure, its choices, a name and a time', () => {
  expect(things.length).toBeGreaterThan(1);
  for (const look of looksOf(pack)) {
    const page = pageOf(look.title);
    for (const row of look.rows) expect(page).toContain(letters(row.name));
    for (const words of ['Looked at by', 'turns', 'can’t tell', 'checked alone'])
      expect(page).toContain(letters(words));
    // The list of the pack stands on another sheet.
    expect(page).not.toContain(letters('Moved from'));
  }
  expect(looksOf(pack)).toHaveLength(2);
});

test('in another order than the pack’s, and the same positions offered whatever is wanted', () => {
  for (const look of looksOf(pack)) {
    const names = things.map((t) => pack.facts.closures[t.slice(8)]?.name);
    const order = look.rows.map((row) => row.name);
    expect([...order].sort()).toEqual([...names].sort());
    expect(order).not.toEqual(names);
  }
  const [first, last] = looksOf(pack);
  const byName = (view: typeof first) =>
    Object.fromEntries((view?.rows ?? []).map((row) => [row.name, row.choices]));
  expect(byName(first)).toEqual(byName(last));
});

test('a pack made before there were looks prints none', () => {
  const { looks: _, ...facts } = pack.facts;
  expect(looksOf({ ...pack, facts })).toEqual([]);
});
