// The integer program in LP format: one supporter a fact, and order variables inside circles.

import type { Indexed } from './heuristic.ts';
import type { Program } from './model.ts';

export type ProgramOptions = {
  /** Facts that hold in every plan. */
  readonly mandatory: readonly number[];
  /** Sets of rules of which every plan uses at least one. */
  readonly landmarks: readonly (readonly number[])[];
  readonly start: readonly number[];
};

/** LP lines stay short of what readers of the format accept. */
const TERMS_A_LINE = 12;

/** Variables: `y` a rule is used; `t` when a fact comes to hold, only inside circles. */
export function programOf(list: Indexed, cost: Float64Array, options: ProgramOptions): Program {
  const part = strongParts(list);
  const rows = [
    ...supportRows(list, options.mandatory),
    ...needRows(list, part),
    ...options.landmarks.map((set) => `${sum(set.map((at) => `y${at}`))} >= 1`),
  ];
  const times = [...part.size].flatMap(([name, size]) =>
    size < 2 ? [] : part.members(name).map((fact) => `0 <= t${fact} <= ${size - 1}`),
  );
  const objective = list.rules.map((_, at) => `${number(cost[at] ?? 0)} y${at}`);
  const text = [
    'Minimize',
    ` obj: ${sum(objective)}`,
    'Subject To',
    ...rows.map((row, at) => ` c${at}: ${row}`),
    'Bounds',
    ...times.map((time) => ` ${time}`),
    'Binary',
    ...list.rules.map((_, at) => ` y${at}`),
    'End',
    '',
  ].join('\n');
  return { text, start: startOf(list, part, options.start) };
}

/** The rules that a solver's answer uses. */
export function chosenRules(list: Indexed, values: ReadonlyMap<string, number>): number[] {
  return list.rules.flatMap((_, at) => ((values.get(`y${at}`) ?? 0) > 0.5 ? [at] : []));
}

const number = (value: number): string => `${Math.round(value * 1e9) / 1e9}`;

function sum(terms: readonly string[]): string {
  const lines: string[] = [];
  for (let at = 0; at < terms.length; at += TERMS_A_LINE) {
    lines.push(terms.slice(at, at + TERMS_A_LINE).join(' + '));
  }
  return lines.join('\n   + ');
}

const used = (rules: readonly number[]) => rules.map((at) => `y${at}`);
const minus = (rules: readonly number[]) =>
  rules.map((at, n) => `${n % TERMS_A_LINE === TERMS_A_LINE - 1 ? '\n   ' : ''}- y${at}`).join(' ');

/** A fact has at most one supporter; a mandatory one exactly one. */
function supportRows(list: Indexed, mandatory: readonly number[]): string[] {
  const must = new Set([...mandatory, ...list.targets]);
  return list.givers.flatMap((givers, fact) => {
    if (must.has(fact)) return [`${sum(used(givers))} = 1`];
    return givers.length > 1 ? [`${sum(used(givers))} <= 1`] : [];
  });
}

/** The supporters of `fact` that need `need`: at most one is used, so they share one row. */
function arcs(list: Indexed, fact: number): Map<number, number[]> {
  const found = new Map<number, number[]>();
  for (const at of list.givers[fact] ?? []) {
    for (const need of list.rules[at]?.needs ?? []) {
      const rules = found.get(need);
      if (rules === undefined) found.set(need, [at]);
      else rules.push(at);
    }
  }
  return found;
}

/** What is used has what it needs, and inside a circle has it earlier. */
function needRows(list: Indexed, part: StrongParts): string[] {
  const rows: string[] = [];
  const all = Array.from({ length: list.count }, (_, fact) => arcs(list, fact));
  all.forEach((needs, fact) => {
    for (const [need, rules] of needs) {
      // Two facts can't each rest on the other, so both directions share the bound.
      const back = part.same(fact, need) ? (all[need]?.get(fact) ?? []) : [];
      const supporters = (list.givers[need] ?? []).filter((at) => !back.includes(at));
      rows.push(`${sum(used(rules))} ${minus(supporters)} <= 0`);
      if (!part.same(fact, need)) continue;
      const size = part.sizeOf(fact);
      const terms = rules.map((at) => `${size} y${at}`);
      rows.push(`t${need} - t${fact} + ${sum(terms)} <= ${size - 1}`);
    }
  });
  return rows;
}

type StrongParts = {
  readonly size: ReadonlyMap<number, number>;
  readonly same: (a: number, b: number) => boolean;
  readonly of: (fact: number) => number;
  readonly sizeOf: (fact: number) => number;
  readonly members: (part: number) => number[];
};

/** Strongly connected parts of "may rest on", by Tarjan's method without recursion. */
export function strongParts(list: Indexed): StrongParts {
  const next = Array.from({ length: list.count }, (_, fact) => [...arcs(list, fact).keys()]);
  const index = new Int32Array(list.count).fill(-1);
  const low = new Int32Array(list.count);
  const onStack = new Uint8Array(list.count);
  const part = new Int32Array(list.count).fill(-1);
  const size = new Map<number, number>();
  const stack: number[] = [];
  let entered = 0;
  const enter = (fact: number, calls: [number, number][]) => {
    index[fact] = entered;
    low[fact] = entered;
    entered += 1;
    stack.push(fact);
    onStack[fact] = 1;
    calls.push([fact, 0]);
  };
  const close = (fact: number) => {
    let members = 0;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      onStack[at] = 0;
      part[at] = fact;
      members += 1;
      if (at === fact) break;
    }
    size.set(fact, members);
  };
  for (let root = 0; root < list.count; root += 1) {
    if ((index[root] ?? 0) >= 0) continue;
    const calls: [number, number][] = [];
    enter(root, calls);
    for (let call = calls[calls.length - 1]; call !== undefined; call = calls[calls.length - 1]) {
      const [fact, n] = call;
      const to = next[fact]?.[n];
      if (to === undefined) {
        calls.pop();
        if (low[fact] === index[fact]) close(fact);
        const above = calls[calls.length - 1]?.[0];
        if (above !== undefined) low[above] = Math.min(low[above] ?? 0, low[fact] ?? 0);
        continue;
      }
      call[1] += 1;
      if ((index[to] ?? 0) < 0) enter(to, calls);
      else if (onStack[to]) low[fact] = Math.min(low[fact] ?? 0, index[to] ?? 0);
    }
  }
  const members = new Map<number, number[]>();
  part.forEach((name, fact) => {
    const list = members.get(name);
    if (list === undefined) members.set(name, [fact]);
    else list.push(fact);
  });
  return {
    size,
    same: (a, b) => part[a] === part[b],
    of: (fact) => part[fact] ?? -1,
    sizeOf: (fact) => size.get(part[fact] ?? -1) ?? 1,
    members: (name) => members.get(name) ?? [],
  };
}

/** The first answer as variables, so that the solver starts with something to beat. */
function startOf(list: Indexed, part: StrongParts, plan: readonly number[]): Map<string, number> {
  const start = new Map<string, number>(list.rules.map((_, at) => [`y${at}`, 0]));
  const counted = new Map<number, number>();
  for (const [name, size] of part.size) {
    if (size > 1) for (const fact of part.members(name)) start.set(`t${fact}`, 0);
  }
  for (const at of plan) {
    const gives = list.rules[at]?.gives;
    if (gives === undefined) continue;
    start.set(`y${at}`, 1);
    if (part.sizeOf(gives) < 2) continue;
    const time = counted.get(part.of(gives)) ?? 0;
    counted.set(part.of(gives), time + 1);
    start.set(`t${gives}`, time);
  }
  return start;
}
