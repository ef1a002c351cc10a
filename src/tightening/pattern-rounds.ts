// The rounds in which the bolts of a joint are tightened: fractions of the value, and the order.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure } from '../quantity/border.ts';
import type { Problem, Source, Working, WorkingRow } from '../quantity/types.ts';
import { boltOrder, insideOutOrder, type Layout, type Point, ringOrder } from './pattern.ts';
import { crossPatternSource, knownRows } from './tables/cross-pattern.ts';

const count = z.int().min(1).max(limits.bolting.bolts);
const point = z.union([
  z.tuple([figure('mm'), figure('mm')]).transform(([x, y]): Point => [x.value, y.value]),
  z
    .strictObject({ x: figure('mm'), y: figure('mm') })
    .transform(({ x, y }): Point => [x.value, y.value]),
]);
const points = z.array(point).min(1).max(limits.bolting.bolts);
const fraction = figure('1', {
  above: 0,
  max: 1,
  says: 'a round is a share of the value: more than 0, at most 1',
});

/** Input of `pattern`. Positions have x to the right and y up. */
export const patternInput = z.strictObject({
  bolts: count.optional(),
  layout: z
    .union([
      z.literal('ring'),
      z.strictObject({ kind: z.enum(['rows', 'rectangle']), rows: count, columns: count }),
      z.strictObject({ kind: z.literal('positions'), mm: points }),
      points,
    ])
    .optional(),
  positions: points.optional(),
  rounds: z.array(fraction).min(1).max(limits.bolting.rounds).optional(),
  circleRound: z.boolean().default(true),
});

export const patternOutput = z.strictObject({
  rounds: z.array(
    z.strictObject({
      fraction: z.number(),
      order: z.enum(['cross', 'circle']),
      sequence: z.array(z.int()),
    }),
  ),
  ...commonOut,
});

export type PatternInput = z.infer<typeof patternInput>;

export type Round = {
  readonly fraction: number;
  readonly order: 'cross' | 'circle';
  /** Bolt numbers from 1. */
  readonly sequence: readonly number[];
};

export type PatternResult = {
  readonly rounds: readonly Round[];
  readonly working: Working;
  readonly cautions: readonly string[];
  readonly notWorkedOut: readonly [];
};

export type PatternAnswer =
  | { readonly ok: true; readonly result: PatternResult }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** PCC-1's passes as publicly stated: 20 to 30 %, 50 to 70 %, 100 %, then once round in order. */
export const USUAL_ROUNDS: readonly number[] = [0.3, 0.6, 1];

/** Rounds at each fraction in `order`, then, unless left out, once round at the whole value. */
export function roundsOf(
  order: readonly number[],
  fractions: readonly number[] = USUAL_ROUNDS,
  circleRound = true,
): Round[] {
  const rounds: Round[] = fractions.map((share) => ({
    fraction: share,
    order: 'cross',
    sequence: order,
  }));
  if (!circleRound) return rounds;
  const sequence = [...order].sort((a, b) => a - b);
  return [...rounds, { fraction: 1, order: 'circle', sequence }];
}

export function pattern(input: PatternInput): PatternAnswer {
  const problems: Problem[] = [];
  const layout = layoutOf(input, problems);
  const fractions = input.rounds?.map(({ value }) => value);
  problems.push(...fallingRounds(fractions ?? []));
  const found = layout === null ? null : orderOf(layout, input.bolts, problems);
  if (found === null || problems.length > 0) return { ok: false, problems };
  const rounds = roundsOf(found.order, fractions, input.circleRound);
  const cautions = [...found.cautions];
  const last = fractions?.[fractions.length - 1];
  if (last !== undefined && last < 1 && !input.circleRound) {
    cautions.push(`The rounds end at ${last} of the value: the joint is not tight after them.`);
  }
  if (found.order.length > 1 && !input.circleRound) {
    cautions.push(
      'Without a last round in order, bolts tightened early stay slack by what their ' +
        'neighbours took from them.',
    );
  }
  return { ok: true, result: { rounds, working: found.working, cautions, notWorkedOut: [] } };
}

function layoutOf(input: PatternInput, problems: Problem[]): Layout | null {
  const { layout, positions } = input;
  const expected = 'ring, {kind: rows or rectangle, rows, columns}, or positions [[x, y], …] in mm';
  if (layout !== undefined && positions !== undefined) {
    const why = 'where the bolts lie is given twice';
    problems.push({ path: 'positions', got: positions, expected: 'layout or positions', why });
    return null;
  }
  const given = layout ?? positions;
  if (given === undefined) {
    const why = 'the order follows from where the bolts lie, and that is missing';
    problems.push({ path: 'layout', got: null, expected, why });
    return null;
  }
  if (given === 'ring') return given;
  return 'kind' in given ? given : { kind: 'positions', mm: given };
}

function fallingRounds(fractions: readonly number[]): Problem[] {
  return fractions.flatMap((share, i) =>
    share >= (fractions[i - 1] ?? 0)
      ? []
      : [
          {
            path: `rounds/${i}`,
            got: share,
            expected: `at least ${fractions[i - 1]}`,
            why: 'a round goes no lower than the one before it',
          },
        ],
  );
}

