// Which tools do a whole job: the fewest distinct ones, and what is missing or out of date.

import { limits } from '../limits.ts';
import { formatNumber, readQuantity } from '../quantity/quantity.ts';
import type { Solver } from '../quantity/solver.ts';
import type { Quantity, Source } from '../quantity/types.ts';
import { convert, knownUnit } from '../quantity/units.ts';
import type { HeldWrench, Tool } from '../tools/tool.ts';
import {
  asWrench,
  type Combination,
  combinations,
  endKinds,
  endPieces,
  type Judged,
  judge,
  type UseAnyway,
  unlike,
  type Wanted,
} from './tool-fit.ts';
import {
  objectiveOf,
  type Picked,
  pickedOf,
  quickPick,
  toolProgram,
  toolsBound,
  toolsOf,
} from './tool-program.ts';
import { type HeadGiven, widthOf } from './width.ts';
import { checkWrench } from './wrench-check.ts';

/** One kind of fastener in one joint. */
export type Fastening = HeadGiven &
  Omit<Wanted, 'widthMm' | 'inside'> & {
    readonly name: string;
  };

export type ChosenTools = {
  readonly fastening: string;
  readonly widthMm: number;
  readonly widthSource: Source;
  /** Ids from the hand to the bolt. */
  readonly tools: readonly string[];
  /** Null where nothing is tightened to a value. */
  readonly set: WrenchSet | null;
  /** A wrench used although it may not be: who says so, why, and what speaks against it. */
  readonly anyway: (UseAnyway & { readonly against: readonly string[] }) | null;
  readonly cautions: readonly string[];
};

/** What the mechanic does with the wrench, in the units on its scale; data for the figure. */
export type WrenchSet = {
  readonly wrench: string;
  readonly setting: Quantity;
  readonly torque: Quantity;
  /** On the scale, to its division: `71 N·m`. */
  readonly shown: string;
  readonly onScale: number;
  readonly scaleUnit: string;
  readonly gripPointMm: number | null;
  /** Of the crowfoot: 0 straight ahead, 90 square to the wrench; null without one. */
  readonly angleDeg: number | null;
  readonly offsetMm: number | null;
};

export type MissingTool = {
  readonly fastening: string;
  readonly what: 'what fits' | 'wrench' | 'what joins them';
  readonly why: string;
  readonly nearest: readonly { readonly tool: string; readonly whyNot: readonly string[] }[];
};

/** A wrench whose range would serve, but which is out of date, dropped or not known well enough. */
export type LaidAside = {
  readonly tool: string;
  readonly why: readonly string[];
  readonly wouldServe: readonly string[];
  /** The wrenches chosen for those fastenings. */
  readonly instead: readonly string[];
};

export type ToolChoice = {
  readonly chosen: readonly ChosenTools[];
  /** Every tool to lay out, in the order of the list. */
  readonly tools: readonly string[];
  /** No set of fewer tools than this does what is chosen. */
  readonly bound: number;
  readonly proven: boolean;
  readonly missing: readonly MissingTool[];
  readonly laidAside: readonly LaidAside[];
  readonly asks: readonly { readonly fastening: string; readonly ask: string }[];
};

type Sized = { readonly of: Fastening; readonly wanted: Wanted; readonly source: Source };

/** `on` is the day of the work, as 2026-11-25; the cycles of the wrenches are those of the list. */
export async function chooseTools(
  fastenings: readonly Fastening[],
  tools: readonly Tool[],
  on: string,
  solver: Solver,
): Promise<ToolChoice> {
  const asks: { fastening: string; ask: string }[] = [];
  const sized = fastenings.flatMap((of): Sized[] => {
    const width = widthOf(of);
    if ('mm' in width) {
      const wanted = { ...of, widthMm: width.mm, inside: of.head === 'socket' };
      return [{ of, wanted, source: width.source }];
    }
    asks.push({ fastening: of.id, ask: width.asked });
    return [];
  });
  const different = unlike(tools);
  const ways = sized.map((one) => ({ ...one, ...combinations(one.wanted, different, on) }));
  const possible = ways.filter(({ kept }) => kept.length > 0);
  const best = await fewest(
    possible.map(({ kept }) => kept),
    solver,
  );
  const whole = possible.every(({ kept, all }) => kept.length === all);
  const chosen = possible.flatMap(({ wanted, source, kept, usable }, f) => {
    const combination = kept[best.picked[f] ?? 0];
    return combination === undefined ? [] : [chosenTools(wanted, source, combination, usable)];
  });
  const laidOut = new Set(chosen.flatMap((one) => one.tools));
  return {
    chosen,
    tools: tools.flatMap(({ id }) => (laidOut.has(id) ? [id] : [])),
    bound: whole ? best.bound : 0,
    proven: whole && best.proven,
    missing: ways.flatMap(({ wanted, kept }) =>
      kept.length > 0 ? [] : [missingTool(wanted, tools, on)],
    ),
    laidAside: laidAside(
      sized.map(({ wanted }) => wanted),
      tools,
      on,
      chosen,
    ),
    asks,
  };
}

