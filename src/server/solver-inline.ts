// HiGHS behind the contract of a solver: reads LP text, proves or stops at a count of nodes.

import loadHighs from 'highs';
import type { Program, ProgramLimits, SolverAnswer } from '../removal/model.ts';

type Highs = Awaited<ReturnType<typeof loadHighs>>;

/** What a long search tells on its way: a bound of the objective, or better values. */
export type Progress =
  | { readonly kind: 'bound'; readonly bound: number }
  | { readonly kind: 'values'; readonly values: ReadonlyMap<string, number> };

let loaded: Promise<Highs> | null = null;

/** One instance for the life of the thread: loading it takes longer than a small program. */
export function highs(): Promise<Highs> {
  loaded ??= loadHighs();
  return loaded;
}

/**
 * `Optimal` speaks of a gap of 1e-4 unless the gap is set to nothing. Restarts cost more than they
 * gave on removal's programs, which come narrowed already and with a good first answer.
 */
const OPTIONS = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 1e-9,
  mip_allow_restart: false,
  mip_heuristic_effort: 0.01,
};

/** A program of nodes without end still ends: HiGHS counts in 32 bits. */
const MOST_NODES = 2_147_483_647;

export async function solveWithHighs(
  program: Program,
  limits: ProgramLimits,
  tell?: (progress: Progress) => void,
): Promise<SolverAnswer> {
  const solver = await highs();
  const { modelStatus, callbackType } = solver.constants;
  return solver.withModel({ format: 'lp', data: program.text }, (model): SolverAnswer => {
    const columns = model.getDimensions().numCols;
    // Text that is no model reads as an empty one without any error.
    if (columns === 0) throw new Error('HiGHS read an empty model');
    const names = Array.from({ length: columns }, (_, at) => model.getColName(at));
    const named = (values: ArrayLike<number>) =>
      new Map(names.map((name, at) => [name, values[at] ?? 0]));
    model.options.set({ ...OPTIONS, mip_max_nodes: Math.min(limits.nodes, MOST_NODES) });
    const start = Float64Array.from(names, (name) => program.start.get(name) ?? 0);
    model.setSolution({ colValue: start });
    if (tell === undefined) model.run();
    else {
      const bound = (value: number | undefined): undefined => {
        if (value !== undefined && Number.isFinite(value)) tell({ kind: 'bound', bound: value });
      };
      model.run({
        [callbackType.mipLogging]: (event) => bound(event.data.mip_dual_bound),
        [callbackType.mipImprovingSolution]: (event): undefined => {
          const values = event.data.mip_solution;
          if (values !== undefined) tell({ kind: 'values', values: named(values) });
          bound(event.data.mip_dual_bound);
        },
      });
    }
    const status = model.getModelStatus();
    if (status === modelStatus.infeasible)
      return { status: 'infeasible', values: null, bound: null };
    const found = Number(model.info.get('primal_solution_status')) === 2;
    const values = found ? named(model.getSolution().colValue) : null;
    const bound = Number(model.info.get('mip_dual_bound'));
    const optimal = status === modelStatus.optimal;
    return {
      status: optimal ? 'optimal' : 'stopped',
      values,
      bound: Number.isFinite(bound) ? bound : null,
    };
  });
}
