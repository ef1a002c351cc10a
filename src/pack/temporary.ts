// The temporary things of a job, numbered from 1: blanks, guide studs, ties; each is counted back.

import {
  type Context,
  jointOf,
  movedBetween,
  opensLine,
  partOf,
  targetJoints,
  wayOf,
} from './context.ts';
import { holdersOf } from './holding.ts';
import { joined } from './joint-shape.ts';

export type Temporary = {
  readonly n: number;
  readonly name: string;
  readonly kind: 'blank' | 'guide studs' | 'support' | 'other';
  readonly where: string;
  /** The joint it blanks or guides, or the part it supports. */
  readonly of: string;
  /** The part whose moving makes it needed. */
  readonly part: string;
  /** It takes the weight before the joints that hold the part are loose. */
  readonly before?: true;
};

export const temporaries = (c: Context): Temporary[] => {
  const rows: Omit<Temporary, 'n'>[] = [...blanks(c), ...supports(c), ...guides(c)];
  return rows.map((row, i) => ({ n: i + 1, ...row }));
};

/** An open end stays where a line is opened and one of its parts stays fitted or goes aside. */
const blanks = (c: Context): Omit<Temporary, 'n'>[] =>
  c.undone
    .filter((u) => !u.bench && opensLine(c.machine, u.id))
    .flatMap((u) => {
      const joint = jointOf(c, u.id);
      const moved = movedBetween(c, u.id).filter((p) => !inPlaceOnly(c, p));
      const off = moved.filter((p) => c.moved.some((m) => m.id === p && m.as === 'off'));
      const open = (joint.between ?? []).filter((p) => !off.includes(p));
      const part = c.moved.find((m) => moved.includes(m.id))?.id;
      if (part === undefined || open.length === 0) return [];
      const name = joint.blank ?? c.say('blankFor', joint.name.toLowerCase());
      const where = joined(
        open.map((p) => partOf(c, p).name),
        c.say,
      );
      return [{ name, kind: 'blank' as const, where, of: u.id, part }];
    });

/** A cover or impeller drawn from a part that stays leaves no pipe end to blank. */
const inPlaceOnly = (c: Context, part: string): boolean => {
  const on = partOf(c, part).on;
  return on !== undefined && !c.moved.some((m) => m.id === on);
};

/** What holds a heavy part is in before its joints are loose; a light one is tied up once aside. */
const supports = (c: Context): Omit<Temporary, 'n'>[] =>
  c.moved.flatMap((m): Omit<Temporary, 'n'>[] => {
    const [where, of, part] = [partOf(c, m.id).name, m.id, m.id];
    const holders = holdersOf(c, m);
    if (holders.length > 0)
      return holders.map((name) => ({ name, kind: 'support', where, of, part, before: true }));
    const kind = m.as === 'aside' ? 'support' : 'other';
    return (wayOf(c, m)?.temporary ?? []).map((name) => ({ name, kind, where, of, part }));
  });

/**
 * Where the part is driven or sits in a spigot, and no stud stays in the housing to take its
 * weight, it is offered up on guide studs, never on its shaft.
 */
const guides = (c: Context): Omit<Temporary, 'n'>[] =>
  targetJoints(c).mounting.flatMap((j) => {
    const joint = jointOf(c, j);
    const fasteners = Object.values(joint.fasteners ?? {});
    const bolts = fasteners.filter(
      (f) => (f.kind === 'bolt' || f.kind === 'cap screw') && f.into !== undefined,
    );
    const driven =
      Object.keys(joint.seals ?? {}).length > 0 ||
      Object.values(joint.loose ?? {}).some((l) => l.kind === 'drive tang' || l.kind === 'key');
    const count = bolts.reduce((s, f) => s + f.count, 0);
    if (!driven || count < 3 || fasteners.some((f) => f.kind === 'stud and nut')) return [];
    const [thread, two] = [bolts[0]?.thread, c.say('twoGuideStuds')];
    const name = thread === undefined ? two : c.say('ofThread', two, thread);
    return [{ name, kind: 'guide studs' as const, where: joint.name, of: j, part: c.targetId }];
  });
