// Reads a PDF's text page by page with a program that is not ours, for the tests of paper.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One string a page, all white space made single. */
export const pagesOf = (pdf: Uint8Array): readonly string[] => {
  const folder = mkdtempSync(join(tmpdir(), 'boxup-paper-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    // `-raw` keeps the order of the content stream: columns are not woven into one another.
    const text = execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-'], {
      encoding: 'utf8',
      maxBuffer: 64_000_000,
    });
    return text
      .split('\f')
      .slice(0, -1)
      .map((page) => page.replaceAll(/\s+/g, ' ').trim());
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** Letters and figures alone, so that a break of line or a hyphen hides nothing. */
export const letters = (text: string): string => text.replaceAll(/[\s\u00ad\u200b\u2010-]+/g, '');
