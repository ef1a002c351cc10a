// Water coming in through a hole: inflow, force, where the level ends and when it gets to a mark.

import { formatNumber } from '../quantity/quantity.ts';
import { entered, newSheet, quantity, type Sheet } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';
import type { FloodingIn, FloodingOut } from './flooding-model.ts';
import { coefficients, GREATEST, LEAST } from './tables/discharge.ts';

const G = 9.80665;
const HOUR = 3_600;

const gravity: Source = {
  kind: 'published',
  title: 'The International System of Units (SI), 3rd CGPM',
  edition: '1901, 9th brochure',
  place: 'standard acceleration of free fall',
};
const orifice: Source = {
  kind: 'published',
  title: '1000 Solved Problems in Fluid Mechanics, K. Subramanya',
  edition: 'as worked in its public companion notebook',
  place: 'Example 13.1',
};
const forceSource: Source = {
  kind: 'published',
  title: 'US Army TM 55-1915-200-SDC, damage control',
  edition: 'as read on a public page',
  place: 'chapter 8, paragraphs 8-1 and 8-8',
};
const fallingHead: Source = {
  kind: 'published',
  title: 'UFC 4-213-10, graving dry docks',
  edition: 'as read, formulas alone',
  place: 'paragraph 6, equations 1 to 5',
};
const own: Source = { kind: 'computed', by: 'flooding' };

type World = {
  /** Coefficient times area times √(2 g): m³/s a √m. */
  readonly k: number;
  readonly depthM: number;
  readonly holeM: number;
  readonly inM3s: number;
  readonly outM3s: number;
  readonly limitM: number;
};

export type FloodingAnswer = { readonly ok: true; readonly result: FloodingOut };

export function flooding(input: FloodingIn): FloodingAnswer {
  const sheet = newSheet();
  const world = worldOf(input, sheet);
  const areaM2 = areaOf(input);
  const force = input.density.value * G * input.depth.value * areaM2;
  sheet.work('F', 'force on the hole', 'rho*g*h*A', force, 'N', forceSource);
  const time = timeOf(input, world, sheet);
  const wanting = [
    ...(input.spaceArea === undefined ? ['spaceArea'] : []),
    ...(input.toLevel === undefined ? ['toLevel'] : []),
  ];
  const unsettled = time === undefined ? [{ output: 'timeToLevel', needs: wanting }] : [];
  const result: FloodingOut = {
    inflow: quantity(world.inM3s * HOUR, 'm3/h'),
    force: quantity(force, 'N'),
    timeToLevel: time === undefined || time === null ? null : quantity(time, 'min'),
    levelLimit: quantity(world.limitM, 'm'),
    margin: quantity((world.outM3s - world.inM3s) * HOUR, 'm3/h'),
    working: [...sheet.rows],
    cautions: cautionsOf(input, world, time),
    notWorkedOut: unsettled,
  };
  return { ok: true, result };
}

const areaOf = ({ area, diameter }: FloodingIn): number =>
  area !== undefined ? area.value / 1e6 : (Math.PI / 4) * ((diameter?.value ?? 0) / 1_000) ** 2;

function worldOf(input: FloodingIn, sheet: Sheet): World {
  const { area, coefficient, density, depth, diameter, holeHeight } = input;
  const areaM2 = areaOf(input);
  if (area === undefined) {
    const d = diameter?.value ?? 0;
    sheet.take('d', 'diameter of the hole', d, 'mm', entered);
    sheet.work('A', 'area of the hole', 'pi/4*(d/1000)^2', areaM2, 'm2', own);
  } else sheet.work('A', 'area of the hole', `${area.value}/1000000`, areaM2, 'm2', entered);
  sheet.take('h', 'outside water above the hole', depth.value, 'm', entered);
  sheet.take('z_h', 'hole above the sole', holeHeight.value, 'm', entered);
  sheet.take('rho', 'density of the water', density.value, 'kg/m3', entered);
  sheet.take('g', 'free fall', G, 'm/s2', gravity);
  coefficients.forEach(({ value, says, source }, at) => {
    sheet.take(`C${at + 1}`, `published coefficient: ${says}`, value, '1', source);
  });
  const usual = coefficient.given === undefined && coefficient.value === LEAST;
  const from = usual ? (coefficients[0]?.source ?? entered) : entered;
  sheet.take('C', 'coefficient used', coefficient.value, '1', from);
  const k = coefficient.value * areaM2 * Math.sqrt(2 * G);
  const inM3s = k * Math.sqrt(depth.value);
  const perHour = inM3s * HOUR;
  sheet.work('Q', 'inflow at the start', 'C*A*sqrt(2*g*h)*3600', perHour, 'm3/h', orifice);
  for (const [symbol, end] of [
    ['Q_low', LEAST],
    ['Q_high', GREATEST],
  ] as const) {
    const value = (perHour / coefficient.value) * end;
    const which = end === LEAST ? 'the least' : 'the greatest';
    const text = `the same at ${which} published coefficient`;
    sheet.work(symbol, text, `Q/C*${end}`, value, 'm3/h', own);
  }
  const each = (input.pumps ?? []).map(({ value }) => value);
  const pumped = each.reduce((sum, value) => sum + value, 0);
  sheet.work('P', 'pumps together', each.join(' + ') || '0', pumped, 'm3/h', entered);
  sheet.work('M', 'margin', 'P - Q', pumped - perHour, 'm3/h', own);
  const outM3s = pumped / HOUR;
  const limitM = limitOf({ k, depthM: depth.value, holeM: holeHeight.value, inM3s, outM3s }, sheet);
  return { k, depthM: depth.value, holeM: holeHeight.value, inM3s, outM3s, limitM };
}

