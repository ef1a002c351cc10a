// Rows of the ASME PCC-1 legacy cross-pattern that are had, each with how sure it is.

export type KnownRow = {
  readonly bolts: number;
  readonly sequence: readonly number[];
  /** `read` in public texts that state they match the table; `memory` proves nothing. */
  readonly had: 'read' | 'memory';
};

/** Title, edition and place of the table. */
export const crossPatternSource = {
  kind: 'published',
  title: 'ASME PCC-1, Guidelines for Pressure Boundary Bolted Flange Joint Assembly',
  edition: 'legacy cross-pattern, as restated in public texts',
  place: 'tightening sequence table, rows of 4, 8 and 16 bolts',
} as const;

// biome-ignore format: a row a line
export const knownRows: readonly KnownRow[] = [
  { bolts: 4, had: 'read', sequence: [1, 3, 2, 4] },
  { bolts: 8, had: 'read', sequence: [1, 5, 3, 7, 2, 6, 4, 8] },
  { bolts: 16, had: 'read', sequence: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16] },
  { bolts: 20, had: 'memory', sequence: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19] },
  { bolts: 28, had: 'memory', sequence: [1, 15, 8, 22, 4, 18, 11, 25, 6, 20, 13, 27, 2, 16, 9, 23, 5, 19, 12, 26, 3, 17, 10, 24, 7, 21, 14, 28] },
  { bolts: 32, had: 'memory', sequence: [1, 17, 9, 25, 5, 21, 13, 29, 3, 19, 11, 27, 7, 23, 15, 31, 2, 18, 10, 26, 6, 22, 14, 30, 4, 20, 12, 28, 8, 24, 16, 32] },
];
