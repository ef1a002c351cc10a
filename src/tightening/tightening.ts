// A bolt and its torque: figures of the thread, preload, torque, and whether an issued value fits.

import type { Problem, Quantity } from '../quantity/types.ts';
import { type Band, bandOf } from './band.ts';
import { type Bearing, bearingOf } from './bearing.ts';
import { cautionsOf, needsOf } from './cautions.ts';
import { type Hole, holeOf } from './hole.ts';
import {
  type TighteningInput,
  type TighteningOutput,
  threadOfFigures,
  type Verdict,
} from './model.ts';
import { echoed, missing, newSheet, quantity, type Sheet } from './sheet.ts';
import { givenStrength, readStrength, type Strength } from './strength.ts';
import type { Thread } from './thread.ts';
import { preloadAtYieldShareN } from './torque.ts';
import { bandRows, issuedRows, loadRows, threadRows, tightRows } from './working.ts';

export type TighteningAnswer =
  | { readonly ok: true; readonly result: TighteningOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** All that is known of the bolt before it is tightened. */
export type Bolt = {
  readonly thread: Thread;
  readonly strength: Strength | null;
  readonly bearing: Bearing;
  readonly band: Band;
  readonly hole: Hole;
};

export type Loads = {
  readonly proofKN: number | null;
  readonly breakingKN: number | null;
};

export type Tightness = {
  readonly how: 'utilisation' | 'proofShare' | 'preload';
  readonly share: number | null;
  readonly preloadKN: number | null;
  readonly torqueNm: number | null;
  readonly nutFactor: number | null;
  /** The issued torque and a measured or chosen preload give the nut factor between them. */
  readonly implied: boolean;
  readonly preloadMinKN: number | null;
};

export type Issued = {
  readonly torqueNm: number;
  readonly scatter: number;
  readonly minKN: number;
  readonly maxKN: number;
  readonly yieldShareMin: number | null;
  readonly yieldShareMax: number | null;
  readonly verdict: Verdict | null;
};

export const DEFAULT_UTILISATION = 0.9;

function strengthOf(given: TighteningInput['strengthClass'], diameterMm: number) {
  if (given === undefined) return null;
  if (typeof given === 'string') return readStrength(given, diameterMm);
  return givenStrength({
    proofMPa: given.proof?.value ?? null,
    yieldMPa: given.yield?.value ?? null,
    tensileMPa: given.tensile?.value ?? null,
  });
}

function threadOf({ thread, figures }: TighteningInput['thread']): Thread {
  const read = figures === null ? null : threadOfFigures(figures);
  return read?.ok ? read.thread : thread;
}

function boltOf(input: TighteningInput): { bolt: Bolt; problems: readonly Problem[] } {
  const thread = threadOf(input.thread);
  const problems: Problem[] = [];
  const read = strengthOf(input.strengthClass, thread.diameterMm);
  if (read !== null && !read.ok) {
    const { expected, why } = read;
    problems.push({ path: 'strengthClass', got: input.strengthClass, expected, why });
  }
  const strength = read?.ok ? read.strength : null;
  const bearing = bearingOf(thread, input.bearingOuter?.value, input.hole?.value);
  const band = bandOf(input, thread, bearing, strength?.austenitic ?? false);
  const hole = holeOf(input.threadInto, thread, strength);
  problems.push(...bearing.problems, ...band.problems, ...hole.problems);
  return { bolt: { thread, strength, bearing, band, hole }, problems };
}

const times = (area: number | null, stress: number | null | undefined): number | null =>
  area === null || stress === null || stress === undefined ? null : (area * stress) / 1_000;

function preloadOf(input: TighteningInput, { thread, strength, band }: Bolt, loads: Loads) {
  if (input.preload !== undefined) {
    return { how: 'preload', share: null, preloadKN: input.preload.value } as const;
  }
  if (input.proofShare !== undefined) {
    const share = input.proofShare.value;
    const preloadKN = loads.proofKN === null ? null : share * loads.proofKN;
    return { how: 'proofShare', share, preloadKN } as const;
  }
  const share = input.utilisation?.value ?? DEFAULT_UTILISATION;
  const yieldMPa = strength?.yieldMPa ?? null;
  const { torsion } = band.nominal;
  const area = thread.stressAreaMm2;
  const preloadKN =
    yieldMPa === null || torsion === null || area === null
      ? null
      : preloadAtYieldShareN(share, yieldMPa, area, torsion) / 1_000;
  return { how: 'utilisation', share, preloadKN } as const;
}

function tightnessOf(input: TighteningInput, bolt: Bolt, loads: Loads): Tightness {
  const tight = preloadOf(input, bolt, loads);
  const { preloadKN, how } = tight;
  const perForce = bolt.band.nominal.perForceMm;
  const { diameterMm } = bolt.thread;
  const issued = input.issuedTorque?.value;
  const implied = how === 'preload' && issued !== undefined && preloadKN !== null;
  const fromFriction = perForce === null ? null : perForce / diameterMm;
  const factor = input.scatterFactor?.value;
  return {
    ...tight,
    torqueNm: preloadKN === null || perForce === null ? null : preloadKN * perForce,
    nutFactor: implied ? issued / (preloadKN * diameterMm) : fromFriction,
    implied,
    preloadMinKN: preloadKN === null || factor === undefined ? null : preloadKN / factor,
  };
}

/** Greatest over least becomes a fraction either way. */
const scatterOf = ({ toolScatter, scatterFactor }: TighteningInput): number =>
  scatterFactor === undefined
    ? (toolScatter?.value ?? 0)
    : (scatterFactor.value - 1) / (scatterFactor.value + 1);

function issuedOf(input: TighteningInput, bolt: Bolt): Issued | null {
  const { low, high } = bolt.band;
  if (input.issuedTorque === undefined || low.perForceMm === null || high.perForceMm === null) {
    return null;
  }
  const torqueNm = input.issuedTorque.value;
  const scatter = scatterOf(input);
  const minKN = (torqueNm * (1 - scatter)) / high.perForceMm;
  const maxKN = (torqueNm * (1 + scatter)) / low.perForceMm;
  const yieldKN = times(bolt.thread.stressAreaMm2, bolt.strength?.yieldMPa);
  const share = (kN: number, torsion: number | null) =>
    yieldKN === null || torsion === null ? null : (kN * torsion) / yieldKN;
  const yieldShareMin = share(minKN, high.torsion);
  const yieldShareMax = share(maxKN, low.torsion);
  const found = { torqueNm, scatter, minKN, maxKN, yieldShareMin, yieldShareMax };
  return { ...found, verdict: verdictOf(found, bolt.hole.stripKN, input.clampNeeded?.value) };
}

function verdictOf(
  found: Omit<Issued, 'verdict'>,
  stripKN: number | null,
  clampKN: number | undefined,
): Verdict | null {
  const { yieldShareMin, yieldShareMax, minKN, maxKN } = found;
  if (yieldShareMin !== null && yieldShareMin > 1) return 'cannot be right';
  if (yieldShareMax !== null && yieldShareMax > 1) return 'may yield';
  if (stripKN !== null && maxKN > stripKN) return 'may strip';
  if (clampKN !== undefined && minKN < clampKN) return 'too loose';
  // Where yield is not known, nothing is said to fit.
  return yieldShareMax === null ? null : 'fits';
}

function outputs(input: TighteningInput, bolt: Bolt, loads: Loads, tight: Tightness) {
  const { thread, strength, hole } = bolt;
  const out = (value: number | null, unit: string, from?: Quantity) =>
    value === null ? null : echoed(value, unit, from);
  const issued = issuedOf(input, bolt);
  const carried = tight.preloadKN ?? issued?.maxKN ?? null;
  return {
    issued,
    result: {
      pitchDiameter: out(thread.pitchDiameterMm, 'mm'),
      rootDiameter: out(thread.rootDiameterMm, 'mm'),
      minorDiameter: out(thread.minorDiameterMm, 'mm'),
      stressArea: out(thread.stressAreaMm2, 'mm2'),
      proofLoad: out(loads.proofKN, 'kN'),
      breakingLoad: out(loads.breakingKN, 'kN'),
      yieldPoint: out(strength?.yieldMPa ?? null, 'N/mm2'),
      preload: out(tight.preloadKN, 'kN', input.preload),
      preloadMin: out(tight.preloadMinKN, 'kN'),
      torque: out(tight.torqueNm, 'N.m'),
      nutFactor: out(tight.nutFactor, '1', tight.implied ? undefined : input.nutFactor),
      stripping:
        hole.stripKN === null
          ? null
          : {
              load: quantity(hole.stripKN, 'kN'),
              share: carried === null ? null : quantity(carried / hole.stripKN, '1'),
              weaker: hole.weaker,
            },
      issued:
        issued === null
          ? null
          : {
              preloadMin: quantity(issued.minKN, 'kN'),
              preloadMax: quantity(issued.maxKN, 'kN'),
              yieldShareMin: out(issued.yieldShareMin, '1'),
              yieldShareMax: out(issued.yieldShareMax, '1'),
              verdict: issued.verdict,
            },
    },
  };
}

function rowsOf(sheet: Sheet, input: TighteningInput, bolt: Bolt, loads: Loads, tight: Tightness) {
  threadRows(sheet, bolt.thread);
  loadRows(sheet, bolt.thread, bolt.strength, loads);
  bandRows(sheet, input, bolt);
  tightRows(sheet, input, bolt, tight);
  bolt.hole.rows(sheet);
  if (bolt.hole.stripKN !== null && tight.preloadKN !== null) {
    const share = tight.preloadKN / bolt.hole.stripKN;
    sheet.work('share_S', 'preload over stripping load', 'FM/F_S', share, '1', computed);
  }
}

const computed = { kind: 'computed', by: 'tightening' } as const;

export function tightening(input: TighteningInput): TighteningAnswer {
  const { bolt, problems } = boltOf(input);
  if (problems.length > 0) return { ok: false, problems };
  const area = bolt.thread.stressAreaMm2;
  const loads: Loads = {
    proofKN: times(area, bolt.strength?.proofMPa),
    breakingKN: times(area, bolt.strength?.tensileMPa),
  };
  const tight = tightnessOf(input, bolt, loads);
  const { result, issued } = outputs(input, bolt, loads, tight);
  if (Object.values(result).every((value) => value === null)) {
    const why = 'nothing can be worked out from a diameter alone';
    const expected = 'a pitch, or a preload with a nut factor';
    return { ok: false, problems: [{ path: 'thread/pitch', got: null, expected, why }] };
  }
  const sheet = newSheet();
  rowsOf(sheet, input, bolt, loads, tight);
  if (issued !== null) issuedRows(sheet, input, bolt, issued);
  const nested = {
    ...result,
    'stripping/share': result.stripping?.share,
    'issued/yieldShareMin': result.issued?.yieldShareMin,
    'issued/yieldShareMax': result.issued?.yieldShareMax,
    'issued/verdict': result.issued?.verdict,
  };
  const cautions = cautionsOf(input, bolt, loads, tight, issued);
  const notWorkedOut = missing(nested, needsOf(input, bolt));
  return {
    ok: true,
    result: { ...result, working: [...sheet.rows], cautions, notWorkedOut } as TighteningOutput,
  };
}
