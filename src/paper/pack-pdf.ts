// The printed pack: everything needed to carry the job out from the sheets alone.

import { isolationDrawings } from '../drawing/isolation.ts';
import { removalMaps } from '../drawing/removal-map.ts';
import type { Pack, PlanView, Settled } from '../pack/types.ts';
import { ISOLATION_BY_HAND, ISOLATION_NOT_STATED } from '../quantity/authority.ts';
import { figure, picture, titleBlock, workingRows } from './block.ts';
import { listsOf } from './lists.ts';
import { looksOf } from './looks.ts';
import { stepSheetsOf } from './steps.ts';
import { setPdf } from './typst.ts';
import type { News } from './news.ts';

/** Width of the sheet's text in points; drawings are made at one unit a point. */
const SHEET = 510;
/** One band a picture, so that the sheet may turn between any two. */
const BAND = 1;

export const packPdf = (pack: Pack, news: News = []): Uint8Array =>
  setPdf('pack', packView(pack, news));

/** The data of the sheet, as the template takes it. */
export const packView = (pack: Pack, news: News = []) => ({
  block: titleBlock(pack, 'pack'),
  title: pack.title,
  machine: [
    pack.machine.name,
    pack.machine.position ?? 'position not stated',
    pack.machine.plate === null ? 'plate not stated' : `plate ${pack.machine.plate}`,
  ].join(' · '),
  figures: figuresOf(pack),
  head: headOf(pack),
  other: otherOf(pack),
  decisions: pack.decisions.map(({ question, why, settled }) => ({
  news,
    question,
    why,
    settled: settled === null ? null : settledWords(settled),
  })),
  unchecked: pack.notChecked,
  maps: [
    mapOf(pack.bench === null ? null : 'At the machine', pack.plan),
    ...(pack.bench === null ? [] : [mapOf('At the bench', pack.bench)]),
  ],
  isolation: isolationOf(pack),
  sheets: stepSheetsOf(pack),
  looks: looksOf(pack),
  lists: listsOf(pack),
  notes: pack.boxUpNotes,
  workings: [
    { title: 'Removal', rows: workingRows(pack.plan.working) },
    ...(pack.bench === null ? [] : [{ title: 'Bench', rows: workingRows(pack.bench.working) }]),
    ...Object.entries(pack.workings).map(([title, rows]) => ({ title, rows: workingRows(rows) })),
  ].filter(({ rows }) => rows.length > 0),
});

const settledWords = ({ by, reason, limits }: Settled): string =>
  `${by}: ${reason}${limits === undefined ? '' : `; limits: ${limits}`}`;

const figuresOf = (pack: Pack) => {
  const of = (does: 'undo' | 'off' | 'aside'): number =>
    pack.plan.order.filter((each) => each.do === does).length;
  const seals = pack.lists.seals.reduce((sum, row) => sum + row.count, 0);
  const tags = pack.lists.closures.reduce((sum, row) => sum + row.tags.length, 0);
  return [
    { figure: figure(pack.minutes), words: 'of work, as far as stated' },
    { figure: String(pack.people), words: pack.people === 1 ? 'person' : 'people' },
    { figure: String(of('undo')), words: 'joints to undo and make up again' },
    { figure: String(of('off')), words: 'parts off' },
    { figure: String(of('aside')), words: 'parts aside' },
    { figure: String(seals), words: 'gaskets and rings to renew' },
    { figure: String(tags), words: 'tags to hang and take down' },
    { figure: String(pack.lists.proofs.length), words: 'proofs' },
  ];
};

const headOf = (pack: Pack) =>
  [
    ['Why', pack.request.why],
    ['When', pack.request.when],
    ['Hands', pack.request.people?.join(', ')],
    ['Values', pack.valueIssues.map((v) => `${v.sheet}, issue ${v.issue}, ${v.date}`).join('; ')],
    ['Interval', pack.interval === null ? null : (pack.interval.shown ?? 'no value')],
  ].map(([label, words]) => ({
    label,
    words: words === undefined || words === null || words === '' ? 'not stated' : words,
  }));

const otherOf = (pack: Pack) => {
  const other = pack.otherSide;
  if (other === null) return null;
  const title =
    other.count === 0
      ? `The same as ${other.name} but for names`
      : `${other.count} ${other.count === 1 ? 'difference' : 'differences'} from ${other.name}`;
  return { title, list: other.list };
};

const mapOf = (title: string | null, plan: PlanView) => ({
  title,
  words: planWords(plan),
  bands: removalMaps(plan.order, { surface: 'paper', width: SHEET }, BAND).map(picture),
});

const planWords = (plan: PlanView): string => {
  const least = plan.proven
    ? 'proven least'
    : `not proven least: at best ${figure(plan.bound)}, gap ${Math.round(plan.gap * 1000) / 10} %`;
  const order = plan.orderProven ? '' : ' The order among equals is not proven best.';
  return [
    `${figure(plan.minutes)} to take off, ${least}.${order} Circles are joints to undo,`,
    'boxes are parts; an arrow says what waits for what.',
  ].join(' ');
};

const isolationOf = (pack: Pack) => {
  const { stated } = pack.facts.isolation;
  const by = pack.isolationListedBy;
  return {
    stated,
    note: stated ? ISOLATION_BY_HAND : ISOLATION_NOT_STATED,
    by: by === null ? null : `Listed by ${by.by} on ${by.on}.`,
    drawings: isolationDrawings(pack, { surface: 'paper', width: SHEET }).map(picture),
    rows: pack.lists.closures.map((row) => [
      row.name,
      row.position,
      row.normal ?? 'not stated',
      row.stations.join(', '),
      row.tags.join(', '),
      '',
      '',
    ]),
  };
};
