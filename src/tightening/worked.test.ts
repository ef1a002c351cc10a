// Every published example of bolted joints through `tightening` and `joint`; screws by function.

import { describe, expect, test } from 'vitest';
import { meanAndSd } from '../quantity/chance.ts';
import { joint } from './joint.ts';
import { jointInput } from './joint-model.ts';
import { tighteningInput } from './model.ts';
import { momentOnArcN, momentOnCircleN } from './stiffness.ts';
import table from './tables/worked.published.json' with { type: 'json' };
import { tightening } from './tightening.ts';
import { collarMm, screwEfficiency, screwLiftMm, screwLowerMm } from './torque.ts';

const LIMIT = 0.01;
const LBF = 4.4482216152605;
const INCH = 25.4;
const LBF_IN = LBF * 0.0254;
const MPSI = 6.894757293168361;
/** Of a million pounds for each inch. */
const MLBF_IN = (LBF * 1e6) / INCH / 1_000;

const seen = new Set<string>();

function example(id: string) {
  seen.add(id);
  const found = table.examples.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no example ${id}`);
  const published: Readonly<Record<string, number>> = found.published;
  return { title: `${found.title} (${found.source}; ${found.origin})`, published };
}

function near(value: number | undefined, published: number | undefined) {
  if (value === undefined || published === undefined) throw new Error('no figure');
  expect(Math.abs(value / published - 1)).toBeLessThan(LIMIT);
}

function tight(raw: object) {
  const answer = tightening(tighteningInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  const { preload, torque, proofLoad, nutFactor } = answer.result;
  return { preload: preload?.value, torque: torque?.value, proofLoad: proofLoad?.value, nutFactor };
}

function loaded(raw: object) {
  const answer = joint(jointInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  const { working, cautions, notWorkedOut, ...figures } = answer.result;
  return Object.fromEntries(
    Object.entries(figures).map(([name, figure]) => [name, figure?.value ?? Number.NaN]),
  );
}

const kip = (value: number) => (value * 1_000 * LBF) / 1_000;

describe('Shigley 8-3', () => {
  const { title, published } = example('shigley-8-3');
  const thread = { diameter: '0.75 in', pitch: INCH / 16, stressArea: '0.373 in2' };
  const preload = kip(25);

  test(`torque and stress: ${title}`, () => {
    const bolt = { thread, strengthClass: 'SAE 5', preload };
    near((tight({ ...bolt, nutFactor: 0.2 }).torque ?? 0) / LBF_IN, published.T_K020_lbf_in);
    const face = { bearingOuter: '1.125 in', hole: '0.75 in' };
    const rubbing = { frictionThread: 0.15, frictionHead: 0.15 };
    near((tight({ ...bolt, ...face, ...rubbing }).torque ?? 0) / LBF_IN, published.T_f015_lbf_in);
    const share = preload / (tight({ ...bolt, nutFactor: 0.2 }).proofLoad ?? 0);
    near(share * 85, published.sigma_i_kpsi);
    near((1 - share) * 100, published.pct_below_proof_preload);
  });

  test('the table thread gives the same within its rounding', () => {
    near((tight({ thread: '3/4-16 UNF', preload, nutFactor: 0.2 }).torque ?? 0) / LBF_IN, 3750);
    near(tight({ thread: '3/4-16 UNF', strengthClass: 'SAE 5' }).proofLoad, kip(85 * 0.373));
  });

  test('the load in service', () => {
    const stiff = { boltStiffness: 6.5 * MLBF_IN, clampedStiffness: 13.8 * MLBF_IN };
    const found = loaded({ ...stiff, preload, load: kip(6), proofLoad: kip(85 * 0.373) });
    near(found.loadShare, published.C);
    near((found.boltLoad ?? 0) / kip(1) / 0.373, published.sigma_b_kpsi);
    near((1 - 1 / (found.proofFactor ?? 0)) * 100, published.pct_below_proof_service);
  });
});

test(`Shigley 8-4: ${example('shigley-8-4').title}`, () => {
  const { published } = example('shigley-8-4');
  const area = (Math.PI / 4) * (0.625 * INCH) ** 2;
  const bolt = [
    { area, length: '0.75 in' },
    { area: '0.226 in2', length: '0.75 in' },
  ];
  const clamped = [{ modulus: 14 * MPSI, thickness: '1.5 in' }];
  const made = { bolt, modulus: 30 * MPSI, clamped, diameter: '0.625 in' };
  const proofShare = tight({
    thread: { diameter: '0.625 in', stressArea: '0.226 in2' },
    strengthClass: { proof: 85 * MPSI },
    proofShare: 0.75,
  });
  near(proofShare.preload, kip(published.Fi_kip ?? 0));
  // Six bolts share 36 kip.
  const proofLoad = kip(85 * 0.226);
  const load = kip(6);
  const found = loaded({ ...made, preload: proofShare.preload, load, proofLoad });
  near((found.boltStiffness ?? 0) / MLBF_IN, published.kb_Mlbf_in);
  near((found.clampedStiffness ?? 0) / MLBF_IN, published.km_Mlbf_in);
  near(found.loadShare, published.C);
  near(found.loadFactor, published.nL_with_6);
  near(found.proofFactor, published.np_with_6);
  near(found.separationFactor, published.n0_with_6);
  // The number of bolts for a load factor of 2 is the load factor of one bolt turned round.
  const one = loaded({ ...made, preload: proofShare.preload, load: kip(36), proofLoad });
  near(2 / (one.loadFactor ?? 0), published.N);
  const fitted = loaded({ ...made, method: 'wileman' });
  near((fitted.clampedStiffness ?? 0) / MLBF_IN, published.km_wileman_Mlbf_in);
});

test(`Shigley 8-19: ${example('shigley-p8-19').title}`, () => {
  const { published } = example('shigley-p8-19');
  const iron = { modulus: 14.5 * MPSI, thickness: '0.75 in' };
  const steel = { modulus: 30 * MPSI, thickness: '0.75 in' };
  const whole = (layer: object) => ({ ...layer, thickness: '1.5 in' });
  const of = (clamped: readonly object[]) =>
    (loaded({ clamped, diameter: '0.625 in', method: 'wileman' }).clampedStiffness ?? 0) / MLBF_IN;
  near(of([iron, steel]), published.km_total_Mlbf_in);
  near(of([whole(iron)]), published.km_ci_Mlbf_in);
  near(of([whole(steel)]), published.km_steel_Mlbf_in);
});

test(`Shigley 8-28: ${example('shigley-p8-28').title}`, () => {
  const { published } = example('shigley-p8-28');
  const moment = 12_000 * LBF_IN * 1_000;
  near(momentOnCircleN(moment, 8 * INCH, 12) / LBF, published.F_b_lbf);
  const from = (75 * Math.PI) / 180;
  const to = (105 * Math.PI) / 180;
  near(momentOnArcN(moment, 8 * INCH, from, to) / LBF, published.F_a_lbf);
});

test(`Shigley 8-29: ${example('shigley-p8-29a').title}`, () => {
  const { published } = example('shigley-p8-29a');
  const found = tight({ thread: 'M20', strengthClass: '8.8', proofShare: 0.9, nutFactor: 0.18 });
  near(found.preload, published.Fi_kN);
  near(found.torque, published.T_Nm);
});

test(`Shigley 8-38: ${example('shigley-p8-38-kb').title}`, () => {
  const { published } = example('shigley-p8-38-kb');
  const area = (Math.PI / 4) * (0.375 * INCH) ** 2;
  const found = loaded({ bolt: [{ area, length: '13.5 in' }], modulus: 30 * MPSI });
  near((found.boltStiffness ?? 0) / MLBF_IN, published.kb_Mlbf_in);
});

test(`Shigley, scatter of ten bolts: ${example('shigley-t8-14').title}`, () => {
  const { published } = example('shigley-t8-14');
  const preloads = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
  const { mean, sd } = meanAndSd(preloads);
  near(mean, published.mean_kN);
  near(sd, published.sd_kN);
});

test.each([
  ['mfja-p85-K030', 0.3],
  ['mfja-p85-K020', 0.2],
  ['mfja-p85-K015', 0.15],
  ['mfja-p85-K010', 0.1],
])('nut factor: %s', (id, nutFactor) => {
  const { published } = example(id);
  const found = tight({ thread: { diameter: '0.19 in' }, preload: '1275 lbf', nutFactor });
  near((found.torque ?? 0) / LBF_IN, published.T_in_lb);
});

test(`Bhandari 7.16: ${example('bhandari-7-16').title}`, () => {
  const { published } = example('bhandari-7-16');
  const stiff = { boltStiffness: 207, clampedStiffness: 3 * 71 };
  const { boltLoad } = loaded({ ...stiff, preload: 5, load: 10 });
  near(((boltLoad ?? 0) * 1_000 * 2.5) / 380, published.A_core_mm2);
});

test(`power screw: ${example('shigley-p8-4-old').title}`, () => {
  const { published } = example('shigley-p8-4-old');
  const collar = collarMm(0.05, 40);
  const lift = screwLiftMm(5, 22.5, 0.08, 1) + collar;
  near(lift * 6, published.T_R_Nm);
  near((screwLowerMm(5, 22.5, 0.08, 1) + collar) * 6, published.T_L_Nm);
  near(screwEfficiency(5, lift), published.e);
});

test(`power screw: ${example('shigley-p8-6').title}`, () => {
  const { published } = example('shigley-p8-6');
  const lift = screwLiftMm(0.5, 2.75, 0.05, 1.033) * 2_500;
  near(lift, published.T_R_lbf_in);
  near(collarMm(0.06, 5) * 2_500, published.T_c_lbf_in);
  near(lift + collarMm(0.06, 5) * 2_500, published.T_total_lbf_in);
});

test('all 14 examples of the table are checked above', () => {
  expect([...seen].sort()).toEqual(table.examples.map(({ id }) => id).sort());
  expect(seen.size).toBe(14);
});
