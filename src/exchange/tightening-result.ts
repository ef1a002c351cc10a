// Results of tightening as a file, one bolt a result, in the names of OPC 40450-1; they stay here.

import { z } from 'zod';
import type { Problem } from '../quantity/types.ts';
import { convert } from '../quantity/units.ts';

/** What the maker of the file said of the bolt, in our words. */
export type Judged = 'tight' | 'not tight' | 'not judged';

export type BoltResult = {
  readonly id: string;
  /** As the device said; shown, never trusted. */
  readonly at: string;
  readonly name: string;
  readonly joint: string;
  readonly hole: string;
  readonly tool: string | null;
  readonly judged: Judged;
  readonly torqueNm: number;
  readonly targetNm: number | null;
  readonly angleDeg: number | null;
};

/** Units by their UN/CEFACT code, its characters as the bytes of one number. */
const codeNumber = (code: string): number =>
  [...code].reduce((sum, letter) => sum * 256 + (letter.codePointAt(0) ?? 0), 0);
const UNITS = [
  { code: 'NU', ours: 'N.m', shown: 'N·m', tag: 'torque' },
  { code: 'DD', ours: 'deg', shown: 'deg', tag: 'angle' },
] as const;
const NAMESPACE = 'http://www.opcfoundation.org/UA/units/un/cefact';

/** From memory of the standard: 0 undefined, 1 in order, 2 not in order. */
const EVALUATIONS: readonly Judged[] = ['not judged', 'tight', 'not tight'];
const TORQUE_TAG = 1;

const figure = z.looseObject({
  MeasuredValue: z.number(),
  Name: z.string().optional(),
  ResultEvaluation: z.int().optional(),
  ValueTag: z.int().optional(),
  LowLimit: z.number().optional(),
  HighLimit: z.number().optional(),
  TargetValue: z.number().optional(),
  EngineeringUnits: z.looseObject({ UnitId: z.int(), DisplayName: z.string().optional() }),
});

const file = z.looseObject({
  ResultMetaData: z.looseObject({
    ResultId: z.string().min(1).max(200),
    CreationTime: z.string().min(1).max(40),
    ResultEvaluation: z.int().optional(),
    Name: z.string().max(200).optional(),
    AssociatedEntities: z
      .array(z.looseObject({ Name: z.string(), EntityId: z.string() }))
      .min(1)
      .max(50),
  }),
  ResultContent: z
    .array(z.looseObject({ OverallResultValues: z.array(figure).min(1).max(50) }))
    .min(1)
    .max(50),
});

type Read =
  | { readonly ok: true; readonly results: readonly BoltResult[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** One result, or a list of them. Every problem is told with its place in the file. */
export function readResults(raw: unknown): Read {
  const list = Array.isArray(raw) ? raw : [raw];
  const read = list.map((one, i) => readOne(one, Array.isArray(raw) ? `${i}/` : ''));
  const problems = read.flatMap((one) => ('problems' in one ? one.problems : []));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, results: read.flatMap((one) => ('result' in one ? [one.result] : [])) };
}

type One = { readonly result: BoltResult } | { readonly problems: readonly Problem[] };

function readOne(raw: unknown, at: string): One {
  const parsed = file.safeParse(raw);
  if (!parsed.success) {
    return {
      problems: parsed.error.issues.map((issue) => ({
        path: `${at}${issue.path.map(String).join('/')}`,
        got: null,
        expected: 'a result of one tightening with the names of OPC 40450-1',
        why: issue.message,
      })),
    };
  }
  const { ResultMetaData: meta, ResultContent: content } = parsed.data;
  const about = meta.AssociatedEntities.find((each) => each.Name === 'joint');
  const [, joint, hole] = /^joint\/([^/]+)\/(?:bolt-)?([^/]+)$/.exec(about?.EntityId ?? '') ?? [];
  const values = content.flatMap((each) => each.OverallResultValues);
  const torque = values.find((each) => isOf(each, 'torque'));
  if (joint === undefined || hole === undefined)
    return {
      problems: [
        {
          path: `${at}ResultMetaData/AssociatedEntities`,
          got: about?.EntityId ?? null,
          expected: 'joint/<joint>/bolt-<hole>',
          why: 'it does not say which bolt of which joint',
        },
      ],
    };
  if (torque === undefined)
    return {
      problems: [
        {
          path: `${at}ResultContent/0/OverallResultValues`,
          got: values.map((each) => each.EngineeringUnits.DisplayName ?? null),
          expected: `a torque in N·m (unit ${codeNumber('NU')})`,
          why: 'no value in it is a torque',
        },
      ],
    };
  const angle = values.find((each) => isOf(each, 'angle'));
  const tool = meta.AssociatedEntities.find((each) => each.Name === 'tool');
  return {
    result: {
      id: meta.ResultId,
      at: meta.CreationTime,
      name: meta.Name ?? '',
      joint,
      hole,
      tool: tool?.EntityId.replace(/^tool\//, '') ?? null,
      judged: EVALUATIONS[meta.ResultEvaluation ?? 0] ?? 'not judged',
      torqueNm: torque.MeasuredValue,
      targetNm: torque.TargetValue ?? null,
      angleDeg: angle?.MeasuredValue ?? null,
    },
  };
}

function isOf(value: z.infer<typeof figure>, tag: 'torque' | 'angle'): boolean {
  const unit = UNITS.find((each) => codeNumber(each.code) === value.EngineeringUnits.UnitId);
  return unit?.tag === tag;
}

type Figure = { readonly value: number; readonly unit: string };

/** A bolt of our record to be written out; figures in whatever unit they were read in. */
export type BoltMade = {
  readonly id: string;
  readonly at: string;
  readonly name: string;
  readonly joint: string;
  readonly hole: string;
  readonly tool: string | null;
  readonly judged: Judged;
  readonly torque: Figure;
  /** Nobody read it off: it is what the wrench was set to. */
  readonly setOnly?: boolean;
  readonly target: Figure | null;
};

/** The file of one bolt; `readResults` reads back what went in. */
export function writeResult(bolt: BoltMade): Readonly<Record<string, unknown>> {
  const evaluation = EVALUATIONS.indexOf(bolt.judged);
  const inNm = (each: Figure): number => convert(each.value, each.unit, 'N.m');
  return {
    ResultMetaData: {
      ResultId: bolt.id,
      CreationTime: bolt.at,
      ResultEvaluation: evaluation,
      JoiningTechnology: { Text: 'Tightening', Locale: 'en' },
      Name: bolt.name,
      Classification: 1,
      IsGeneratedOffline: true,
      AssociatedEntities: [
        { Name: 'joint', EntityId: `joint/${bolt.joint}/bolt-${bolt.hole}`, EntityType: 0 },
        ...(bolt.tool === null
          ? []
          : [{ Name: 'tool', EntityId: `tool/${bolt.tool}`, EntityType: 0 }]),
      ],
    },
    ResultContent: [
      {
        OverallResultValues: [
          {
            MeasuredValue: inNm(bolt.torque),
            Name: bolt.setOnly === true ? 'Set torque, not measured' : 'Final torque',
            ResultEvaluation: evaluation,
            ValueTag: TORQUE_TAG,
            ...(bolt.target === null ? {} : { TargetValue: inNm(bolt.target) }),
            EngineeringUnits: {
              NamespaceUri: NAMESPACE,
              UnitId: codeNumber('NU'),
              DisplayName: 'N·m',
            },
          },
        ],
        StepResults: [],
        Errors: [],
      },
    ],
  };
}
