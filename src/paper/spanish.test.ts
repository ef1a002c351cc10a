// The printed pack in Spanish: whole sheets, nothing lost, and only names left in English.

import { expect, test } from 'vitest';
import { readFolder } from '../cli/read-folder.ts';
import { makePack } from '../pack/pack.ts';
import { readPlant } from '../plant/read.ts';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { tell } from '../words/say.ts';
import { packPdf, packView } from './pack-pdf.ts';
import { letters, pagesOf } from './pdf-text.ts';
import { proofPdf, proofView } from './proof-pdf.ts';

const made = await (async () => {
  const { plant } = readPlant(readFolder('demo/tern-rock'));
  if (plant === null) throw new Error('the demo cannot be read');
  const request = { machine: 'main-engine-port', target: 'sea-water-pump' };
  const one = await makePack(plant, { ...request, does: 'exchange' }, solveWithHighs);
  if (one.kind !== 'pack') throw new Error('no pack');
  return { pack: one.pack, names: namesIn(plant) };
})();

/** Every text of the plant, longest first, so that each can be taken out of a sentence. */
function namesIn(plant: unknown): readonly string[] {
  const names = new Set<string>();
  const look = (x: unknown): void => {
    if (typeof x === 'string') names.add(x.toLowerCase().replace(/\.$/, ''));
    else if (x !== null && typeof x === 'object') Object.values(x).forEach(look);
  };
  look(plant);
  return [...names].filter((n) => / |[a-z]{4}/.test(n)).sort((a, b) => b.length - a.length);
}

const pages = pagesOf(packPdf(made.pack, [], 'es'));
const body = letters(pages.join(' '));

test('every sheet carries the authority line in Spanish', () => {
  expect(pages.length).toBeGreaterThan(5);
  for (const [i, page] of pages.entries())
    for (const line of [tell(AUTHORITY_LINE, 'es'), tell(NAMES_NOT_PROVED, 'es'), 'Aprobado'])
      expect(letters(page), `sheet ${i + 1}`).toContain(letters(line));
});

test('every caution stands with what a competent person must verify', () => {
  const cautions = made.pack.steps.flatMap((s) => s.cautions);
  expect(cautions.length).toBeGreaterThan(10);
  const words = new Set(cautions.map((c) => tell(c.verify, 'es')));
  for (const verify of words) expect(body).toContain(letters(`Verificar: ${verify}.`));
});

test('as many steps, values, boxes and lists as in English', () => {
  const [en, es] = [packView(made.pack), packView(made.pack, [], 'es')];
  const shape = (view: typeof en) => ({
    sheets: view.sheets.map((s) =>
      s.steps.map((x) => [x.cautions.length, x.values.length, x.asks.length, x.holes.length]),
    ),
    lists: view.lists.map((l) => l.rows.map((row) => row.length)),
    decisions: view.decisions.length,
    drawings: view.isolation.drawings.length,
  });
  expect(shape(es)).toEqual(shape(en));
});

test('the proof sheet too, with the words of its verdict', () => {
  const sheet = letters(pagesOf(proofPdf(made.pack, null, 'es')).join(' '));
  for (const line of [tell(AUTHORITY_LINE, 'es'), 'Veredicto', 'superada hasta', 'Pruebas'])
    expect(sheet).toContain(letters(line));
});

const ENGLISH = /\b(the|and|of|with|not|is|are|off|out|before|stated|until|each|joints?|steps?)\b/;

test('no English is left beside the names', () => {
  const left = new Set<string>();
  const look = (x: unknown, key = ''): void => {
    if (typeof x === 'string' && !['svg', 'id', 'lang'].includes(key)) {
      const bare = made.names.reduce((rest, n) => rest.replaceAll(n, ''), x.toLowerCase());
      if (ENGLISH.test(bare)) left.add(x);
    } else if (x !== null && typeof x === 'object')
      for (const [k, v] of Object.entries(x)) look(v, Array.isArray(x) ? key : k);
  };
  look(packView(made.pack, [], 'es'));
  look(proofView(made.pack, null, 'es'));
  expect([...left]).toEqual([]);
});
