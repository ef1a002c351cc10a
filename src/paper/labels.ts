// Labels for what lies in the stores: a code to scan, and in words what no eye can tell apart.

import QRCode from 'qrcode';
import { drawing, el } from '../drawing/svg.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { labelText } from '../stores/find.ts';
import type { StoredItem } from '../stores/item.ts';
import { picture } from './block.ts';
import { setPdf } from './typst.ts';

/** Quiet zone of four modules all round, as the code's standard asks (from memory). */
const QUIET = 4;

const codeOf = (text: string) => {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' });
  const { size } = modules;
  const dark = Array.from({ length: size * size }, (_, at) => at).filter(
    (at) => modules.data[at] === 1,
  );
  const squares = dark.map((at) => `M${at % size} ${Math.floor(at / size)}h1v1h-1z`).join('');
  const box = { x: -QUIET, y: -QUIET, width: size + 2 * QUIET, height: size + 2 * QUIET };
  return drawing(box, text, 'paper', [
    el('path', { d: squares, fill: '#000', stroke: 'none', 'shape-rendering': 'crispEdges' }),
  ]);
};

/** What stands on a label, the figures that tell look-alikes apart in front. */
export const labelView = (vessel: string, item: StoredItem) => ({
  code: picture(codeOf(labelText(vessel, item.id))),
  name: item.name,
  figures: [item.size, item.thickness, item.compound].filter((x) => x !== undefined).join(' · '),
  marks: [
    item.serial === undefined ? null : `serial ${item.serial}`,
    item.batch === undefined ? null : `batch ${item.batch}`,
    item.cured === undefined ? null : `cured ${item.cured}`,
    item.expires === undefined ? null : `use by ${item.expires}`,
    item.hand === undefined || item.hand === 'either' ? null : `${item.hand} only`,
  ].filter((x) => x !== null),
  condition: item.condition,
  place: item.place ?? '',
  id: item.id,
});

export const labelsPdf = (vessel: string, items: readonly StoredItem[]): Uint8Array =>
  setPdf('labels', {
    authority: AUTHORITY_LINE,
    vessel,
    labels: items.map((item) => labelView(vessel, item)),
  });
