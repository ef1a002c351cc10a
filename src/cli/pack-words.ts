// A pack in plain lines for a terminal: figures first, then the steps with their reasons.

import {
  asideLines,
  askLines,
  fasteningLines,
  missingLines,
  toolLines,
  wrenchWords,
} from '../pack/fastening-words.ts';
import { liftHead, liftLines, sailingLines, worthALine } from '../pack/lift-words.ts';
import {
  consumableWords,
  doubtLines,
  nearWords,
  needLines,
  needWords,
  restsOn,
  shortLines,
  spareLines,
} from '../pack/seal-words.ts';
import type { Pack, Step } from '../pack/types.ts';
import { wordsOf } from '../words/words.ts';

export const packInWords = (pack: Pack): string =>
  [
    ...heading(pack),
    ...isolation(pack),
    ...decisions(pack),
    '',
    'STEPS',
    ...pack.steps.flatMap((s) => stepLines(s)),
    ...lists(pack),
    '',
    pack.authority,
    `${pack.namesNotProved}${pack.invented ? ' · invented for the demo' : ''}`,
  ].join('\n');

const heading = (pack: Pack): string[] => {
  const joints = pack.plan.order.filter((o) => o.do === 'undo').length;
  const parts = pack.plan.order.length - joints;
  const proven = pack.plan.proven
    ? 'no shorter way exists in this plant file'
    : `within ${(pack.plan.gap * 100).toFixed(1)} % of the shortest`;
  const rows = [
    `${pack.title} · ${pack.vessel.name}`,
    '',
    `${pack.minutes.value} min hands-on · ${pack.people} hands · ` +
      `${joints} joints · ${parts} parts moved`,
    `Removal: ${pack.plan.minutes.value} min, ${proven}.`,
    `Plant issue ${pack.plantIssue.number} of ${pack.plantIssue.date} · ` +
      `pack ${pack.id.slice(0, 12)}`,
    ...pack.valueIssues.map(
      (v) => `Values: ${v.sheet}, issue ${v.issue} of ${v.date}, ${v.authority}`,
    ),
  ];
  if (pack.plan.avoided !== null)
    rows.push(
      `Left alone: ${pack.plan.avoided.joints.join(', ')} ` +
        `(adds ${pack.plan.avoided.minutes.value} min).`,
    );
  if (pack.otherSide !== null)
    rows.push(
      '',
      `Differs from ${pack.otherSide.name} in ${pack.otherSide.count}:`,
      ...pack.otherSide.list.map((x) => `  ${x}`),
    );
  return rows;
};

const isolation = (pack: Pack): string[] => {
  const by = pack.isolationListedBy;
  return [
    '',
    `ISOLATION. ${pack.isolationNote}${by === null ? '' : ` (${by.by}, ${by.on})`}`,
    ...pack.lists.closures.map(
      (c) =>
        `  ${c.name}: ${c.position} (normal: ${c.normal ?? 'not stated'}); ` +
        `tags ${c.tags.join(', ')}; moved from: ${c.stations.join(' / ') || 'not stated'}`,
    ),
  ];
};

const decisions = (pack: Pack): string[] => [
  '',
  `TO BE DECIDED BEFORE IT STARTS: ${pack.decisions.filter((d) => d.settled === null).length}`,
  ...pack.decisions.map((d) =>
    d.settled === null
      ? `  [${d.id}] ${d.question} ${d.why}.`
      : `  [${d.id}] settled by ${d.settled.by}: ${d.settled.reason}`,
  ),
];

const stepLines = (s: Step): string[] => {
  const where = [s.place, s.tool].filter((x) => x !== null).join(' · ');
  return [
    `  [ ] ${s.text}${where === '' ? '' : `  (${where})`}`,
    ...s.cautions.map(
      (c) => `        CAUTION ${c.hazard} (${c.sign}): ${c.text} Verify: ${c.verify}.`,
    ),
    ...s.values.map((v) =>
      v.shown === null
        ? `        ${v.name}: NO VALUE STATED`
        : `        ${v.name}: ${v.shown}, ${v.origin}, issue ${v.issue} of ${v.date}, ` +
          `${v.threadCondition ?? 'thread condition not stated'}`,
    ),
    ...(s.sets ?? []).map(
      (line) =>
        `        ${wrenchWords(line, s.round ?? null, wordsOf('en').fastenings).join('; ')}`,
    ),
    `        because: ${s.reason}`,
  ];
};

