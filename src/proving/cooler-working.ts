// The arithmetic of a cooler: balances, mean difference, effectiveness, transfer, each by its sum.

import { evaluate } from '../quantity/expression.ts';
import { entered, newSheet } from '../quantity/sheet.ts';
import type { Source, WorkingRow } from '../quantity/types.ts';
import type { Solved, Surface } from './cooler.ts';

const computed: Source = { kind: 'computed', by: 'cooler' };
const book: Source = {
  kind: 'published',
  title: 'Cengel, Heat and Mass Transfer: A Practical Approach',
  edition: '2nd',
  place: 'chapter 13 of heat exchangers, relations as tabulated (from memory)',
};

export function coolerRows(found: Solved, surface: Surface): readonly WorkingRow[] {
  const sheet = newSheet();
  const symbols = new Map<string, number>();
  const take = (
    symbol: string,
    text: string,
    value: number | null,
    unit: string,
    given: boolean,
  ) => {
    if (value === null || !Number.isFinite(value)) return;
    symbols.set(symbol, value);
    const text_ = given ? text : `${text}, solved so that the rows below come out`;
    sheet.take(symbol, text_, value, unit, given ? entered : computed);
  };
  const work = (symbol: string, text: string, sum: string, unit: string, from: Source = book) => {
    const names = sum.match(/[A-Za-z]\w*/g) ?? [];
    const known = ['exp', 'ln', 'sqrt', 'min', 'max', 'abs'];
    if (!names.every((name) => symbols.has(name) || known.includes(name))) return;
    const value = evaluate(sum, symbols);
    if (!Number.isFinite(value)) return;
    symbols.set(symbol, value);
    sheet.work(symbol, text, sum, value, unit, from);
  };
  const { known, hot, cold } = found;
  take('th1', 'hot side in', known.hotIn, 'Cel', hot.inC !== null);
  take('th2', 'hot side out', known.hotOut, 'Cel', hot.outC !== null);
  take('tc1', 'cold side in', known.coldIn, 'Cel', cold.inC !== null);
  take('tc2', 'cold side out', known.coldOut, 'Cel', cold.outC !== null);
  take('mh', 'hot flow', found.hotKgS, 'kg/s', hot.flow?.unit === 'kg/s');
  take('mc', 'cold flow', found.coldKgS, 'kg/s', cold.flow?.unit === 'kg/s');
  for (const [name, side, cp] of [
    ['h', hot, found.hotCp],
    ['c', cold, found.coldCp],
  ] as const) {
    const what = name === 'h' ? 'hot' : 'cold';
    if (side.heat?.kind === 'latent') {
      take(`L${name}`, `latent heat, ${what} side`, side.heat.JKg, 'J/kg', true);
      work(`Q${name}`, `heat of the ${what} side`, `m${name}*L${name}`, 'W');
    } else {
      take(
        `cp${name}`,
        `heat capacity, ${what} side`,
        cp,
        'J/(kg.K)',
        side.heat?.kind === 'capacity',
      );
      work(`C${name}`, `capacity flow, ${what} side`, `m${name}*cp${name}`, 'W/K');
      const rise = name === 'h' ? 'th1-th2' : 'tc2-tc1';
      work(`Q${name}`, `heat of the ${what} side`, `C${name}*(${rise})`, 'W');
    }
  }
  take('Q', 'duty', known.dutyW, 'W', false);
  take('U', 'transfer coefficient', surface.uWM2K, 'W/(m2.K)', false);
  take('A', 'area', surface.areaM2, 'm2', false);
  work('UA', 'transfer', 'U*A', 'W/K');
  if (!symbols.has('UA')) take('UA', 'transfer', known.uaWK, 'W/K', false);
  if (surface.cleanUWM2K !== null) {
    take('Uc', 'transfer coefficient when clean', surface.cleanUWM2K, 'W/(m2.K)', true);
    work('Rf', 'fouling', '1/U-1/Uc', 'm2.K/W');
  }
  shareRows(found, take, work, symbols);
  return sheet.rows;
}

