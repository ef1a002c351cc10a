// What the browser itself holds of the record, asked of it past the app.

import type { Page } from 'playwright-core';
import type { Replica } from '../src/record/replica.ts';
import type { Act } from '../src/record/types.ts';

export type OwnRow = { readonly act: Act };

export const ownActs = (page: Page): Promise<readonly OwnRow[]> =>
  page.evaluate(
    () =>
      new Promise<readonly OwnRow[]>((resolve, reject) => {
        const opening = indexedDB.open('boxup');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction('own').objectStore('own').getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result);
          };
        };
      }),
  );

export const knownOf = (page: Page): Promise<Replica> =>
  page.evaluate(
    () =>
      new Promise<Replica>((resolve) => {
        const opening = indexedDB.open('boxup');
        opening.onsuccess = () => {
          const one = opening.result.transaction('known').objectStore('known').get('known');
          one.onsuccess = () => {
            opening.result.close();
            resolve(one.result.replica);
          };
        };
      }),
  );
