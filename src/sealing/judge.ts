// Whether a ring fits its groove: each limit with its source, and the first that fails.

import { formatNumber } from '../quantity/quantity.ts';
import type { Source } from '../quantity/types.ts';
import { type Groove, type InGroove, inGroove, middle, type Span } from './groove.ts';
import type { Ring } from './rings.ts';
import {
  compressionSource,
  faceSource,
  fillLimits,
  fillSource,
  GAP_CEL,
  gapRows,
  gapSectionsMm,
  outerLimits,
  rodSource,
  rowsSource,
  squeezeLimits,
  stretchLimits,
  stretchSource,
  THIN_MM,
  THIN_MOST,
} from './tables/groove-limits.ts';

export const RING_VERDICTS = [
  'ring too large',
  'ring too small',
  'too little squeeze',
  'too much squeeze',
  'groove too full',
  'may extrude',
  'fits',
] as const;
export type RingVerdict = (typeof RING_VERDICTS)[number];

export type Fault = { readonly verdict: RingVerdict; readonly why: string };

export type Duty = {
  readonly pressureMPa: number | null;
  readonly temperatureCel: number | null;
  readonly hardnessIrhd: number | null;
  readonly gapMm: number | null;
};

export type Extrusion = {
  readonly allowedMm: number | null;
  readonly extrudes: boolean | null;
  readonly needs: readonly string[];
};

export type Judged = {
  readonly verdict: RingVerdict | null;
  readonly faults: readonly Fault[];
  readonly needs: readonly string[];
  readonly extrusion: Extrusion;
  readonly sources: readonly Source[];
};

const slightly = 1e-9;
const percent = (fraction: number): string => `${formatNumber(fraction * 100)} %`;

export const limitsOf = (groove: Groove, ring: Ring) => {
  if (groove.moving) return { ...squeezeLimits.moving, source: rowsSource };
  const source = compressionSource;
  if (groove.kind === 'face') return { ...squeezeLimits.face, source };
  const { radial } = squeezeLimits;
  if (ring.sectionMm <= THIN_MM) return { ...radial, most: THIN_MOST, source: rowsSource };
  return { ...radial, source };
};

/** The wall about the ring, also where only the other wall and the way between them are known. */
export function outerWall({ kind, innerMm, outerMm, depthMm, widthMm }: Groove): number | null {
  if (outerMm !== null) return middle(outerMm);
  const across = kind === 'face' ? widthMm : depthMm;
  return innerMm === null || across === null ? null : middle(innerMm) + 2 * middle(across);
}

function innerWall({ kind, innerMm, outerMm, depthMm, widthMm }: Groove): number | null {
  if (innerMm !== null) return middle(innerMm);
  const across = kind === 'face' ? widthMm : depthMm;
  return outerMm === null || across === null ? null : middle(outerMm) - 2 * middle(across);
}

type Place = {
  readonly faults: readonly Fault[];
  readonly needs: readonly string[];
  readonly sources: readonly Source[];
};

const tooSmall = (why: string): Fault => ({ verdict: 'ring too small', why });
const tooLarge = (why: string): Fault => ({ verdict: 'ring too large', why });

function overItsInside(ring: Ring, over: number, loose: boolean): readonly Fault[] {
  const stretch = (over - ring.innerMm) / ring.innerMm;
  const { least, most } = stretchLimits;
  if (stretch > most + slightly) {
    return [tooSmall(`stretched by ${percent(stretch)}, above ${percent(most)}`)];
  }
  if (loose || stretch >= least - slightly) return [];
  return [tooLarge(`its inside is ${percent(-stretch)} larger than what it lies on`)];
}

function againstTheWall(ring: Ring, wall: number, mayBeSmaller: boolean): readonly Fault[] {
  const outside = ring.innerMm + 2 * ring.sectionMm;
  const pressed = (outside - wall) / outside;
  if (pressed > outerLimits.most + slightly) {
    const most = percent(outerLimits.most);
    return [tooLarge(`its outside is ${percent(pressed)} above the wall about it, most ${most}`)];
  }
  if (mayBeSmaller || pressed >= outerLimits.least - slightly) return [];
  return [tooSmall('its outside does not reach the wall that the pressure drives it to')];
}

/** Round the middle of its section, as it lies between rod and bore. */
function inTheBore(ring: Ring, rod: number, bore: number): readonly Fault[] {
  const mean = ring.innerMm + ring.sectionMm;
  const pressed = (mean - (rod + bore) / 2) / mean;
  if (pressed <= outerLimits.most + slightly) return [];
  return [tooLarge(`compressed by ${percent(pressed)} of its diameter, most 3 %`)];
}

