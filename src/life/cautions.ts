// What must be said beside a fitted law: few data, a prior, ages that no record reaches.

import { limits } from '../limits.ts';
import { formatNumber } from '../quantity/quantity.ts';
import { type LifeData, type LifeRecord, spanOf } from './data.ts';
import type { Found, LifeFigures, Unsettled } from './life.ts';
import type { LifeFigure, LifeInput } from './life-model.ts';

type Case = {
  readonly input: LifeInput;
  readonly found: Found | Unsettled;
  readonly data: LifeData;
  readonly records: readonly LifeRecord[];
  readonly figures: LifeFigures;
};

export function cautionsOf(given: Case): readonly string[] {
  const { input, found, data } = given;
  if (!('fit' in found)) return [found.why, ...noneFailed(given)];
  const cautions: string[] = [];
  if (data.failures < limits.life.fewFailures) {
    const failures = data.failures === 1 ? '1 failure' : `${data.failures} failures`;
    cautions.push(
      `Few data: ${failures} among ${data.items} items. Limits so made hold less often than ` +
        'they say; the likelihood limits are the better of the two.',
    );
  }
  if (input.prior !== undefined) {
    cautions.push(`The spread of lives rests on a prior named by ${input.prior.from}.`);
  }
  return [...cautions, ...shapeWords(given), ...beyondWords(given)];
}

function noneFailed({ data, input }: Case): readonly string[] {
  if (data.failures > 0 || data.items === 0) return [];
  const prior = input.prior?.shape;
  const shape = input.distribution === 'exponential' ? 1 : input.prior?.factor ? undefined : prior;
  if (shape === undefined) return [];
  let lived = 0;
  data.right.forEach((lnT, at) => {
    lived += (data.rightN[at] ?? 0) * Math.exp(shape * lnT);
  });
  const scale = (lived / -Math.log(1 - input.level)) ** (1 / shape);
  if (!Number.isFinite(scale) || scale === 0) return [];
  return [
    `None has failed yet: with a shape of ${shape} the scale is at least ` +
      `${formatNumber(scale)} ${input.units}, ${100 * input.level} % sure.`,
  ];
}

/** What the shape means for renewing by age, or that it is not known. */
function shapeWords({ figures }: Case): readonly string[] {
  const [low, high] = figures.shape?.likelihood ?? [null, null];
  if (figures.shape === undefined || figures.shape === null) return [];
  if (figures.shape.likelihood === null) return [];
  if (high !== null && high < 1) {
    return ['They fail most when new: look at how they are fitted; renewing by age does harm.'];
  }
  if (low !== null && low > 1) return [];
  return ['Whether failures grow more likely with age is not settled by these records.'];
}

function beyondWords({ figures, records, input }: Case): readonly string[] {
  const [low, high] = spanOf(records);
  const names = (['b1', 'b5', 'b10', 'b50', 'b90'] as const).filter((name) => {
    const figure: LifeFigure | null = figures[name];
    return figure !== null && (figure.value < low || figure.value > high);
  });
  if (names.length === 0) return [];
  const span = `${formatNumber(low)} to ${formatNumber(high)} ${input.units}`;
  const verb = names.length === 1 ? 'lies' : 'lie';
  return [`${names.join(', ')} ${verb} outside the ages that were seen (${span}).`];
}
