// A ring weighed in its groove: squeeze, stretch, fill, the gap, a verdict, and what fits instead.

import { limits } from '../limits.ts';
import { formatNumber } from '../quantity/quantity.ts';
import { weakestOf } from '../quantity/rests.ts';
import { echoed, missing, quantity } from '../quantity/sheet.ts';
import type { Quantity } from '../quantity/types.ts';
import { type Band, type Groove, type InGroove, inGroove } from './groove.ts';
import { asSpan, type Duty, type Judged, judge, limitsOf } from './judge.ts';
import type { ORingInput, ORingOutput, SpanIn } from './o-ring-model.ts';
import { workingOf } from './o-ring-working.ts';
import { givenRing, type Ring, readRing } from './rings.ts';
import { as568WrongInCopy } from './tables/as568.ts';
import { BACK_UP_MPA, extrusionSource, fillLimits, stretchLimits } from './tables/groove-limits.ts';
import { whichRings } from './which-ring.ts';

const isPair = (span: SpanIn): span is [Quantity, Quantity] => Array.isArray(span);

const spanOf = (span: SpanIn | undefined) => {
  if (span === undefined) return null;
  return isPair(span) ? { min: span[0].value, max: span[1].value } : asSpan(span.value);
};

const sides = {
  inside: 'inside',
  internal: 'inside',
  outside: 'outside',
  external: 'outside',
  both: 'both',
} as const;

export function grooveOf({ groove, pressureSide }: ORingInput): Groove {
  return {
    kind: groove?.kind ?? null,
    moving: groove?.moving ?? false,
    innerMm: spanOf(groove?.diameter),
    outerMm: spanOf(groove?.outerDiameter),
    depthMm: spanOf(groove?.depth),
    widthMm: spanOf(groove?.width),
    side: pressureSide === undefined ? null : sides[pressureSide],
  };
}

export const dutyOf = ({ pressure, temperature, hardness, gap }: ORingInput): Duty => ({
  pressureMPa: pressure?.value ?? null,
  temperatureCel: temperature?.value ?? null,
  hardnessIrhd: hardness?.value ?? null,
  gapMm: gap?.value ?? null,
});

function ringOf({ ring }: ORingInput): Ring | null {
  if (typeof ring === 'string') {
    const read = readRing(ring);
    return read.ok ? read.ring : null;
  }
  return givenRing({
    innerMm: ring.inner.value,
    sectionMm: ring.section.value,
    innerToleranceMm: ring.innerTolerance?.value ?? null,
    sectionToleranceMm: ring.sectionTolerance?.value ?? null,
  });
}

export function oRing(input: ORingInput): ORingOutput {
  const ring = ringOf(input);
  if (ring === null) return anyRing(input);
  const figures = typeof input.ring === 'string' ? null : input.ring;
  const groove = grooveOf(input);
  const duty = dutyOf(input);
  const fit = inGroove(ring, groove);
  const judged = judge(ring, groove, duty, fit);
  const out = (value: number | null, unit: string) =>
    value === null ? null : quantity(value, unit);
  const bandOut = (band: Band | null, unit: string) =>
    band === null
      ? null
      : {
          nominal: out(band.nominal, unit),
          min: out(band.min, unit),
          max: out(band.max, unit),
        };
  const { allowedMm, extrudes } = judged.extrusion;
  const unknown = allowedMm === null && extrudes === null;
  const result = {
    ring: {
      name: ring.name,
      inner: echoed(ring.innerMm, 'mm', figures?.inner),
      section: echoed(ring.sectionMm, 'mm', figures?.section),
      innerTolerance: out(ring.innerToleranceMm, 'mm'),
      sectionTolerance: out(ring.sectionToleranceMm, 'mm'),
    },
    squeeze: bandOut(fit.squeeze, '1'),
    compression: bandOut(fit.compressionMm, 'mm'),
    stretch: bandOut(fit.stretch, '1'),
    fill: bandOut(fit.fill, '1'),
    sectionAfterStretch: fit.stretch === null ? null : out(fit.section.nominal, 'mm'),
    extrusion: unknown ? null : { allowedGap: out(allowedMm, 'mm'), extrudes },
    verdict: judged.verdict,
    reasons: reasonsOf(judged),
    restsOn: restsOn(judged),
    fitting: [],
  };
  const notWorkedOut = notWorked(ring, groove, fit, judged, result);
  const working = workingOf(ring, groove, fit, judged.extrusion);
  const cautions = cautionsOf(ring, groove, duty, fit, judged);
  return { ...result, working, cautions, notWorkedOut } as unknown as ORingOutput;
}

/** Puts the rings that fit beside one that does not, or in place of one not yet chosen. */
export function withFitting(input: ORingInput, result: ORingOutput): ORingOutput {
  if (result.verdict === 'fits') return result;
  const fitting = whichRings(grooveOf(input), dutyOf(input))
    .slice(0, limits.sealing.alternatives)
    .map(({ ring, squeeze, stretch, fill }) => ({
      ring: ring.name,
      squeeze: { value: squeeze, unit: '1' as const },
      stretch: stretch === null ? null : { value: stretch, unit: '1' as const },
      fill: { value: fill, unit: '1' as const },
    }));
  return { ...result, fitting };
}

function anyRing(input: ORingInput): ORingOutput {
  const empty = {
    ring: null,
    squeeze: null,
    compression: null,
    stretch: null,
    fill: null,
    sectionAfterStretch: null,
    extrusion: null,
    verdict: null,
    restsOn: null,
  };
  const notWorkedOut = Object.keys(empty).map((output) => ({ output, needs: ['ring'] }));
  const wall = input.groove?.kind === 'face' && input.pressureSide === undefined;
  const cautions = [
    'The rings listed fit by their sizes; the compound is another question.',
    ...(wall ? ['Say pressureSide: it settles which wall the ring lies against.'] : []),
  ];
  const reasons = ['no ring is named: those that fit are listed'];
  return { ...empty, reasons, fitting: [], working: [], cautions, notWorkedOut };
}

