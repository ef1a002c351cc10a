// Everything that will need a decision, listed once when the pack is made and settled by name.

import { formatNumber } from '../quantity/quantity.ts';
import { type Context, isWet, jointOf, partOf, wayOf } from './context.ts';
import { isWaterSide } from './isolation.ts';
import { isThreaded } from './joint-shape.ts';
import { liftsOpen } from './lifts-open.ts';
import { sealsOpen } from './seal-decisions.ts';
import { sheetsOpen, sheetsUnchecked } from './sheet-age.ts';
import type { Decision } from './types.ts';
import { tighteningValues } from './values.ts';

type Open = Omit<Decision, 'settled'>;

export const decisionsOf = (c: Context): Decision[] => {
  const open: Open[] = [
    ...isolationOpen(c),
    ...handsOpen(c),
    ...c.undone.flatMap((u) => jointOpen(c, u.id)),
    ...fasteningsOpen(c),
    ...sealsOpen(c),
    ...usedOpen(c),
    ...unknownOpen(c),
    ...liftsOpen(c),
    ...sheetsOpen(c),
  ];
  return open.map((d) => ({ ...d, settled: c.request.decisions?.[d.id] ?? null }));
};

const isolationOpen = (c: Context): Open[] => {
  const wet = c.undone.some((u) => !u.bench && isWet(c.machine, u.id));
  if (!wet) return [];
  if (!c.isolation.stated)
    return [
      {
        id: 'isolation not stated',
        question: c.say('whichClosures'),
        why: c.say('whichClosuresWhy'),
      },
    ];
  if (!c.isolation.closures.some((x) => isWaterSide(c.machine, x.closure)))
    return [
      {
        id: 'no closure of the water side',
        question: c.say('whichWater'),
        why: c.say('whichWaterWhy'),
      },
    ];
  if (c.isolation.proveAt === null)
    return [
      {
        id: 'no drain to prove at',
        question: c.say('whichDrain'),
        why: c.say('whichDrainWhy'),
      },
    ];
  return [];
};

/** Who there is to look a second time is settled beforehand, not found out at the machine. */
const handsOpen = (c: Context): Open[] =>
  c.request.handsAboard !== undefined
    ? []
    : [
        {
          id: 'hands aboard not stated',
          question: c.say('whoLooksAgain'),
          why: c.say('whoLooksAgainWhy'),
        },
      ];

const jointOpen = (c: Context, id: string): Open[] => {
  const joint = jointOf(c, id);
  const open: Open[] = [];
  if (joint.fasteners === undefined)
    open.push({
      id: `fastenings not stated joint/${id}`,
      question: c.say('whatFastens', joint.name),
      why: c.say('whatFastensWhy'),
    });
  const threaded = Object.values(joint.fasteners ?? {}).some(isThreaded);
  if (threaded) {
    const values = tighteningValues(c.machine, joint);
    // Tight by hand with no value is allowed where the plant marks the joint as not critical.
    if (values.some((v) => v.shown === null) && joint.critical !== false)
      open.push({
        id: `no value joint/${id}`,
        question: c.say('whatValue', joint.name),
        why: c.say('whatValueWhy'),
      });
    if (values.some((v) => v.shown !== null && v.threadCondition === null))
      open.push({
        id: `no thread condition joint/${id}`,
        question: c.say('dryOrOiled', joint.name),
        why: c.say('dryOrOiledWhy'),
      });
    if (values.some((v) => v.origin === 'general table'))
      open.push({
        id: `general table joint/${id}`,
        question: c.say('mayTable', joint.name),
        why: c.say('mayTableWhy'),
      });
  }
  return open;
};

