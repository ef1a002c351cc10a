// The printed pack, read back with pdftotext: nothing that keeps people safe may be lost in print.

import { describe, expect, test } from 'vitest';
import { fixturePack } from '../drawing/fixture.ts';
import { sheetsOf } from '../pack/sheets.ts';
import type { Pack } from '../pack/types.ts';
import {
  AUTHORITY_LINE,
  CAUTIONS,
  cautionFor,
  type Hazard,
  ISOLATION_BY_HAND,
  ISOLATION_NOT_STATED,
} from '../quantity/authority.ts';
import { DEMO_MARK } from './block.ts';
import { packPdf, packView } from './pack-pdf.ts';
import { letters, pagesOf } from './pdf-text.ts';
import { proofPdf } from './proof-pdf.ts';
import { holesOf, stepSheetsOf } from './steps.ts';

const count = (text: string, what: string): number => text.split(what).length - 1;

/** The letters of all pages without the title block, which stands at the foot of each. */
const bodyOf = (pages: readonly string[]): string => letters(pages.join(' '));

const pages = pagesOf(packPdf(fixturePack));
const body = bodyOf(pages);

describe('every sheet', () => {
  test.each([
    ['pack', fixturePack, packPdf],
    ['proof sheet', fixturePack, proofPdf],
  ] as const)('%s: authority line, title block, sheet of sheets, names, mark', (_, pack, make) => {
    const sheets = pagesOf(make(pack));
    expect(sheets.length).toBeGreaterThan(0);
    sheets.forEach((sheet, i) => {
      const words = letters(sheet);
      for (const line of [
        AUTHORITY_LINE,
        DEMO_MARK,
        pack.title,
        'Tern Rock',
        'f1f1f1f1f1f1',
        '3, 2026-03-01',
        'names not proved',
        'Approved',
        `${i + 1} / ${sheets.length}`,
      ])
        expect(words, `sheet ${i + 1}`).toContain(letters(line));
    });
  });

  test('the authority line does not come from the file', () => {
    const changed = { ...fixturePack, authority: 'all is well' };
    for (const sheet of pagesOf(packPdf(changed)))
      expect(letters(sheet)).toContain(letters(AUTHORITY_LINE));
  });

  test('a pack that is not invented carries no such mark', () => {
    const real = pagesOf(packPdf({ ...fixturePack, invented: false })).join(' ');
    expect(real).not.toContain('INVENTED');
  });
});

describe('steps', () => {
  test('every step is there with its words, place and tool', () => {
    for (const step of fixturePack.steps)
      for (const words of [step.text, step.place, step.tool])
        if (words !== null) expect(body).toContain(letters(words));
  });

  test('a box to tick a step, and one for each hole at each round', () => {
    const holes = fixturePack.steps.reduce((sum, s) => sum + holesOf(fixturePack, s).length, 0);
    // By hand: 8 nuts and 4 bolts undone, 8 nuts in 3 rounds, 4 bolts made: 8 + 4 + 24 + 4.
    expect(holes).toBe(40);
    expect(count(body, '☐')).toBe(fixturePack.steps.length + holes);
  });

  test('every caution of every step, with what to verify and a line for a name', () => {
    const all = fixturePack.steps.flatMap((step) => step.cautions);
    expect(new Set(all.map(({ hazard }) => hazard)).size).toBe(Object.keys(CAUTIONS).length);
    for (const hazard of Object.keys(CAUTIONS) as Hazard[]) {
      const { verify } = cautionFor(hazard);
      const times = all.filter((each) => each.hazard === hazard).length;
      expect(count(body, letters(`${hazard.toUpperCase()}:`)), hazard).toBe(times);
      expect(count(body, letters(`Verify: ${verify}.`)), hazard).toBe(times);
    }
    expect(count(body, 'Verifiedby')).toBe(all.length);
  });

  test('a caution stands on the sheet of its step, before it', () => {
    for (const step of fixturePack.steps.filter(({ cautions }) => cautions.length > 0)) {
      const sheet = pages.map(letters).find((page) => page.includes(letters(step.text)));
      for (const { verify } of step.cautions) {
        const at = sheet?.indexOf(letters(`Verify: ${verify}.`)) ?? -1;
        expect(at, step.id).toBeGreaterThanOrEqual(0);
        expect(at, step.id).toBeLessThan(sheet?.lastIndexOf(letters(step.text)) ?? -1);
      }
    }
  });

  test('both stops say that there is no way past', () => {
    const stops = fixturePack.steps.filter(({ stop }) => stop !== null).length;
    expect(count(body, letters('There is no way past this.'))).toBe(stops);
  });

  test('values carry origin, issue, date, thread and what they were; none is asked for', () => {
    for (const words of [
      '48 N.m',
      '60 % of 48 N.m',
      'issued for this joint',
      'issue C',
      '2026-02-03',
      'thread oiled',
      'was 42 N.m (issue B)',
      'NO VALUE STATED for Suction flange bolts',
    ])
      expect(body).toContain(letters(words));
  });

  test('steps are not numbered against a total', () => {
    expect(pages.join(' ')).not.toMatch(/step \d+ of \d+/i);
  });
});