/** Packs of earlier days have none. */
const fastenings = ({ fastenings: all }: Pack): string[] => {
  if (all === undefined) return [];
  const w = wordsOf('en').fastenings;
  const { tools } = all;
  const headed = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', head.toUpperCase(), ...lines.map((each) => `  ${each}`)];
  return [
    '',
    w.title.toUpperCase(),
    ...all.list.flatMap((one) => [
      `  ${one.jointName}, ${one.what}: ${one.value.shown ?? 'NO VALUE STATED'}`,
      ...fasteningLines(one, w).map((each) => `        ${each}`),
    ]),
    ...headed(w.tools, toolLines(tools, w)),
    ...(tools === null
      ? []
      : [
          ...headed(w.missing, missingLines(tools, w)),
          ...headed(w.laidAside, asideLines(tools, w)),
          ...headed(w.asks, askLines(tools)),
        ]),
  ];
};

const plain = (text: string): string => text;

/** Each weight that is not light; packs of earlier days have none. */
const liftsInWords = ({ lifts }: Pack): string[] => {
  if (lifts === undefined) return [];
  const w = wordsOf('en').lifting;
  return [
    '',
    w.title.toUpperCase(),
    ...sailingLines(lifts, w).map((each) => `  ${each}`),
    ...worthALine(lifts).flatMap((one) => [
      `  ${liftHead(one, w)}`,
      ...liftLines(one, w, plain).map((each) => `        ${each}`),
    ]),
  ];
};

/** Each seal against the stores; packs of earlier days have none. */
const sealLines = ({ seals }: Pack): string[] => {
  if (seals === undefined) return [];
  const w = wordsOf('en').seals;
  const headed = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', head.toUpperCase(), ...lines.map((each) => `  ${each}`)];
  return [
    ...headed(`${w.title}: ${restsOn(seals, w)}`, [
      ...seals.needs.flatMap((need) => [
        needWords(need, w, plain),
        ...[...needLines(need, w, plain), ...doubtLines(need, plain)].map((x) => `      ${x}`),
      ]),
    ]),
    ...headed(w.short, shortLines(seals, w, plain)),
    ...headed(
      w.spares,
      seals.spares.flatMap((one) => spareLines(one, w, plain)),
    ),
    ...headed(
      w.consumables,
      seals.consumables.map((one) => consumableWords(one, w, plain)),
    ),
    ...headed(
      w.near,
      seals.near.map((one) => nearWords(one, w, plain)),
    ),
  ];
};

/** Packs made before the stores were read list their seals bare. */
const sealBefore = (s: Pack['lists']['seals'][number]): string =>
  `  ${s.count} × ${s.name} ${s.size ?? ''} ${s.compound ?? ''} (${s.joint})`;

const lists = (pack: Pack): string[] => {
  const l = pack.lists;
  return [
    ...fastenings(pack),
    ...liftsInWords(pack),
    ...sealLines(pack),
    '',
    'TOOLS',
    ...l.tools.map((t) => `  ${t.tool} (${t.for.join(', ')})`),
    ...(pack.seals === undefined ? ['', 'SEALS', ...l.seals.map(sealBefore)] : []),
    '',
    'LOOSE PARTS',
    ...l.loose.map((x) => `  ${x.count} × ${x.name}`),
    '',
    'TEMPORARY THINGS',
    ...l.temporary.map((t) => `  ${t.thing.replace('temp/', 'number ')}: ${t.name}, ${t.where}`),
    '',
    'FOLLOW-UPS',
    ...l.followUps.map((f) => `  after ${f.after}: ${f.what}`),
    '',
    'CANNOT BE CHECKED',
    ...pack.notChecked.map((x) => `  ${x}`),
    ...pack.boxUpNotes.map((x) => `  ${x}`),
  ];
};
