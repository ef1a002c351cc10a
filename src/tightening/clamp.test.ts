// The clamp a joint needs, by hand; embedding against the published rows.

import { expect, test } from 'vitest';
import { clampNeededKN, embeddingRows, embeddingUm } from './clamp.ts';
import tables from './tables/vdi2230.published.json' with { type: 'json' };

test('a cover of 100 mm under 0.9 MPa on six bolts', () => {
  const areaMm2 = (Math.PI / 4) * 100 ** 2;
  const one = { pressureMPa: 0.9, areaMm2, seatingKN: 12, bolts: 6, embeddingLossKN: 1.5 };
  // 7.0686 kN of pressure and 12 of seating over six, and 1.5 for each.
  expect(clampNeededKN(one)).toBeCloseTo(19.0686 / 6 + 1.5, 4);
});

test(`${tables.embedding.title}, ${tables.embedding.place} (${tables.embedding.origin})`, () => {
  const rows = tables.embedding.rows.map(({ thread, head, interface: face }) => [
    thread,
    head,
    face,
  ]);
  expect(rows).toEqual(Object.values(embeddingRows));
  expect(embeddingUm('Rz 10 to 40', 1)).toBe(11);
});