async function fewest(
  kept: readonly (readonly Combination[])[],
  solver: Solver,
): Promise<{ picked: Picked; bound: number; proven: boolean }> {
  if (kept.length === 0) return { picked: [], bound: 0, proven: true };
  const choices = kept.map((list) =>
    list.map((one) => ({ tools: one.tools.map(({ id }) => id), offMiddle: one.offMiddle })),
  );
  const start = quickPick(choices);
  const program = toolProgram(choices, start);
  const answer = await solver(program, { nodes: limits.tools.choiceNodes });
  // The solver's figures are rounded: what it picked is counted anew.
  const theirs = answer.values === null ? null : pickedOf(choices, answer.values);
  const better = theirs !== null && objectiveOf(choices, theirs) < objectiveOf(choices, start);
  const picked = better ? theirs : start;
  const bound = toolsBound(choices, answer.bound ?? 0);
  const count = toolsOf(choices, picked).size;
  return { picked, bound: Math.min(bound, count), proven: count <= bound };
}

function chosenTools(
  wanted: Wanted,
  source: Source,
  { tools, judged }: Combination,
  usable: ReadonlySet<string>,
): ChosenTools {
  const against = judged?.usable === false ? judged.whyNot : [];
  const anyway = judged?.anyway ?? null;
  const set = judged === null ? null : wrenchSet(wanted, tools, judged);
  const others =
    against.length > 0 && usable.size > 0
      ? [`Used anyway, though one that may be used is held: ${[...usable].join(', ')}.`]
      : [];
  return {
    fastening: wanted.id,
    widthMm: wanted.widthMm,
    widthSource: source,
    tools: tools.map(({ id }) => id),
    set,
    anyway: anyway === null || against.length === 0 ? null : { ...anyway, against },
    cautions: [...others, ...(judged?.setting?.cautions ?? []), ...cautionsOf(tools, judged, set)],
  };
}

function wrenchSet(wanted: Wanted, tools: readonly Tool[], judged: Judged): WrenchSet | null {
  const { wrench, setting } = judged;
  if (!setting?.setting || !setting.torque) return null;
  const crowfoot = tools.find((tool) => tool.kind === 'crowfoot');
  const exact = onScale(setting.setting, wrench.scaleUnit);
  const { division } = wrench;
  const near = division === undefined ? exact : Math.round(exact / division) * division;
  const scale = Number(near.toPrecision(division === undefined ? 3 : 12));
  // An issued figure that the scale can show stays as it was issued.
  const plain = setting.setting.given !== undefined && Math.abs(near - exact) < 1e-9;
  const figure = plain ? Number(exact.toPrecision(12)) : scale;
  return {
    wrench: wrench.id,
    setting: setting.setting,
    torque: setting.torque,
    shown: `${figure} ${knownUnit(wrench.scaleUnit).symbol}`,
    onScale: figure,
    scaleUnit: wrench.scaleUnit,
    gripPointMm: wrench.lengthToGrip ?? null,
    angleDeg: crowfoot === undefined ? null : (wanted.angleDeg ?? 90),
    offsetMm: crowfoot?.offset ?? null,
  };
}

/** By the decimals that were typed, where they were, so that 35.4 lbf·ft is 35.4. */
function onScale({ value, given }: Quantity, scaleUnit: string): number {
  const read = given === undefined ? undefined : readQuantity(given, scaleUnit, '');
  return read?.ok ? read.quantity.value : convert(value, 'N.m', scaleUnit);
}

function cautionsOf(tools: readonly Tool[], judged: Judged | null, set: WrenchSet | null) {
  const cautions: string[] = [];
  if (tools.some(({ kind }) => kind === 'swivel') && judged !== null) {
    cautions.push('A swivel at an angle turns unevenly: keep it near straight (no source).');
  }
  if (set !== null) {
    const exact = convert(set.setting.value, 'N.m', set.scaleUnit);
    const off = Math.abs(set.onScale - exact) / exact;
    if (off > 0.01) {
      const share = formatNumber(100 * off, 2);
      cautions.push(`The scale's division moves the setting by ${share} %.`);
    }
  }
  return cautions;
}

const NEAREST = 3;

