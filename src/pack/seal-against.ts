// What speaks against a seal as the machine has it: grease, medium, heat, pressure, sealant.

import type { Joint, Line, Seal } from '../plant/schema.ts';
import { formatNumber, readQuantity } from '../quantity/quantity.ts';
import { compatible } from '../sealing/compatible.ts';
import { compatibleInput } from '../sealing/compatible-model.ts';
import { GREASES, type Medium, RATED } from '../sealing/tables/compounds.ts';
import { type Context, jointOf } from './context.ts';

type Ask = Pick<Context, 'machine' | 'say'>;

/** Where both are said for sure; jacket and fresh water are in no table of compounds. */
const MEDIUM_OF: Readonly<Record<string, Medium>> = {
  'sea water': 'sea water',
  coolant: 'ethylene glycol coolant',
  fuel: 'diesel fuel',
  'lube oil': 'mineral lubricating oil',
};

export type Against = {
  readonly against: readonly string[];
  readonly notChecked: readonly string[];
  readonly notes: readonly string[];
};

export function sealAgainst(c: Ask, jointId: string, seal: Seal): Against {
  const joint = jointOf(c, jointId);
  const lines = linesOf(c, joint);
  const parts = [
    compatibleWith(c, seal, joint, lines),
    duty(c, seal, lines),
    sealantOn(c, seal, joint),
  ];
  return {
    against: parts.flatMap((part) => part.against),
    notChecked: parts.flatMap((part) => part.notChecked),
    notes: notesOf(c, seal, joint),
  };
}

const linesOf = ({ machine }: Ask, joint: Joint): readonly Line[] =>
  [...new Set((joint.between ?? []).flatMap((part) => machine.parts[part]?.line ?? []))].flatMap(
    (line) => machine.lines[line] ?? [],
  );

const figureOf = (text: string | undefined, unit: string): number | null => {
  const read = text === undefined ? null : readQuantity(text, unit, '');
  return read?.ok === true ? read.quantity.value : null;
};

/** The hottest and the highest of the lines it stands in. */
const most = (lines: readonly Line[], field: 'temperature' | 'pressure', unit: string) => {
  const values = lines.flatMap((line) => figureOf(line[field], unit) ?? []);
  return values.length === 0 ? null : Math.max(...values);
};

const none = { against: [], notChecked: [] };

function compatibleWith(
  { say }: Ask,
  seal: Seal,
  joint: Joint,
  lines: readonly Line[],
): Pick<Against, 'against' | 'notChecked'> {
  const { compound, lubricant } = seal;
  const media = joint.medium === undefined ? lines.map(({ medium }) => medium) : [joint.medium];
  const named = [...new Set(media.flatMap((one) => one ?? []))];
  if (compound === undefined)
    return seal.kind === 'ring' || seal.kind === 'shaft seal'
      ? { against: [], notChecked: [say('sealNoCompound')] }
      : none;
  if (!RATED.some((one) => one === compound)) return none;
  const grease = GREASES.find((one) => one === lubricant);
  const known = named.flatMap((one) => MEDIUM_OF[one] ?? []);
  const temperature = most(lines, 'temperature', 'Cel');
  const read = compatibleInput.safeParse({
    compound,
    ...(known.length === 0 ? {} : { media: known }),
    ...(grease === undefined ? {} : { grease }),
    ...(temperature === null ? {} : { temperature }),
  });
  if (!read.success) return none;
  const answer = compatible(read.data);
  const bad = [
    ...(answer.ratings ?? []).flatMap((rating, at) =>
      rating >= 3 ? [say('sealBadIn', compound, known[at] ?? '', rating)] : [],
    ),
    ...((answer.greaseRating ?? 0) >= 3
      ? [say('sealBadGrease', compound, grease ?? '', answer.greaseRating ?? 0)]
      : []),
  ];
  const [least, greatest] = answer.temperatureRange ?? [];
  if (temperature !== null && least !== undefined && greatest !== undefined)
    if (temperature < least.value || temperature > greatest.value)
      bad.push(
        say(
          'sealBadHeat',
          compound,
          formatNumber(temperature, 4),
          `${least.value}`,
          `${greatest.value}`,
        ),
      );
  if (bad.length === 0 && (answer.verdict === 'unsuitable' || answer.verdict === 'doubtful'))
    bad.push(say('sealJudged', compound, answer.verdict));
  const strange = named.filter((one) => MEDIUM_OF[one] === undefined && one !== 'signal');
  return {
    against: bad,
    notChecked: [
      ...(lubricant !== undefined && grease === undefined
        ? [say('sealGreaseUnknown', lubricant, compound)]
        : []),
      ...strange.map((one) => say('sealMediumUnknown', compound, one)),
    ],
  };
}

/** Its own limits against the line's figures; where either is missing it can't be checked. */
function duty(
  { say }: Ask,
  seal: Seal,
  lines: readonly Line[],
): Pick<Against, 'against' | 'notChecked'> {
  if (seal.kind !== 'gasket' || lines.length === 0) return none;
  const { maxTemperature, maxPressure } = seal;
  if (maxTemperature === undefined && maxPressure === undefined)
    return { against: [], notChecked: [say('sealNoLimits')] };
  const against: string[] = [];
  const lacks: string[] = [];
  const check = (limit: number | null, real: number | null, what: 'heat' | 'pressure') => {
    const unit = what === 'heat' ? '°C' : 'bar';
    if (limit === null || real === null)
      lacks.push(say(limit === null ? `sealNo-${what}-limit` : `sealNo-${what}-line`));
    else if (real > limit)
      against.push(
        say('sealDuty', `${formatNumber(limit, 4)} ${unit}`, `${formatNumber(real, 4)} ${unit}`),
      );
  };
  check(figureOf(maxTemperature, 'Cel'), most(lines, 'temperature', 'Cel'), 'heat');
  check(figureOf(maxPressure, 'bar'), most(lines, 'pressure', 'bar'), 'pressure');
  return { against, notChecked: lacks };
}

function sealantOn(
  { say }: Ask,
  seal: Seal,
  joint: Joint,
): Pick<Against, 'against' | 'notChecked'> {
  if (seal.sealant === undefined) return none;
  const { noSealant } = joint;
  return {
    against: [
      ...(noSealant === undefined ? [] : [say('sealForbidden', seal.sealant, noSealant)]),
      ...(seal.setsClearance === true ? [say('sealNoSealantHere', seal.sealant)] : []),
    ],
    notChecked: [],
  };
}

function notesOf({ say }: Ask, seal: Seal, joint: Joint): readonly string[] {
  const blind = Object.values(joint.fasteners ?? {}).some((f) => f.blind === true);
  return [
    ...(seal.setsClearance === true
      ? [say('sealSetsClearance', seal.thickness ?? say('thicknessMissing'))]
      : []),
    ...(blind ? [say('sealBlind')] : []),
    ...(seal.reuse === undefined ? [] : [say('sealReuse', seal.reuse)]),
  ];
}
