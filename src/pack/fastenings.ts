// Every fastening a job makes up again: its issued value weighed, its tools chosen from those held.

import type { Fastener } from '../plant/schema.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Solver } from '../quantity/solver.ts';
import type { Quantity, Working } from '../quantity/types.ts';
import { knownUnit } from '../quantity/units.ts';
import {
  type ChosenTools,
  chooseTools,
  type ToolChoice,
  type Fastening as Wanted,
} from '../tightening/choose-tools.ts';
import { holeNames, tighteningInput } from '../tightening/model.ts';
import type { Surface } from '../tightening/tables/friction-ranges.ts';
import { tightening } from '../tightening/tightening.ts';
import { LEAST_SHARE } from '../tightening/wrench-check.ts';
import type { HeldWrench, Tool } from '../tools/tool.ts';
import { clampFor } from './clamp.ts';
import { accessOf, type Context, jointOf, type Undone } from './context.ts';
import type {
  Band,
  Fastening,
  Fastenings,
  FasteningTools,
  Held,
  RoundSet,
  ToolList,
} from './fastening-types.ts';
import { fastenerWords, isThreaded } from './joint-shape.ts';
import type { PackRequest } from './types.ts';
import { noValue, shownValue } from './values.ts';

type Asked = Pick<Context, 'machine' | 'undone' | 'request' | 'shapes' | 'say'>;
type Row = { readonly u: Undone; readonly id: string; readonly name: string; readonly f: Fastener };

const idOf = ({ u, name }: Row): string => `${u.id}:${name}`;

/** Each kind of threaded fastener of each joint undone, once, in the order of the removal. */
const rowsOf = (c: Pick<Context, 'machine' | 'undone'>): Row[] => {
  const seen = new Set<string>();
  return c.undone.flatMap((u) => {
    if (seen.has(u.id)) return [];
    seen.add(u.id);
    return Object.entries(jointOf(c, u.id).fasteners ?? {}).flatMap(([name, f]): Row[] =>
      isThreaded(f) ? [{ u, id: `${u.id}:${name}`, name, f }] : [],
    );
  });
};

export const fasteningsOf = async (c: Asked, held: Held, solver: Solver): Promise<Fastenings> => {
  const rows = rowsOf(c);
  const on = c.request.when?.slice(0, 10) ?? held.on;
  const choice =
    held.tools.length === 0 || on === null
      ? null
      : await chooseTools(
          rows.flatMap((row) => wantedOf(c, row)),
          held.tools,
          on,
          solver,
        );
  const byId = new Map(held.tools.map((tool) => [tool.id, tool]));
  const list = rows.map((row): Fastening => {
    const value = issuedFor(c, row);
    const chosen = choice?.chosen.find((one) => one.fastening === idOf(row)) ?? null;
    const tools = chosen === null ? null : toolsOf(c, row, chosen, byId);
    const wrench = chosen?.set === null ? undefined : byId.get(chosen?.set?.wrench ?? '');
    const weighed = bandsOf(c, row, value.shown, wrench);
    return {
      id: idOf(row),
      joint: row.u.id,
      fastener: row.name,
      jointName: jointOf(c, row.u.id).name,
      what: c.say('counted', row.f.count, fastenerWords(row.f, c.say)),
      value,
      ...weighed,
      tools,
    };
  });
  const tools = choice === null ? null : toolListOf(c, choice, rows, byId, on ?? '');
  return { list, tools };
};

const toolListOf = (
  c: Asked,
  choice: ToolChoice,
  rows: readonly Row[],
  byId: ReadonlyMap<string, Tool>,
  on: string,
): ToolList => {
  const names = (id: string): string => byId.get(id)?.name ?? id;
  return {
    on,
    layOut: choice.tools.map((id) => ({
      id,
      name: names(id),
      place: byId.get(id)?.place ?? null,
    })),
    bound: choice.bound,
    proven: choice.proven,
    missing: choice.missing.map((one) => ({
      ...one,
      nearest: one.nearest.map((near) => ({ ...near, name: names(near.tool) })),
    })),
    laidAside: choice.laidAside.map(({ tool, why, instead }) => ({
      tool,
      name: names(tool),
      why,
      instead: instead.map(names),
    })),
    asks: [...choice.asks, ...rows.flatMap((row) => asksOf(c, row))],
  };
};

