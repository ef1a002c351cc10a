// Where a bench writes its figures: a section of the file of figures, the others left as they are.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** The first row is the section's head, `## Removal`; what stood under that head before goes. */
export function writeMeasured(section: readonly string[]): void {
  const file = join(import.meta.dirname, '..', 'docs', 'measured.md');
  const old = existsSync(file) ? readFileSync(file, 'utf8') : '# Measured\n';
  const head = section[0] ?? '';
  const others = old.split(/^(?=## )/m).filter((part) => !part.startsWith(`${head}\n`));
  writeFileSync(file, `${others.join('').trimEnd()}\n\n${section.join('\n')}\n`);
}
