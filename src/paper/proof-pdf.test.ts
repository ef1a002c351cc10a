// The proof sheet of a whole job: blank to take along, and with what was said; read with pdftotext.

import { describe, expect, test } from 'vitest';
import { AUTHORITY_LINE, cautionFor } from '../quantity/authority.ts';
import { bodyOf, chain, fixturePack, jobDraft, jobId, startDraft } from '../record/fixture.ts';
import { fold } from '../record/fold.ts';
import type { Act } from '../record/types.ts';
import { DEMO_MARK } from './block.ts';
import { letters, pagesOf } from './pdf-text.ts';
import { proofPdf } from './proof-pdf.ts';

const limit = {
  id: 'delivery',
  name: 'Pressure after the pump',
  shown: '1.1 bar to 2.2 bar',
  origin: 'issued for this joint',
  issue: 'C',
  date: '2026-02-03',
  authority: 'engineering office',
  threadCondition: null,
  was: null,
  source: null,
} as const;

const pack = fixturePack((p) => ({
  ...p,
  limits: [limit],
  speeds: ['600 rpm', '1800 rpm'],
  rotation: 'clockwise from the free end',
  lists: {
    ...p.lists,
    proofs: Object.entries(p.facts.proofs).map(([id, f]) => ({ id, name: f.name, what: f.what })),
  },
  steps: p.steps.map((step) => ({
    ...step,
    ...(step.verb === 'started' || step.verb === 'proof' ? { phase: 'prove' as const } : {}),
    ...(step.verb === 'started' ? { cautions: [cautionFor('rotation')] } : {}),
    ...(step.id === 'proof proof/running'
      ? {
          asks: [{ name: 'delivery', label: limit.name, kind: 'number' as const, unit: 'bar' }],
        }
      : {}),
  })),
}));

const said = (kind: string, body: Act['body'], by = 'Ada') => jobDraft(kind, body, by);
const whole = [
  startDraft(pack),
  ...pack.steps
    .filter((step) => step.verb !== 'proof')
    .map((step) => said(step.verb, bodyOf(step))),
];
const look = said('proof', { thing: 'proof/static-look', result: 'pass' }, 'Cleo');
const failed = said('proof', { thing: 'proof/running', result: 'fail', delivery: 0.7 }, 'Ben');
const slip = chain([...whole, look, failed]);
const taken = said('corrected', { of: slip.at(-1)?.hash ?? '', why: 'tapped by mistake' });
const passed = said('proof', { thing: 'proof/running', result: 'pass', delivery: 1.63 }, 'Maren');

const sheetOf = (acts: readonly Act[]): string => {
  const job = fold({ acts, packs: [pack] }).jobs[jobId];
  if (job === undefined) throw new Error('the job is not there');
  return letters(pagesOf(proofPdf(pack, { job, acts })).join(' '));
};

describe('every sheet, blank or as said', () => {
  const acts = slip;
  const job = fold({ acts, packs: [pack] }).jobs[jobId];
  test.each([
    ['blank', proofPdf(pack)],
    ['as said', proofPdf(pack, job === undefined ? null : { job, acts })],
  ])('%s: authority line, title block, mark; each caution with what to verify', (_, pdf) => {
    const sheets = pagesOf(pdf);
    sheets.forEach((sheet, i) => {
      for (const line of [AUTHORITY_LINE, DEMO_MARK, 'Tern Rock', 'names not proved', pack.title])
        expect(letters(sheet)).toContain(letters(line));
      expect(letters(sheet)).toContain(`${i + 1}/${sheets.length}`);
    });
    const body = letters(sheets.join(' '));
    expect(body).toContain('ROTATION:');
    expect(body).toContain(letters(`Verify: ${cautionFor('rotation').verify}.`));
    expect(body).toContain('Verifiedby');
    for (const words of [limit.name, limit.shown, '600 rpm', 'Fill and look', 'Look for leaks'])
      expect(body).toContain(letters(words));
  });
});

describe('as said', () => {
  test('a fail stands as a fail, with its reading and who said it', () => {
    const body = sheetOf(slip);
    expect(body).toContain(letters('fail, by Ben, 2026-03-14'));
    expect(body).toContain(letters('As recorded: fail'));
    expect(body).toContain(letters('0.7 bar Ben'));
    expect(body).toContain(letters('pass, by Cleo'));
  });

  test('taken back, it is blank again; said again, the last word stands', () => {
    const back = [...slip, ...chain([taken], 'phone-a', slip)];
    expect(sheetOf(back)).not.toContain(letters('by Ben'));
    expect(sheetOf(back)).not.toContain('Asrecorded');
    const again = [...back, ...chain([passed], 'phone-a', back)];
    expect(sheetOf(again)).toContain(letters('pass, by Maren'));
    expect(sheetOf(again)).toContain(letters('1.63 bar Maren'));
    expect(sheetOf(again)).toContain(letters('As recorded: pass'));
  });

  test('entered from paper, it says from which sheet', () => {
    const paper = { paper: 'C', writtenAt: '14 March, 03:20', enteredBy: 'Ada' };
    const acts = chain([...whole, { ...look, body: { ...look.body, ...paper } }]);
    expect(sheetOf(acts)).toContain(letters('pass, by Cleo, entered from paper, sheet C'));
  });

  test('a blank sheet says nothing of a verdict', () => {
    const body = letters(pagesOf(proofPdf(pack)).join(' '));
    expect(body).not.toContain('Asrecorded');
    expect(body).toContain('○pass');
  });
});
