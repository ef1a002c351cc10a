// Seals that this job opens the way to without disturbing them: old enough ones are done now too.

import { type Context, jointOf } from './context.ts';
import type { FittedOn, NearSeal } from './seal-types.ts';

type Asked = Pick<Context, 'machine' | 'undone' | 'moved'>;

const DAYS_A_YEAR = 365.25;
const DAY_MS = 86_400_000;

/** Joints not undone whose access some part moved here has freed, and nothing else blocks. */
export function nearSeals(c: Asked, fitted: FittedOn, on: string | null): readonly NearSeal[] {
  const undone = new Set(c.undone.map((u) => u.id));
  const moved = new Set(c.moved.map((m) => m.id));
  const opened = Object.entries(c.machine.joints).filter(([id, joint]) => {
    if (undone.has(id)) return false;
    const accesses = Object.values(joint.accesses ?? {});
    return accesses.some(({ clear = [] }) => {
      const parts = clear.map(({ part }) => part);
      return parts.length > 0 && parts.every((part) => moved.has(part));
    });
  });
  return opened.flatMap(([id]) =>
    Object.entries(jointOf(c, id).seals ?? {}).map(([seal, spec]): NearSeal => {
      const fittedOn = fitted[`${c.machine.id} ${id}:${seal}`] ?? spec.fitted ?? null;
      const years = fittedOn === null || on === null ? null : yearsBetween(fittedOn, on);
      const limit = spec.renewAfterYears ?? null;
      return {
        thing: `seal/${id}:${seal}`,
        jointName: jointOf(c, id).name,
        name: spec.name ?? spec.kind,
        fittedOn,
        years: years === null ? null : Number(years.toFixed(1)),
        renewAfterYears: limit,
        doNow: years !== null && limit !== null && years >= limit,
      };
    }),
  );
}

const yearsBetween = (from: string, to: string): number =>
  (Date.parse(to) - Date.parse(from.slice(0, 10))) / DAY_MS / DAYS_A_YEAR;
