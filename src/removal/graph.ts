// The machine as facts and rules: a rule gives one fact once all the facts it needs hold.

import type { Machine, MachineWay, Need, State } from './model.ts';

export type Action =
  | { readonly kind: 'undo'; readonly joint: number; readonly access: number | null }
  | { readonly kind: 'move'; readonly part: number; readonly way: number };

export type Rule = {
  readonly gives: number;
  readonly needs: readonly number[];
  readonly cost: number;
  /** How many joints are undone here that are better left alone. */
  readonly flagged: number;
  /** What a person does, in order; none where one state merely follows from another. */
  readonly actions: readonly number[];
};

export type Graph = {
  readonly count: number;
  readonly rules: readonly Rule[];
  readonly targets: readonly number[];
};

export type MachineGraph = Graph & {
  readonly actions: readonly Action[];
  /** Facts that hold before anything is done. */
  readonly given: ReadonlySet<number>;
  readonly facts: Facts;
};

/** The numbering of facts: each joint undone, then four states of each part. */
export type Facts = {
  readonly joint: (joint: number) => number;
  readonly state: (need: Need) => number;
  /** Reached by a way of the part itself, not by going along with what it sits on. */
  readonly own: (need: Need) => number;
  readonly count: number;
};

function factsOf(machine: Machine): Facts {
  const base = machine.joints.length;
  const of = (part: number, as: State) => base + 4 * part + (as === 'off' ? 1 : 0);
  return {
    joint: (joint) => joint,
    state: ({ part, as }) => of(part, as),
    own: ({ part, as }) => of(part, as) + (machine.parts[part]?.on === null ? 0 : 2),
    count: base + 4 * machine.parts.length,
  };
}

/** Builds the graph; facts that hold already are taken out of every need. */
export function graphOf(machine: Machine): MachineGraph {
  const facts = factsOf(machine);
  const actions: Action[] = [];
  const raw = [...jointRules(machine, facts, actions), ...partRules(machine, facts, actions)];
  const given = givenFacts(machine, facts, raw);
  const rules: Rule[] = [];
  for (const rule of raw) {
    if (given.has(rule.gives)) continue;
    const needs = [...new Set(rule.needs)].filter((need) => !given.has(need));
    if (needs.includes(rule.gives)) continue;
    rules.push({ ...rule, needs });
  }
  // A target is wanted in hand: going along with what it sits on does not count.
  const targets = [...new Set(machine.targets.map(facts.own))].filter((fact) => !given.has(fact));
  return { count: facts.count, rules, targets, actions, given, facts };
}

function jointRules(machine: Machine, facts: Facts, actions: Action[]): Rule[] {
  return machine.joints.flatMap((joint, at) => {
    const rule = (access: number | null, clear: readonly Need[]): Rule => ({
      gives: facts.joint(at),
      needs: clear.map(facts.state),
      cost: joint.undo + joint.make,
      flagged: joint.protected ? 1 : 0,
      actions: [actions.push({ kind: 'undo', joint: at, access }) - 1],
    });
    if (joint.accesses === null) return [rule(null, [])];
    return joint.accesses.map(({ clear }, access) => rule(access, clear));
  });
}

function partRules(machine: Machine, facts: Facts, actions: Action[]): Rule[] {
  const follows = (need: number, gives: number): Rule => ({
    gives,
    needs: [need],
    cost: 0,
    flagged: 0,
    actions: [],
  });
  return machine.parts.flatMap((part, at) => {
    const rules = part.ways.map(
      (way, n): Rule => ({
        gives: facts.own({ part: at, as: way.gives }),
        needs: [...way.joints.map(facts.joint), ...way.clear.map(facts.state)],
        cost: way.minutes,
        flagged: 0,
        actions: [actions.push({ kind: 'move', part: at, way: n }) - 1],
      }),
    );
    const off = { part: at, as: 'off' } as const;
    const aside = { part: at, as: 'aside' } as const;
    rules.push(follows(facts.own(off), facts.own(aside)));
    if (part.on === null) return rules;
    for (const need of [off, aside]) {
      rules.push(follows(facts.own(need), facts.state(need)));
      rules.push(follows(facts.state({ part: part.on, as: need.as }), facts.state(need)));
    }
    return rules;
  });
}

function givenFacts(machine: Machine, facts: Facts, rules: readonly Rule[]): Set<number> {
  const { off, aside, joints } = machine.already;
  const given = new Set<number>(joints.map(facts.joint));
  for (const part of [...off, ...aside]) {
    given.add(facts.state({ part, as: 'aside' })).add(facts.own({ part, as: 'aside' }));
  }
  for (const part of off) {
    given.add(facts.state({ part, as: 'off' })).add(facts.own({ part, as: 'off' }));
  }
  const following = rules.filter((rule) => rule.actions.length === 0);
  for (let grown = true; grown; ) {
    grown = false;
    for (const rule of following) {
      if (given.has(rule.gives) || !rule.needs.every((need) => given.has(need))) continue;
      given.add(rule.gives);
      grown = true;
    }
  }
  return given;
}

