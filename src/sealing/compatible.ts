// Whether a compound bears its media, grease and temperature, and is not too old to be fitted.

import { formatNumber } from '../quantity/quantity.ts';
import { weakestOf } from '../quantity/rests.ts';
import { missing, newSheet, quantity } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';
import {
  COMPATIBLE_VERDICTS,
  type CompatibleInput,
  type CompatibleOutput,
  type CompatibleVerdict,
} from './compatible-model.ts';
import { readCured, type StorageEnd, storageEnd, storageGroup } from './storage.ts';
import {
  type Compound,
  compounds,
  HOT_WATER_CEL,
  MEDIA,
  type Medium,
  type Rating,
  ratingSource,
  ratingWords,
  ruleSource,
  temperatureSource,
  WATERS,
} from './tables/compounds.ts';
import type { StorageGroup } from './tables/storage.ts';

type Fault = { readonly verdict: CompatibleVerdict; readonly why: string };

type Facts = {
  readonly input: CompatibleInput;
  readonly compound: Compound | null;
  readonly ratings: readonly Rating[] | null;
  readonly greaseRating: Rating | null;
  readonly group: StorageGroup | null;
  readonly counted: string | null;
  readonly end: StorageEnd | null;
};

export const ratingOf = (compound: Compound, medium: Medium): Rating =>
  compound.ratings[MEDIA.indexOf(medium)] ?? 4;

export function compatible(input: CompatibleInput): CompatibleOutput {
  const facts = factsOf(input);
  const { compound, ratings, greaseRating, group, counted, end } = facts;
  const { storageRule } = input;
  const faults = faultsOf(facts);
  const sources = sourcesOf(facts);
  const needs = needsOf(facts);
  const first = COMPATIBLE_VERDICTS.find((word) => faults.some(({ verdict }) => verdict === word));
  const verdict = first ?? (needs.length > 0 ? null : 'suitable');
  const storage =
    group === null || storageRule === undefined
      ? null
      : {
          rule: storageRule,
          group: group.group,
          countedFrom: counted,
          limited: group.years !== null,
          expiresOn: end?.expiresOn ?? null,
          extendableTo: end?.extendableTo ?? null,
        };
  const result = {
    ratings,
    greaseRating,
    temperatureRange:
      compound === null
        ? null
        : [quantity(compound.leastCel, 'Cel'), quantity(compound.mostCel, 'Cel')],
    storage,
    verdict,
    reasons: reasonsOf(facts, faults, verdict),
    restsOn: verdict === null ? null : weakestOf(sources),
  };
  const working = workingOf(facts);
  const cautions = cautionsOf(facts, verdict, sources);
  const notWorkedOut = notWorked(facts, result, needs);
  return { ...result, working, cautions, notWorkedOut } as unknown as CompatibleOutput;
}

function factsOf(input: CompatibleInput): Facts {
  const known: Readonly<Record<string, Compound>> = compounds;
  const compound = known[input.compound] ?? null;
  const { media, grease, storageRule, cured } = input;
  const group = storageRule === undefined ? null : storageGroup(input.compound, storageRule);
  const counted = cured === undefined ? null : (readCured(cured)?.counted ?? null);
  return {
    input,
    compound,
    ratings:
      compound === null || media === undefined
        ? null
        : media.map((medium) => ratingOf(compound, medium)),
    greaseRating: compound === null || grease === undefined ? null : ratingOf(compound, grease),
    group,
    counted,
    end: group === null || counted === null ? null : storageEnd(counted, group),
  };
}