/** The first thing in the way, with what comes nearest to it and why that does not serve. */
function missingTool(wanted: Wanted, tools: readonly Tool[], on: string): MissingTool {
  const ends = endPieces(wanted, tools);
  const fastening = wanted.id;
  const kinds = endKinds(wanted);
  if (ends.length === 0) {
    const near = tools
      .filter((tool) => 'acrossFlats' in tool && kinds.some((kind) => kind === tool.kind))
      .map((tool) => ({ tool, mm: 'acrossFlats' in tool ? tool.acrossFlats : 0 }))
      .sort((a, b) => Math.abs(a.mm - wanted.widthMm) - Math.abs(b.mm - wanted.widthMm));
    const why =
      kinds.length === 0
        ? 'a socket-headed screw cannot be reached with an open end'
        : `no ${kinds.join(' or ')} of ${wanted.widthMm} mm is held`;
    const nearest = near.slice(0, NEAREST).map(({ tool, mm }) => ({
      tool: tool.id,
      whyNot: [`it is ${mm} mm, ${wanted.widthMm} mm is needed`],
    }));
    return { fastening, what: 'what fits', why, nearest };
  }
  if (wanted.torque === null) {
    const why = 'no handle and nothing between them fits together with it';
    return { fastening, what: 'what joins them', why, nearest: [] };
  }
  const offsets = ends.map((end) => (end.kind === 'crowfoot' ? end.offset : 0));
  const judged = tools.flatMap((tool) =>
    tool.kind === 'wrench' ? [bestOf(offsets.map((mm) => judge(wanted, tool, mm, on)))] : [],
  );
  if (judged.some(({ usable, anyway }) => usable || anyway !== null)) {
    const between = {
      straight: 'adapter',
      'open-end': 'adapter',
      long: 'extension',
      swivel: 'swivel',
    };
    const why =
      `no ${between[wanted.access]} joins a usable wrench to ` +
      `${ends.map(({ id }) => id).join(' or ')}`;
    const joined = judged.filter(({ wrench }) => reaches(wanted, wrench.id, tools, on));
    return { fastening, what: 'what joins them', why, nearest: nearestOf(joined) };
  }
  const nearest = nearestOf(judged);
  const value = wanted.torque.given ?? `${formatNumber(wanted.torque.value, 4)} N·m`;
  return { fastening, what: 'wrench', why: `no wrench held may be used for ${value}`, nearest };
}

const nearestOf = (judged: readonly Judged[]): MissingTool['nearest'] =>
  [...judged]
    .sort((a, b) => a.whyNot.length - b.whyNot.length || farOut(a) - farOut(b))
    .slice(0, NEAREST)
    .map(({ wrench, whyNot }) => ({ tool: wrench.id, whyNot }));

/** Whether a wrench would do it were somebody to name it. */
const reaches = (wanted: Wanted, tool: string, tools: readonly Tool[], on: string): boolean =>
  combinations({ ...wanted, useAnyway: [{ tool, by: '', why: '' }] }, tools, on).kept.some(
    ({ judged }) => judged?.wrench.id === tool,
  );

/** Of one wrench with several crowfeet the one with the least against it. */
const bestOf = (judged: readonly Judged[]): Judged => {
  const [first, ...others] = judged;
  if (first === undefined) throw new Error('a wrench was judged for no end piece');
  return others.reduce((a, b) => (b.whyNot.length < a.whyNot.length ? b : a), first);
};

/** How many times the setting lies outside the range. */
function farOut({ wrench, setting }: Judged): number {
  const value = setting?.setting?.value ?? 0;
  if (value <= 0) return Number.MAX_VALUE;
  return Math.max(wrench.min.value / value, value / wrench.max.value);
}

function laidAside(
  wanted: readonly Wanted[],
  tools: readonly Tool[],
  on: string,
  chosen: readonly ChosenTools[],
): LaidAside[] {
  const wrenches = tools.filter((tool): tool is HeldWrench => tool.kind === 'wrench');
  return wrenches.flatMap((wrench): LaidAside[] => {
    const middle = (wrench.min.value + wrench.max.value) / 2;
    // A setting that any range takes leaves only date, cycles and drops to speak against it.
    const own = checkWrench(asWrench(wrench), Math.max(middle, 0.5 * wrench.max.value), on);
    const why = [
      ...own.reasons,
      ...own.needs.map((need) => `not known: ${need.replace('wrench/', '')}`),
    ];
    if (why.length === 0) return [];
    const serves = wanted.filter((one) => {
      if (one.torque === null) return false;
      const ends = endPieces(one, tools);
      return ends.some((end) => {
        const offset = end.kind === 'crowfoot' ? end.offset : 0;
        const fresh = { ...wrench, calibratedOn: on, cyclesSince: 0, droppedOn: undefined };
        return judge(one, freshWrench(fresh), offset, on).usable;
      });
    });
    if (serves.length === 0) return [];
    const ids = new Set(serves.map(({ id }) => id));
    const instead = chosen.flatMap(({ fastening, set }) =>
      set !== null && ids.has(fastening) && set.wrench !== wrench.id ? [set.wrench] : [],
    );
    return [{ tool: wrench.id, why, wouldServe: [...ids], instead: [...new Set(instead)] }];
  });
}

/** The same wrench as if it came from calibration today. */
function freshWrench({ droppedOn: _, ...wrench }: HeldWrench): HeldWrench {
  return wrench;
}
