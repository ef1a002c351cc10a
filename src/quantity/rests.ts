// The weakest kind of source among several, and what of: what a verdict is said to rest on.

import type { Source } from './types.ts';

const weakestFirst: readonly Source['kind'][] = [
  'invented for the demo',
  'common practice, no source',
  'from memory',
  'entered',
  'computed',
  'measured',
  'published',
  'issued',
];

const ofWhat = (source: Source): string => {
  switch (source.kind) {
    case 'from memory':
      return `: ${source.of}`;
    case 'published':
      return `: ${source.title}`;
    case 'issued':
      return `: ${source.authority}`;
    default:
      return '';
  }
};

/** `from memory: …`, all of that kind named; null where nothing was used. */
export function weakestOf(sources: readonly Source[]): string | null {
  const kind = weakestFirst.find((one) => sources.some((source) => source.kind === one));
  if (kind === undefined) return null;
  const of = sources.filter((source) => source.kind === kind).map(ofWhat);
  return `${kind}${[...new Set(of)].join('; and')}`;
}
