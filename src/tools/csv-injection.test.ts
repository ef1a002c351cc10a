// A cell that a spreadsheet takes for a formula neither comes into a list of tools nor out of it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTools } from './read.ts';
import { COLUMNS } from './tables/columns.ts';
import { type Tool, toolSchema } from './tool.ts';
import { writeTools } from './write.ts';

const FORMULA = /^[=+@\t\r]|^-(?![\d.]+$)/;

describe('formulas', () => {
  test.each(['=1+1', '+1', '-1+1', '@SUM(A1)', "\t=cmd|' /C x'!A0", '=HYPERLINK("x","y")'])(
    '%j is refused in every column that takes a text',
    (cell) => {
      const heads = COLUMNS.filter(({ as }) => as === 'text').map(({ head }) => head);
      for (const head of heads.filter((one) => one !== 'kind')) {
        const own: Record<string, string> = { kind: 'gauge', id: 'g', name: 'G', measures: 'gap' };
        const row: Record<string, string> = {
          ...own,
          min: '0',
          max: '1',
          unit: 'mm',
          [head]: cell,
        };
        const { tools } = readTools({
          head: Object.keys(row),
          rows: [{ line: 2, cells: Object.values(row) }],
        });
        // A tab in front is blank space and falls away; what is left is still a formula.
        expect({ head, taken: tools.length }).toEqual({ head, taken: 0 });
      }
    },
  );

  test('no cell that is written begins like one, whatever was let in, seed 41_005', () => {
    const text = fc.string({ maxLength: 12 });
    const given = fc.record({
      ...{ kind: fc.constant('gauge'), id: fc.constant('g'), name: text, measures: text },
      ...{ min: fc.integer({ min: -9, max: 0 }), max: fc.constant(5), unit: fc.constant('mm') },
      ...{ note: text, place: text },
    });
    let letIn = 0;
    fc.assert(
      fc.property(given, (raw) => {
        const read = toolSchema.safeParse(raw);
        if (!read.success) return;
        letIn += 1;
        for (const cell of cellsOf(read.data)) expect(cell).not.toMatch(FORMULA);
      }),
      { numRuns: 500, seed: 41_005 },
    );
    expect(letIn).toBeGreaterThan(50);
  });
});

const cellsOf = (tool: Tool): string[] => {
  const [, ...lines] = writeTools([tool]).split('\n');
  const cells = lines.join('\n').match(/"(?:[^"]|"")*"|[^",]+/g) ?? [];
  return cells.map((cell) => (cell.startsWith('"') ? cell.slice(1, -1) : cell));
};
