// Begins the exchange of the demo's sea-water pump through the screens, from the begin screen on.

import type { Page } from 'playwright-core';
import type { Pack } from '../src/pack/types.ts';
import { now } from './hand.ts';
import type { Served } from './served.ts';

type Begun = {
  /** The address of its Work screen. */
  readonly url: string;
  readonly job: string;
  readonly pack: Pack;
};

/** Everything that wants a decision is settled by `second`, who also verifies. */
export async function beginExchange(
  { url: at }: Served,
  page: Page,
  { maker, second }: { readonly maker: string; readonly second: string },
): Promise<Begun> {
  await page.getByLabel('Machine').selectOption('main-engine-port');
  await page.getByLabel('Component').selectOption('sea-water-pump');
  await page.locator('.choice-one', { hasText: 'Exchange the pump' }).click();
  await page.getByRole('checkbox', { name: maker }).check();
  await page.getByRole('button', { name: 'Work out the pack' }).click();
  await page.locator('[data-figure=minutes]').waitFor();
  const unsettled = page.getByRole('button', { name: /^Settle: / });
  for (let left = await unsettled.count(); left > 0; left -= 1) {
    const before = page.url();
    await unsettled.first().click();
    await page.getByLabel('Settled by').selectOption(second);
    await page.getByLabel('What is decided, and the reason').fill('the table covers it');
    await page.getByLabel('What limits the risk', { exact: true }).fill('looked at afterwards');
    await page.getByRole('button', { name: 'Settle it' }).click();
    await page.waitForURL((next) => next.href !== before);
  }
  await page.getByLabel('Competent person who verifies').selectOption(second);
  await page.getByRole('button', { name: 'Start the job' }).click();
  await now(page).waitFor();
  const url = page.url();
  const { replica } = await (await page.request.get(`${at}/api/replica?seen=`)).json();
  const pack = (replica.packs as Pack[]).at(-1) as Pack;
  return { url, job: decodeURIComponent(/job\/([^/]+)/.exec(url)?.[1] ?? ''), pack };
}