const issuedFor = (c: Pick<Context, 'machine' | 'say'>, { u, name, f }: Row) => {
  const { machine } = c;
  const joint = machine.joints[u.id];
  return f.tightening === undefined
    ? noValue(
        `${joint?.name ?? u.id}: ${name}`,
        `${joint?.name ?? u.id}, ${fastenerWords(f, c.say)}`,
      )
    : shownValue(machine, f.tightening, joint?.name ?? u.id);
};

const torqueOf = (shown: string | null): Quantity | null => {
  const read = shown === null ? null : readQuantity(shown, 'N.m', '');
  return read?.ok === true ? read.quantity : null;
};

/** How the fastener is reached is a fact of its access: it is asked for, not taken for granted. */
const reachOf = (c: Pick<Context, 'machine'>, { u }: Row) => {
  const access = accessOf(c as Context, u);
  return access?.reach === undefined
    ? null
    : { access: access.reach, reachMm: mmOf(access.reachLength), angleDeg: access.adapterAngle };
};

const asksOf = (c: Pick<Context, 'machine'>, row: Row): ToolList['asks'] => {
  const fastening = idOf(row);
  const asks: string[] = [];
  if (jointOf(c, row.u.id).byHand === true) return [];
  if (row.f.head === undefined) asks.push('which head does it have?');
  if (reachOf(c, row) === null) asks.push('how is it reached: straight, long, swivel or open-end?');
  return asks.map((ask) => ({ fastening, ask }));
};

const mmOf = (given: string | undefined): number | undefined => {
  const read = given === undefined ? null : readQuantity(given, 'mm', '');
  return read?.ok === true ? read.quantity.value : undefined;
};

const wantedOf = (c: Asked, row: Row): Wanted[] => {
  const { f } = row;
  const reach = reachOf(c, row);
  const joint = jointOf(c, row.u.id);
  if (f.head === undefined || reach === null || joint.byHand === true) return [];
  return [
    {
      id: idOf(row),
      name: `${joint.name}, ${fastenerWords(f, c.say)}`,
      head: f.head,
      thread: f.thread,
      acrossFlatsMm: mmOf(f.acrossFlats),
      access: reach.access,
      reachMm: reach.reachMm,
      angleDeg: reach.angleDeg,
      torque: torqueOf(issuedFor(c, row).shown),
      runDown: torqueOf(f.runDown ?? null) ?? undefined,
      includesRunDown: f.includesRunDown,
      useAnyway: anywayOf(c.request, idOf(row)),
    },
  ];
};

/** A wrench that a named person uses although it may not be, settled beforehand. */
const anywayOf = (request: PackRequest, fastening: string) =>
  Object.entries(request.decisions ?? {}).flatMap(([id, { by, reason }]) => {
    const [, tool] = new RegExp(`^use tool (\\S+) for ${fastening}$`).exec(id) ?? [];
    return tool === undefined ? [] : [{ tool, by, why: reason }];
  });

const toolsOf = (
  c: Asked,
  row: Row,
  chosen: ChosenTools,
  byId: ReadonlyMap<string, Tool>,
): FasteningTools => {
  const { set } = chosen;
  const wrench = set === null ? undefined : byId.get(set.wrench);
  return {
    names: chosen.tools.map((id) => byId.get(id)?.name ?? id),
    widthMm: chosen.widthMm,
    widthSource: chosen.widthSource,
    line:
      set === null || wrench?.kind !== 'wrench'
        ? null
        : {
            fastener: row.name,
            what: c.say('counted', row.f.count, fastenerWords(row.f, c.say)),
            wrenchId: wrench.id,
            wrench: wrench.name,
            shown: set.shown,
            rounds: (c.shapes[row.u.id]?.rounds ?? []).flatMap((round) =>
              roundSet(round, set.onScale, set.shown, wrench),
            ),
            gripPointMm: set.gripPointMm,
            angleDeg: set.angleDeg,
            offsetMm: set.offsetMm,
          },
    anyway: chosen.anyway,
    cautions: chosen.cautions,
  };
};

