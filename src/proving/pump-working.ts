// The arithmetic of each reading of a pump: heads, affinity, the curve at its flow, slip, NPSH.

import { evaluate } from '../quantity/expression.ts';
import { entered, newSheet } from '../quantity/sheet.ts';
import type { Source, WorkingRow } from '../quantity/types.ts';
import { pieceAt } from './curve.ts';
import type { Figures, Reference } from './pump-figures.ts';
import type { Judged } from './pump-judge.ts';

const affinity: Source = {
  kind: 'published',
  title: 'DOE-HDBK-1012/3-92, Fluid Flow',
  edition: '1992',
  place: 'page 50, equations 3-23 to 3-25',
};
const heads: Source = {
  kind: 'published',
  title: 'Munson, Young, Okiishi, Fundamentals of Fluid Mechanics',
  edition: '6th',
  place: 'chapter 12, actual head rise and net positive suction head (from memory)',
};
const slips: Source = {
  kind: 'published',
  title: 'Subramanya, 1000 Solved Problems in Fluid Mechanics',
  edition: '2005',
  place: 'Example 16.38',
};
const jcgm: Source = {
  kind: 'published',
  title: 'JCGM 106, Measurement uncertainty in conformity assessment',
  edition: '2012',
  place: 'clauses 7.2 to 7.4',
};
const computed: Source = { kind: 'computed', by: 'pump-test' };

type Row = (symbol: string, text: string, sum: string, unit: string, from: Source) => void;
type Take = (symbol: string, text: string, value: number, unit: string, from?: Source) => void;

const TAKES = [
  ['speed', 'n', 'speed', '1/min'],
  ['suction', 'p1', 'suction pressure, gauge', 'kPa'],
  ['discharge', 'p2', 'discharge pressure, gauge', 'kPa'],
  ['power', 'P', 'power', 'kW'],
  ['suctionBore', 'd1', 'bore of the suction', 'mm'],
  ['dischargeBore', 'd2', 'bore of the discharge', 'mm'],
  ['suctionHeight', 'z1', "suction gauge above the pump's datum", 'm'],
  ['dischargeHeight', 'z2', "discharge gauge above the pump's datum", 'm'],
  ['atmospheric', 'pa', 'atmospheric pressure', 'kPa'],
  ['density', 'rho', 'density', 'kg/m3'],
  ['vapour', 'pv', 'vapour pressure', 'kPa'],
  ['curveSpeed', 'n0', 'speed of the curve', '1/min'],
  ['displacement', 'D', 'displacement, litres a turn', 'L'],
] as const;

/** Rows of one reading; the same signs stand for the next reading's figures. */
export function readingRows(figures: Figures, reference: Reference, index: number): WorkingRow[] {
  const sheet = newSheet();
  const symbols = new Map<string, number>();
  const name = `reading ${index + 1}`;
  const take: Take = (symbol, text, value, unit, from = entered) => {
    if (!Number.isFinite(value)) return;
    symbols.set(symbol, value);
    sheet.take(symbol, `${name}: ${text}`, value, unit, from);
  };
  const work: Row = (symbol, text, sum, unit, from) => {
    const used = sum.match(/[A-Za-z]\w*/g) ?? [];
    if (!used.every((one) => one === 'pi' || symbols.has(one))) return;
    const value = evaluate(sum, symbols);
    if (!Number.isFinite(value)) return;
    symbols.set(symbol, value);
    sheet.work(symbol, `${name}: ${text}`, sum, value, unit, from);
  };
  take('g', 'standard gravity', 9.80665, 'm/s2', computed);
  for (const [field, symbol, text, unit] of TAKES) take(symbol, text, figures[field], unit);
  take('Q', 'flow', figures.flow, 'm3/h');
  take('V', 'volume', figures.volume, 'L');
  take('tV', 'time', figures.time, 's');
  if (!symbols.has('Q')) work('Q', 'flow', '3.6*V/tV', 'm3/h', computed);
  headRows(work, take, symbols, figures);
  const ratio = '(n0/n)';
  work('H0', 'head at the speed of the curve', `H*${ratio}^2`, 'm', affinity);
  work('Q0', 'flow there', `Q*${ratio}`, 'm3/h', affinity);
  work('P0', 'power there', `P*${ratio}^3`, 'kW', affinity);
  work('Qt', 'flow that is displaced', '0.06*D*n', 'm3/h', slips);
  work('S', 'slip', '(Qt-Q)/Qt', '1', slips);
  referenceRows(work, take, symbols, figures, reference);
  return [...sheet.rows];
}

