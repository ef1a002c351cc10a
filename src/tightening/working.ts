// The rows of `tightening` that show each figure with its sum, enough to redo it with pencil.

import type { Source } from '../quantity/types.ts';
import type { TighteningInput } from './model.ts';
import { entered, type Sheet } from './sheet.ts';
import type { Strength } from './strength.ts';
import { PITCH_DIAMETER, ROOT, type Thread } from './thread.ts';
import type { Bolt, Issued, Loads, Tightness } from './tightening.ts';
import { torquePerForceExactMm } from './torque.ts';

const computed: Source = { kind: 'computed', by: 'tightening' };

/** The formula; its published tables of fine and stainless bolts are reproduced by it. */
export const vdi: Source = {
  kind: 'from memory',
  of: 'VDI 2230 Part 1, editions 2003 and later (1986 gives about 10 % less), 5.4.3 and Table A1',
};
const iso16047: Source = { kind: 'from memory', of: 'ISO 16047:2005, clause 7, exact form' };

export function threadRows({ take, work }: Sheet, thread: Thread) {
  const { pitchMm, source, sizeSource } = thread;
  take('d', 'diameter of the thread', thread.diameterMm, 'mm', sizeSource);
  if (pitchMm !== null) {
    take('P', 'pitch', pitchMm, 'mm', sizeSource);
    const { pitchDiameterMm: d2, rootDiameterMm: d3, minorDiameterMm: d1 } = thread;
    work('d2', 'pitch diameter', `d-${PITCH_DIAMETER}*P`, d2 ?? 0, 'mm', source);
    work('d3', 'root diameter', `d-${ROOT[thread.form]}*P`, d3 ?? 0, 'mm', source);
    work('D1', 'minor diameter of the nut', 'd-1.082532*P', d1 ?? 0, 'mm', source);
  }
  const area = thread.stressAreaMm2;
  if (area === null) return;
  const worked =
    pitchMm === null ? null : (Math.PI / 4) * ((thread.diameterMm * 2 - sum(thread)) / 2) ** 2;
  if (worked !== null && Math.abs(worked / area - 1) < 1e-12) {
    work('As', 'stress area', 'pi/4*((d2+d3)/2)^2', area, 'mm2', source);
  } else take('As', 'stress area', area, 'mm2', entered);
}

const sum = ({ form, pitchMm }: Thread): number => (PITCH_DIAMETER + ROOT[form]) * (pitchMm ?? 0);

export function loadRows(
  { take, work }: Sheet,
  thread: Thread,
  strength: Strength | null,
  { proofKN, breakingKN }: Loads,
) {
  if (strength === null) return;
  const { proofMPa, yieldMPa, tensileMPa, source } = strength;
  if (yieldMPa !== null) take('Rp', 'yield point', yieldMPa, 'N/mm2', source);
  if (strength.proofIsYield && proofMPa !== null) {
    work('Sp', 'proof strength: the 0.2 % limit', 'Rp', proofMPa, 'N/mm2', source);
  } else if (proofMPa !== null) take('Sp', 'proof strength', proofMPa, 'N/mm2', source);
  if (tensileMPa !== null) take('Rm', 'tensile strength', tensileMPa, 'N/mm2', source);
  if (thread.stressAreaMm2 === null) return;
  if (proofKN !== null) work('FP', 'proof load', 'As*Sp/1000', proofKN, 'kN', computed);
  if (breakingKN !== null) work('FB', 'breaking load', 'As*Rm/1000', breakingKN, 'kN', computed);
}

export function bandRows({ take, work }: Sheet, input: TighteningInput, bolt: Bolt) {
  const { bearing, band, thread } = bolt;
  if (bearing.outerMm !== null && bearing.holeMm !== null && bearing.meanMm !== null) {
    take('dw', 'outer diameter of the bearing face', bearing.outerMm, 'mm', bearing.outerSource);
    take('dh', 'hole', bearing.holeMm, 'mm', bearing.holeSource);
    work('DKm', 'middle of the bearing face', '(dw+dh)/2', bearing.meanMm, 'mm', computed);
  }
  if (band.range !== null) {
    const { low, high, source } = band.range;
    take('μ_min', 'lowest friction', low, '1', source);
    take('μ_max', 'highest friction', high, '1', source);
    work(
      'μG',
      'friction in the thread, middle',
      '(μ_min+μ_max)/2',
      (low + high) / 2,
      '1',
      computed,
    );
    work('μK', 'friction under the head, middle', 'μG', (low + high) / 2, '1', computed);
  } else if (band.kind === 'given') {
    const { thread: inThread, head } = band.nominal;
    if (inThread !== null) take('μG', 'friction in the thread', inThread, '1', entered);
    if (head !== null) take('μK', 'friction under the head', head, '1', entered);
  } else if (band.kind === 'nut factor' && input.nutFactor !== undefined) {
    take('K', 'nut factor', input.nutFactor.value, '1', entered);
    const both = band.nominal.thread;
    if (both === null || thread.pitchMm === null) return;
    const sumOf = 'max(0,(K*d-0.16*P)/(0.58*d2+DKm/2))';
    work('μG', 'friction, the same in thread and under the head', sumOf, both, '1', vdi);
  }
}

const TORSION = 'sqrt(1+3*(1.5*d2/d0*(P/(pi*d2)+1.155*μG))^2)';
const torsionAt = (end: string) => TORSION.replace('μG', end);

