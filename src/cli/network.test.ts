// Listening beyond this computer: said, asked, or not done; and what is printed then.

import { expect, test } from 'vitest';
import { askNetwork, networkLines } from './network.ts';

test('without a terminal the answer is no; a stated answer is taken as it is', async () => {
  expect(process.stdin.isTTY === true && process.stdout.isTTY === true).toBe(false);
  expect(await askNetwork(undefined)).toBe(false);
  expect(await askNetwork(true)).toBe(true);
  expect(await askNetwork(false)).toBe(false);
});

test('each address is printed, a code for the first, and who can read and write', async () => {
  const text = (await networkLines(['192.168.7.20', '10.0.0.4'], 4170)).join('\n');
  expect(text).toContain('http://192.168.7.20:4170');
  expect(text).toContain('http://10.0.0.4:4170');
  expect(text).toContain('Anyone on that network can read and write the record');
  expect(text).toContain('names not proved');
  expect(text).toContain('not a secure connection');
  expect(text.match(/[█▀▄]/g)?.length ?? 0).toBeGreaterThan(100);
});

test('a computer without a network says so', async () => {
  expect(await networkLines([], 4170)).toEqual([
    'No network: this computer has no address beside localhost.',
  ]);
});