/** Where the inflow through the covered hole has fallen to what the pumps give. */
function limitOf({ k, depthM, holeM, inM3s, outM3s }: Omit<World, 'limitM'>, sheet: Sheet): number {
  if (outM3s >= inM3s) {
    sheet.take('z_max', 'level where the rising ends: the pumps keep up', 0, 'm', own);
    return 0;
  }
  const head = outM3s === 0 ? 0 : (outM3s / k) ** 2;
  const expression = 'z_h + h - (P/3600/(C*A*sqrt(2*g)))^2';
  const limit = holeM + depthM - head;
  sheet.work('z_max', 'level where the rising ends', expression, limit, 'm', own);
  return limit;
}

/** Minutes to the mark; null: never; undefined: the input does not say enough. */
function timeOf(input: FloodingIn, world: World, sheet: Sheet): number | null | undefined {
  const { permeability, spaceArea, toLevel } = input;
  if (toLevel === undefined) return undefined;
  const mark = toLevel.value;
  const { depthM, holeM, inM3s, k, limitM, outM3s } = world;
  if (mark > limitM || (mark === limitM && outM3s > 0 && mark > 0)) return null;
  if (spaceArea === undefined) return mark === 0 ? 0 : undefined;
  const surface = spaceArea.value * permeability.value;
  sheet.work(
    'S',
    'free surface',
    `${spaceArea.value}*${permeability.value}`,
    surface,
    'm2',
    entered,
  );
  sheet.take('z', 'level asked for', mark, 'm', entered);
  const open = Math.min(mark, holeM);
  const first = open === 0 ? 0 : (surface * open) / (inM3s - outM3s);
  const steady = open === 0 ? '0' : 'S*min(z, z_h)/((Q - P)/3600)';
  const covered = mark > holeM;
  const u0 = Math.sqrt(depthM);
  const u1 = Math.sqrt(Math.max(0, holeM + depthM - mark));
  const out = outM3s / k;
  const slowed = out === 0 ? 0 : out * Math.log((u0 - out) / (u1 - out));
  const second = covered ? ((2 * surface) / k) * (u0 - u1 + slowed) : 0;
  // A mark within rounding of the limit is not reached in any time that counts.
  if (!Number.isFinite(first) || !Number.isFinite(second)) return null;
  sheet.work(
    't_1',
    'seconds until the hole is covered, or the level reached',
    steady,
    first,
    's',
    own,
  );
  if (covered) {
    sheet.work('k', 'inflow a root of head', 'C*A*sqrt(2*g)', k, 'm3/s', orifice);
    sheet.work('u_1', 'root of the head left', 'sqrt(max(0, z_h + h - z))', u1, 'm', own);
    sheet.work('u_p', 'root of the head that the pumps hold', 'P/3600/k', out, 'm', own);
    const law =
      out === 0
        ? '2*S/k*(sqrt(h) - u_1)'
        : '2*S/k*(sqrt(h) - u_1 + u_p*ln((sqrt(h) - u_p)/(u_1 - u_p)))';
    sheet.work('t_2', 'seconds from there, the head falling', law, second, 's', fallingHead);
  } else sheet.take('t_2', 'seconds with the hole covered', 0, 's', own);
  const minutes = (first + second) / 60;
  sheet.work('t', 'time to the level', '(t_1 + t_2)/60', minutes, 'min', own);
  return minutes;
}

function cautionsOf(input: FloodingIn, world: World, time: number | null | undefined): string[] {
  const { coefficient, pumps, toLevel } = input;
  const at = (end: number) => formatNumber((world.inM3s / coefficient.value) * end * HOUR);
  const said = [
    `Published coefficients run from ${LEAST} (sharp edge) to ${GREATEST} (no contraction): the ` +
      `inflow lies between ${at(LEAST)} and ${at(GREATEST)} m3/h; ` +
      `${formatNumber(coefficient.value)} is used here.`,
  ];
  if (coefficient.value < LEAST) {
    said.push(`The coefficient is below ${LEAST}: less inflow than any published table gives.`);
  }
  if (pumps === undefined) said.push('No pumps are given: reckoned as none.');
  else if (pumps.length > 0) {
    said.push(
      'Pumps are reckoned at the figure given: dirt, lift and a flat battery take from it.',
    );
  }
  if (time === null && toLevel !== undefined) {
    const why =
      world.outM3s >= world.inM3s
        ? 'the pumps keep up'
        : `it ends at ${formatNumber(world.limitM)} m`;
    said.push(`The level never gets to ${formatNumber(toLevel.value)} m above the sole: ${why}.`);
  }
  said.push(
    'Reckoned with the vessel as she floats now: a vessel that takes water lies deeper, and the ' +
      'head grows. Nothing here holds for a hole that tears wider.',
  );
  return said;
}
