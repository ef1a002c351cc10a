// A calculation with one form that needs no solver: its schema, its function and an example.

import type { z } from 'zod';
import type { Problem } from '../quantity/types.ts';
import type { Calculation } from './register.ts';

/** What a calculation answers; problems are what only the meaning of the input shows. */
export type Answer =
  | { readonly ok: true; readonly result: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly problems: readonly Problem[] };

type Given<T> = {
  readonly name: string;
  readonly summary: string;
  readonly help: readonly string[];
  readonly input: z.ZodType<T>;
  readonly output: z.ZodType;
  /** What passed the input's schema; a pure function. */
  readonly solve: (input: T) => Answer;
  readonly example: Readonly<Record<string, unknown>>;
};

export function simple<T>(given: Given<T>): Calculation {
  const form = { schema: given.input, plain: true };
  // The border asks for problems first and for the result then: one piece of work, not two.
  const solved = new WeakMap<object, Answer>();
  const solve = (input: unknown): Answer => {
    const known = typeof input === 'object' && input !== null ? solved.get(input) : undefined;
    if (known !== undefined) return known;
    const answer = given.solve(input as T);
    if (typeof input === 'object' && input !== null) solved.set(input, answer);
    return answer;
  };
  return {
    name: given.name,
    summary: given.summary,
    help: given.help.join('\n'),
    forms: [form],
    formOf: () => form,
    results: [given.output],
    problems: (input) => {
      const answer = solve(input);
      return answer.ok ? [] : answer.problems;
    },
    run: async (input) => {
      const answer = solve(input);
      if (!answer.ok) throw new Error(`${given.name} was run on an input it refuses`);
      return answer.result;
    },
    needsSolver: false,
    seconds: () => null,
    example: given.example,
  };
}
