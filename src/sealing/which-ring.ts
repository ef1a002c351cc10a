// Which standard rings fit a measured groove, those nearest to the usual figures first.

import { type Groove, inGroove } from './groove.ts';
import { type Duty, judge, limitsOf } from './judge.ts';
import { type Ring, standardRings } from './rings.ts';
import { fillLimits, stretchLimits } from './tables/groove-limits.ts';

export type Candidate = {
  readonly ring: Ring;
  readonly squeeze: number;
  readonly stretch: number | null;
  readonly fill: number;
  /** How far from the usual, each in its own range; the least is first. */
  readonly distance: number;
};

const noDuty: Duty = { pressureMPa: null, temperatureCel: null, hardnessIrhd: null, gapMm: null };

/** All that fit, best first; rings of equal distance stand in the order of their series. */
export function whichRings(groove: Groove, duty: Duty = noDuty): readonly Candidate[] {
  const found = standardRings.flatMap((ring): Candidate[] => {
    const fit = inGroove(ring, groove);
    if (fit.squeeze === null || fit.fill === null) return [];
    if (judge(ring, groove, duty, fit).verdict !== 'fits') return [];
    const limit = limitsOf(groove, ring);
    const squeeze = fit.squeeze.nominal;
    const stretch = fit.stretch?.nominal ?? null;
    const fill = fit.fill.nominal;
    const distance =
      Math.abs(squeeze - limit.typical) / (limit.most - limit.least) +
      Math.abs(fill - fillLimits.typical) / (fillLimits.most - fillLimits.least) +
      (stretch === null || groove.side === 'inside'
        ? 0
        : Math.abs(stretch - stretchLimits.best) / stretchLimits.most);
    return [{ ring, squeeze, stretch, fill, distance }];
  });
  return found.sort((a, b) => a.distance - b.distance);
}
