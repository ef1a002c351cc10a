// A bolted joint under load: stiffness, the bolt's share of the load, what clamp remains, factors.

import type { Problem, Quantity, Source } from '../quantity/types.ts';
import type { JointInput, JointOutput } from './joint-model.ts';
import { echoed, entered, missing, newSheet, type Sheet } from './sheet.ts';
import {
  FACE,
  frustaOf,
  frustumStiffness,
  inARow,
  pieceStiffness,
  wilemanRow,
  wilemanStiffness,
} from './stiffness.ts';

export type JointAnswer =
  | { readonly ok: true; readonly result: JointOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const book = (place: string): Source => ({
  kind: 'published',
  title: "Shigley's Mechanical Engineering Design",
  edition: '9th',
  place,
});
const vdi: Source = { kind: 'from memory', of: 'VDI 2230 Part 1, loss of preload by embedding' };
const wilemanSource: Source = {
  kind: 'from memory',
  of: "constants of Wileman's fit; those of steel and grey cast iron stand in published examples",
};
const computed: Source = { kind: 'computed', by: 'joint' };

const NAMES = ['a', 'b'] as const;

function boltOf({ take, work }: Sheet, input: JointInput): number | null {
  if (input.boltStiffness !== undefined) {
    take('kb', 'stiffness of the bolt', input.boltStiffness.value, 'kN/mm', entered);
    return input.boltStiffness.value;
  }
  if (input.bolt === undefined || input.modulus === undefined) return null;
  const e = input.modulus.value;
  take('E', 'modulus of the bolt', e, 'GPa', entered);
  const each = input.bolt.map(({ area, length }, index) => {
    const [a, l] = NAMES.map((name) => `${name}${index + 1}`);
    take(`${a}`, `area of piece ${index + 1}`, area.value, 'mm2', entered);
    take(`${l}`, `length of piece ${index + 1}`, length.value, 'mm', entered);
    return { areaMm2: area.value, lengthMm: length.value };
  });
  const sum = each.map((_, index) => `b${index + 1}/(a${index + 1}*E)`).join('+');
  const kb = inARow(each.map((piece) => pieceStiffness(piece, e)));
  work('kb', 'stiffness of the bolt', `1/(${sum})`, kb, 'kN/mm', book('Example 8-4, page 442'));
  return kb;
}

function clampedOf(sheet: Sheet, input: JointInput): number | null {
  const { take } = sheet;
  if (input.clampedStiffness !== undefined) {
    take('kc', 'stiffness of what is clamped', input.clampedStiffness.value, 'kN/mm', entered);
    return input.clampedStiffness.value;
  }
  if (input.clamped === undefined || input.diameter === undefined) return null;
  const d = input.diameter.value;
  take('d', 'diameter of the bolt', d, 'mm', entered);
  const layers = input.clamped.map(({ modulus, thickness }) => ({
    modulusGPa: modulus.value,
    thicknessMm: thickness.value,
  }));
  return input.method === 'wileman' ? wileman(sheet, layers, d) : cones(sheet, layers, d);
}

type Layers = readonly { readonly modulusGPa: number; readonly thicknessMm: number }[];

const rowSum = (count: number): string =>
  Array.from({ length: count }, (_, index) => `1/k${index + 1}`).join('+');

function cones({ take, work }: Sheet, layers: Layers, d: number): number {
  const source = book('Example 8-4, page 442, cones of 30 degrees');
  const frusta = frustaOf(layers, d);
  work('c', 'slope of the cone', 'tan(pi/6)', Math.tan(Math.PI / 6), '1', source);
  const each = frusta.map((frustum, index) => {
    const n = index + 1;
    const { modulusGPa, thicknessMm, faceMm } = frustum;
    take(`E${n}`, `modulus of cone ${n}`, modulusGPa, 'GPa', entered);
    take(`t${n}`, `thickness of cone ${n}`, thicknessMm, 'mm', computed);
    take(`D${n}`, `face of cone ${n}, ${FACE} times d at head and nut`, faceMm, 'mm', computed);
    const g = `2*c*t${n}+D${n}`;
    const sum = `pi*c*E${n}*d/ln((${g}-d)*(D${n}+d)/((${g}+d)*(D${n}-d)))`;
    const k = frustumStiffness(frustum, d);
    work(`k${n}`, `stiffness of cone ${n}`, sum, k, 'kN/mm', source);
    return k;
  });
  const kc = inARow(each);
  work('kc', 'stiffness of what is clamped', `1/(${rowSum(each.length)})`, kc, 'kN/mm', source);
  return kc;
}

function wileman({ take, work }: Sheet, layers: Layers, d: number): number {
  const whole = layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  layers.forEach(({ modulusGPa, thicknessMm }, index) => {
    take(`E${index + 1}`, `modulus of layer ${index + 1}`, modulusGPa, 'GPa', entered);
    take(`t${index + 1}`, `thickness of layer ${index + 1}`, thicknessMm, 'mm', entered);
  });
  const total = layers.map((_, index) => `t${index + 1}`).join('+');
  work('L', 'thickness in all', total, whole, 'mm', computed);
  const each = layers.map((layer, index) => {
    const n = index + 1;
    const [material, , a, b] = wilemanRow(layer.modulusGPa);
    take(`A${n}`, `constant A, ${material}`, a, '1', wilemanSource);
    take(`B${n}`, `constant B, ${material}`, b, '1', wilemanSource);
    const k = wilemanStiffness(layer, d, whole);
    const sum = `E${n}*d*A${n}*exp(B${n}*d/L)*L/t${n}`;
    work(
      `k${n}`,
      `stiffness of layer ${n}`,
      sum,
      k,
      'kN/mm',
      book('Example 8-4, page 442, fit of Wileman'),
    );
    return k;
  });
  const kc = inARow(each);
  work('kc', 'stiffness of what is clamped', `1/(${rowSum(each.length)})`, kc, 'kN/mm', computed);
  return kc;
}

type Found = { readonly [K in keyof JointOutput as K extends Plain ? never : K]: number | null };
type Plain = 'working' | 'cautions' | 'notWorkedOut';

const both = (one: number | null, other: number | null, of: (a: number, b: number) => number) =>
  one === null || other === null ? null : of(one, other);

/** A ratio; null where there is nothing to divide by. */
const over = (top: number, bottom: number): number | null =>
  bottom > 0 && Number.isFinite(top / bottom) ? top / bottom : null;

function figuresOf(input: JointInput, kb: number | null, kc: number | null): Found {
  const preload = input.preload?.value ?? null;
  const load = input.load?.value ?? null;
  const proof = input.proofLoad?.value ?? null;
  const sinkMm = input.embedding === undefined ? null : input.embedding.value / 1_000;
  const share = both(kb, kc, (b, c) => b / (b + c));
  const loss = both(
    sinkMm,
    both(kb, kc, (b, c) => (b * c) / (b + c)),
    (f, k) => f * k,
  );
  const onBolt = both(share, load, (c, p) => c * p);
  const onClamp = both(share, load, (c, p) => (1 - c) * p);
  // Where embedding is stated but cannot be worked out, what rests on it stays open too.
  const kept = sinkMm === null ? preload : both(preload, loss, (f, z) => f - z);
  const boltLoad = both(preload, onBolt, (f, p) => f + p);
  const spare = both(proof, preload, (s, f) => s - f);
  return {
    boltStiffness: kb,
    clampedStiffness: kc,
    loadShare: share,
    boltLoad,
    residualClamp: both(kept, onClamp, (f, p) => f - p),
    embeddingLoss: loss,
    proofFactor: proof === null || boltLoad === null ? null : over(proof, boltLoad),
    loadFactor: spare === null || onBolt === null ? null : over(spare, onBolt),
    separationFactor: kept === null || onClamp === null ? null : over(kept, onClamp),
  };
}

type Line = readonly [
  name: keyof Found,
  symbol: string,
  text: string,
  sum: string,
  unit: string,
  source: Source,
];

/** Sums of what the load does, with what embedding takes where it is stated. */
function lines(kept: string): readonly Line[] {
  const loads = book('Example 8-3, page 439');
  const factors = book('Example 8-4, page 443');
  const loss = 'fZ/1000*kb*kc/(kb+kc)';
  return [
    ['embeddingLoss', 'FZ', 'preload lost by embedding', loss, 'kN', vdi],
    ['boltLoad', 'Fb', 'load in the bolt, before any embedding', 'Fi+C*F', 'kN', loads],
    ['residualClamp', 'Fc', 'clamp that remains', `${kept}-(1-C)*F`, 'kN', computed],
    ['proofFactor', 'np', 'proof load over load in the bolt', 'Fp/(Fi+C*F)', '1', factors],
    ['loadFactor', 'nL', 'times the load until proof', '(Fp-Fi)/(C*F)', '1', factors],
    ['separationFactor', 'n0', 'times the load until it opens', `${kept}/((1-C)*F)`, '1', factors],
  ];
}

function loadRows({ take, work }: Sheet, input: JointInput, found: Found) {
  const share = found.loadShare;
  const shared = book('Example 8-3, page 439');
  if (share !== null) work('C', 'share of the load on the bolt', 'kb/(kb+kc)', share, '1', shared);
  const { preload, load, proofLoad, embedding } = input;
  if (preload !== undefined) take('Fi', 'preload', preload.value, 'kN', entered);
  if (load !== undefined) take('F', 'load on the bolt', load.value, 'kN', entered);
  if (proofLoad !== undefined) take('Fp', 'proof load', proofLoad.value, 'kN', entered);
  if (embedding !== undefined) take('fZ', 'embedding', embedding.value, 'um', entered);
  for (const [name, ...row] of lines(embedding === undefined ? 'Fi' : '(Fi-FZ)')) {
    const value = found[name];
    const [symbol, text, sum, unit, source] = row;
    if (value !== null) work(symbol, text, sum, value, unit, source);
  }
}

function cautionsOf(input: JointInput, found: Found): string[] {
  const said: string[] = [];
  const { residualClamp, boltLoad, proofFactor, embeddingLoss } = found;
  const load = input.load?.value ?? 0;
  if (residualClamp !== null && residualClamp < 0) {
    said.push(
      'The joint opens: the formulas hold only while something is clamped. ' +
        `Once open the bolt carries the whole load of ${load} kN.`,
    );
  }
  if (
    embeddingLoss !== null &&
    embeddingLoss >= (input.preload?.value ?? Number.POSITIVE_INFINITY)
  ) {
    said.push('Embedding takes all of the preload.');
  }
  if (boltLoad !== null && proofFactor !== null && proofFactor < 1) {
    said.push('The load in the bolt is above its proof load.');
  }
  if (input.embedding === undefined && residualClamp !== null) {
    said.push('Loss of preload by embedding is not counted: give embedding.');
  }
  const whole = (input.clamped ?? []).reduce((sum, { thickness }) => sum + thickness.value, 0);
  const slender = input.diameter === undefined || whole === 0 ? null : input.diameter.value / whole;
  if (input.method === 'wileman' && slender !== null && (slender < 0.1 || slender > 2)) {
    said.push(
      "Wileman's fit is for a diameter of 0.1 to 2 times the thickness; this is outside it.",
    );
  }
  if (found.clampedStiffness !== null && input.clampedStiffness === undefined) {
    said.push('The parts are taken as wide as the cones; no gasket may lie between them.');
  }
  return said;
}

function needsOf(input: JointInput): Readonly<Record<string, readonly string[]>> {
  const lacks = (...fields: readonly (keyof JointInput)[]) =>
    fields.filter((field) => input[field] === undefined);
  const kb = input.boltStiffness === undefined ? lacks('bolt', 'modulus') : [];
  const kc = input.clampedStiffness === undefined ? lacks('clamped', 'diameter') : [];
  const share = [...kb, ...kc];
  const some = (fields: readonly string[]) =>
    fields.length > 0 ? fields : ['a load above nought, and a share of it'];
  const proof = [...lacks('proofLoad', 'preload', 'load'), ...share];
  return {
    boltStiffness: kb,
    clampedStiffness: kc,
    loadShare: share,
    boltLoad: [...lacks('preload', 'load'), ...share],
    residualClamp: [...lacks('preload', 'load'), ...share],
    embeddingLoss: [...lacks('embedding'), ...share],
    proofFactor: some(proof),
    loadFactor: some(proof),
    separationFactor: some([...lacks('preload', 'load'), ...share]),
  };
}

export function joint(input: JointInput): JointAnswer {
  const sheet = newSheet();
  const kb = boltOf(sheet, input);
  const kc = clampedOf(sheet, input);
  const found = figuresOf(input, kb, kc);
  if (Object.values(found).every((value) => value === null)) {
    const expected = 'bolt with modulus, clamped with diameter, or their stiffness';
    const why = 'nothing can be worked out from this';
    return { ok: false, problems: [{ path: '', got: null, expected, why }] };
  }
  loadRows(sheet, input, found);
  const out = (value: number | null, unit: string, from?: Quantity) =>
    value === null ? null : echoed(value, unit, from);
  const result = {
    boltStiffness: out(found.boltStiffness, 'kN/mm', input.boltStiffness),
    clampedStiffness: out(found.clampedStiffness, 'kN/mm', input.clampedStiffness),
    loadShare: out(found.loadShare, '1'),
    boltLoad: out(found.boltLoad, 'kN'),
    residualClamp: out(found.residualClamp, 'kN'),
    embeddingLoss: out(found.embeddingLoss, 'kN'),
    proofFactor: out(found.proofFactor, '1'),
    loadFactor: out(found.loadFactor, '1'),
    separationFactor: out(found.separationFactor, '1'),
  };
  const cautions = cautionsOf(input, found);
  const notWorkedOut = missing(result, needsOf(input));
  return {
    ok: true,
    result: { ...result, working: [...sheet.rows], cautions, notWorkedOut } as JointOutput,
  };
}
