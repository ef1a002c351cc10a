// Every way in which the tools held can tighten one fastening: wrench, what joins it, what fits.

import { limits } from '../limits.ts';
import type { Quantity } from '../quantity/types.ts';
import type { Drive, HeldWrench, Tool } from '../tools/tool.ts';
import { checkWrench, LEAST_SHARE, type Wrench } from './wrench-check.ts';
import { type WrenchSetting, wrenchSetting } from './wrench-setting.ts';

export type Access = 'straight' | 'long' | 'swivel' | 'open-end';

export type UseAnyway = { readonly tool: string; readonly by: string; readonly why: string };

/** What has to be tightened, with its width settled; without a torque it is made by hand. */
export type Wanted = {
  readonly id: string;
  readonly widthMm: number;
  readonly inside: boolean;
  readonly access: Access;
  /** How far down the fastener lies, for `long`; any extension serves where it is not known. */
  readonly reachMm?: number | undefined;
  /** Of a crowfoot; it is put square to the wrench where none is stated. */
  readonly angleDeg?: number | undefined;
  readonly torque: Quantity | null;
  readonly runDown?: Quantity | undefined;
  readonly includesRunDown?: boolean | undefined;
  readonly useAnyway?: readonly UseAnyway[] | undefined;
};

export type Judged = {
  readonly wrench: HeldWrench;
  readonly setting: WrenchSetting | null;
  readonly usable: boolean;
  readonly whyNot: readonly string[];
  /** The name under which it is used although it is not usable. */
  readonly anyway: UseAnyway | null;
};

export type Combination = {
  /** From the hand to the bolt. */
  readonly tools: readonly Tool[];
  readonly judged: Judged | null;
  /** 0 with the setting in the middle of the range, 100 at its end. */
  readonly offMiddle: number;
};

const WIDTH_MM = 0.05;

type EndPiece = Extract<Tool, { kind: 'socket' | 'key' | 'crowfoot' | 'spanner' }>;

/** What fits on the fastener and reaches it. */
export function endPieces(wanted: Wanted, tools: readonly Tool[]): EndPiece[] {
  return tools.filter((tool): tool is EndPiece => {
    const kinds = endKinds(wanted);
    if (!kinds.some((kind) => kind === tool.kind) || !('acrossFlats' in tool)) return false;
    return Math.abs(tool.acrossFlats - wanted.widthMm) < WIDTH_MM;
  });
}

/** The kinds of end piece that can reach the fastener at all. */
export function endKinds({ inside, access, torque }: Wanted): readonly EndPiece['kind'][] {
  if (inside) return access === 'open-end' ? [] : ['key'];
  if (access === 'open-end') return torque === null ? ['spanner'] : ['crowfoot'];
  return torque === null && access === 'straight' ? ['socket', 'spanner'] : ['socket'];
}

/** A wrench judged for one fastening, with the crowfoot it would carry. */
export function judge(wanted: Wanted, wrench: HeldWrench, offsetMm: number, on: string): Judged {
  const anyway = wanted.useAnyway?.find(({ tool }) => tool === wrench.id) ?? null;
  if (wanted.torque === null) {
    return {
      wrench,
      setting: null,
      usable: false,
      whyNot: ['nothing is tightened to a value'],
      anyway,
    };
  }
  const length = wrench.lengthToGrip;
  const angle = wanted.angleDeg ?? 90;
  const answer = wrenchSetting({
    torque: wanted.torque,
    ...(wanted.runDown === undefined ? {} : { runDown: wanted.runDown }),
    includesRunDown: wanted.includesRunDown ?? false,
    ...(length === undefined ? {} : { wrenchLength: { value: length, unit: 'mm' } }),
    ...(offsetMm === 0
      ? {}
      : {
          adapterLength: { value: offsetMm, unit: 'mm' },
          adapterAngle: { value: angle, unit: 'deg' },
        }),
  });
  if (!answer.ok) {
    const whyNot = answer.problems.map(({ why }) => why);
    return { wrench, setting: null, usable: false, whyNot, anyway: null };
  }
  const setting = answer.result;
  if (setting.setting === null) {
    const whyNot = ['the length to its marked grip is not known: no setting can be worked out'];
    return { wrench, setting, usable: false, whyNot, anyway: null };
  }
  const check = checkWrench(asWrench(wrench), setting.setting.value, on);
  const unknown = check.needs.map((need) => `not known: ${need.replace('wrench/', '')}`);
  const whyNot = [...check.reasons, ...unknown];
  return { wrench, setting, usable: check.usable === true, whyNot, anyway };
}

export function asWrench(held: HeldWrench): Wrench {
  const { min, max, ...rest } = held;
  return {
    minNm: min.value,
    maxNm: max.value,
    ...(rest.tolerance === undefined ? {} : { tolerance: rest.tolerance }),
    ...(rest.calibratedOn === undefined ? {} : { calibratedOn: rest.calibratedOn }),
    ...(rest.intervalMonths === undefined ? {} : { intervalMonths: rest.intervalMonths }),
    ...(rest.intervalCycles === undefined ? {} : { intervalCycles: rest.intervalCycles }),
    ...(rest.cyclesSince === undefined ? {} : { cyclesSince: rest.cyclesSince }),
    ...(rest.droppedOn === undefined ? {} : { droppedOn: rest.droppedOn }),
  };
}

