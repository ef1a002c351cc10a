// One reading of a pump worked out: heads, affinity, slip, deviation, NPSH, all from one vector.

import { heightAt, type Point, pieceAt, type SlipModel, slipModel } from './curve.ts';
import { OUTPUTS, type OutputName } from './pump-model.ts';

export const G = 9.80665;

/** Places of the figures a reading brings; NaN where one is not known. Units as at the border. */
export const INPUTS = [
  'speed',
  'suction',
  'discharge',
  'givenHead',
  'flow',
  'volume',
  'time',
  'power',
  'suctionBore',
  'dischargeBore',
  'suctionHeight',
  'dischargeHeight',
  'atmospheric',
  'density',
  'vapour',
  'curveSpeed',
  'displacement',
] as const;
export type InputName = (typeof INPUTS)[number];
export type Figures = Readonly<Record<InputName, number>>;

export type Reference =
  | { readonly kind: 'rotodynamic'; readonly points: readonly Point[] }
  | { readonly kind: 'displacement'; readonly slip: SlipModel | null }
  | { readonly kind: 'none' };

export const displacementReference = (
  litres: number,
  points: readonly { readonly speed: number; readonly pressure: number; readonly flow: number }[],
): Reference => ({
  kind: 'displacement',
  slip: slipModel(
    points.map(({ speed, pressure, flow }) => {
      return { speed, pressure, slip: 0.06 * litres * speed - flow };
    }),
  ),
});

const IN = Object.fromEntries(INPUTS.map((name, at) => [name, at])) as Record<InputName, number>;
const OUT = Object.fromEntries(OUTPUTS.map((name, at) => [name, at])) as Record<OutputName, number>;

/** m/s in a pipe: m³/h and mm. */
export const velocity = (flowM3H: number, boreMm: number): number =>
  flowM3H / 3_600 / ((Math.PI / 4) * (boreMm / 1_000) ** 2);

/** What a velocity head adds, left out (0) where flow or bore is not known. */
const velocityHead = (flow: number, bore: number): number => {
  const found = velocity(flow, bore) ** 2 / (2 * G);
  return Number.isNaN(found) ? 0 : found;
};

export const flowOf = (flow: number, volume: number, time: number): number =>
  Number.isNaN(flow) ? (3.6 * volume) / time : flow;

/** Writes all outputs into `out`; NaN where an input is not known. Called for each draw. */
export function figureOut(reference: Reference, x: ArrayLike<number>, out: Float64Array): void {
  const at = (name: InputName): number => x[IN[name]] ?? Number.NaN;
  const flow = flowOf(at('flow'), at('volume'), at('time'));
  const [rho, suction, discharge] = [at('density'), at('suction'), at('discharge')];
  const inHead = velocityHead(flow, at('suctionBore'));
  const outHead = velocityHead(flow, at('dischargeBore'));
  // With one bore alone nothing can be said of the difference.
  const rise = Number.isNaN(at('suctionBore') + at('dischargeBore')) ? 0 : outHead - inHead;
  const given = at('givenHead');
  const head = Number.isNaN(given)
    ? (1_000 * (discharge - suction)) / (rho * G) +
      (at('dischargeHeight') - at('suctionHeight')) +
      rise
    : given;
  const ratio = at('curveSpeed') / at('speed');
  const headThere = head * ratio * ratio;
  const flowThere = flow * ratio;
  const theoretical = 0.06 * at('displacement') * at('speed');
  out[OUT.head] = head;
  out[OUT.headAtCurveSpeed] = headThere;
  out[OUT.flowAtCurveSpeed] = flowThere;
  out[OUT.powerAtCurveSpeed] = at('power') * ratio ** 3;
  out[OUT.theoreticalFlow] = theoretical;
  out[OUT.slip] = (theoretical - flow) / theoretical;
  out[OUT.npshAvailable] =
    (1_000 * (suction + at('atmospheric') - at('vapour'))) / (rho * G) +
    at('suctionHeight') +
    inHead;
  out[OUT.deviation] = Number.NaN;
  if (reference.kind === 'rotodynamic') {
    const wanted = headOn(reference.points, flowThere);
    out[OUT.deviation] = (headThere - wanted) / wanted;
  } else if (reference.kind === 'displacement' && reference.slip !== null) {
    const wanted = theoretical - reference.slip.at(at('speed'), discharge - suction);
    out[OUT.deviation] = wanted > 0 ? (flow - wanted) / wanted : Number.NaN;
  }
}

function headOn(points: readonly Point[], flow: number): number {
  const piece = pieceAt(points, flow);
  const head = piece === null ? Number.NaN : heightAt(piece, flow);
  return head > 0 ? head : Number.NaN;
}