function torsionRows({ work }: Sheet, { thread, band }: Bolt) {
  if (band.nominal.torsion === null || thread.stressAreaMm2 === null) return;
  const d0 = Math.sqrt((4 * thread.stressAreaMm2) / Math.PI);
  work('d0', 'diameter of the stress area', 'sqrt(4*As/pi)', d0, 'mm', computed);
  work('φ', 'stress with torsion over stress without', TORSION, band.nominal.torsion, '1', vdi);
}

const usual: Source = { kind: 'from memory', of: 'VDI 2230 Part 1, 90 % of yield is used' };

function preloadRow({ take, work }: Sheet, input: TighteningInput, tight: Tightness) {
  const { how, share, preloadKN } = tight;
  if (preloadKN === null) return;
  if (how === 'preload') take('FM', 'preload', preloadKN, 'kN', entered);
  else if (share !== null) {
    const [text, sumOf, source] =
      how === 'proofShare'
        ? (['share of the proof load', 'ν*FP', computed] as const)
        : (['share of yield that is used', 'As*ν*Rp/φ/1000', vdi] as const);
    const stated = input.utilisation !== undefined || how === 'proofShare';
    take('ν', text, share, '1', stated ? entered : usual);
    work('FM', 'preload', sumOf, preloadKN, 'kN', source);
  }
}

export function tightRows(sheet: Sheet, input: TighteningInput, bolt: Bolt, tight: Tightness) {
  const { work, take } = sheet;
  torsionRows(sheet, bolt);
  preloadRow(sheet, input, tight);
  const { preloadKN, preloadMinKN, torqueNm, nutFactor } = tight;
  if (preloadMinKN !== null && input.scatterFactor !== undefined) {
    take('αA', 'greatest preload over least', input.scatterFactor.value, '1', entered);
    work('FM_min', 'least preload', 'FM/αA', preloadMinKN, 'kN', vdi);
  }
  if (torqueNm !== null) torqueRows(sheet, bolt, tight);
  if (tight.implied && nutFactor !== null && preloadKN !== null) {
    take('T', issuedText(input), input.issuedTorque?.value ?? 0, 'N.m', entered);
    work('K_T', 'nut factor that torque and preload imply', 'T/(FM*d)', nutFactor, '1', computed);
  } else if (bolt.band.kind !== 'nut factor' && nutFactor !== null) {
    const sumOf = '(0.16*P+0.58*d2*μG+DKm/2*μK)/d';
    work('K', 'nut factor', sumOf, nutFactor, '1', computed);
  }
}

function torqueRows({ work }: Sheet, { band }: Bolt, { preloadKN, torqueNm }: Tightness) {
  if (torqueNm === null || preloadKN === null) return;
  if (band.kind === 'nut factor') {
    work('MA', 'torque', 'FM*K*d', torqueNm, 'N.m', computed);
    return;
  }
  work('MA', 'torque, short form', 'FM*(0.16*P+0.58*d2*μG+DKm/2*μK)', torqueNm, 'N.m', vdi);
  const { low, high, nominal, parts, range } = band;
  if (parts === null || nominal.thread === null || nominal.head === null) return;
  const exact = torquePerForceExactMm(parts, nominal.thread, nominal.head) * preloadKN;
  const sumOf = 'FM*(0.5*(P+1.154*pi*μG*d2)/(pi-1.154*μG*P/d2)+μK*DKm/2)';
  work('MA_exact', 'torque, exact form of ISO 16047', sumOf, exact, 'N.m', iso16047);
  if (range === null || low.perForceMm === null || high.perForceMm === null) return;
  const at = (end: string) => `FM*(0.16*P+0.58*d2*${end}+DKm/2*${end})`;
  const [least, most] = [low.perForceMm * preloadKN, high.perForceMm * preloadKN];
  work('MA_min', 'torque at the lowest friction', at('μ_min'), least, 'N.m', vdi);
  work('MA_max', 'torque at the highest friction', at('μ_max'), most, 'N.m', vdi);
}

/** What was issued is shown as it was issued. */
const issuedText = ({ issuedTorque }: TighteningInput): string =>
  issuedTorque?.given === undefined ? 'issued torque' : `issued torque, ${issuedTorque.given}`;

export function issuedRows(
  { take, work, rows }: Sheet,
  input: TighteningInput,
  bolt: Bolt,
  issued: Issued,
) {
  const { band, thread } = bolt;
  if (!rows.some(({ symbol }) => symbol === 'T')) {
    take('T', issuedText(input), issued.torqueNm, 'N.m', entered);
  }
  take('s', 'scatter of the torque, either way', issued.scatter, '1', entered);
  const perForce = (end: string) => {
    if (band.kind === 'nut factor') return 'K*d';
    const [inThread, head] = band.range === null ? ['μG', 'μK'] : [end, end];
    return `0.16*P+0.58*d2*${inThread}+DKm/2*${head}`;
  };
  const least = `T*(1-s)/(${perForce('μ_max')})`;
  const most = `T*(1+s)/(${perForce('μ_min')})`;
  work('F_min', 'least preload of the issued torque', least, issued.minKN, 'kN', vdi);
  work('F_max', 'greatest preload of the issued torque', most, issued.maxKN, 'kN', vdi);
  if (issued.yieldShareMin === null || issued.yieldShareMax === null) return;
  if (thread.stressAreaMm2 === null) return;
  const [low, high] = band.range === null ? ['μG', 'μG'] : ['μ_min', 'μ_max'];
  const share = (force: string, end: string) => `${force}*1000*${torsionAt(end)}/(As*Rp)`;
  const shares = [issued.yieldShareMin, issued.yieldShareMax] as const;
  work('ν_min', 'least share of yield', share('F_min', high), shares[0], '1', vdi);
  work('ν_max', 'greatest share of yield', share('F_max', low), shares[1], '1', vdi);
}