/**
 * Of tools that do the same (two 17 mm sockets on one square) the first: no plan needs the other.
 * Each torque wrench stays, for each has its own date.
 */
export function unlike(tools: readonly Tool[]): Tool[] {
  const seen = new Set<string>();
  return tools.filter((tool) => {
    if (tool.kind === 'wrench' || tool.kind === 'gauge') return true;
    const { id: _, name: __, place: ___, note: ____, ...does } = tool;
    const key = JSON.stringify(Object.entries(does).sort(([a], [b]) => (a < b ? -1 : 1)));
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/**
 * All combinations that are allowed; of two of which one holds the other, the smaller. Where a
 * person named a wrench to use anyway it is that one; `usable` names those that needed no name.
 */
export function combinations(wanted: Wanted, tools: readonly Tool[], on: string) {
  const found = endPieces(wanted, tools).flatMap((end): Combination[] => {
    if (end.kind === 'spanner') return [{ tools: [end], judged: null, offMiddle: 0 }];
    return drivers(wanted, tools, end, on).flatMap(({ tool, judged }) =>
      joins(wanted, tools, tool.drive, end).map((between) => ({
        tools: [tool, ...between, end],
        judged,
        offMiddle: judged === null ? 0 : offMiddle(judged),
      })),
    );
  });
  const named = found.filter(({ judged }) => judged?.anyway != null);
  const kept = withoutLarger(named.length > 0 ? named : found);
  const usable = new Set(found.flatMap(({ judged }) => (judged?.usable ? [judged.wrench.id] : [])));
  return { kept: kept.slice(0, limits.tools.combinations), all: kept.length, usable };
}

type Driver = {
  readonly tool: Extract<Tool, { kind: 'wrench' | 'handle' }>;
  readonly judged: Judged | null;
};

function drivers(wanted: Wanted, tools: readonly Tool[], end: EndPiece, on: string): Driver[] {
  if (wanted.torque === null) {
    return tools.flatMap((tool) => (tool.kind === 'handle' ? [{ tool, judged: null }] : []));
  }
  const offset = end.kind === 'crowfoot' ? end.offset : 0;
  return tools.flatMap((tool): Driver[] => {
    if (tool.kind !== 'wrench') return [];
    const judged = judge(wanted, tool, offset, on);
    return judged.usable || judged.anyway !== null ? [{ tool, judged }] : [];
  });
}

type Joining = Extract<Tool, { kind: 'adapter' | 'extension' | 'swivel' }>;

/** What may stand between driver and end piece: squares must meet, one change of square at most. */
function joins(
  wanted: Wanted,
  tools: readonly Tool[],
  from: Drive,
  end: Exclude<EndPiece, { kind: 'spanner' }>,
): Joining[][] {
  const of = <K extends Joining['kind']>(kind: K) =>
    tools.filter((tool): tool is Extract<Joining, { kind: K }> => tool.kind === kind);
  const long = wanted.access === 'long';
  const extensions = long
    ? of('extension').filter(({ length }) => length >= (wanted.reachMm ?? 0))
    : [];
  const reaches = !long || (end.kind !== 'crowfoot' && end.long && wanted.reachMm === undefined);
  const parts: Joining[][] = [
    ...(reaches ? [[]] : []),
    ...extensions.map((extension) => [extension]),
  ];
  const swivelled =
    wanted.access === 'swivel'
      ? parts.flatMap((part) => of('swivel').map((swivel) => [...part, swivel]))
      : parts;
  return swivelled.flatMap((part) => meeting(part, from, end.drive, of('adapter')));
}

function meeting(
  part: readonly Joining[],
  from: Drive,
  to: Drive,
  adapters: readonly Extract<Joining, { kind: 'adapter' }>[],
): Joining[][] {
  if (from === to) return part.every(({ drive }) => drive === from) ? [[...part]] : [];
  const fitting = adapters.filter((adapter) => adapter.drive === from && adapter.to === to);
  return fitting.flatMap((adapter) =>
    Array.from({ length: part.length + 1 }, (_, at) => at)
      .filter((at) => part.every(({ drive }, i) => drive === (i < at ? from : to)))
      .map((at) => [...part.slice(0, at), adapter, ...part.slice(at)]),
  );
}

function offMiddle({ wrench, setting }: Judged): number {
  const least = Math.max(wrench.min.value, LEAST_SHARE * wrench.max.value);
  const half = (wrench.max.value - least) / 2;
  const away = Math.abs((setting?.setting?.value ?? 0) - (least + half));
  return half <= 0 ? 0 : Math.min(100, Math.round((100 * away) / half));
}

function withoutLarger(found: readonly Combination[]): Combination[] {
  const sets = found.map(({ tools }) => new Set(tools.map(({ id }) => id)));
  return found.filter((_, at) => {
    const own = sets[at] ?? new Set();
    return !sets.some(
      (other, i) =>
        i !== at &&
        (other.size < own.size || (other.size === own.size && i < at)) &&
        [...other].every((id) => own.has(id)),
    );
  });
}