function reasonsOf({ faults, verdict, needs }: Judged): string[] {
  const open = needs.map((need) => `cannot be checked without ${need}`);
  const good = verdict === 'fits' ? ['squeeze, place and fill are within their limits'] : [];
  return [...faults.map(({ why }) => why), ...good, ...open];
}

function restsOn({ verdict, sources, extrusion }: Judged): string | null {
  if (verdict === null) return null;
  const gap = extrusion.allowedMm === null ? [] : [extrusionSource];
  return weakestOf([...sources, ...gap]);
}

function notWorked(
  ring: Ring,
  groove: Groove,
  fit: InGroove,
  judged: Judged,
  result: Readonly<Record<string, unknown>>,
) {
  const lacks = (field: string, is: unknown) => (is === null ? [field] : []);
  const depth = lacks('groove/depth', groove.depthMm);
  const over = lacks('groove/diameter', groove.innerMm);
  const inner = lacks('ring/innerTolerance', ring.innerToleranceMm);
  const section = lacks('ring/sectionTolerance', ring.sectionToleranceMm);
  const ends = [...(fit.stretch === null ? [] : inner), ...section];
  const { extrusion, needs } = judged;
  const allowed = extrusion.needs.filter((need) => need !== 'gap');
  const banded = (name: string, band: Band | null, why: readonly string[]) => ({
    [name]: band,
    ...(band === null ? {} : { [`${name}/min`]: band.min, [`${name}/max`]: band.max }),
    needs: { [`${name}/min`]: why, [`${name}/max`]: why },
  });
  const bands = [
    banded('squeeze', fit.squeeze, ends),
    banded('compression', fit.compressionMm, ends),
    banded('stretch', fit.stretch, inner),
    banded('fill', fit.fill, ends),
  ].map(({ needs: why, ...outputs }) => ({ why, outputs }));
  const nested = {
    ...result,
    ...Object.assign({}, ...bands.map(({ outputs }) => outputs)),
    'ring/innerTolerance': ring.innerToleranceMm,
    'ring/sectionTolerance': ring.sectionToleranceMm,
    ...(result.extrusion === null
      ? {}
      : { 'extrusion/allowedGap': extrusion.allowedMm, 'extrusion/extrudes': extrusion.extrudes }),
  };
  return missing(nested, {
    ...Object.assign({}, ...bands.map(({ why }) => why)),
    squeeze: depth,
    compression: depth,
    stretch: over,
    fill: [...depth, ...lacks('groove/width', groove.widthMm)],
    sectionAfterStretch: over,
    extrusion: extrusion.needs,
    'extrusion/allowedGap': allowed,
    'extrusion/extrudes': extrusion.needs,
    'ring/innerTolerance': inner,
    'ring/sectionTolerance': section,
    verdict: needs,
    restsOn: needs,
  });
}

function cautionsOf(ring: Ring, groove: Groove, duty: Duty, fit: InGroove, judged: Judged) {
  const said: string[] = [];
  const dash = ring.name.replace('AS568-', '');
  if (as568WrongInCopy[dash] !== undefined) {
    said.push(`The copy that was read is wrong at ${dash}: ${as568WrongInCopy[dash]}.`);
  }
  for (const source of new Set([ring.source, ring.toleranceSource])) {
    if (source.kind === 'from memory') said.push(`From memory: ${source.of}.`);
  }
  if (fit.stretch === null && fit.squeeze !== null) {
    said.push('The stretch is not known: squeeze and fill are of the section as made.');
  }
  const { stretch, squeeze, fill } = fit;
  const limit = limitsOf(groove, ring);
  if (stretch?.max && stretch.max > stretchLimits.most && stretch.nominal <= stretchLimits.most) {
    said.push('At the end of its tolerance the ring is stretched by more than 5 %.');
  }
  if (squeeze?.max && squeeze.max > limit.most && squeeze.nominal <= limit.most) {
    const most = formatNumber(limit.most * 100);
    said.push(`At the end of the tolerances the squeeze is above ${most} %: assembly is stiff.`);
  }
  if (fill?.max && fill.max > fillLimits.most && fill.nominal <= fillLimits.most) {
    said.push(
      'At its fullest the groove is filled to more than 85 %: hot or swollen it may be full.',
    );
  }
  if (fill !== null && (fill.min ?? fill.nominal) < fillLimits.least) {
    said.push('At its emptiest the groove is filled to less than 65 %: the ring may roll.');
  }
  if (groove.moving) {
    said.push('The limits for a moving ring are the ends of printed rows, not of a standard.');
  }
  if (duty.pressureMPa === null) said.push('No pressure is given: extrusion is not checked.');
  else if (duty.pressureMPa > BACK_UP_MPA) {
    said.push('Above 103.5 bar the need of a back-up ring is to be looked at.');
  }
  if (judged.extrusion.allowedMm !== null) {
    said.push(
      'The gap allowed is from memory, takes IRHD as Shore A, and holds to 70 °C; the gap given ' +
        'is to be the greatest, parts eccentric and stretched by pressure. Silicone takes half.',
    );
  }
  if (duty.temperatureCel !== null) {
    said.push('Whether the compound bears the temperature is asked of `compatible`.');
  }
  const rests = restsOn(judged);
  if (judged.verdict !== null && rests !== null) {
    said.push(`The verdict "${judged.verdict}" rests on what is ${rests}.`);
  }
  return said;
}
