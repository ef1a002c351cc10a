// The shapes every figure travels in: quantity, source, working row, problem.

/** A figure with its UCUM unit; `u` is a standard uncertainty, `given` what was typed. */
export type Quantity = {
  readonly value: number;
  readonly unit: string;
  readonly u?: number;
  readonly given?: string;
};

/** Where a figure came from. The word stands beside the figure on screen, paper and JSON. */
export type Source =
  | {
      readonly kind: 'published';
      readonly title: string;
      readonly edition: string;
      readonly place: string;
    }
  | {
      readonly kind: 'issued';
      readonly authority: string;
      readonly issue: string;
      readonly date: string;
    }
  | { readonly kind: 'from memory'; readonly of: string }
  | { readonly kind: 'common practice, no source' }
  | { readonly kind: 'computed'; readonly by: string }
  | { readonly kind: 'measured'; readonly instrument: string }
  | { readonly kind: 'entered'; readonly by: string }
  | { readonly kind: 'invented for the demo' };

/** One row of pencil arithmetic; `expression` uses the symbols of the rows before it. */
export type WorkingRow = {
  readonly symbol: string;
  readonly text: string;
  readonly expression: string;
  readonly value: number;
  readonly unit: string;
  readonly source: Source;
};

export type Working = readonly WorkingRow[];

/** Something wrong with a file or an input (what is found on the machine is a finding). */
export type Problem = {
  readonly path: string;
  readonly got: unknown;
  readonly expected: string;
  readonly why: string;
  readonly remedy?: string;
};
