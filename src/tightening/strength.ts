// The strength of a bolt by its class: proof, yield and tensile strength, and what to mind.

import type { Source } from '../quantity/types.ts';
import { classRangeMm, classRows } from './tables/strength-classes.ts';

export type Strength = {
  readonly name: string;
  /** Null where it was not given, and where the standard has none and yield stands for it. */
  readonly proofMPa: number | null;
  readonly yieldMPa: number | null;
  readonly tensileMPa: number | null;
  /** The 0.2 % limit stands for proof strength: the standard of stainless bolts has none. */
  readonly proofIsYield: boolean;
  readonly austenitic: boolean;
  readonly source: Source;
  readonly cautions: readonly string[];
};

export type ReadStrength =
  | { readonly ok: true; readonly strength: Strength }
  | { readonly ok: false; readonly expected: string; readonly why: string };

export const classNames: readonly string[] = [...new Set(classRows.map(({ name }) => name))];

const plainName = (text: string): string =>
  text
    .trim()
    .toUpperCase()
    .replace(/^SAE(?:\s*J\s*429)?\s*(?:GRADE|GR\.?)?\s*/, 'SAE ')
    .replace(/\s*[-–]\s*/, '-');

export function readStrength(text: string, diameterMm: number): ReadStrength {
  const name = plainName(text);
  const row = classRows.find(
    (one) => one.name === name && diameterMm > one.aboveMm && diameterMm <= one.uptoMm,
  );
  if (row === undefined) {
    const expected = `one of ${classNames.join(', ')}, or {proof, yield, tensile}`;
    return { ok: false, expected, why: `"${text}" is no strength class known here` };
  }
  const proofIsYield = row.proofMPa === null;
  return {
    ok: true,
    strength: {
      name,
      proofMPa: row.proofMPa ?? row.yieldMPa,
      yieldMPa: row.yieldMPa,
      tensileMPa: row.tensileMPa,
      proofIsYield,
      austenitic: proofIsYield,
      source: row.source,
      cautions: [...rangeCautions(name, diameterMm), ...hardCautions(name)],
    },
  };
}

function rangeCautions(name: string, diameterMm: number): readonly string[] {
  const inch = name.startsWith('SAE');
  const named = classRangeMm[name];
  const [least, most] = named ?? (inch ? [6.35, 38.1] : /^A/.test(name) ? [1.6, 39] : [1.6, 39]);
  const said = [];
  if (diameterMm < least - 1e-9 || diameterMm > most + 1e-9) {
    const range = inch ? `${least / 25.4} to ${most / 25.4} in` : `M${least} to M${most}`;
    said.push(`Class ${name} is published for ${range} only; this size is outside it.`);
  }
  if (/^A.-(?:70|80)$/.test(name) && diameterMm > 24) {
    said.push(`Class ${name} above M24 is in ISO 3506-1:2020 only; an older bolt may be weaker.`);
  }
  return said;
}

const hardCautions = (name: string): readonly string[] =>
  name === '12.9'
    ? ['Class 12.9 may crack in the wet (stress corrosion): see what the maker allows.']
    : [];

export function givenStrength(given: {
  readonly proofMPa: number | null;
  readonly yieldMPa: number | null;
  readonly tensileMPa: number | null;
}): ReadStrength {
  const { yieldMPa, tensileMPa, proofMPa } = given;
  if (yieldMPa !== null && tensileMPa !== null && yieldMPa > tensileMPa) {
    return { ok: false, expected: 'yield at most tensile', why: 'no bolt breaks before it yields' };
  }
  if (proofMPa !== null && tensileMPa !== null && proofMPa > tensileMPa) {
    return { ok: false, expected: 'proof at most tensile', why: 'no bolt breaks below its proof' };
  }
  const source: Source = { kind: 'entered', by: 'the input' };
  const rest = { proofIsYield: false, austenitic: false, source, cautions: [] };
  return { ok: true, strength: { name: 'given', ...given, ...rest } };
}
