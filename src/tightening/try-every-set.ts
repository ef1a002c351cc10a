// Which tools do a job, by trying every set of them from the smallest: the tests' second opinion.

import type { Drive, Tool } from '../tools/tool.ts';

/** What the oracle needs of a fastening, in plain figures; a hexagon. */
export type PlainFastening = {
  readonly widthMm: number;
  readonly access: 'straight' | 'long' | 'swivel' | 'open-end';
  readonly torqueNm: number;
  readonly angleDeg: number;
  readonly anyway: readonly string[];
};

/** The size of the smallest set that does every fastening which all tools together can do. */
export function fewestByTrying(
  fastenings: readonly PlainFastening[],
  tools: readonly Tool[],
  on: string,
): number {
  const possible = fastenings.filter((one) => doable(one, tools, on, tools));
  let fewest = tools.length;
  for (let mask = 0; mask < 2 ** tools.length; mask += 1) {
    const set = tools.filter((_, at) => (mask >> at) % 2 === 1);
    if (set.length >= fewest) continue;
    if (possible.every((one) => doable(one, set, on, tools))) fewest = set.length;
  }
  return fewest;
}

/** `held` are all tools: a wrench that a person named is the one, if it can be used at all. */
export function doable(
  wanted: PlainFastening,
  set: readonly Tool[],
  on: string,
  held: readonly Tool[],
): boolean {
  const named = held.filter(({ id }) => wanted.anyway.includes(id));
  const canNamed = named.some((tool) => reaches(wanted, tool, held, on));
  return set.some((tool) => {
    if (canNamed && !wanted.anyway.includes(tool.id)) return false;
    return reaches(wanted, tool, set, on);
  });
}

/** Walks from the wrench's square through any chain of tools to one that fits. */
function reaches(wanted: PlainFastening, wrench: Tool, set: readonly Tool[], on: string): boolean {
  if (wrench.kind !== 'wrench') return false;
  type State = { drive: Drive; extended: boolean; swivelled: boolean; adapted: boolean };
  const visit = (state: State): boolean =>
    set.some((tool) => {
      if (!('drive' in tool) || tool.drive !== state.drive) return false;
      if (tool.kind === 'extension') {
        const free = wanted.access === 'long' && !state.extended && !state.swivelled;
        return free && visit({ ...state, extended: true });
      }
      if (tool.kind === 'swivel') {
        const free = wanted.access === 'swivel' && !state.swivelled;
        return free && visit({ ...state, swivelled: true });
      }
      if (tool.kind === 'adapter') {
        return !state.adapted && visit({ ...state, drive: tool.to, adapted: true });
      }
      if (tool.kind !== 'socket' && tool.kind !== 'crowfoot') return false;
      if (tool.acrossFlats !== wanted.widthMm) return false;
      if ((tool.kind === 'crowfoot') !== (wanted.access === 'open-end')) return false;
      if (wanted.access === 'long' && !state.extended) {
        if (tool.kind !== 'socket' || !tool.long) return false;
      }
      if (wanted.access === 'swivel' && !state.swivelled) return false;
      if (wanted.anyway.includes(wrench.id)) return true;
      return mayBeUsed(wanted, wrench, tool.kind === 'crowfoot' ? tool.offset : 0, on);
    });
  return visit({ drive: wrench.drive, extended: false, swivelled: false, adapted: false });
}

function mayBeUsed(
  { torqueNm, angleDeg }: PlainFastening,
  wrench: Extract<Tool, { kind: 'wrench' }>,
  offset: number,
  on: string,
): boolean {
  const hand = wrench.lengthToGrip ?? 0;
  // Of the force that reads the setting, the moment about the bolt must be the torque.
  const perNewton = (hand + offset * Math.cos((angleDeg * Math.PI) / 180)) / hand;
  const setting = torqueNm / perNewton;
  const slack = 1e-6;
  if (setting < wrench.min.value - slack || setting > wrench.max.value + slack) return false;
  if (setting < 0.2 * wrench.max.value - slack) return false;
  const [year = 0, month = 1, day = 1] = (wrench.calibratedOn ?? '0000-01-01')
    .split('-')
    .map(Number);
  if (Date.parse(on) > Date.UTC(year + 1, month - 1, day)) return false;
  if ((wrench.cyclesSince ?? 0) >= 5_000) return false;
  return wrench.droppedOn === undefined || wrench.droppedOn < (wrench.calibratedOn ?? '');
}
