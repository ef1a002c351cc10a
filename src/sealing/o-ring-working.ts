// The working of a ring in its groove, row by row, for a pencil.

import { entered, newSheet, type Sheet } from '../quantity/sheet.ts';
import type { Source, WorkingRow } from '../quantity/types.ts';
import {
  type Band,
  byMeanDiameter,
  type Groove,
  type InGroove,
  middle,
  type Span,
} from './groove.ts';
import type { Extrusion } from './judge.ts';
import type { Ring } from './rings.ts';
import { extrusionSource } from './tables/groove-limits.ts';

const formula: Source = {
  kind: 'published',
  title: 'Seal design texts: squeeze, stretch, fill, constant volume of rubber',
  edition: 'public pages, as read',
  place: 'formulas',
};

export function workingOf(
  ring: Ring,
  groove: Groove,
  fit: InGroove,
  extrusion: Extrusion,
): readonly WorkingRow[] {
  const sheet = newSheet();
  sheet.take('d_i', 'inside diameter of the ring', ring.innerMm, 'mm', ring.source);
  sheet.take('w', 'section of the ring', ring.sectionMm, 'mm', ring.source);
  const tolerance = (symbol: string, text: string, value: number | null) => {
    if (value !== null) sheet.take(symbol, text, value, 'mm', ring.toleranceSource);
  };
  tolerance('t_d', 'its tolerance, either way', ring.innerToleranceMm);
  tolerance('t_w', 'tolerance of the section', ring.sectionToleranceMm);
  stretchRows(sheet, ring, groove, fit);
  if (groove.depthMm !== null) depthRows(sheet, groove.depthMm, fit);
  if (fit.fill !== null && groove.widthMm !== null) fillRows(sheet, groove.widthMm, fit.fill);
  if (extrusion.allowedMm !== null) {
    sheet.take('g', 'radial gap allowed', extrusion.allowedMm, 'mm', extrusionSource);
  }
  return sheet.rows;
}

function ends(sheet: Sheet, symbol: string, text: string, span: Span): void {
  sheet.take(`${symbol}_a`, `${text}, least`, span.min, 'mm', entered);
  sheet.take(`${symbol}_b`, `${text}, greatest`, span.max, 'mm', entered);
  sheet.work(symbol, text, `(${symbol}_a + ${symbol}_b)/2`, middle(span), 'mm', entered);
}

type End = readonly [expression: string, value: number | null];

function bandRows(sheet: Sheet, symbol: string, text: string, unit: string, of: readonly End[]) {
  const names = [symbol, `${symbol}_min`, `${symbol}_max`];
  const says = [text, `least ${text}`, `greatest ${text}`];
  of.forEach(([expression, value], index) => {
    if (value === null) return;
    sheet.work(names[index] ?? '', says[index] ?? '', expression, value, unit, formula);
  });
}

function stretchRows(sheet: Sheet, ring: Ring, groove: Groove, fit: InGroove): void {
  const { stretch, section } = fit;
  const over = groove.innerMm;
  if (stretch === null || over === null) {
    bandRows(sheet, 'w_s', 'section, as made', 'mm', [
      ['w', section.nominal],
      ['w - t_w', section.min],
      ['w + t_w', section.max],
    ]);
    return;
  }
  ends(sheet, 'D', "diameter the ring's inside goes over", over);
  bandRows(sheet, 's', 'stretch', '1', [
    ['(D - d_i)/d_i', stretch.nominal],
    ['(D_a - (d_i + t_d))/(d_i + t_d)', stretch.min],
    ['(D_b - (d_i - t_d))/(d_i - t_d)', stretch.max],
  ]);
  bandRows(sheet, 'w_s', 'section after stretch', 'mm', [
    ['w/sqrt(1 + max(0, s))', section.nominal],
    ['(w - t_w)/sqrt(1 + max(0, s_max))', section.min],
    ['(w + t_w)/sqrt(1 + max(0, s_min))', section.max],
  ]);
  const mean = byMeanDiameter(ring.sectionMm, ring.innerMm, middle(over));
  const expression = 'w/sqrt(max(1, (D + w)/(d_i + w)))';
  const text = 'section after stretch by the mean diameters, to compare';
  sheet.work('w_m', text, expression, mean, 'mm', formula);
}

function depthRows(sheet: Sheet, depth: Span, { compressionMm, squeeze }: InGroove): void {
  ends(sheet, 'h', 'depth of the groove', depth);
  const of = (band: Band | null, text: (w: string, h: string) => string): readonly End[] => [
    [text('w_s', 'h'), band?.nominal ?? null],
    [text('w_s_min', 'h_b'), band?.min ?? null],
    [text('w_s_max', 'h_a'), band?.max ?? null],
  ];
  const pressed = of(compressionMm, (w, h) => `${w} - ${h}`);
  bandRows(sheet, 'c', 'compression', 'mm', pressed);
  bandRows(
    sheet,
    'q',
    'squeeze',
    '1',
    of(squeeze, (w, h) => `(${w} - ${h})/${w}`),
  );
}

function fillRows(sheet: Sheet, width: Span, fill: Band): void {
  ends(sheet, 'b', 'width of the groove', width);
  bandRows(sheet, 'v', 'fill', '1', [
    ['pi/4*w_s^2/(h*b)', fill.nominal],
    ['pi/4*w_s_min^2/(h_b*b_b)', fill.min],
    ['pi/4*w_s_max^2/(h_a*b_a)', fill.max],
  ]);
}
