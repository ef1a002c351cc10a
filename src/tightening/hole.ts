// What the bolt is screwed into: the load that strips its thread, and the rows that show it.

import type { Problem, Source } from '../quantity/types.ts';
import type { TighteningInput } from './model.ts';
import { entered, type Sheet } from './sheet.ts';
import type { Strength } from './strength.ts';
import { BOLT_SHEAR_RATIO, type Stripping, strippingOf } from './stripping.ts';
import { holeMaterials } from './tables/hole-materials.ts';
import { limitsOf, readThread, type Thread } from './thread.ts';

export type Hole = {
  /** Null where it cannot be worked out. */
  readonly stripKN: number | null;
  readonly weaker: Stripping['weaker'];
  /** The bolt's own thread could not be weighed against the hole's. */
  readonly holeAlone: boolean;
  readonly insert: 'none' | 'thread known' | 'thread not known';
  readonly material: { readonly says: string; readonly source: Source } | null;
  readonly problems: readonly Problem[];
  readonly rows: (sheet: Sheet) => void;
};

const h28: Source = {
  kind: 'published',
  title: 'FED-STD-H28/2, screw-thread standards for federal services, shear areas',
  edition: 'B, 1991, as restated in public copies',
  place: 'shear area of internal and external thread',
};
const ratioSource: Source = {
  kind: 'from memory',
  of: 'shear strength of a steel bolt about 0.6 of its tensile strength',
};

const nothing: Hole = {
  stripKN: null,
  weaker: 'hole',
  holeAlone: false,
  insert: 'none',
  material: null,
  problems: [],
  rows: () => undefined,
};

type Into = NonNullable<TighteningInput['threadInto']>;

/** An insert brings its own outer thread into the hole; a kind named in words brings no figures. */
function insertOf(insert: Into['insert'], own: Thread) {
  if (insert === undefined || insert === false) return { thread: own, insert: 'none' } as const;
  if (insert === true || !/^\s*(?:M\s*)?\d/i.test(insert)) {
    return { thread: own, insert: 'thread not known' } as const;
  }
  const read = readThread(insert);
  if (read.ok && read.thread.diameterMm > own.diameterMm) {
    return { thread: read.thread, insert: 'thread known' } as const;
  }
  const problem: Problem = {
    path: 'threadInto/insert',
    got: insert,
    expected: read.ok ? `an outer thread larger than ${own.name}` : read.expected,
    why: read.ok ? 'the bolt does not go into an insert of that size' : read.why,
  };
  return { problem } as const;
}

function shearOf(into: Into) {
  if (into.shearStrength !== undefined) {
    return { shearMPa: into.shearStrength.value, source: entered, material: null };
  }
  const known = holeMaterials.find(({ name }) => name === into.material);
  return known && { shearMPa: known.shearMPa, source: known.source, material: known };
}

export function holeOf(into: Into | undefined, own: Thread, strength: Strength | null): Hole {
  if (into === undefined) return nothing;
  const found = insertOf(into.insert, own);
  if (found.problem !== undefined) return { ...nothing, problems: [found.problem] };
  const shear = shearOf(into);
  const bolt = limitsOf(own);
  const hole = limitsOf(found.thread);
  const engagementMm = into.engagement?.value;
  const { insert } = found;
  const material = shear?.material ?? null;
  if (shear === undefined || engagementMm === undefined || bolt === null || hole === null) {
    return { ...nothing, insert, material };
  }
  const tensile = strength?.tensileMPa ?? null;
  const boltShearMPa = tensile === null ? null : BOLT_SHEAR_RATIO * tensile;
  const holePitchMm = found.thread.pitchMm ?? 0;
  const boltPitchMm = own.pitchMm ?? 0;
  const holeShearMPa = shear.shearMPa;
  const one = { boltPitchMm, bolt, holePitchMm, hole, engagementMm, holeShearMPa, boltShearMPa };
  const strip = strippingOf(one);
  return {
    stripKN: strip.loadN / 1_000,
    weaker: strip.weaker,
    holeAlone: strip.boltN === null,
    insert,
    material,
    problems: [],
    rows: (sheet) => rows(sheet, one, strip, { shear: shear.source, tensile, strength }),
  };
}

type From = {
  readonly shear: Source;
  readonly tensile: number | null;
  readonly strength: Strength | null;
};

function rows(
  { take, work }: Sheet,
  one: Parameters<typeof strippingOf>[0],
  strip: Stripping,
  from: From,
) {
  const { bolt, hole } = one;
  take('Le', 'length of thread engaged', one.engagementMm, 'mm', entered);
  take('τ_N', 'shear strength of what the hole is in', one.holeShearMPa, 'N/mm2', from.shear);
  take('P_N', 'pitch of the thread in the hole', one.holePitchMm, 'mm', hole.source);
  take('d_min', 'least major diameter in the hole', hole.majorMinMm, 'mm', hole.source);
  take('D2_max', 'greatest pitch diameter of the hole', hole.holePitchMaxMm, 'mm', hole.source);
  const holeN = 'pi*d_min*Le/P_N*(P_N/2+(d_min-D2_max)/sqrt(3))*τ_N/1000';
  work('F_N', 'load that strips the hole', holeN, strip.holeN / 1_000, 'kN', h28);
  if (strip.boltN === null || one.boltShearMPa === null || from.tensile === null) {
    work('F_S', 'load that strips the thread', 'F_N', strip.loadN / 1_000, 'kN', h28);
    return;
  }
  work('τ_B', 'shear strength of the bolt', '0.6*Rm', one.boltShearMPa, 'N/mm2', ratioSource);
  take('d2_min', 'least pitch diameter of the bolt', bolt.pitchMinMm, 'mm', bolt.source);
  take('D1_max', 'greatest minor diameter of its nut', bolt.holeMinorMaxMm, 'mm', bolt.source);
  const boltN = 'pi*D1_max*Le/P*(P/2+(d2_min-D1_max)/sqrt(3))*τ_B/1000';
  work('F_B', "load that strips the bolt's thread", boltN, strip.boltN / 1_000, 'kN', h28);
  work('F_S', 'load that strips the weaker', 'min(F_N,F_B)', strip.loadN / 1_000, 'kN', h28);
}
