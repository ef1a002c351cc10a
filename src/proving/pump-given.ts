// Reads what was given of a pump test: figures with their uncertainty, reading by reading.

import { fluidOf } from '../media/fluid.ts';
import type { Problem, Quantity } from '../quantity/types.ts';
import type { Uncertain } from '../quantity/uncertainty.ts';
import {
  displacementReference,
  type Figures,
  flowOf,
  INPUTS,
  type InputName,
  type Reference,
} from './pump-figures.ts';
import type { PumpTestInput, ReadingInput } from './pump-model.ts';

export type Case = {
  readonly figures: Figures;
  readonly inputs: readonly Uncertain[];
};

const TAKEN_C = 20;

export type Medium = {
  readonly density: Quantity | null;
  readonly vapour: Quantity | null;
  readonly cautions: readonly string[];
  readonly problem: Problem | null;
};

export function mediumOf({ fluid }: PumpTestInput): Medium {
  const none = { density: null, vapour: null, cautions: [], problem: null };
  if (fluid === undefined) return none;
  if (typeof fluid !== 'string' && !('name' in fluid)) {
    const { density = null, vapourPressure = null } = fluid;
    return { ...none, density, vapour: vapourPressure };
  }
  const { name, temperature, salinity } =
    typeof fluid === 'string'
      ? { name: fluid, temperature: undefined, salinity: undefined }
      : fluid;
  const t = temperature?.value ?? TAKEN_C;
  const found = fluidOf(name, t, salinity?.value);
  if (found === null) {
    const why = `${name} is not known at ${t} °C`;
    const expected = 'a temperature within its range, or density and vapourPressure';
    return { ...none, problem: { path: 'fluid/temperature', got: t, expected, why } };
  }
  // Half the change between one standard uncertainty below and above.
  const spread = (of: 'densityKgM3' | 'vapourPressurePa'): number => {
    const u = temperature?.u ?? 0;
    const [low, high] = [
      fluidOf(name, t - u, salinity?.value),
      fluidOf(name, t + u, salinity?.value),
    ];
    const [a, b] = [low?.[of] ?? found[of] ?? 0, high?.[of] ?? found[of] ?? 0];
    return Math.abs(b - a) / 2;
  };
  const vapour = found.vapourPressurePa;
  const known = temperature !== undefined;
  const said = known
    ? []
    : [`The density is that at ${TAKEN_C} °C: give the temperature of the fluid.`];
  const standard = /^sea/.test(name) && salinity === undefined;
  const salt = standard ? ['Sea water is taken as standard, 35.165 g/kg.'] : [];
  return {
    density: { value: found.densityKgM3, unit: 'kg/m3', u: spread('densityKgM3') },
    vapour:
      !known || vapour === null
        ? null
        : { value: vapour / 1_000, unit: 'kPa', u: spread('vapourPressurePa') / 1_000 },
    cautions: [...said, ...salt],
    problem: null,
  };
}

type Instruments = NonNullable<PumpTestInput['instruments']>;

/** Standard uncertainty by the instrument; undefined where none is stated. */
function byInstrument(one: Instruments[keyof Instruments], value: number) {
  if (one === undefined) return undefined;
  const [spread, k] = 'standard' in one ? [one.standard, 1] : [one.expanded, one.k];
  if (typeof spread !== 'string') return spread.value / k;
  return (Math.abs(value) * Number(spread.replace('%', ''))) / 100 / k;
}

export function referenceOf({ curve }: PumpTestInput): Reference {
  if (curve === undefined) return { kind: 'none' };
  if ('displacement' in curve) {
    const points = (curve.points ?? []).map(({ speed, pressure, flow }) => {
      return { speed: speed.value, pressure: pressure.value, flow: flow.value };
    });
    return displacementReference(curve.displacement.value, points);
  }
  const points = (curve.points ?? []).map(({ flow, head }) => ({ x: flow.value, y: head.value }));
  return { kind: 'rotodynamic', points: [...points].sort((a, b) => a.x - b.x) };
}

const unknown: Quantity = { value: Number.NaN, unit: '' };

