// The lists at the end of the pack: what to lay out, what to count back, what to see to later.

import { asideLines, askLines, fasteningLines, missingLines } from '../pack/fastening-words.ts';
import type { Pack } from '../pack/types.ts';
import { en } from '../words/en/index.ts';
import { valueView } from './steps.ts';

export type ListView = {
  readonly title: string;
  readonly head: readonly string[];
  readonly widths: readonly number[];
  readonly rows: readonly (readonly string[])[];
};

const list = (
  title: string,
  columns: readonly (readonly [string, number])[],
  rows: readonly (readonly string[])[],
): ListView => ({
  title,
  head: columns.map(([name]) => name),
  widths: columns.map(([, width]) => width),
  rows,
});

const kg = (mass: number | null): string => (mass === null ? 'not stated' : `${mass} kg`);

/** A tool is for a joint or a seal of one; the sheet has their names, ids stay inside. */
const nameOf = (id: string, { facts, lists }: Pack): string =>
  facts.joints[id]?.name ??
  lists.seals.find(({ thing }) => thing === `seal/${id}`)?.name ??
  facts.parts[id]?.name ??
  id;

export const listsOf = (pack: Pack): readonly ListView[] => [
  ...toolsHeld(pack),
  ...toLayOut(pack),
  ...fastened(pack),
  ...toSeeTo(pack),
];

/** Chosen from the tools held: to lay out, missing, left in the drawer. */
const toolsHeld = ({ fastenings }: Pack): readonly ListView[] => {
  const tools = fastenings?.tools ?? null;
  if (tools === null) return [];
  const w = en.fastenings;
  const one = (title: string, rows: readonly string[]) =>
    list(
      title,
      [
        ['What', 5],
        ['Seen', 0.7],
      ],
      rows.map((row) => [row, '']),
    );
  return [
    one(w.missing, [...missingLines(tools, w), ...askLines(tools)]),
    list(
      `${w.tools}, ${w.inDateOn(tools.on)}`,
      [
        ['Tool', 3],
        ['Where', 1.6],
        ['Out', 0.7],
        ['Back', 0.7],
      ],
      tools.layOut.map(({ name, place }) => [name, place ?? '', '', '']),
    ),
    one(w.laidAside, asideLines(tools, w)),
  ];
};

/** Each value as issued, and under it what it does to bolt and hole. */
const fastened = ({ fastenings }: Pack): readonly ListView[] => [
  list(
    en.fastenings.title,
    [
      ['Fastening', 1.4],
      ['Value', 0.9],
      ['Clamp, wrench, grip', 3],
    ],
    (fastenings?.list ?? []).map((one) => [
      `${one.jointName}, ${one.what}`,
      one.value.shown ?? 'NONE',
      fasteningLines(one, en.fastenings).join('; '),
    ]),
  ),
];

const toLayOut = (pack: Pack): readonly ListView[] => {
  const { lists } = pack;
  return [
    list(
      'Tools',
      [
        ['Tool', 2.2],
        ['For', 2.6],
        ['Out', 0.7],
        ['Back', 0.7],
      ],
      lists.tools.map((row) => [
        row.tool,
        row.for.map((id) => nameOf(id, pack)).join(', '),
        '',
        '',
      ]),
    ),
    list(
      'Gaskets and rings',
      [
        ['Count', 0.6],
        ['Name', 1.8],
        ['Size', 1.5],
        ['Compound', 1.3],
        ['Joint', 1.5],
        ['Old out', 0.7],
        ['New in', 0.7],
      ],
      lists.seals.map((row) => [
        String(row.count),
        row.name,
        row.size ?? 'not stated',
        row.compound ?? 'not stated',
        row.joint,
        '',
        '',
      ]),
    ),
    list(
      'Consumables',
      [
        ['Name', 2],
        ['Amount', 1],
        ['For', 2],
      ],
      lists.consumables.map((row) => [row.name, row.amount ?? 'not stated', row.for]),
    ),
    list(
      'Loose parts',
      [
        ['Count', 0.7],
        ['Name', 3],
        ['Out', 1],
        ['Back', 1],
      ],
      lists.loose.map((row) => [String(row.count), row.name, '', '']),
    ),
  ];
};

const toSeeTo = ({ lists, limits }: Pack): readonly ListView[] => [
  list(
    'Temporary things',
    [
      ['Name', 2],
      ['Where', 2],
      ['In', 0.8],
      ['Taken away', 1],
    ],
    lists.temporary.map((row) => [row.name, row.where, '', '']),
  ),
  list(
    'Weights',
    [
      ['Part', 2],
      ['Mass', 1],
      ['Carried by', 2],
    ],
    lists.weights.map((row) => [row.name, kg(row.massKg), row.carriedBy ?? 'not stated']),
  ),
  list(
    'Values in force',
    [
      ['Value', 1.2],
      ['For', 1.8],
      ['Origin, issue, date, authority, thread', 3],
    ],
    [...lists.values, ...limits].map((value) => {
      const view = valueView(value);
      return [view.shown ?? 'NONE', view.name, view.words];
    }),
  ),
  list(
    'Proofs',
    [
      ['Proof', 1.2],
      ['What', 3],
      ['By', 1],
      ['At', 0.8],
    ],
    lists.proofs.map((row) => [row.name, row.what, '', '']),
  ),
  list(
    'Follow-ups',
    [
      ['After', 0.8],
      ['What', 3],
      ['Owner', 1.2],
      ['Done by', 1.2],
    ],
    lists.followUps.map((row) => [row.after, row.what, '', '']),
  ),
];
