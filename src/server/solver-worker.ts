// The thread in which HiGHS runs, so that a limit in seconds can end it from outside.

import { parentPort } from 'node:worker_threads';
import type { Program, ProgramLimits, SolverAnswer } from '../removal/model.ts';
import { highs, type Progress, solveWithHighs } from './solver-inline.ts';

export type Asked = { readonly program: Program; readonly limits: ProgramLimits };

export type Told =
  | Progress
  | { readonly kind: 'answer'; readonly answer: SolverAnswer }
  | { readonly kind: 'failed'; readonly why: string };

// Loading goes on while the quick plans are made in the other thread; a failure shows on asking.
highs().catch(() => undefined);

const tell = (told: Told) => parentPort?.postMessage(told);

parentPort?.on('message', ({ program, limits }: Asked) => {
  solveWithHighs(program, limits, tell).then(
    (answer) => tell({ kind: 'answer', answer }),
    (error: unknown) => tell({ kind: 'failed', why: String(error) }),
  );
});