type Take = (
  symbol: string,
  text: string,
  value: number | null,
  unit: string,
  given: boolean,
) => void;
type Work = (symbol: string, text: string, sum: string, unit: string, from?: Source) => void;

function shareRows(found: Solved, take: Take, work: Work, symbols: Map<string, number>): void {
  const { known, arrangement, ratio } = found;
  if (symbols.has('Ch') && symbols.has('Cc')) {
    work('Cmin', 'lesser capacity flow', 'min(Ch,Cc)', 'W/K');
    work('c', 'ratio of the capacity flows', 'Cmin/max(Ch,Cc)', '1');
  } else if (
    known.hotWK === Number.POSITIVE_INFINITY ||
    known.coldWK === Number.POSITIVE_INFINITY
  ) {
    const sum = symbols.has('Ch') ? 'Ch' : 'Cc';
    work('Cmin', 'capacity flow of the side that warms or cools', sum, 'W/K');
    take('c', 'ratio of the capacity flows: one side stays', 0, '1', false);
  } else if (ratio !== null) {
    work('c', 'ratio of the capacity flows', 'min(th1-th2,tc2-tc1)/max(th1-th2,tc2-tc1)', '1');
  }
  work('e', 'effectiveness', 'Q/(Cmin*(th1-tc1))', '1');
  if (!symbols.has('e')) work('e', 'effectiveness', 'max(th1-th2,tc2-tc1)/(th1-tc1)', '1');
  work('N', 'transfer units', 'UA/Cmin', '1');
  if (!symbols.has('N')) take('N', 'transfer units', found.ntu, '1', false);
  const formula = formulaOf(found);
  if (formula !== null) work('eN', 'effectiveness by the transfer units', formula, '1');
  if (arrangement !== null) {
    const [a, b] =
      arrangement.kind === 'parallel' ? ['th1-tc1', 'th2-tc2'] : ['th1-tc2', 'th2-tc1'];
    work('d1', 'difference at one end', a, 'K');
    work('d2', 'difference at the other', b, 'K');
    const [first, second] = [symbols.get('d1') ?? 0, symbols.get('d2') ?? 0];
    const alike = Math.abs(first / second - 1) < 1e-6;
    const sum = alike ? '(d1+d2)/2' : '(d1-d2)/ln(d1/d2)';
    if (first > 0 && second > 0) work('dm', 'mean difference, uncorrected', sum, 'K');
    work('F', 'correction', 'max(th1-th2,tc2-tc1)/(N*dm)', '1');
    work('Qm', 'duty by the mean difference', 'UA*F*dm', 'W');
  }
}

function formulaOf({ arrangement, ratio, known }: Solved): string | null {
  if (arrangement === null || ratio === null) return null;
  if (ratio === 0) return '1-exp(-N)';
  const countercurrent =
    Math.abs(1 - ratio) < 1e-9 ? 'N/(1+N)' : '(1-exp(-N*(1-c)))/(1-c*exp(-N*(1-c)))';
  switch (arrangement.kind) {
    case 'counterflow':
      return countercurrent;
    case 'parallel':
      return '(1-exp(-N*(1+c)))/(1+c)';
    case 'shell-and-tube': {
      if (arrangement.tubePasses === 1) return countercurrent;
      if (arrangement.shells > 1) return null;
      const root = 'sqrt(1+c^2)';
      return `2/(1+c+${root}*(1+exp(-N*${root}))/(1-exp(-N*${root})))`;
    }
    case 'crossflow': {
      if (arrangement.hotMixed === arrangement.coldMixed) return null;
      if (known.hotWK === null || known.coldWK === null) return null;
      const hotLeast = known.hotWK <= known.coldWK;
      const leastIsMixed = arrangement.hotMixed === hotLeast;
      return leastIsMixed ? '1-exp(-(1-exp(-N*c))/c)' : '(1-exp(-c*(1-exp(-N))))/c';
    }
    case 'plate':
      return arrangement.hotPasses === arrangement.coldPasses ? countercurrent : null;
  }
}
