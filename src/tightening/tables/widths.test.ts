// Checks what fits on a fastener against ISO 272, DIN 931/933/934 and ISO 4762 as transcribed.

import { describe, expect, test } from 'vitest';
import { widthOf } from '../width.ts';
import { WIDTHS } from './widths.ts';

// Row by row from the comparison of three open libraries; title and standing in `widths.ts`.
const hexagons = {
  iso: 'M4 7, M5 8, M6 10, M7 11, M8 13, M10 16, M12 18, M14 21, M16 24, M18 27, M20 30, M22 34, M24 36, M27 41, M30 46, M33 50, M36 55, M39 60',
  din: 'M4 7, M5 8, M6 10, M7 11, M8 13, M10 17, M12 19, M14 22, M16 24, M18 27, M20 30, M22 32, M24 36, M27 41, M30 46, M33 50, M36 55, M39 60',
};
const keys =
  'M4 3, M5 4, M6 5, M8 6, M10 8, M12 10, M14 12, M16 14, M20 17, M24 19, M30 22, M36 27';
const rows = (text: string) =>
  text.split(', ').map((row): [string, number] => {
    const [thread = '', mm = ''] = row.split(' ');
    return [thread, Number(mm)];
  });

describe('width across flats', () => {
  test.each(rows(hexagons.iso))('ISO 272: %s is %d mm', (thread, mm) => {
    expect(widthOf({ head: 'hexagon', thread, standard: 'ISO' })).toMatchObject({ mm });
  });

  test.each(rows(hexagons.din))('DIN 931, 933, 934: %s is %d mm', (thread, mm) => {
    expect(widthOf({ head: 'hexagon', thread, standard: 'DIN' })).toMatchObject({ mm });
  });

  test.each(rows(keys))('ISO 4762: the key of %s is %d mm', (thread, mm) => {
    expect(widthOf({ head: 'socket', thread })).toMatchObject({
      mm,
      source: { kind: 'published' },
    });
  });

  test('the four sizes where ISO and DIN differ are asked, no other', () => {
    const asked = WIDTHS.filter(
      (row) => 'asked' in widthOf({ head: 'hexagon', thread: row.thread }),
    );
    expect(asked.map(({ thread }) => thread)).toEqual(['M10', 'M12', 'M14', 'M22']);
    expect(widthOf({ head: 'hexagon', thread: 'M22' })).toMatchObject({ either: [34, 32] });
  });

  test('keys of DIN 912 alone say that they are from memory', () => {
    expect(widthOf({ head: 'socket', thread: 'M18' })).toMatchObject({
      mm: 14,
      source: { kind: 'from memory' },
    });
  });

  test('what the model says comes first; a fine thread has the head of its size', () => {
    expect(widthOf({ head: 'hexagon', thread: 'M10', acrossFlatsMm: 15 })).toMatchObject({
      mm: 15,
    });
    expect(widthOf({ head: 'hexagon', thread: 'M16x1.5' })).toMatchObject({ mm: 24 });
  });

  test.each([
    { head: 'flanged hexagon', thread: 'M10' },
    { head: 'hexagon', thread: '3/8-16 UNC' },
    { head: 'hexagon' },
    { head: 'socket', thread: 'M39' },
    { head: 'slotted', thread: 'M5' },
  ] as const)('%j is asked', (given) => {
    expect(widthOf(given)).toMatchObject({ asked: expect.any(String) });
  });
});