/** A value that can't be right, and a tool that is not there: settled before anything is opened. */
const fasteningsOpen = (c: Context): Open[] => {
  const { list, tools } = c.fastenings;
  const nameOf = (id: string): string => {
    const one = list.find((each) => each.id === id);
    return one === undefined ? id : c.say('partOfJoint', one.jointName, one.what);
  };
  const wrong = list.flatMap((one): Open[] => {
    const [share] = one.bands
      .filter((band) => band.verdict === 'cannot be right')
      .map((band) => formatNumber(100 * (band.yieldShareMin?.value ?? 0), 3));
    if (share === undefined) return [];
    return [
      {
        id: `value can't be right ${one.id}`,
        question: c.say('valueRight', nameOf(one.id), one.value.shown ?? ''),
        why: c.say('valueRightWhy', share),
      },
    ];
  });
  const short = (tools?.missing ?? []).map(({ fastening, what, why, nearest }): Open => {
    const [near] = nearest;
    if (what !== 'what fits' && near !== undefined)
      return {
        id: `use tool ${near.tool} for ${fastening}`,
        question: c.say('mayUseTool', near.name, nameOf(fastening)),
        why: c.say(what === 'wrench' ? 'mayUseToolWhy' : 'mayUseNamedWhy', near.whyNot),
      };
    return {
      id: `no tool for ${fastening}`,
      question: c.say('whichTool', nameOf(fastening)),
      why: c.say('whichToolWhy', why),
    };
  });
  const settled = list.flatMap(({ id, tools: chosen }): Open[] => {
    const { anyway = null, line = null } = chosen ?? {};
    if (anyway === null || line === null) return [];
    return [
      {
        id: `use tool ${line.wrenchId} for ${id}`,
        question: c.say('mayUseTool', line.wrench, nameOf(id)),
        why: c.say('mayUseNamedWhy', anyway.against),
      },
    ];
  });
  return [...wrong, ...short, ...settled];
};

/** Joints that should be left alone but that nothing avoids. */
const usedOpen = (c: Context): Open[] =>
  [...new Set(c.plans.flatMap((p) => p.used))].map((id) => {
    const joint = jointOf(c, id);
    const holds = joint.medium ?? c.say('whatShouldStay');
    const why = joint.doNotDisturb ?? c.say('itHolds', holds);
    return {
      id: `do not disturb joint/${id}`,
      question: c.say('mayUndo', joint.name),
      why: c.say('noWayRound', why),
    };
  });

const unknownOpen = (c: Context): Open[] => {
  const open: Open[] = [];
  const minutes = [
    ...c.undone
      .filter((u) => {
        const j = jointOf(c, u.id);
        return j.undoMinutes === undefined || j.makeMinutes === undefined;
      })
      .map((u) => jointOf(c, u.id).name),
    ...c.moved.filter((m) => wayOf(c, m)?.minutes === undefined).map((m) => partOf(c, m.id).name),
  ];
  if (minutes.length > 0)
    open.push({
      id: 'unknown minutes',
      question: c.say('howLong', [...new Set(minutes)]),
      why: c.say('howLongWhy'),
    });
  for (const m of c.moved) {
    if (partOf(c, m.id).mass !== undefined) continue;
    open.push({
      id: `unknown mass part/${m.id}`,
      question: c.say('whatMass', partOf(c, m.id).name),
      why: c.say('whatMassWhy'),
    });
  }
  return open;
};

/** What rests on an unknown, in words; it is no problem, but it can't be checked. */
export const notChecked = (c: Context): string[] => {
  const rows: string[] = [];
  for (const u of c.undone) {
    const joint = jointOf(c, u.id);
    if (joint.accesses === undefined) rows.push(c.say('noAccess', joint.name));
    if (joint.between === undefined) rows.push(c.say('noBetween', joint.name));
    if (c.shapes[u.id]?.points === null && (c.shapes[u.id]?.holes.length ?? 0) > 1)
      rows.push(c.say('noPositions', joint.name));
  }
  const disturbed = [
    ...c.undone.map((u) => `joints/${u.id}/`),
    ...c.moved.map((m) => `parts/${m.id}/`),
  ];
  for (const path of c.machine.unknown)
    if (disturbed.some((d) => path.startsWith(d)))
      rows.push(c.say('unknownField', inWords(c, path)));
  for (const o of c.machine.origins)
    if (o.from === 'assumed' && disturbed.some((d) => o.path.startsWith(d)))
      rows.push(c.say('assumedField', inWords(c, o.path), o.by ?? null));
  rows.push(...sheetsUnchecked(c));
  rows.push(c.say('minutesNotStated'));
  return rows;
};

/** `parts/belt-guard/mass` as a person says it: `Belt guard: mass`. */
const inWords = (c: Context, path: string): string => {
  const [kind, id = '', ...rest] = path.split('/');
  const name = kind === 'joints' ? jointOf(c, id).name : partOf(c, id).name;
  return c.say('fieldOf', name, rest);
};
