// The printed record, read back: who, when, what was said, what stands open, and the hashes.

import { describe, expect, test } from 'vitest';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from '../record/fixture.ts';
import { fold } from '../record/fold.ts';
import type { Act } from '../record/types.ts';
import { letters, pagesOf } from './pdf-text.ts';
import { type RecordToPrint, recordPdf, standingOf, timeWords } from './record-pdf.ts';

const pack = fixturePack();
const acts = chain(wholeJob(pack));
const recordOf = (given: readonly Act[]): RecordToPrint => ({
  job: jobId,
  state: fold({ acts: given, packs: [pack] }),
  packs: [pack],
  acts: given,
});
const printed = (given: readonly Act[]): readonly string[] => pagesOf(recordPdf(recordOf(given)));
const wordsOf = (given: readonly Act[]): string => letters(printed(given).join(' '));

describe('a closed record', () => {
  const sheets = printed(acts);
  const words = letters(sheets.join(' '));

  test('authority line and names not proved on every sheet', () => {
    for (const sheet of sheets) {
      expect(letters(sheet)).toContain(letters(AUTHORITY_LINE));
      expect(sheet).toContain(NAMES_NOT_PROVED);
    }
  });

  test('every act with its device time, hash and number, in order', () => {
    let at = 0;
    for (const act of acts) {
      const row = letters(`${act.device.slice(0, 8)} ${act.deviceSeq} ${act.hash.slice(0, 8)}`);
      const found = words.indexOf(row, at);
      expect(found, `${act.kind} ${act.deviceSeq}`).toBeGreaterThan(at);
      at = found;
    }
    expect(words).toContain(letters('2026-03-14 08:00 +00:00'));
    expect(words).toContain(letters('not trusted'));
  });

  test('head hash in full, the pack, and the last number of each device', () => {
    expect(words).toContain(acts.at(-1)?.hash);
    expect(words).toContain(pack.id);
    expect(words).toContain(letters(`phone-a ${acts.length}`));
  });

  test('closed, by whom, verdict, nothing open', () => {
    for (const line of ['closed', 'Ada', 'pass', 'nothing open'])
      expect(words).toContain(letters(line));
  });

  test('the same record gives the same bytes, whatever order its acts come in', () => {
    const first = Buffer.from(recordPdf(recordOf(acts)));
    expect(first.equals(Buffer.from(recordPdf(recordOf([...acts].reverse()))))).toBe(true);
  });
});

describe('what is not in order is printed', () => {
  test('an open job says its stage and count, and lists what is open', () => {
    const some = acts.slice(0, Math.floor(acts.length / 2));
    const job = fold({ acts: some, packs: [pack] }).jobs[jobId];
    if (job === undefined) throw new Error('the job is not there');
    expect(job.openCount).toBeGreaterThan(0);
    const words = wordsOf(some);
    expect(words).toContain(letters(`${job.stage} · ${job.openCount} open: not closed`));
    for (const entry of job.entries.filter(({ open }) => open))
      expect(words).toContain(letters(entry.what));
  });

  test('a finding not decided and an act of unknown kind', () => {
    const odd = chain([
      startDraft(pack),
      jobDraft('found', { thing: 'part/pump', what: 'two vanes missing' }),
      jobDraft('sung', { song: 'sea shanty' }),
    ]);
    const words = wordsOf(odd);
    expect(words).toContain(letters('two vanes missing'));
    expect(words).toContain(letters('NOT DECIDED'));
    expect(words).toContain(letters('UNKNOWN KIND sung'));
    expect(words).toContain(letters('kept, kind unknown'));
  });

  test('a waiting act is named with its hash', () => {
    const last = acts.at(-1);
    if (last === undefined) throw new Error('no acts');
    const cut = [...acts.slice(0, -2), last];
    const words = wordsOf(cut);
    expect(words).toContain(letters('waiting for an act before it'));
    expect(words).toContain(last.hash.slice(0, 12));
  });

  test('a closing with a deviation names who', () => {
    const { jobs } = fold({ acts, packs: [pack] });
    const job = jobs[jobId];
    if (job?.closed === undefined || job.closed === null) throw new Error('the job is not closed');
    const deviation = { act: 'a', thing: 'tag/1', by: 'Ben', reason: 'lost', limits: 'watched' };
    const closed = { ...job.closed, deviations: 1 };
    expect(standingOf({ ...job, deviations: [deviation], closed })).toBe(
      'closed with 1 deviation (Ben)',
    );
  });
});

test('device time is shown with its own offset', () => {
  expect(timeWords({ utc: '2026-03-14T23:30:00.000Z', offsetMinutes: 60 })).toBe(
    '2026-03-15 00:30 +01:00',
  );
  expect(timeWords({ utc: '2026-03-14T00:15:00.000Z', offsetMinutes: -210 })).toBe(
    '2026-03-13 20:45 -03:30',
  );
});
