// The one register of calculations: name, schemas, function, example; screen and commands use it.

import { z } from 'zod';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import type { Problem } from '../quantity/types.ts';
import type { Late, Solver } from '../removal/model.ts';
import { bilgeMainCalculation } from './bilge-main.ts';
import { check, IGNORED, IGNORED_IN_PLAIN } from './border.ts';
import { combineCalculation } from './combine.ts';
import { compatibleCalculation } from './compatible.ts';
import { coolDownCalculation } from './cool-down.ts';
import { coolerCalculation } from './cooler.ts';
import { decideCalculation } from './decide.ts';
import { dueCalculation } from './due.ts';
import { floodingCalculation } from './flooding.ts';
import { isolateCalculation } from './isolate.ts';
import { jointCalculation } from './joint.ts';
import { lifeCalculation } from './life.ts';
import { liftCalculation } from './lift.ts';
import { oRingCalculation } from './o-ring.ts';
import { patternCalculation } from './pattern.ts';
import { pumpTestCalculation } from './pump-test.ts';
import { recurrenceCalculation } from './recurrence.ts';
import { removalCalculation } from './removal.ts';
import { renewalAgeCalculation } from './renewal-age.ts';
import { seaWaterCalculation } from './sea-water.ts';
import { sparesCalculation } from './spares.ts';
import { tighteningCalculation } from './tightening.ts';
import { wrenchSettingCalculation } from './wrench-setting.ts';

/** What the shell lends a calculation. */
export type Lent = {
  readonly solver: Solver;
  /** Where the input limits the seconds: whether they are over. */
  readonly late?: Late;
};

/** One of the forms an input may take. */
export type Form = {
  readonly schema: z.ZodType;
  /** Plain forms come from tables and may carry more that is ignored. */
  readonly plain: boolean;
};

export type Calculation = {
  readonly name: string;
  readonly summary: string;
  /** What each part of the input is for, in a few lines. */
  readonly help: string;
  readonly forms: readonly Form[];
  /** Which form this input takes; the first when none can be told. */
  readonly formOf: (raw: Readonly<Record<string, unknown>>) => Form;
  readonly results: readonly z.ZodType[];
  readonly problems: (input: unknown) => readonly Problem[];
  readonly run: (input: unknown, lent: Lent) => Promise<Readonly<Record<string, unknown>>>;
  /** It runs where a solver is lent; the others run anywhere, a phone without a server too. */
  readonly needsSolver: boolean;
  /** How long the solver may take, where the input says so. */
  readonly seconds: (raw: unknown) => number | null;
  readonly example: Readonly<Record<string, unknown>>;
};

export type CalcError = {
  readonly id?: unknown;
  readonly error: { readonly problems: readonly Problem[] };
};

export type CalcAnswer =
  | { readonly ok: true; readonly result: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly error: CalcError };

const calculations: readonly Calculation[] = [
  removalCalculation,
  tighteningCalculation,
  jointCalculation,
  patternCalculation,
  wrenchSettingCalculation,
  oRingCalculation,
  compatibleCalculation,
  liftCalculation,
  isolateCalculation,
  combineCalculation,
  dueCalculation,
  floodingCalculation,
  bilgeMainCalculation,
  coolDownCalculation,
  seaWaterCalculation,
  decideCalculation,
  lifeCalculation,
  coolerCalculation,
  renewalAgeCalculation,
  sparesCalculation,
  recurrenceCalculation,
  pumpTestCalculation,
];

export const listCalculations = (): readonly Calculation[] => calculations;

export const findCalculation = (name: string): Calculation | undefined =>
  calculations.find((one) => one.name === name);

/** Does one calculation: the result with the authority line, or everything wrong with the input. */
export async function runCalc(name: string, raw: unknown, lent: Lent): Promise<CalcAnswer> {
  const calculation = findCalculation(name);
  if (calculation === undefined) {
    const expected = `one of ${calculations.map((one) => one.name).join(', ')}`;
    return refused([{ path: '', got: name, expected, why: 'there is no such calculation' }]);
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    const why = 'a calculation takes one JSON object';
    return refused([{ path: '', got: raw ?? null, expected: 'an object', why }]);
  }
  const given: Readonly<Record<string, unknown>> = { ...raw };
  const id = Object.hasOwn(given, 'id') ? { id: given.id } : {};
  const form = calculation.formOf(given);
  const checked = check(form.schema, given, form.plain);
  if (!checked.ok) return refused(checked.problems, id);
  const problems = calculation.problems(checked.input);
  if (problems.length > 0) return refused(problems, id);
  const result = await calculation.run(checked.input, lent);
  return { ok: true, result: { ...id, ...result, authority: AUTHORITY_LINE } };
}

function refused(problems: readonly Problem[], id: { readonly id?: unknown } = {}): CalcAnswer {
  return { ok: false, error: { ...id, error: { problems } } };
}

type JsonSchema = Readonly<Record<string, unknown>>;

/** JSON Schema (2020-12) of the input, with the fields that are taken and ignored. */
export function inputJsonSchema({ name, forms }: Calculation): JsonSchema {
  return oneOf(
    `input of ${name}`,
    forms.map(({ schema, plain }) =>
      withFields(schema, 'input', plain ? [...IGNORED, ...IGNORED_IN_PLAIN] : IGNORED),
    ),
  );
}

export function outputJsonSchema({ name, results }: Calculation): JsonSchema {
  return oneOf(
    `output of ${name}`,
    results.map((schema) =>
      withFields(schema, 'output', ['id'], { authority: { type: 'string' } }),
    ),
  );
}

function oneOf(title: string, forms: readonly JsonSchema[]): JsonSchema {
  const $schema = 'https://json-schema.org/draft/2020-12/schema';
  const [only, ...others] = forms;
  if (only !== undefined && others.length === 0) return { $schema, title, ...only };
  return { $schema, title, anyOf: forms };
}

function withFields(
  schema: z.ZodType,
  io: 'input' | 'output',
  ignored: readonly string[],
  more: JsonSchema = {},
): JsonSchema {
  const { $schema: _, ...json } = z.toJSONSchema(schema, { target: 'draft-2020-12', io });
  const taken = Object.fromEntries(ignored.map((field) => [field, {}]));
  return { ...json, properties: { ...taken, ...json.properties, ...more } };
}