/** The facts that can be made to hold at all. */
export function derivable(graph: Graph): Uint8Array {
  const holds = new Uint8Array(graph.count);
  const missing = graph.rules.map((rule) => rule.needs.length);
  const users: number[][] = Array.from({ length: graph.count }, () => []);
  const queue: number[] = [];
  const reach = (fact: number) => {
    if (holds[fact]) return;
    holds[fact] = 1;
    queue.push(fact);
  };
  graph.rules.forEach((rule, at) => {
    for (const need of rule.needs) users[need]?.push(at);
  });
  for (const rule of graph.rules) if (rule.needs.length === 0) reach(rule.gives);
  for (let fact = queue.pop(); fact !== undefined; fact = queue.pop()) {
    for (const at of users[fact] ?? []) {
      const left = (missing[at] ?? 0) - 1;
      missing[at] = left;
      const rule = graph.rules[at];
      if (left === 0 && rule !== undefined) reach(rule.gives);
    }
  }
  return holds;
}

type Reach = {
  /** Why this target can't be reached, null when it can. */
  readonly whyNotTarget: (need: Need) => string | null;
  /** Why this way can never be done, null when it can (or when it rests on an unknown). */
  readonly whyNot: (way: MachineWay) => string | null;
};

/** Which ways can ever be done; parts whose ways are unknown get the benefit of the doubt. */
export function reachable(machine: Machine): Reach {
  const graph = graphOf(machine);
  const unknown = machine.parts.flatMap((part, at): Rule[] => {
    if (part.waysKnown || part.stays) return [];
    const gives = graph.facts.own({ part: at, as: 'off' });
    return [{ gives, needs: [], cost: 0, flagged: 0, actions: [] }];
  });
  return reasons(machine, graph, derivable({ ...graph, rules: [...graph.rules, ...unknown] }));
}

/** The same without any benefit of the doubt: what a plan can use. */
export function plannable(machine: Machine, graph: MachineGraph): Reach {
  return reasons(machine, graph, derivable(graph));
}

/** Circles longer than this are told by their first members. */
const TOLD_DEPTH = 6;

function reasons(machine: Machine, graph: MachineGraph, holds: Uint8Array): Reach {
  const { facts, given } = graph;
  const has = (fact: number) => given.has(fact) || holds[fact] === 1;
  const partName = (part: number) =>
    machine.plain ? `part ${part}` : (machine.parts[part]?.name ?? `part ${part}`);

  function whyNotPart(need: Need, path: readonly number[]): string {
    const part = machine.parts[need.part];
    const name = partName(need.part);
    if (part === undefined) return `${name} is not known`;
    if (part.stays) return `${name} stays`;
    if (!part.waysKnown) return `no way is known for ${name}`;
    if (path.includes(need.part)) {
      const circle = path.slice(path.indexOf(need.part)).map(partName);
      return circle.length === 1
        ? `${name} waits for itself`
        : `${circle.join(' waits for ')} waits for ${name}`;
    }
    if (path.length >= TOLD_DEPTH) return `${name} can't be moved either`;
    const ways = part.ways.filter((way) => need.as === 'aside' || way.gives === 'off');
    if (ways.length === 0) return `${name} has no way ${need.as}`;
    const first = ways[0];
    const inner = first === undefined ? null : whyNotWay(first, [...path, need.part]);
    const more = ways.length > 1 ? ` (nor by its other ${ways.length - 1})` : '';
    const way = machine.plain ? '' : ` by way ${first?.name ?? ''}`;
    return `${name} can't come ${need.as}${way}${more}: ${inner ?? 'nothing frees it'}`;
  }

  function whyNotWay(way: MachineWay, path: readonly number[]): string | null {
    for (const need of way.clear) {
      if (!has(facts.state(need))) return whyNotPart(need, path);
    }
    for (const at of way.joints) {
      if (has(facts.joint(at))) continue;
      const joint = machine.joints[at];
      const access = joint?.accesses?.[0];
      if (access === undefined) return `joint ${joint?.name} can't be reached`;
      const need = access.clear.find((one) => !has(facts.state(one)));
      if (need === undefined) continue;
      const count = joint?.accesses?.length ?? 1;
      const more = count > 1 ? `none of its ${count} accesses opens; by the first ` : '';
      return `joint ${joint?.name} can't be reached: ${more}${whyNotPart(need, path)}`;
    }
    return null;
  }

  return {
    whyNot: (way) => whyNotWay(way, []),
    whyNotTarget: (need) => (has(facts.own(need)) ? null : whyNotPart(need, [])),
  };
}