function faultsOf(facts: Facts): readonly Fault[] {
  const { input, compound, ratings, greaseRating } = facts;
  const { media = [], grease } = input;
  const name = input.compound;
  const said = (rating: Rating, medium: string): readonly Fault[] => {
    if (rating < 3) return [];
    const why = `${name} in ${medium}: ${rating}, ${ratingWords[rating]}`;
    return [{ verdict: rating === 4 ? 'unsuitable' : 'doubtful', why }];
  };
  const silicone = name === 'VMQ' && [...media, grease].includes('silicone grease');
  const swells = 'VMQ swells in silicone grease: not on silicone rings';
  return [
    ...(ratings ?? []).flatMap((rating, at) => said(rating, media[at] ?? '')),
    ...(greaseRating === null ? [] : said(greaseRating, grease ?? '')),
    ...(silicone ? [{ verdict: 'unsuitable' as const, why: swells }] : []),
    ...(compound === null ? [] : heatFaults(input, compound)),
    ...ageFaults(facts),
  ];
}

function heatFaults(input: CompatibleInput, compound: Compound): readonly Fault[] {
  const { temperature, media = [], compound: name } = input;
  if (temperature === undefined) return [];
  const { leastCel, mostCel } = compound;
  const { value } = temperature;
  if (value < leastCel || value > mostCel) {
    const why = `${formatNumber(value)} °C is outside ${leastCel} to ${mostCel} °C for ${name}`;
    return [{ verdict: 'unsuitable', why }];
  }
  const wet = media.some((medium) => WATERS.includes(medium));
  if (name !== 'FKM' || !wet || value <= HOT_WATER_CEL) return [];
  const why = `FKM in water or coolant above ${HOT_WATER_CEL} °C: special grades only`;
  return [{ verdict: 'doubtful', why }];
}

function ageFaults({ input, end, group }: Facts): readonly Fault[] {
  const { on, storageRule } = input;
  const { expiresOn, extendableTo } = end ?? { expiresOn: null, extendableTo: null };
  if (on === undefined || expiresOn === null || group === null || on <= expiresOn) return [];
  const since = `its life in store ended on ${expiresOn} under ${storageRule}`;
  if (extendableTo === null || on > extendableTo) {
    const last = extendableTo === null ? '' : `, extension and all on ${extendableTo}`;
    return [{ verdict: 'expired', why: `${since}${last}` }];
  }
  const why = `${since}; after inspection it may be extended to ${extendableTo}`;
  return [{ verdict: 'inspect before use', why }];
}

/** What a good verdict lacks: at least a medium or a grease, and whatever was asked for besides. */
function needsOf({ input, compound, group }: Facts): readonly string[] {
  const { media, grease, cured, on, storageRule } = input;
  const none = (media === undefined || media.length === 0) && grease === undefined;
  const asked = cured !== undefined || storageRule !== undefined;
  return [
    ...(none ? ['media'] : []),
    ...(compound === null ? [`ratings of ${input.compound}`] : []),
    ...(asked && cured === undefined ? ['cured'] : []),
    ...(asked && storageRule === undefined ? ['storageRule'] : []),
    ...(asked && storageRule !== undefined && group === null
      ? [`a rule for ${input.compound}`]
      : []),
    ...(asked && on === undefined ? ['on'] : []),
  ];
}

function reasonsOf(facts: Facts, faults: readonly Fault[], verdict: CompatibleVerdict | null) {
  const { input, ratings } = facts;
  const { media = [], temperature, cured } = input;
  const fair = (ratings ?? []).flatMap((rating, at) =>
    rating === 2 ? [`${input.compound} in ${media[at]}: 2, ${ratingWords[2]}`] : [],
  );
  const open = [
    ...(temperature === undefined ? ['temperature'] : []),
    ...(cured === undefined ? ['age: cured, on and storageRule'] : []),
    ...needsOf(facts),
  ];
  return [
    ...faults.map(({ why }) => why),
    ...fair,
    ...(verdict === 'suitable' ? ['nothing that was given speaks against it'] : []),
    ...[...new Set(open)].map((what) => `cannot be checked without ${what}`),
  ];
}