/** A share of the setting on the wrench's own scale, to its division. */
const roundSet = (
  round: string,
  full: number,
  shownFull: string,
  wrench: HeldWrench,
): RoundSet[] => {
  const share = /^(\d+) %$/.exec(round)?.[1];
  if (share === undefined && round !== 'once more in order') return [];
  const part = share === undefined ? 1 : Number(share) / 100;
  if (part === 1) return [{ round, shown: shownFull, belowRange: false }];
  const exact = full * part;
  const { division } = wrench;
  const near = division === undefined ? exact : Math.round(exact / division) * division;
  const figure = Number(near.toPrecision(division === undefined ? 3 : 12));
  const unit = knownUnit(wrench.scaleUnit);
  const least = readQuantity(`${figure} ${wrench.scaleUnit}`, 'N.m', '');
  const nm = least.ok ? least.quantity.value : 0;
  const lowest = Math.max(wrench.min.value, LEAST_SHARE * wrench.max.value);
  return [{ round, shown: `${figure} ${unit.symbol}`, belowRange: nm < lowest }];
};

/** The condition an issued value names, as one the friction tables know. */
export const surfacesOf = (condition: string | null): readonly Surface[] => {
  const text = (condition ?? '').toLowerCase();
  if (/anti-?seize|paste/.test(text)) return ['anti-seize'];
  if (/thread ?lock/.test(text)) return ['threadlock'];
  if (/\boil/.test(text)) return ['oiled'];
  if (/\bdry\b|as received/.test(text)) return ['as received'];
  // Public texts contradict each other on what a bare figure means: the clamp is shown for both.
  return ['as received', 'oiled'];
};

const holeOf = (f: Fastener) => {
  // Of a stud it is the hole that its fixed end stands in: the nut pulls on that thread as well.
  if (f.into === undefined || f.engagement === undefined) return {};
  const text = f.into.toLowerCase();
  const named = holeNames.filter((name) => text.includes(name));
  const material = named.sort((a, b) => b.length - a.length)[0];
  return material === undefined || /\bnut\b/.test(text)
    ? {}
    : { threadInto: { material, engagement: f.engagement } };
};

/** What the issued torque does to bolt and hole; never more than a warning beside the value. */
const bandsOf = (
  { machine, say }: Pick<Context, 'machine' | 'say'>,
  row: Row,
  shown: string | null,
  wrench: Tool | undefined,
): Pick<Fastening, 'bands' | 'notChecked' | 'clampNeeded'> => {
  const { f } = row;
  const needed = clampFor(machine, row.u.id, f);
  const none = (notChecked: string) => ({ bands: [], notChecked, clampNeeded: needed });
  if (shown === null) return none(say('noValueIsStated'));
  if (torqueOf(shown) === null) return none(say('noSingleTorque', shown));
  if (f.thread === undefined) return none(say('threadNotStated'));
  if (f.strengthClass === undefined) return none(say('classNotStated'));
  const condition =
    f.tightening === undefined ? null : machine.values[f.tightening]?.threadCondition;
  const tolerance = wrench?.kind === 'wrench' ? wrench.tolerance : undefined;
  const bands: Band[] = [];
  for (const surface of surfacesOf(condition ?? null)) {
    const read = tighteningInput.safeParse({
      thread: f.thread,
      strengthClass: f.strengthClass,
      surface,
      issuedTorque: shown,
      ...(tolerance === undefined ? {} : { toolScatter: tolerance }),
      ...(needed === null ? {} : { clampNeeded: needed.force.value }),
      ...holeOf(f),
    });
    if (!read.success) return none(read.error.issues.map((one) => one.message).join('; '));
    const answer = tightening(read.data);
    if (!answer.ok) return none(answer.problems.map((one) => one.why).join('; '));
    const { issued, stripping, cautions, working } = answer.result;
    if (issued === null) return none(say('frictionInNoTable'));
    bands.push({
      surface,
      preloadMin: issued.preloadMin as Quantity,
      preloadMax: issued.preloadMax as Quantity,
      yieldShareMin: issued.yieldShareMin as Quantity | null,
      yieldShareMax: issued.yieldShareMax as Quantity | null,
      verdict: issued.verdict,
      stripping:
        stripping === null ? null : { load: stripping.load as Quantity, weaker: stripping.weaker },
      cautions,
      working: working as Working,
    });
  }
  return { bands, notChecked: null, clampNeeded: needed };
};
