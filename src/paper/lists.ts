// The lists at the end of the pack: what to lay out, what to count back, what to see to later.

import { asideLines, askLines, fasteningLines, missingLines } from '../pack/fastening-words.ts';
import { liftHead, liftLines, sailingLines, worthALine } from '../pack/lift-words.ts';
import type { Pack } from '../pack/types.ts';
import { now, say } from '../words/heard.ts';
import { type Language, type Words, wordsOf } from '../words/words.ts';
import { sealLists } from './seals.ts';
import { valueView } from './steps.ts';

type W = Words['fastenings'];

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

const kg = (mass: number | null): string => (mass === null ? say('notStated') : `${mass} kg`);

/** A tool is for a joint or a seal of one; the sheet has their names, ids stay inside. */
const nameOf = (id: string, { facts, lists }: Pack): string =>
  facts.joints[id]?.name ??
  lists.seals.find(({ thing }) => thing === `seal/${id}`)?.name ??
  facts.parts[id]?.name ??
  id;

export const listsOf = (pack: Pack, language: Language = 'en'): readonly ListView[] => [
  ...toolsHeld(pack, wordsOf(language).fastenings),
  ...toLayOut(pack),
  ...sealLists(pack, language),
  ...fastened(pack, wordsOf(language).fastenings),
  ...lifted(pack, wordsOf(language).lifting),
  ...toSeeTo(pack),
];

/** Chosen from the tools held: to lay out, missing, left in the drawer. */
const toolsHeld = ({ fastenings }: Pack, w: W): readonly ListView[] => {
  const tools = fastenings?.tools ?? null;
  if (tools === null) return [];
  const one = (title: string, rows: readonly string[]) =>
    list(
      title,
      [
        [say('pWhat'), 5],
        [say('askSeen'), 0.7],
      ],
      rows.map((row) => [row, '']),
    );
  return [
    one(w.missing, [...missingLines(tools, w), ...askLines(tools)]),
    list(
      `${w.tools}, ${w.inDateOn(tools.on)}`,
      [
        [say('lTool'), 3],
        [say('lWhere'), 1.6],
        [say('lOut'), 0.7],
        [say('lBack'), 0.7],
      ],
      tools.layOut.map(({ name, place }) => [name, place ?? '', '', '']),
    ),
    one(w.laidAside, asideLines(tools, w)),
  ];
};

/** Each weight that is not light: how it goes, what bears it, and what is still asked. */
const lifted = ({ lifts }: Pack, w: Words['lifting']): readonly ListView[] => {
  if (lifts === undefined) return [];
  const rows = worthALine(lifts).map((one) => [
    liftHead(one, w),
    liftLines(one, w, now).join('; '),
  ]);
  return [
    list(
      [w.title, ...sailingLines(lifts, w)].join(' · '),
      [
        [say('pWhat'), 1.6],
        [say('lCarried'), 3],
      ],
      rows,
    ),
  ];
};

/** Each value as issued, and under it what it does to bolt and hole. */
const fastened = ({ fastenings }: Pack, w: W): readonly ListView[] => [
  list(
    w.title,
    [
      [say('lFastening'), 1.4],
      [say('lValue'), 0.9],
      [say('lClampWrench'), 3],
    ],
    (fastenings?.list ?? []).map((one) => [
      `${one.jointName}, ${one.what}`,
      one.value.shown ?? say('lNone'),
      fasteningLines(one, w).join('; '),
    ]),
  ),
];

const toLayOut = (pack: Pack): readonly ListView[] => {
  const { lists } = pack;
  return [
    list(
      say('lTools'),
      [
        [say('lTool'), 2.2],
        [say('lForWhat'), 2.6],
        [say('lOut'), 0.7],
        [say('lBack'), 0.7],
      ],
      lists.tools.map((row) => [
        now(row.tool),
        row.for.map((id) => nameOf(id, pack)).join(', '),
        '',
        '',
      ]),
    ),
    ...(pack.seals === undefined ? sealsBefore(pack) : []),
    list(
      say('lLoose'),
      [
        [say('lCount'), 0.7],
        [say('lName'), 3],
        [say('lOut'), 1],
        [say('lBack'), 1],
      ],
      lists.loose.map((row) => [String(row.count), now(row.name), '', '']),
    ),
  ];
};

/** Packs made before the stores were read list their seals bare. */
const sealsBefore = ({ lists }: Pack): readonly ListView[] => [
  list(
    say('lSeals'),
    [
      [say('lCount'), 0.6],
      [say('lName'), 1.8],
      [say('lSize'), 1.5],
      [say('lCompound'), 1.3],
      [say('lJoint'), 1.5],
      [say('lOldOut'), 0.7],
      [say('lNewIn'), 0.7],
    ],
    lists.seals.map((row) => [
      String(row.count),
      now(row.name),
      row.size ?? say('notStated'),
      row.compound ?? say('notStated'),
      row.joint,
      '',
      '',
    ]),
  ),
  list(
    say('lConsumables'),
    [
      [say('lName'), 2],
      [say('lAmount'), 1],
      [say('lForWhat'), 2],
    ],
    lists.consumables.map((row) => [now(row.name), row.amount ?? say('notStated'), row.for]),
  ),
];

const toSeeTo = ({ lists, limits }: Pack): readonly ListView[] => [
  list(
    say('lTemporary'),
    [
      [say('lName'), 2],
      [say('lWhere'), 2],
      [say('lIn'), 0.8],
      [say('lTaken'), 1],
    ],
    lists.temporary.map((row) => [now(row.name), now(row.where), '', '']),
  ),
  list(
    say('lWeights'),
    [
      [say('lPart'), 2],
      [say('lMass'), 1],
      [say('lCarried'), 2],
    ],
    lists.weights.map((row) => [row.name, kg(row.massKg), row.carriedBy ?? say('notStated')]),
  ),
  list(
    say('lInForce'),
    [
      [say('lValue'), 1.2],
      [say('lForWhat'), 1.8],
      [say('lOrigin'), 3],
    ],
    [...lists.values, ...limits].map((value) => {
      const view = valueView(value);
      return [view.shown ?? say('lNone'), view.name, view.words];
    }),
  ),
  list(
    say('lProofs'),
    [
      [say('lProof'), 1.2],
      [say('pWhat'), 3],
      [say('pBy'), 1],
      [say('lAt'), 0.8],
    ],
    lists.proofs.map((row) => [now(row.name), now(row.what), '', '']),
  ),
  list(
    say('lFollowUps'),
    [
      [say('lAfter'), 0.8],
      [say('pWhat'), 3],
      [say('lOwner'), 1.2],
      [say('lDoneBy'), 1.2],
    ],
    lists.followUps.map((row) => [now(row.after), now(row.what), '', '']),
  ),
];