export function caseOf(input: PumpTestInput, reading: ReadingInput, medium: Medium): Case {
  const { curve, instruments, gaugeHeights } = input;
  const flow = reading.flow;
  const timed = flow !== undefined && 'time' in flow ? flow : null;
  const direct = flow !== undefined && !('time' in flow) ? flow : undefined;
  const given: Partial<Record<InputName, Quantity | null | undefined>> = {
    speed: reading.speed,
    suction: reading.suction,
    discharge: reading.discharge,
    givenHead: reading.head,
    flow: direct,
    volume: timed?.volume,
    time: timed?.time,
    power: reading.power,
    suctionBore: input.suctionBore,
    dischargeBore: input.dischargeBore,
    suctionHeight: gaugeHeights?.suction ?? { value: 0, unit: 'm' },
    dischargeHeight: gaugeHeights?.discharge ?? { value: 0, unit: 'm' },
    atmospheric: input.atmospheric ?? { value: 101.325, unit: 'kPa' },
    density: medium.density,
    vapour: medium.vapour,
    curveSpeed: curve !== undefined && 'speed' in curve ? curve.speed : undefined,
    displacement: curve !== undefined && 'displacement' in curve ? curve.displacement : undefined,
  };
  const instrument: Partial<Record<InputName, Instruments[keyof Instruments]>> = {
    suction: instruments?.suction,
    discharge: instruments?.discharge,
    speed: instruments?.speed,
    flow: instruments?.flow,
    givenHead: instruments?.head,
    power: instruments?.power,
  };
  const inputs = INPUTS.map((name): Uncertain => {
    const { value, u } = given[name] ?? unknown;
    if (Number.isNaN(value)) return { value, u: 0 };
    return { value, u: u ?? byInstrument(instrument[name], value) ?? 0 };
  });
  const named = INPUTS.map((name, at) => [name, inputs[at]?.value ?? Number.NaN]);
  return { figures: Object.fromEntries(named) as Figures, inputs };
}

/** What only the meaning of the figures shows to be wrong. */
export function wrongReadings(input: PumpTestInput, cases: readonly Case[]): Problem[] {
  const problems: Problem[] = [];
  const wrong = (path: string, got: unknown, expected: string, why: string) =>
    problems.push({ path, got: got ?? null, expected, why });
  cases.forEach(({ figures }, at) => {
    const path = `readings/${at}`;
    const reading = input.readings[at];
    const { suction, atmospheric, vapour } = figures;
    if (reading?.head !== undefined && reading.discharge !== undefined) {
      const why = 'the head is given twice, and the two may disagree';
      wrong(`${path}/head`, reading.head.value, 'head, or suction and discharge', why);
    }
    if (suction + atmospheric < (Number.isNaN(vapour) ? 0 : vapour)) {
      const limit = (Number.isNaN(vapour) ? 0 : vapour) - atmospheric;
      const expected = `at least ${Number(limit.toPrecision(4))} kPa gauge`;
      const why = 'below the vapour pressure nothing liquid reaches the pump';
      wrong(`${path}/suction`, suction, expected, why);
    }
  });
  return [...problems, ...wrongCurve(input)];
}

function wrongCurve({ curve, grade, headTolerance, flowTolerance }: PumpTestInput): Problem[] {
  const problems: Problem[] = [];
  const wrong = (path: string, got: unknown, expected: string, why: string) =>
    problems.push({ path, got: got ?? null, expected, why });
  if (curve !== undefined && !('displacement' in curve)) {
    const flows = (curve.points ?? []).map(({ flow }) => flow.value);
    flows.forEach((flow, at) => {
      if (flows.indexOf(flow) === at) return;
      const why = 'two points stand at one flow';
      wrong(`curve/points/${at}/flow`, flow, 'each flow once', why);
    });
    if (flows.length > 0 && curve.speed === undefined) {
      wrong('curve/speed', null, 'the speed of the curve', 'points belong to a speed');
    }
  }
  if (curve !== undefined && 'displacement' in curve) {
    (curve.points ?? []).forEach(({ speed, flow, pressure }, at) => {
      const most = 0.06 * curve.displacement.value * speed.value;
      if (flow.value <= most || pressure.value < 0) return;
      const expected = `at most ${Number(most.toPrecision(5))} m3/h`;
      wrong(`curve/points/${at}/flow`, flow.value, expected, 'more than the pump displaces');
    });
    if (typeof grade === 'string') {
      const why = 'the grades of ISO 9906 are of rotodynamic pumps';
      wrong('grade', grade, 'flowTolerance or limits', why);
    }
  }
  if (grade !== undefined && (headTolerance !== undefined || flowTolerance !== undefined)) {
    const why = 'the tolerance is given twice, and the two may disagree';
    wrong('grade', typeof grade === 'string' ? grade : null, 'grade or tolerances', why);
  }
  return problems;
}

/** m³/h of a reading, however it was had. */
export const readFlow = ({ figures: { flow, volume, time } }: Case): number =>
  flowOf(flow, volume, time);