type Ordered = {
  readonly order: readonly number[];
  readonly working: Working;
  readonly cautions: readonly string[];
};

function orderOf(layout: Layout, bolts: number | undefined, problems: Problem[]): Ordered | null {
  if (layout === 'ring') {
    if (bolts !== undefined) return onRing(bolts);
    const why = 'how many bolts the ring has is missing';
    problems.push({ path: 'bolts', got: null, expected: 'a whole number', why });
    return null;
  }
  const same = layout.kind === 'positions' ? samePlace(layout.mm) : null;
  if (same !== null) {
    const [path, got] = [`positions/${same[1]}`, layout.kind === 'positions' && layout.mm[same[1]]];
    const why = `bolts ${same[0] + 1} and ${same[1] + 1} lie at one place`;
    problems.push({ path, got, expected: 'another place', why });
    return null;
  }
  const counts = countsOf(layout);
  const n = bolts ?? counts[0] ?? 0;
  if (n > limits.bolting.bolts || !counts.includes(n)) {
    const expected =
      n > limits.bolting.bolts ? `at most ${limits.bolting.bolts}` : counts.join(' or ');
    const why = 'the bolts and where they lie do not agree';
    problems.push({ path: 'bolts', got: bolts ?? n, expected, why });
    return null;
  }
  return outwards(layout, n, n === counts[0]);
}

/** How many bolts a layout may hold: a rectangle's rim, or its inside as well. */
function countsOf(layout: Exclude<Layout, 'ring'>): number[] {
  if (layout.kind === 'positions') return [layout.mm.length];
  const { kind, rows, columns } = layout;
  const all = rows * columns;
  const rim = rows === 1 || columns === 1 ? all : 2 * (rows + columns) - 4;
  return kind === 'rows' || rim === all ? [all] : [rim, all];
}

/** The first two of the positions that are one. */
function samePlace(mm: readonly Point[]): readonly [number, number] | null {
  const seen = new Map<string, number>();
  for (const [i, [x, y]] of mm.entries()) {
    const before = seen.get(`${x} ${y}`);
    if (before !== undefined) return [before, i];
    seen.set(`${x} ${y}`, i);
  }
  return null;
}

const ours: Source = { kind: 'computed', by: 'tightening/pattern' };

function onRing(n: number): Ordered {
  const row = knownRows.find(({ bolts }) => bolts === n);
  const source: Source = row?.had === 'read' ? crossPatternSource : ours;
  const working: WorkingRow[] = [
    step('n', 'bolts, numbered clockwise', String(n), n, { kind: 'entered', by: 'the input' }),
  ];
  if (n > 1 && n % 2 === 0) working.push(step('o', 'to the opposite', 'n / 2', n / 2, source));
  if (n % 4 === 0) working.push(step('q', 'a quarter turn', 'n / 4', n / 4, source));
  return { order: ringOrder(n), working, cautions: ringCautions(n, row?.had) };
}

function ringCautions(n: number, had: 'read' | 'memory' | undefined): string[] {
  if (n < 4 || had === 'read') return [];
  const rule = 'opposite pairs, quarter turns where they exist, next where it is least tightened';
  if (had === 'memory') {
    return [
      `The published row of ${n} bolts is known from memory only; the law (${rule}) gives it.`,
    ];
  }
  const odd = n % 2 === 0 ? '' : ' An odd ring has no opposite pairs: it gets a star.';
  return [
    `No published row of ${n} bolts is at hand: the order is Boxup's own law that gives the ` +
      `published rows of 4, 8 and 16 (${rule}).${odd}`,
  ];
}

function outwards(layout: Exclude<Layout, 'ring'>, n: number, usual: boolean): Ordered {
  const filled: Layout =
    layout.kind === 'rectangle' && !usual ? { ...layout, kind: 'rows' } : layout;
  const order = boltOrder(filled, n) ?? insideOutOrder([]);
  const working: WorkingRow[] = [];
  if (layout.kind === 'positions') {
    working.push(step('n', 'positions', String(n), n, { kind: 'entered', by: 'the input' }));
  } else {
    const by: Source = { kind: 'entered', by: 'the input' };
    const { rows, columns } = layout;
    const rim = layout.kind === 'rectangle' && usual && Math.min(rows, columns) > 1;
    working.push(
      step('r', 'rows', String(rows), rows, by),
      step('c', 'columns', String(columns), columns, by),
      step('n', 'bolts', rim ? '2 * (r + c) - 4' : 'r * c', n, ours),
    );
  }
  const practice =
    'From the middle outwards, across at one distance: common practice, no source. ' +
    "The maker's figure of the joint comes first.";
  const numbered =
    filled.kind === 'rows'
      ? ['Bolts are numbered row by row; rows and columns are taken as evenly spaced.']
      : filled.kind === 'rectangle'
        ? ['Bolts are numbered clockwise round the rim from its upper left; evenly spaced.']
        : [];
  return { order, working, cautions: [practice, ...numbered] };
}

function step(
  symbol: string,
  text: string,
  expression: string,
  value: number,
  source: Source,
): WorkingRow {
  return { symbol, text, expression, value, unit: '1', source };
}