function headRows(work: Row, take: Take, symbols: Map<string, number>, figures: Figures): void {
  work('v1', 'velocity in the suction', 'Q/3600/(pi/4*(d1/1000)^2)', 'm/s', computed);
  work('v2', 'velocity in the discharge', 'Q/3600/(pi/4*(d2/1000)^2)', 'm/s', computed);
  take('H', 'head as given', figures.givenHead, 'm');
  const bores = symbols.has('v1') && symbols.has('v2');
  const velocity = bores ? '+(v2^2-v1^2)/(2*g)' : '';
  if (!symbols.has('H')) {
    work('H', 'head', `1000*(p2-p1)/(rho*g)+z2-z1${velocity}`, 'm', heads);
  }
  const inlet = symbols.has('v1') ? '+v1^2/(2*g)' : '';
  work('NPSH', 'net positive suction head', `1000*(p1+pa-pv)/(rho*g)+z1${inlet}`, 'm', heads);
}

function referenceRows(
  work: Row,
  take: Take,
  symbols: Map<string, number>,
  figures: Figures,
  reference: Reference,
): void {
  const flow = symbols.get('Q0');
  if (reference.kind === 'rotodynamic' && flow !== undefined) {
    const piece = pieceAt(reference.points, flow);
    if (piece === null) return;
    take('Qa', 'flow of the reference point before', piece.from.x, 'm3/h');
    take('Qb', 'flow of the one after', piece.to.x, 'm3/h');
    take('Ha', 'head of the one before', piece.from.y, 'm');
    take('Hb', 'head of the one after', piece.to.y, 'm');
    const along = 'slope of the curve times the step, from its neighbours';
    take('ma', `${along}, before`, piece.rise[0], 'm', computed);
    take('mb', `${along}, after`, piece.rise[1], 'm', computed);
    work('x', 'place between the two', '(Q0-Qa)/(Qb-Qa)', '1', computed);
    const cubic = 'Ha+x*(ma+x*(3*(Hb-Ha)-2*ma-mb+x*(2*(Ha-Hb)+ma+mb)))';
    work('Hr', 'head of the curve at that flow', cubic, 'm', computed);
    work('dev', 'deviation', '(H0-Hr)/Hr', '1', computed);
  } else if (reference.kind === 'displacement' && reference.slip !== null) {
    const { speed, suction, discharge } = figures;
    const slip = reference.slip.at(speed, discharge - suction);
    take('Qs', 'flow that slips back by the reference points', slip, 'm3/h', computed);
    work('Qr', 'flow by the reference', 'Qt-Qs', 'm3/h', computed);
    work('dev', 'deviation', '(Q-Qr)/Qr', '1', computed);
  }
}

/** Rows of each requirement weighed. */
export function judgedRows(judged: readonly Judged[]): WorkingRow[] {
  const sheet = newSheet();
  for (const { reading, requirement, chance, linear } of judged) {
    const { lower, upper, of, source } = requirement;
    const text = `reading ${reading + 1}, ${of}`;
    sheet.take('y', text, linear.value, '1', computed);
    if (lower !== null) sheet.take('L', `${text}: at least`, lower, '1', source);
    if (upper !== null) sheet.take('U', `${text}: at most`, upper, '1', source);
    if (chance === null) continue;
    sheet.take('u', `${text}: its standard uncertainty`, linear.u, '1', computed);
    const sum =
      lower === null
        ? 'Φ((U-y)/u)'
        : upper === null
          ? 'Φ((y-L)/u)'
          : 'max(0,1-Φ((L-y)/u)-Φ((y-U)/u))';
    sheet.work('pc', `${text}: chance that it conforms`, sum, chance, '1', jcgm);
  }
  return [...sheet.rows];
}
