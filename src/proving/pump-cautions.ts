// What a pump test leaves open, and what a reader must know before trusting its figures.

import { type Figures, type Reference, velocity } from './pump-figures.ts';
import { type Case, readFlow } from './pump-given.ts';
import type { Judged, Requirement, Worked } from './pump-judge.ts';
import { OUTPUTS, type OutputName, type PumpTestInput } from './pump-model.ts';

const has = (value: number): boolean => !Number.isNaN(value);

export function pumpCautions(
  input: PumpTestInput,
  cases: readonly Case[],
  worked: readonly Worked[],
  judged: readonly Judged[],
): string[] {
  const said: string[] = [];
  const byPressure = cases.some(({ figures }) => has(figures.discharge) && has(figures.suction));
  const { suctionBore, dischargeBore, gaugeHeights } = input;
  if (byPressure && gaugeHeights === undefined) {
    said.push("The gauges are taken as standing at the pump's datum: give gaugeHeights.");
  }
  if (byPressure && (suctionBore === undefined || dischargeBore === undefined)) {
    said.push('The bores are taken as alike, so that no velocity head is added: give both.');
  }
  const npsh = worked.some(({ npshAvailable }) => npshAvailable !== null);
  const noInlet = cases.some((one) => !has(readFlow(one))) || suctionBore === undefined;
  if (npsh && noInlet) {
    said.push('NPSH leaves out the velocity head of the suction: it is somewhat higher.');
  }
  if (npsh && input.atmospheric === undefined) {
    said.push('The air is taken at 101.325 kPa: give atmospheric where it differs.');
  }
  if (worked.some(({ head }) => head !== null && head.value < 0)) {
    said.push('A head below nought: the pump gives nothing, or the gauges are crossed.');
  }
  if (worked.some(({ slip }) => slip !== null && slip.value < 0)) {
    said.push(
      'A slip below nought: more than the pump displaces; flow, speed or displacement is off.',
    );
  }
  const curve = input.curve;
  const far = cases.some(({ figures: { speed, curveSpeed } }) => {
    const ratio = curveSpeed / speed;
    return ratio > 1.5 || ratio < 1 / 1.5;
  });
  if (curve !== undefined && far) {
    said.push(
      'A reading is far from the speed of the curve: affinity grows rough (common practice).',
    );
  }
  if (judged.some(({ requirement }) => requirement.byGrade)) {
    said.push(
      'ISO 9906 is for a rotodynamic pump whose papers name it; its tolerances (from memory) ' +
        'hold those of the measurement too.',
    );
  }
  if (judged.some(({ chance }) => chance === null)) {
    said.push('No uncertainty is stated: the word is by the simple rule, its chance is not known.');
  }
  const doubtful = cases.filter(({ figures }) => outOfRange(figures)).length;
  if (doubtful > 0) said.push('A velocity above 10 m/s: check flow and bores.');
  return said;
}

function outOfRange(figures: Figures): boolean {
  const { flow, suctionBore, dischargeBore } = figures;
  return [suctionBore, dischargeBore].some((bore) => velocity(flow, bore) > 10);
}

export type NotWorkedOut = { readonly output: string; readonly needs: string[] };

export function pumpNeeds(
  cases: readonly Case[],
  worked: readonly Worked[],
  reference: Reference,
  asked: readonly Requirement[],
  judged: readonly Judged[],
): NotWorkedOut[] {
  const found: NotWorkedOut[] = worked.flatMap((one, at) => {
    const figures = cases[at]?.figures;
    if (figures === undefined) return [];
    return OUTPUTS.filter((name) => one[name] === null).map((name) => ({
      output: `readings/${at}/${name}`,
      needs: needsOf(name, figures, reference),
    }));
  });
  if (judged.length === 0) {
    const anything = worked.some((one) => asked.some(({ of }) => one[of] !== null));
    const needs =
      asked.length === 0
        ? ['grade, headTolerance, flowTolerance or limits']
        : anything
          ? ['instruments, or the uncertainty of the readings']
          : asked.map(({ of }) => of);
    const outputs = ['verdict', 'probabilityConforming'];
    found.push(...outputs.map((output) => ({ output, needs })));
  } else if (judged.every(({ chance }) => chance === null)) {
    const needs = ['instruments, or the uncertainty of the readings'];
    found.push({ output: 'probabilityConforming', needs });
  }
  return found;
}

function needsOf(name: OutputName, figures: Figures, reference: Reference): string[] {
  const lacks = (fields: Readonly<Record<string, number>>): string[] =>
    Object.entries(fields).flatMap(([field, value]) => (has(value) ? [] : [field]));
  const { speed, suction, discharge, givenHead, power, density, vapour, displacement } = figures;
  const flow = has(figures.flow) ? figures.flow : figures.volume;
  const fluid = { 'fluid.density': density };
  const head = has(givenHead) ? [] : lacks({ suction, discharge, ...fluid });
  const there = lacks({ speed, 'curve.speed': figures.curveSpeed });
  switch (name) {
    case 'head':
      return head;
    case 'headAtCurveSpeed':
      return [...head, ...there];
    case 'flowAtCurveSpeed':
      return [...lacks({ flow }), ...there];
    case 'powerAtCurveSpeed':
      return [...lacks({ power }), ...there];
    case 'theoreticalFlow':
      return lacks({ speed, 'curve.displacement': displacement });
    case 'slip':
      return lacks({ flow, speed, 'curve.displacement': displacement });
    case 'npshAvailable':
      return lacks({ suction, ...fluid, 'fluid.vapourPressure': vapour });
    case 'deviation':
      return deviationNeeds(figures, reference, lacks);
  }
}

function deviationNeeds(
  figures: Figures,
  reference: Reference,
  lacks: (fields: Readonly<Record<string, number>>) => string[],
): string[] {
  const { speed, suction, discharge } = figures;
  const flow = has(figures.flow) ? figures.flow : figures.volume;
  if (reference.kind === 'none') return ['curve'];
  if (reference.kind === 'displacement') {
    if (reference.slip === null) return ['curve.points'];
    const short = lacks({ flow, speed, suction, discharge });
    return short.length > 0 ? short : ['a speed and pressure at which the pump still delivers'];
  }
  const [first, last] = [reference.points[0], reference.points.at(-1)];
  if (first === undefined || last === undefined || first === last) return ['curve.points'];
  const short = [
    ...lacks({ flow, speed }),
    ...(has(figures.givenHead)
      ? []
      : lacks({ suction, discharge, 'fluid.density': figures.density })),
  ];
  if (short.length > 0) return short;
  return [`a flow at the speed of the curve from ${first.x} to ${last.x} m3/h`];
}
