// How old a value sheet is, and tight by hand with no value: both settled when the pack is made.

import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readFolder } from '../cli/read-folder.ts';
import { readPlant } from '../plant/read.ts';
import type { Plant } from '../plant/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { makePack } from './pack.ts';
import { withDay } from './sheet-age.ts';
import type { Pack, PackRequest } from './types.ts';

const files = readFolder(fileURLToPath(new URL('../../demo/water-works', import.meta.url)));

function plantWith(change: (text: string) => string): Plant {
  const { plant, problems } = readPlant(files.map((f) => ({ ...f, text: change(f.text) })));
  if (plant === null) throw new Error(JSON.stringify(problems));
  return plant;
}

const plant = plantWith((text) => text);
const request: PackRequest = { machine: 'standby-pump', target: 'rotating-unit', does: 'exchange' };

const packOf = async (asked: PackRequest, of = plant): Promise<Pack> => {
  const made = await makePack(of, asked, solveWithHighs);
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  return made.pack;
};

const SHEET = 'sheet not confirmed standby-pump-set-values';
const ids = (pack: Pack) => pack.decisions.map(({ id }) => id);

test('a sheet stands to its last day; after it the pack asks, settled by name', async () => {
  expect(ids(await packOf({ ...request, on: '2026-08-11' }))).not.toContain(SHEET);
  const over = await packOf({ ...request, on: '2026-08-12' });
  expect(over.decisions.find(({ id }) => id === SHEET)).toMatchObject({
    why: 'value sheet standby-pump-set-values last confirmed 2026-02-11, older than its 6 months',
    settled: null,
  });
  const settled = { [SHEET]: { by: 'Ada', reason: 'the office confirmed it by phone' } };
  const again = await packOf({ ...request, on: '2026-08-12', decisions: settled });
  expect(again.decisions.find(({ id }) => id === SHEET)?.settled?.by).toBe('Ada');
  const confirmed = plantWith((text) =>
    text.replace('confirm: 6 months', 'confirm: 6 months\nconfirmed: { on: 2026-08-01, by: Ada }'),
  );
  expect(ids(await packOf({ ...request, on: '2026-08-12' }, confirmed))).not.toContain(SHEET);
});

test('without a day it cannot be checked, and says so; the shells put the day in', async () => {
  const pack = await packOf(request);
  expect(ids(pack)).not.toContain(SHEET);
  expect(pack.notChecked.filter((row) => row.includes('no day is given'))).toHaveLength(1);
  expect(withDay(plant, request, '2026-08-12T08:00:00Z').on).toBe('2026-08-12');
  expect(withDay(plant, { ...request, on: '2026-01-01' }, '2026-08-12').on).toBe('2026-01-01');
  const ageless = plantWith((text) => text.replace('confirm: 6 months\n', ''));
  expect(withDay(ageless, request, '2026-08-12')).toBe(request);
});

test('no value is settled by name, unless the plant marks the joint as not critical', async () => {
  const bare = (mark: string) =>
    plantWith((text) =>
      text
        .replace(', tightening: guard-screws', '')
        .replace('    name: Guard screws\n', `    name: Guard screws\n${mark}`),
    );
  const wanted = 'no value joint/guard-screws';
  expect(ids(await packOf(request))).not.toContain(wanted);
  expect(ids(await packOf(request, bare('')))).toContain(wanted);
  expect(ids(await packOf(request, bare('    byHand: true\n')))).toContain(wanted);
  expect(ids(await packOf(request, bare('    critical: false\n')))).not.toContain(wanted);
  const tight = async (mark: string) =>
    (await packOf(request, bare(mark))).steps.find((s) => s.id === 'made joint/guard-screws tight')
      ?.text;
  expect(await tight('')).toContain('to the value somebody gave beforehand');
  expect(await tight('')).not.toContain('by hand');
  expect(await tight('    critical: false\n')).toContain('tight by hand');
  // With a value, `byHand` keeps power tools away and the value stays.
  const byHand = plantWith((text) =>
    text.replace('    name: Guard screws\n', '    name: Guard screws\n    byHand: true\n'),
  );
  const { facts } = await packOf(request, byHand);
  expect(facts.joints['guard-screws']?.rounds).toContain('100 %');
});
