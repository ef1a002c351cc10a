// A solver with a limit in seconds: the thread is ended then, and what it had found so far stands.

import { Worker } from 'node:worker_threads';
import type { Late, Program, ProgramLimits, Solver, SolverAnswer } from '../removal/model.ts';
import type { Asked, Told } from './solver-worker.ts';

export type TimedSolver = {
  readonly solver: Solver;
  /** Whether the seconds are over: the quick plans stop then too. */
  readonly late: Late;
  /** Ends the thread; without it the process would wait for it. */
  readonly close: () => Promise<void>;
};

/** The seconds count from this call, over all programs together. */
export function solverWithin(seconds: number): TimedSolver {
  const end = performance.now() + seconds * 1_000;
  const start = () => new Worker(new URL('./solver-worker.ts', import.meta.url));
  let worker: Worker | null = start();
  const close = async (): Promise<void> => {
    const ending = worker;
    worker = null;
    await ending?.terminate();
  };
  const solver: Solver = async (program, limits) => {
    const left = end - performance.now();
    if (left <= 0) return { status: 'stopped', values: null, bound: null };
    worker ??= start();
    const answer = await asked(worker, program, limits, left);
    if (answer.kind === 'answer') return answer.answer;
    await close();
    return answer.sofar;
  };
  return { solver, late: () => performance.now() >= end, close };
}

type Outcome =
  | { readonly kind: 'answer'; readonly answer: SolverAnswer }
  | { readonly kind: 'late'; readonly sofar: SolverAnswer };

function asked(
  worker: Worker,
  program: Program,
  limits: ProgramLimits,
  milliseconds: number,
): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    let sofar: SolverAnswer = { status: 'stopped', values: null, bound: null };
    const finish = (then: () => void) => {
      clearTimeout(timer);
      worker.off('message', hear);
      worker.off('error', fail);
      then();
    };
    const fail = (error: unknown) => finish(() => reject(error));
    const hear = (told: Told) => {
      if (told.kind === 'bound') {
        sofar = { ...sofar, bound: Math.max(sofar.bound ?? told.bound, told.bound) };
      } else if (told.kind === 'values') sofar = { ...sofar, values: told.values };
      else if (told.kind === 'answer') finish(() => resolve(told));
      else finish(() => reject(new Error(told.why)));
    };
    const timer = setTimeout(() => finish(() => resolve({ kind: 'late', sofar })), milliseconds);
    worker.on('message', hear);
    worker.on('error', fail);
    const question: Asked = { program, limits };
    worker.postMessage(question);
  });
}
