// Which screen is asked for, read from the part of the address after `#`: no server is needed.

import { useSyncExternalStore } from 'react';

export type Route =
  | { readonly screen: 'log' }
  | { readonly screen: 'begin' | 'strip' | 'setup' | 'stores' }
  | { readonly screen: 'pack'; readonly id: string }
  | { readonly screen: JobPart; readonly job: string }
  | { readonly screen: 'calc'; readonly name: string | null };

export type JobPart = (typeof JOB_SCREENS)[number];
const JOB_SCREENS = [
  ...(['work', 'box-up', 'open', 'eyes', 'tight'] as const),
  ...(['proof', 'hand-over', 'record', 'paper'] as const),
] as const;

export function parseRoute(hash: string): Route {
  const [what = '', id = '', part = ''] = hash.replace(/^#\/?/, '').split('/').map(safeDecode);
  if (what === 'begin' || what === 'strip' || what === 'setup' || what === 'stores')
    return { screen: what };
  if (what === 'pack' && id !== '') return { screen: 'pack', id };
  if (what === 'calculations') return { screen: 'calc', name: id === '' ? null : id };
  const screen = JOB_SCREENS.find((name) => name === (part === '' ? 'work' : part));
  if (what === 'job' && id !== '' && screen !== undefined) return { screen, job: id };
  return { screen: 'log' };
}

function safeDecode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

export const to = {
  log: () => '#/',
  begin: () => '#/begin',
  strip: () => '#/strip',
  setup: () => '#/setup',
  stores: () => '#/stores',
  pack: (id: string) => `#/pack/${encodeURIComponent(id)}`,
  job: (id: string, part: JobPart = 'work') => `#/job/${encodeURIComponent(id)}/${part}`,
  calc: (name?: string) =>
    name === undefined ? '#/calculations' : `#/calculations/${encodeURIComponent(name)}`,
};

export function go(hash: string): void {
  window.location.hash = hash;
  window.scrollTo(0, 0);
}

const subscribe = (changed: () => void) => {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
};

export function useRoute(): Route {
  return parseRoute(useSyncExternalStore(subscribe, () => window.location.hash));
}