describe('the sheets to work by', () => {
  const names = stepSheetsOf(fixturePack).map(({ name }) => letters(name));
  const heads = pages.map(letters);
  const begins = names.map((name) => heads.findIndex((head) => head.startsWith(name)));

  test('each begins on a page of its own, in order, and is listed with its page', () => {
    expect(names.length).toBeGreaterThan(1);
    expect(begins).toEqual([...begins].sort((a, b) => a - b));
    expect(new Set(begins).size).toBe(names.length);
    expect(begins).not.toContain(-1);
    names.forEach((name, i) => {
      expect(body).toContain(`${name}page${(begins[i] ?? 0) + 1}`);
    });
  });

  test('each step stands on a page that names its sheet at its head', () => {
    for (const sheet of sheetsOf(fixturePack)) {
      const at = sheetsOf(fixturePack).findIndex(({ letter }) => letter === sheet.letter);
      const own = heads.filter((head) => head.startsWith(names[at] ?? '?')).join('');
      for (const { text } of sheet.steps) expect(own, sheet.letter).toContain(letters(text));
    }
  });

  test('each asks who worked and when, once', () => {
    expect(count(body, 'Workedby')).toBe(names.length);
  });

  test('no page after the last sheet says that it goes on', () => {
    const last = heads.findLastIndex((head) => names.some((name) => head.startsWith(name)));
    expect(heads.length).toBeGreaterThan(last + 1);
    expect(heads.slice(last + 1).join('')).not.toContain('goeson');
  });
});

describe('the rest of the pack', () => {
  test('figures, differences, decisions, what cannot be checked, notes, lists, workings', () => {
    for (const words of [
      '185 min',
      '2 differences from Starboard main engine',
      ...(fixturePack.otherSide?.list ?? []),
      ...fixturePack.decisions.map(({ question }) => question),
      'NOT SETTLED',
      ...fixturePack.notChecked,
      ...fixturePack.boxUpNotes,
      'proven least',
      '76 mm x 50 mm x 2 mm',
      'clean rags',
      'Suction pipe blank',
      'two hands',
      'Look at the disturbed joints again.',
      '20 + 54',
    ])
      expect(body).toContain(letters(words));
  });

  test('isolation listed by hand says so and names who', () => {
    expect(body).toContain(letters(ISOLATION_BY_HAND));
    expect(body).toContain(letters('Listed by Ines on 2026-03-10.'));
    for (const row of fixturePack.lists.closures) expect(body).toContain(letters(row.name));
  });

  test('isolation not stated says so and leaves ruled lines', () => {
    const { isolation } = fixturePack.facts;
    const pack: Pack = {
      ...fixturePack,
      isolationListedBy: null,
      facts: { ...fixturePack.facts, isolation: { ...isolation, stated: false, closures: [] } },
      lists: { ...fixturePack.lists, closures: [] },
    };
    const words = bodyOf(pagesOf(packPdf(pack)));
    expect(words).toContain(letters(ISOLATION_NOT_STATED));
    expect(words).not.toContain(letters(ISOLATION_BY_HAND));
    expect(words).toContain(letters('Fill in before any wet joint is undone.'));
  });
});

describe('making the sheet', () => {
  test('the same pack gives the same bytes', () => {
    expect(Buffer.from(packPdf(fixturePack)).equals(Buffer.from(packPdf(fixturePack)))).toBe(true);
    expect(Buffer.from(proofPdf(fixturePack)).equals(Buffer.from(proofPdf(fixturePack)))).toBe(
      true,
    );
  });

  test('text from a file is data: marks of the typesetter are printed, not obeyed', () => {
    const nasty = '#panic("x") $a$ *b* @c <d> [e] $f "g" \\h &amp; ☐';
    const step = fixturePack.steps[0];
    if (step === undefined) throw new Error('the fixture has no steps');
    const pack = { ...fixturePack, title: nasty, steps: [{ ...step, text: nasty }] };
    const words = bodyOf(pagesOf(packPdf(pack)));
    expect(count(words, letters(nasty))).toBeGreaterThanOrEqual(2);
  });

  test('each picture has words for those who cannot see it', () => {
    const view = packView(fixturePack);
    const pictures = JSON.stringify(view).match(/"alt":"[^"]+"/g) ?? [];
    expect(pictures.length).toBeGreaterThan(fixturePack.steps.length / 2);
  });

  test('a joint of 200 holes loses none of its boxes', () => {
    const holes = Array.from({ length: 200 }, (_, i) => String(i + 1));
    const mounting = fixturePack.facts.joints['pump-mounting'];
    const made = fixturePack.steps.find(({ verb }) => verb === 'made');
    if (mounting === undefined || made === undefined) throw new Error('the fixture lost a joint');
    const pack: Pack = {
      ...fixturePack,
      steps: [{ ...made, holes }],
      facts: {
        ...fixturePack.facts,
        joints: { 'pump-mounting': { ...mounting, holes, layout: { kind: 'unknown' } } },
      },
    };
    expect(count(bodyOf(pagesOf(packPdf(pack))), '☐')).toBe(201);
  });
});
