// The order of slackening at a joint: by its hole labels, far side first, numbers only where known.

import { expect, test } from 'vitest';
import type { Joint } from '../plant/schema.ts';
import type { Machine } from '../plant/types.ts';
import { english, newSpeech, sentence, tell } from '../words/say.ts';
import type { Context, Undone } from './context.ts';
import { jointShape } from './joint-shape.ts';
import { easingOf, slackenedIn } from './slacken.ts';

const u: Undone = { id: 'j', access: 'front', bench: false, reason: '' };

/** Only what the order is made of. */
const of = (joint: Partial<Joint>): Context => {
  const full: Joint = { name: 'J', ...joint };
  const machine = { joints: { j: full }, parts: {}, lines: {}, values: {} } as unknown as Machine;
  const shapes = { j: jointShape(machine, full, newSpeech().say) };
  return { machine, shapes } as unknown as Context;
};

const bolts = (count: number, more: Partial<Joint> = {}): Partial<Joint> => ({
  fasteners: { bolts: { kind: 'bolt', count } },
  ...more,
});
const square = { kind: 'rectangle', rows: 2, columns: 2 } as const;
const from = (stands: 'above' | 'below' | 'left' | 'right') => ({
  accesses: { front: { stands } },
});

test.each([
  ['below', '2, 1'],
  ['above', '3, 4'],
  ['left', '2, 3'],
  ['right', '4, 1'],
] as const)('whoever stands %s has %s on the far side, and they come first', (stands, far) => {
  const eased = easingOf(of(bolts(4, { layout: square, ...from(stands) })), u);
  expect(eased?.known).toBe(true);
  expect(eased?.far?.split(', ').sort()).toEqual(far.split(', ').sort());
  expect(eased?.order?.split(', ').slice(0, 2).sort()).toEqual(far.split(', ').sort());
});

test('where nobody says where one stands it is not made up: across, and stand clear', () => {
  const eased = easingOf(of(bolts(4, { layout: square })), u);
  expect(eased).toEqual({ order: '4, 2, 3, 1', far: null, known: false });
});

test('without places no number is told, and the holes keep their own order', () => {
  const c = of(bolts(5));
  expect(easingOf(c, u)).toEqual({ order: null, far: null, known: false });
  expect(slackenedIn(c, u)).toEqual(['1', '2', '3', '4', '5']);
});

test('every count of a ring is told once each, whatever its labels', () => {
  for (let n = 2; n <= 64; n++) {
    const holes = Array.from({ length: n }, (_, i) => `N${i + 1}`);
    const fasteners = { nuts: { kind: 'nut', count: n, holes } } as const;
    for (const more of [{}, from('left')]) {
      const order = slackenedIn(of({ fasteners, layout: 'ring', ...more }), u);
      expect([...order].sort(), String(n)).toEqual([...holes].sort());
    }
  }
});

test('one bolt, clips and latches have no such order; cleats of a lid on a line have', () => {
  const clamps = { fasteners: { cleats: { kind: 'clamp', count: 4 } }, layout: square } as const;
  expect(easingOf(of(bolts(1)), u)).toBeNull();
  expect(easingOf(of({ fasteners: { clips: { kind: 'hose clip', count: 2 } } }), u)).toBeNull();
  expect(easingOf(of(clamps), u)).toBeNull();
  const lid = of({ ...clamps, between: ['lid'], seals: { ring: { kind: 'ring', count: 1 } } });
  const machine = {
    ...lid.machine,
    parts: { lid: { name: 'Lid', line: 'sea' } },
    lines: { sea: { name: 'Sea', medium: 'sea water' } },
  } as unknown as Machine;
  expect(easingOf({ ...lid, machine }, u)?.order).toBe('4, 2, 3, 1');
});

test('the sentence tells what is known and no more, in both languages', () => {
  const say = (known: boolean, order: string | null, far: string | null) =>
    sentence('slacken', 'Lid', '4 nuts', known, order, far, true, null, null);
  const known = english(say(true, '2, 1, 4, 3', '2, 1'));
  expect(known).toContain('Far side first (2, 1): 2, 1, 4, 3; each a part of a turn');
  expect(known).not.toContain('Stand clear');
  const unknown = english(say(false, '4, 2, 3, 1', null));
  expect(unknown).toContain('Stand clear of the side that opens first; far side first. ');
  expect(unknown).toContain('Numbered across: 4, 2, 3, 1');
  expect(english(say(false, null, null))).toContain('far side first. Each a part of a turn');
  for (const one of [known, unknown]) expect(one).toContain('with all of them still on');
  const spoken = say(false, '4, 2', null);
  expect(tell(english(spoken), 'es', new Map(), spoken)).toContain(
    'Apartarse del lado que se abre',
  );
});
