// Whether two pieces of plain data say the same, whatever the order of their keys.

import { canonicalText } from '../quantity/sha.ts';

export const sameData = (a: unknown, b: unknown): boolean =>
  a === b || (a !== undefined && b !== undefined && canonicalText(a) === canonicalText(b));
