// A photograph taken with a phone carries the place where it was taken; what Boxup keeps, on the
// phone and on the server, is drawn anew, small and upright, and carries none.

import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;
let taken: Buffer;

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/strip`);
  await phone.page.getByLabel('Who is holding this phone?').selectOption('Sunniva Brekk');
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
});

/** What stood on the screen when a test failed, to be looked at. */
afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail' || process.env.E2E_SEEN === undefined) return;
  await phone.page.screenshot({ path: process.env.E2E_SEEN, fullPage: true });
});

/** By hand: no real place. 47° 11' 13" by numbers nobody would write otherwise, and words. */
const DEGREES = [
  [47, 1],
  [11, 1],
  [7_654_321, 590_000],
] as const;
const WORDS = 'INVENTED-PLACE-OF-THE-TEST';
const TURNED = 6;

/** The segment that cameras write after the first two bytes: TIFF with orientation and GPS. */
function exif(): Buffer {
  const tiff = Buffer.alloc(160);
  tiff.write('MM', 0, 'latin1');
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(2, 8);
  entry(tiff, 10, 0x0112, 3, 1, TURNED * 65_536);
  entry(tiff, 22, 0x8825, 4, 1, 40);
  tiff.writeUInt16BE(2, 40);
  entry(tiff, 42, 0x0002, 5, 3, 72);
  entry(tiff, 54, 0x001c, 7, WORDS.length, 96);
  DEGREES.forEach(([top, below], i) => {
    tiff.writeUInt32BE(top, 72 + 8 * i);
    tiff.writeUInt32BE(below, 76 + 8 * i);
  });
  tiff.write(WORDS, 96, 'latin1');
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

function entry(b: Buffer, at: number, tag: number, type: number, count: number, value: number) {
  b.writeUInt16BE(tag, at);
  b.writeUInt16BE(type, at + 2);
  b.writeUInt32BE(count, at + 4);
  b.writeUInt32BE(value, at + 8);
}

const place = (): Buffer => {
  const bytes = Buffer.alloc(8);
  bytes.writeUInt32BE(DEGREES[2][0], 0);
  bytes.writeUInt32BE(DEGREES[2][1], 4);
  return bytes;
};

/** Width and height as the frame of a JPEG says them. */
function sizeOf(jpeg: Buffer): readonly [number, number] {
  for (let at = 2; at < jpeg.length; at += 2 + jpeg.readUInt16BE(at + 2)) {
    const marker = jpeg.readUInt16BE(at);
    if (marker >= 0xffc0 && marker <= 0xffc2)
      return [jpeg.readUInt16BE(at + 7), jpeg.readUInt16BE(at + 5)];
  }
  throw new Error('no frame in the JPEG');
}

test('the picture of the test is large, lies on its side and says where it was taken', async () => {
  const bare = await phone.page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    canvas.width = 2_000;
    canvas.height = 1_000;
    const pen = canvas.getContext('2d');
    pen?.fillRect(0, 0, 1_000, 1_000);
    return canvas.toDataURL('image/jpeg').split(',')[1] ?? '';
  });
  const jpeg = Buffer.from(bare, 'base64');
  taken = Buffer.concat([jpeg.subarray(0, 2), exif(), jpeg.subarray(2)]);
  expect(sizeOf(taken)).toEqual([2_000, 1_000]);
  expect(taken.includes(place())).toBe(true);
  expect(taken.includes(WORDS)).toBe(true);
});

test('what is kept is small, upright, and carries no place', async () => {
  const { page } = phone;
  await page.getByLabel('Machine', { exact: true }).fill('Harbour pump engine');
  await page.getByLabel('Component', { exact: true }).fill('Cooling pump');
  await page.locator('.choice-one', { hasText: 'port' }).first().click();
  await page.locator('.choice-one', { hasText: /^exchanged$/ }).click();
  await page.getByRole('button', { name: 'Begin stripping' }).click();
  await page.getByRole('button', { name: 'Took off' }).click();
  await page
    .getByLabel('Photo')
    .setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: taken });
  await page.getByRole('button', { name: 'Take another photo' }).waitFor();
  const hashes = await keptHashes();
  expect(hashes).toHaveLength(1);
  const own = Buffer.from(await bytesOnPhone(hashes[0] ?? ''), 'base64');
  const address = `${served.url}/api/photos/${hashes[0]}`;
  const answer = async () => (await page.request.get(address)).status();
  await expect.poll(answer, { timeout: 20_000 }).toBe(200);
  const sent = Buffer.from(await (await page.request.get(address)).body());
  for (const [where, kept] of [
    ['phone', own],
    ['server', sent],
  ] as const) {
    expect(kept.readUInt16BE(0), where).toBe(0xffd8);
    // Turned upright as the camera asked: the longest side stands, and is 1,600.
    expect(sizeOf(kept), where).toEqual([800, 1_600]);
    for (const trace of [place(), Buffer.from(WORDS), Buffer.from('Exif')])
      expect(kept.includes(trace), `${where}: ${trace.toString('latin1')}`).toBe(false);
  }
  expect(sent.equals(own)).toBe(true);
});

test('bytes that are no picture are refused, and nothing of them is kept', async () => {
  const { page } = phone;
  const before = await keptHashes();
  await page.getByLabel('Photo').setInputFiles({
    name: 'b.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), exif()]),
  });
  await page.locator('.refused').waitFor();
  expect(await page.locator('.refused').textContent()).toContain('JPEG or PNG');
  expect(await keptHashes()).toEqual(before);
  expect(phone.complaints).toEqual([]);
});

type Row = { readonly hash: string; readonly bytes: Uint8Array };

const keptHashes = (): Promise<string[]> =>
  phone.page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('boxup');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction('photos').objectStore('photos').getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result.map((row: Row) => row.hash));
          };
        };
      }),
  );

const bytesOnPhone = (hash: string): Promise<string> =>
  phone.page.evaluate(
    (wanted) =>
      new Promise<string>((resolve) => {
        const opening = indexedDB.open('boxup');
        opening.onsuccess = () => {
          const one = opening.result.transaction('photos').objectStore('photos').get(wanted);
          one.onsuccess = () => {
            opening.result.close();
            const bytes: Uint8Array = one.result.bytes;
            resolve(btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')));
          };
        };
      }),
    hash,
  );