function placeOf(ring: Ring, groove: Groove): Place {
  const inner = innerWall(groove);
  const outer = outerWall(groove);
  const lacks = (field: string, is: number | null) => (is === null ? [field] : []);
  const needInner = lacks('groove/diameter', inner);
  const needOuter = lacks('groove/outerDiameter', outer);
  switch (groove.kind) {
    case null:
      return { faults: [], needs: ['groove/kind'], sources: [] };
    case 'piston': {
      const faults = inner === null ? [] : overItsInside(ring, inner, false);
      return { faults, needs: needInner, sources: [stretchSource] };
    }
    case 'rod': {
      const faults = [
        ...(inner === null ? [] : overItsInside(ring, inner, true)),
        ...(inner === null || outer === null ? [] : inTheBore(ring, inner, outer)),
      ];
      return { faults, needs: [...needInner, ...needOuter], sources: [stretchSource, rodSource] };
    }
    case 'face': {
      const { side } = groove;
      const faults = [
        ...(inner === null || side === 'inside'
          ? []
          : overItsInside(ring, inner, side !== 'outside')),
        ...(outer === null || side === 'outside'
          ? []
          : againstTheWall(ring, outer, side !== 'inside')),
      ];
      const needs = [
        ...(side === 'inside' ? [] : needInner),
        ...(side === 'outside' ? [] : needOuter),
      ];
      return { faults, needs, sources: [faceSource] };
    }
  }
}

export function extrusionOf(ring: Ring, duty: Duty): Extrusion {
  const { pressureMPa, temperatureCel, hardnessIrhd, gapMm } = duty;
  if (pressureMPa === null) return { allowedMm: null, extrudes: null, needs: ['pressure'] };
  if (pressureMPa <= 0) {
    return { allowedMm: null, extrudes: false, needs: ['pressure above nought'] };
  }
  const needs = [
    ...(hardnessIrhd === null ? ['hardness'] : []),
    ...(hardnessIrhd !== null && hardnessIrhd < 70 ? ['a table below 70 IRHD'] : []),
    ...((temperatureCel ?? 0) > GAP_CEL ? [`a table above ${GAP_CEL} °C`] : []),
  ];
  if (hardnessIrhd === null || needs.length > 0) return { allowedMm: null, extrudes: null, needs };
  const rows = gapRows.findLast(({ irhd }) => irhd <= hardnessIrhd)?.rows ?? [];
  const row = rows.find(([most]) => pressureMPa <= most + slightly);
  const found = gapSectionsMm.findIndex((most) => ring.sectionMm <= most);
  const column = found === -1 ? gapSectionsMm.length : found;
  const allowedMm = row?.[column + 1] ?? 0;
  if (gapMm === null) return { allowedMm, extrudes: row ? null : true, needs: ['gap'] };
  return { allowedMm, extrudes: gapMm > allowedMm + slightly || row === undefined, needs };
}

export function judge(ring: Ring, groove: Groove, duty: Duty, found?: InGroove): Judged {
  const fit = found ?? inGroove(ring, groove);
  const place = placeOf(ring, groove);
  const limit = limitsOf(groove, ring);
  const faults: Fault[] = [...place.faults];
  const { squeeze, fill } = fit;
  if (groove.kind !== null && squeeze !== null) {
    if (squeeze.min !== null && squeeze.min < limit.least - slightly) {
      const why = `least squeeze ${percent(squeeze.min)}, below ${percent(limit.least)}`;
      faults.push({ verdict: 'too little squeeze', why });
    } else if (squeeze.nominal < limit.least - slightly) {
      const why = `squeeze ${percent(squeeze.nominal)}, below ${percent(limit.least)}`;
      faults.push({ verdict: 'too little squeeze', why });
    }
    if (squeeze.nominal > limit.most + slightly) {
      const why = `squeeze ${percent(squeeze.nominal)}, above ${percent(limit.most)}`;
      faults.push({ verdict: 'too much squeeze', why });
    }
  }
  if (fill !== null && fill.nominal > fillLimits.most + slightly) {
    const why = `groove filled to ${percent(fill.nominal)}, above ${percent(fillLimits.most)}`;
    faults.push({ verdict: 'groove too full', why });
  } else if (fill?.max && fill.max > 1 - slightly) {
    const why = `at the end of the tolerances the groove is filled to ${percent(fill.max)}`;
    faults.push({ verdict: 'groove too full', why });
  }
  const extrusion = extrusionOf(ring, duty);
  if (extrusion.extrudes === true) {
    const allowed = formatNumber(extrusion.allowedMm ?? 0);
    const why =
      extrusion.allowedMm === 0
        ? 'at this pressure no gap is allowed without a back-up ring'
        : `a gap of ${formatNumber(duty.gapMm ?? 0)} mm, above ${allowed} mm`;
    faults.push({ verdict: 'may extrude', why });
  }
  const asked = duty.pressureMPa !== null && extrusion.extrudes === null;
  const needs = [
    ...place.needs,
    ...(groove.depthMm === null ? ['groove/depth'] : []),
    ...(groove.widthMm === null ? ['groove/width'] : []),
    ...(ring.innerToleranceMm === null && groove.innerMm !== null ? ['ring/innerTolerance'] : []),
    ...(ring.sectionToleranceMm === null ? ['ring/sectionTolerance'] : []),
    ...(asked ? extrusion.needs : []),
  ];
  const first = RING_VERDICTS.find((word) => faults.some(({ verdict }) => verdict === word));
  const verdict = first ?? (needs.length > 0 ? null : 'fits');
  const sources = [ring.source, ring.toleranceSource, ...place.sources, limit.source, fillSource];
  return { verdict, faults, needs: [...new Set(needs)], extrusion, sources };
}

export const asSpan = (value: number): Span => ({ min: value, max: value });
