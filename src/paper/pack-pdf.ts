// The printed pack: everything needed to carry the job out from the sheets alone.

import { isolationDrawings } from '../drawing/isolation.ts';
import { removalMaps } from '../drawing/removal-map.ts';
import type { Pack, PlanView, Settled } from '../pack/types.ts';
import { ISOLATION_BY_HAND, ISOLATION_NOT_STATED } from '../quantity/authority.ts';
import { inLanguage, now, say } from '../words/heard.ts';
import type { Language } from '../words/words.ts';
import { figure, picture, titleBlock, workingRows } from './block.ts';
import { listsOf } from './lists.ts';
import { looksOf } from './looks.ts';
import type { News } from './news.ts';
import { sealPictures } from './seals.ts';
import { stepSheetsOf } from './steps.ts';
import { setPdf } from './typst.ts';

/** Width of the sheet's text in points; drawings are made at one unit a point. */
const SHEET = 510;
/** One band a picture, so that the sheet may turn between any two. */
const BAND = 1;

/** In a person's language; names, and what people wrote, stay as they are. */
export const packPdf = (pack: Pack, news: News = [], language: Language = 'en'): Uint8Array =>
  setPdf('pack', packView(pack, news, language));

/** The data of the sheet, as the template takes it. */
export const packView = (pack: Pack, news: News = [], language: Language = 'en') =>
  inLanguage(language, pack.said, () => viewOf(pack, news, language));

const viewOf = (pack: Pack, news: News, language: Language) => ({
  block: titleBlock(pack, say('dPack'), now(pack.title), language),
  title: now(pack.title),
  machine: [
    pack.machine.name,
    pack.machine.position ?? say('noPositionStated'),
    pack.machine.plate === null ? say('noPlateStated') : say('plateOf', pack.machine.plate),
  ].join(' · '),
  figures: figuresOf(pack),
  head: headOf(pack),
  news,
  other: otherOf(pack),
  decisions: pack.decisions.map(({ question, why, settled }) => ({
    question: now(question),
    why: now(why),
    settled: settled === null ? null : settledWords(settled),
  })),
  unchecked: pack.notChecked.map(now),
  maps: [
    mapOf(pack.bench === null ? null : say('atTheMachine'), pack.plan),
    ...(pack.bench === null ? [] : [mapOf(say('atTheBench'), pack.bench)]),
  ],
  isolation: isolationOf(pack),
  sheets: stepSheetsOf(pack, language),
  looks: looksOf(pack),
  seals: sealPictures(pack, language, SHEET),
  lists: listsOf(pack, language),
  notes: pack.boxUpNotes.map(now),
  workings: [
    { title: say('tRemoval'), rows: workingRows(pack.plan.working) },
    ...(pack.bench === null
      ? []
      : [{ title: say('tBench'), rows: workingRows(pack.bench.working) }]),
    ...Object.entries(pack.workings).map(([title, rows]) => ({
      title: now(title),
      rows: workingRows(rows),
    })),
  ].filter(({ rows }) => rows.length > 0),
});

const settledWords = ({ by, reason, limits }: Settled): string =>
  say('settledWith', by, reason, limits ?? null);

const figuresOf = (pack: Pack) => {
  const of = (does: 'undo' | 'off' | 'aside'): number =>
    pack.plan.order.filter((each) => each.do === does).length;
  const seals = pack.lists.seals.reduce((sum, row) => sum + row.count, 0);
  const tags = pack.lists.closures.reduce((sum, row) => sum + row.tags.length, 0);
  return [
    { figure: figure(pack.minutes), words: say('ofWork') },
    { figure: String(pack.people), words: say(pack.people === 1 ? 'personOne' : 'personMany') },
    { figure: String(of('undo')), words: say('jointsToUndo') },
    { figure: String(of('off')), words: say('partsOff') },
    { figure: String(of('aside')), words: say('partsAside') },
    { figure: String(seals), words: say('sealsToRenew') },
    { figure: String(tags), words: say('tagsToHang') },
    { figure: String(pack.lists.proofs.length), words: say('proofsMany') },
  ];
};

const headOf = (pack: Pack) =>
  [
    [say('hWhy'), pack.request.why],
    [say('hWhen'), pack.request.when],
    [say('hHands'), pack.request.people?.join(', ')],
    [
      say('hValues'),
      pack.valueIssues.map((v) => say('issueOf', v.sheet, v.issue, v.date)).join('; '),
    ],
    [say('hInterval'), pack.interval === null ? null : now(pack.interval.shown ?? say('hNoValue'))],
  ].map(([label, words]) => ({
    label,
    words: words === undefined || words === null || words === '' ? say('notStated') : words,
  }));

const otherOf = (pack: Pack) => {
  const other = pack.otherSide;
  if (other === null) return null;
  const title =
    other.count === 0 ? say('sameAs', other.name) : say('differencesFrom', other.count, other.name);
  return { title, list: other.list.map(now) };
};

const mapOf = (title: string | null, plan: PlanView) => ({
  title,
  words: planWords(plan),
  bands: removalMaps(plan.order, { surface: 'paper', width: SHEET }, BAND).map(picture),
});

const planWords = (plan: PlanView): string => {
  const least = plan.proven
    ? say('provenLeast')
    : say('notProvenLeast', figure(plan.bound), Math.round(plan.gap * 1000) / 10);
  return say('planSays', figure(plan.minutes), least, plan.orderProven);
};

const isolationOf = (pack: Pack) => {
  const { stated } = pack.facts.isolation;
  const by = pack.isolationListedBy;
  return {
    stated,
    note: now(stated ? ISOLATION_BY_HAND : ISOLATION_NOT_STATED),
    by: by === null ? null : say('listedByOn', by.by, by.on),
    drawings: isolationDrawings(pack, { surface: 'paper', width: SHEET }).map(picture),
    rows: pack.lists.closures.map((row) => [
      row.name,
      now(row.position),
      now(row.normal ?? say('notStated')),
      row.stations.map(now).join(', '),
      row.tags.join(', '),
      '',
      '',
    ]),
  };
};