function sourcesOf({ input, compound, ratings, greaseRating, group, end }: Facts): Source[] {
  const { media = [], grease, temperature } = input;
  const silicone = input.compound === 'VMQ' && [...media, grease].includes('silicone grease');
  const wet = media.some((medium) => WATERS.includes(medium));
  const hot = input.compound === 'FKM' && wet && (temperature?.value ?? 0) > HOT_WATER_CEL;
  return [
    ...((ratings ?? []).length > 0 || greaseRating !== null ? [ratingSource] : []),
    ...(silicone || hot ? [ruleSource] : []),
    ...(compound !== null && input.temperature !== undefined ? [temperatureSource] : []),
    ...(group !== null && end !== null ? [group.source] : []),
  ];
}

function workingOf({ input, compound, ratings, greaseRating, group }: Facts) {
  const sheet = newSheet();
  (ratings ?? []).forEach((rating, at) => {
    const text = `${input.compound} in ${input.media?.[at]}`;
    sheet.take(`r_${at + 1}`, text, rating, '1', ratingSource);
  });
  if (greaseRating !== null) {
    sheet.take('r_g', `${input.compound} under ${input.grease}`, greaseRating, '1', ratingSource);
  }
  if (compound !== null) {
    sheet.take('T_a', 'least temperature', compound.leastCel, 'Cel', temperatureSource);
    sheet.take('T_b', 'greatest temperature', compound.mostCel, 'Cel', temperatureSource);
  }
  if (group?.years) {
    const text = `years in store under ${input.storageRule}, group ${group.group}`;
    sheet.take('n', text, group.years, '1', group.source);
    if (group.extensionYears !== null) {
      sheet.take('n_e', 'years more after inspection', group.extensionYears, '1', group.source);
      const whole = group.years + group.extensionYears;
      sheet.work('n_w', 'years in all', 'n + n_e', whole, '1', group.source);
    }
  }
  return [...sheet.rows];
}

function cautionsOf(
  { input, compound, ratings, greaseRating, group }: Facts,
  verdict: CompatibleVerdict | null,
  sources: readonly Source[],
): string[] {
  const said: string[] = [];
  if (ratings !== null || greaseRating !== null) {
    said.push(
      'The ratings are from memory; lists of good and bad that were read agree with them, but ' +
        'hold neither sea water nor the greases. Ask the maker of the seal.',
    );
  }
  const { media = [], temperature } = input;
  const wet = media.some((medium) => WATERS.includes(medium));
  if (compound?.badInHotWater && wet && temperature !== undefined) {
    said.push(`${input.compound} is listed as bad in hot water and steam, without a temperature.`);
  }
  if (group !== null) {
    said.push(
      `Counted under ${input.storageRule}; ISO 2230, SAE ARP5316 and RMA differ up to twofold. ` +
        'It holds for seals kept cool, dark, dry and unstretched.',
    );
    if (group.upperYears !== undefined) {
      said.push(`The rule says ${group.group}; the lower end is taken.`);
    }
    if (group.source.kind === 'from memory') said.push(`From memory: ${group.source.of}.`);
  }
  const rests = weakestOf(sources);
  if (verdict !== null && rests !== null) {
    said.push(`The verdict "${verdict}" rests on what is ${rests}.`);
  }
  return said;
}

function notWorked(
  { input, compound, group, end }: Facts,
  result: Readonly<Record<string, unknown>>,
  needs: readonly string[],
) {
  const rated = compound === null ? [`ratings of ${input.compound}`] : [];
  const lacks = (field: 'media' | 'grease' | 'cured' | 'storageRule') =>
    input[field] === undefined ? [field] : [];
  const unlisted =
    input.storageRule !== undefined && group === null ? [`a rule for ${input.compound}`] : [];
  const open = group !== null && end === null;
  const dates = open ? { 'storage/expiresOn': null, 'storage/extendableTo': null } : {};
  return missing(
    { ...result, ...dates },
    {
      ratings: [...lacks('media'), ...rated],
      greaseRating: [...lacks('grease'), ...rated],
      temperatureRange: rated,
      storage: [...lacks('storageRule'), ...lacks('cured'), ...unlisted],
      'storage/expiresOn': ['cured'],
      'storage/extendableTo': ['cured'],
      verdict: needs,
      restsOn: needs,
    },
  );
}
