// What is wrong with an input of `removal`: ids nobody knows, ways that tear a joint or never open.

import { reachable } from './graph.ts';
import {
  type Demand,
  type FullInput,
  machineOf,
  type PlainInput,
  type Problem,
  type RemovalInput,
  type SequenceInput,
} from './model.ts';

/** Problems that make the input unusable: calculating refuses it. */
export function inputProblems(input: RemovalInput): Problem[] {
  if (!('parts' in input)) return plainProblems(input);
  const wrong = idProblems(input);
  return wrong.length > 0 ? wrong : leftOutProblems(input);
}

/** All *must* problems of a full input, also ways that nothing can ever satisfy. */
export function removalProblems(input: FullInput): Problem[] {
  const wrong = inputProblems(input);
  return wrong.length > 0 ? wrong : neverProblems(input);
}

function plainProblems(input: PlainInput | SequenceInput): Problem[] {
  const problems: Problem[] = [];
  const count = 'time' in input ? input.time.length : input.cost.length;
  const wrongLength = (path: string, length: number) => {
    if (length === count) return;
    problems.push({
      path,
      got: length,
      expected: `${count} entries, one a part`,
      why: 'every list of a plain form has one entry a part',
    });
  };
  const outside = (path: string, part: number) => {
    if (part < count) return;
    problems.push({
      path,
      got: part,
      expected: `a part index from 0 to ${count - 1}`,
      why: 'no such part',
    });
  };
  wrongLength('blockers', input.blockers.length);
  if ('time' in input) {
    wrongLength('tool', input.tool.length);
    wrongLength('side', input.side.length);
  } else {
    input.targets.forEach((part, at) => {
      outside(`targets/${at}`, part);
    });
  }
  input.blockers.forEach((groups, part) => {
    groups.forEach((group, way) => {
      group.forEach((blocker, at) => {
        outside(`blockers/${part}/${way}/${at}`, blocker);
      });
    });
  });
  return problems;
}

/** Ids that name no part or joint, ids given twice, and parts that sit on themselves. */
export function idProblems(input: FullInput): Problem[] {
  const problems: Problem[] = [];
  const check = (map: object, kind: string, path: string, key: string) => {
    if (Object.hasOwn(map, key)) return;
    problems.push({
      path,
      got: key,
      expected: `the id of a ${kind}`,
      why: `no ${kind} has this id`,
    });
  };
  const part = (path: string, key: string) => check(input.parts, 'part', path, key);
  const joint = (path: string, key: string) => check(input.joints, 'joint', path, key);
  const clear = (path: string, demands: readonly Demand[] | undefined) => {
    (demands ?? []).forEach((demand, at) => {
      part(`${path}/clear/${at}/part`, demand.part);
    });
  };
  for (const [key, { ways, on }] of Object.entries(input.parts)) {
    if (on !== undefined) part(`parts/${key}/on`, on);
    problems.push(...twice(`parts/${key}/ways`, ways ?? []));
    (ways ?? []).forEach((way, at) => {
      const path = `parts/${key}/ways/${at}`;
      (way.joints ?? []).forEach((id, n) => {
        joint(`${path}/joints/${n}`, id);
      });
      clear(path, way.clear);
    });
  }
  for (const [key, { accesses, between }] of Object.entries(input.joints)) {
    (between ?? []).forEach((id, at) => {
      part(`joints/${key}/between/${at}`, id);
    });
    problems.push(...twice(`joints/${key}/accesses`, accesses ?? []));
    (accesses ?? []).forEach((access, at) => {
      clear(`joints/${key}/accesses/${at}`, access.clear);
    });
  }
  input.targets.forEach((target, at) => {
    part(`targets/${at}/part`, target.part);
  });
  const { off = [], aside = [], joints = [] } = input.already ?? {};
  off.forEach((id, at) => {
    part(`already/off/${at}`, id);
  });
  aside.forEach((id, at) => {
    part(`already/aside/${at}`, id);
  });
  joints.forEach((id, at) => {
    joint(`already/joints/${at}`, id);
  });
  return problems.length > 0 ? problems : onProblems(input);
}

function twice(path: string, list: readonly { readonly id: string }[]): Problem[] {
  const seen = new Set<string>();
  const problems: Problem[] = [];
  list.forEach(({ id }, at) => {
    if (seen.has(id)) {
      problems.push({
        path: `${path}/${at}/id`,
        got: id,
        expected: 'an id used once here',
        why: 'given twice',
      });
    }
    seen.add(id);
  });
  return problems;
}

/** What `part` sits on, nearest first; it ends where the chain would close on itself. */
function carriers(input: FullInput, part: string): string[] {
  const chain: string[] = [];
  for (let at = input.parts[part]?.on; at !== undefined; at = input.parts[at]?.on) {
    if (chain.includes(at)) break;
    chain.push(at);
  }
  return chain;
}

function onProblems(input: FullInput): Problem[] {
  return Object.keys(input.parts)
    .filter((key) => carriers(input, key).includes(key))
    .map((key) => ({
      path: `parts/${key}/on`,
      got: input.parts[key]?.on,
      expected: 'a part that does not itself sit on this one',
      why: `${key} would sit on itself`,
    }));
}

/** Ways off that leave a joint between what goes along and what does not. */
function leftOutProblems(input: FullInput): Problem[] {
  const problems: Problem[] = [];
  const jointsOf = new Map<string, string[]>();
  for (const [key, { between }] of Object.entries(input.joints)) {
    for (const id of between ?? []) jointsOf.set(id, [...(jointsOf.get(id) ?? []), key]);
  }
  const riders = new Map<string, string[]>();
  for (const key of Object.keys(input.parts)) {
    for (const on of carriers(input, key)) riders.set(on, [...(riders.get(on) ?? []), key]);
  }
  for (const [key, { ways }] of Object.entries(input.parts)) {
    (ways ?? []).forEach((way, at) => {
      if (way.gives !== 'off') return;
      const gone = new Set((way.clear ?? []).map(({ part }) => part));
      const along = (riders.get(key) ?? []).filter(
        (id) => ![id, ...carriers(input, id)].some((on) => on !== key && gone.has(on)),
      );
      const group = new Set([key, ...along]);
      for (const joint of new Set([...group].flatMap((id) => jointsOf.get(id) ?? []))) {
        const others = (input.joints[joint]?.between ?? []).filter((id) => !group.has(id));
        if (others.length === 0 || (way.joints ?? []).includes(joint)) continue;
        problems.push({
          path: `parts/${key}/ways/${at}/joints`,
          got: way.joints ?? [],
          expected: `joint ${joint} among them`,
          why: `joint ${joint} holds what goes off this way to ${others.join(', ')}, which stays`,
          remedy: `add ${joint} to the joints of way ${way.id}`,
        });
      }
    });
  }
  return problems;
}

/** Ways that are given and that nothing can satisfy, for example because they need each other. */
function neverProblems(input: FullInput): Problem[] {
  const machine = machineOf(input);
  const can = reachable(machine);
  return machine.parts.flatMap((part) =>
    part.ways.flatMap((way, at): Problem[] => {
      const why = can.whyNot(way);
      if (why === null) return [];
      return [
        {
          path: `parts/${part.id}/ways/${at}`,
          got: way.id,
          expected: 'a way that can be done on this machine',
          why: `way ${way.id} of ${part.name} can never be done: ${why}`,
        },
      ];
    }),
  );
}
