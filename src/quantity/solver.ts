// What a solver of integer programmes takes and answers; the shell passes one in.

/** A program for a solver: text in LP format and a first answer to start from. */
export type Program = {
  readonly text: string;
  readonly start: ReadonlyMap<string, number>;
};

export type ProgramLimits = { readonly nodes: number };

export type SolverAnswer = {
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  /** The best values found, by variable; null when none. */
  readonly values: ReadonlyMap<string, number> | null;
  /** A lower bound of the objective, null when none is known. */
  readonly bound: number | null;
};

export type Solver = (program: Program, limits: ProgramLimits) => Promise<SolverAnswer>;
