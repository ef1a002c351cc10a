// Finds what is well written and yet cannot be: bolts that bottom, targets that stay.

import { readQuantity } from '../quantity/quantity.ts';
import { must, should } from './faults.ts';
import { carriersOf } from './freeable.ts';
import type { Content, Subject } from './references.ts';
import type { Fastener, Joint } from './schema.ts';
import type { FileProblem } from './types.ts';

export function senseProblems(subject: Subject): FileProblem[] {
  const { joints } = subject.content;
  return [
    ...Object.entries(joints).flatMap(([id, joint]) => [
      ...holeProblems(subject, id, joint),
      ...Object.entries(joint.fasteners ?? {}).flatMap(([name, fastener]) =>
        lengthProblems(subject, `joints/${id}/fasteners/${name}`, fastener),
      ),
    ]),
    // What was left out as misfitting can't be held against what rests on it.
    ...(subject.mended
      ? []
      : [
          ...leftOutProblems(subject),
          ...gasketProblems(subject),
          ...targetProblems(subject),
          ...isolationProblems(subject),
        ]),
    ...sameNames(subject),
    ...remarks(subject),
  ];
}

function mm(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const read = readQuantity(text, 'mm', '');
  return read.ok ? read.quantity.value : undefined;
}

const tidy = (value: number): string => `${Number(value.toPrecision(6))} mm`;

function lengthProblems(subject: Subject, path: string, fastener: Fastener): FileProblem[] {
  const length = mm(fastener.length);
  const grip = mm(fastener.grip);
  const depth = mm(fastener.holeDepth);
  const drawOff = mm(fastener.drawOff);
  const projection = mm(fastener.projection);
  const isStud = fastener.kind === 'stud and nut';
  const problems: FileProblem[] = [];
  if (!isStud && length !== undefined && grip !== undefined && depth !== undefined) {
    if (length - grip > depth) {
      problems.push(
        must('F15', subject.at(`${path}/length`), {
          got: fastener.length,
          expected: `at most ${tidy(grip + depth)}: the grip and the depth of the hole`,
          why: `it goes ${tidy(length - grip)} into a hole ${tidy(depth)} deep and clamps nothing`,
        }),
      );
    }
  }
  if (isStud && drawOff !== undefined && projection !== undefined && drawOff < projection) {
    problems.push(
      must('F16', subject.at(`${path}/drawOff`), {
        got: fastener.drawOff,
        expected: `${fastener.projection} or more`,
        why: `the studs stand out ${fastener.projection}: the part is not clear of them`,
      }),
    );
  }
  return problems;
}

function holeProblems(subject: Subject, id: string, joint: Joint): FileProblem[] {
  const problems: FileProblem[] = [];
  const seen = new Set<string>();
  for (const [name, { holes, count, kind }] of Object.entries(joint.fasteners ?? {})) {
    if (holes === undefined) continue;
    const path = `joints/${id}/fasteners/${name}/holes`;
    for (const [at, hole] of holes.entries()) {
      const key = String(hole);
      if (seen.has(key)) {
        problems.push(
          must('F17', subject.at(`${path}/${at}`), {
            got: hole,
            expected: 'each hole once in a joint',
            why: `hole ${key} has a fastener already`,
          }),
        );
      }
      seen.add(key);
    }
    if (holes.length === count) continue;
    problems.push(
      must('F17', subject.at(path), {
        got: holes.length,
        expected: `${count} holes, as many as the count`,
        why: `${count} of ${kind} are counted and ${holes.length} holes named`,
      }),
    );
  }
  return problems;
}

/** Ways off that leave a joint between what goes along and what does not. */
function leftOutProblems({ content, at }: Subject): FileProblem[] {
  const { parts, joints } = content;
  const carriers = new Map(Object.keys(parts).map((id) => [id, carriersOf(parts, id)]));
  return Object.entries(parts).flatMap(([id, part]) =>
    Object.entries(part.ways ?? {}).flatMap(([name, way]) => {
      if (way.gives !== 'off') return [];
      const gone = new Set((way.clear ?? []).map((demand) => demand.part));
      const along = Object.keys(parts).filter((rider) => {
        const chain = carriers.get(rider) ?? [];
        return chain.includes(id) && ![rider, ...chain].some((on) => on !== id && gone.has(on));
      });
      const group = new Set([id, ...along]);
      return Object.entries(joints).flatMap(([joint, { between, name: jointName }]) => {
        const others = (between ?? []).filter((other) => !group.has(other));
        const touches = (between ?? []).some((other) => group.has(other));
        if (!touches || others.length === 0 || way.joints.includes(joint)) return [];
        const held = others.map((other) => parts[other]?.name ?? other).join(', ');
        return [
          must('F13', at(`parts/${id}/ways/${name}/joints`), {
            got: way.joints,
            expected: `${joint} among them`,
            why: `${jointName} still holds it to ${held}`,
            remedy: `add ${joint}`,
          }),
        ];
      });
    }),
  );
}

/** A gasket in a joint that joins no parts and that no way undoes is never met by anyone. */
function gasketProblems({ content, at }: Subject): FileProblem[] {
  const undone = new Set(
    Object.values(content.parts).flatMap(({ ways }) =>
      Object.values(ways ?? {}).flatMap(({ joints }) => joints),
    ),
  );
  return Object.entries(content.joints).flatMap(([id, { between, seals, name }]) => {
    if (undone.has(id) || (between ?? []).length > 0) return [];
    return Object.entries(seals ?? {}).map(([seal, { kind }]) =>
      must('F14', at(`joints/${id}/seals/${seal}`), {
        got: seal,
        expected: 'a joint between parts, or one that a way undoes',
        why: `${name} joins no parts and no way undoes it, so nobody would renew this ${kind}`,
        remedy: 'say between which parts the joint is',
      }),
    );
  });
}

/** Whether a part has a way for `as`, its own or by going along with what it sits on. */
function hasWay({ parts }: Content, id: string, as: 'off' | 'aside'): boolean {
  return [id, ...carriersOf(parts, id)].some((one) => {
    const part = parts[one];
    if (part === undefined || part.stays === true) return false;
    return Object.values(part.ways ?? {}).some(({ gives }) => as === 'aside' || gives === 'off');
  });
}

function targetProblems({ content, at }: Subject): FileProblem[] {
  return Object.entries(content.targets).flatMap(([target, { does }]) =>
    Object.entries(does).flatMap(([what, spec]) =>
      (['take', 'bench'] as const).flatMap((list) =>
        (spec[list] ?? []).flatMap(({ part, as }, n) => {
          const known = content.parts[part];
          if (known === undefined || hasWay(content, part, as)) return [];
          const why =
            known.stays === true
              ? `${known.name} stays`
              : `no way is stated to get ${known.name} ${as}`;
          return [
            must('F19', at(`targets/${target}/does/${what}/${list}/${n}`), {
              got: { part, as },
              expected: `a part with a way ${as}`,
              why,
              remedy: `describe a way under parts/${part}/ways`,
            }),
          ];
        }),
      ),
    ),
  );
}

function isolationProblems({ content, at }: Subject): FileProblem[] {
  const { closures, isolations } = content;
  return Object.entries(isolations).flatMap(([id, isolation]) => {
    const path = `isolations/${id}`;
    const problems: FileProblem[] = [];
    const wanted = (closure: string, here: string, kinds: readonly string[]) => {
      const known = closures[closure];
      if (known === undefined || kinds.includes(known.kind)) return;
      const why = `${known.name} is a ${known.kind}`;
      const expected = `a closure of kind ${kinds.join(' or ')}`;
      problems.push(must('F19', at(here), { got: closure, expected, why }));
    };
    for (const [n, { closure }] of isolation.closures.entries()) {
      const known = closures[closure];
      if (known === undefined || known.normal !== undefined) continue;
      problems.push(
        must('F19', at(`${path}/closures/${n}/closure`), {
          got: closure,
          expected: 'a closure whose normal position is stated',
          why: `nobody could put ${known.name} back as it was`,
          remedy: `write normal: under closures/${closure}`,
        }),
      );
    }
    for (const [n, drain] of (isolation.drains ?? []).entries()) {
      wanted(drain, `${path}/drains/${n}`, ['drain']);
    }
    for (const [n, vent] of (isolation.vents ?? []).entries()) {
      wanted(vent, `${path}/vents/${n}`, ['vent']);
    }
    if (isolation.proveAt !== undefined) {
      wanted(isolation.proveAt, `${path}/proveAt`, ['drain', 'vent']);
    }
    return problems;
  });
}

/** Two parts of one name: a step that names one would leave the reader guessing. */
function sameNames({ content, at }: Subject): FileProblem[] {
  const first = new Map<string, string>();
  return Object.entries(content.parts).flatMap(([id, { name }]) => {
    const before = first.get(name);
    if (before === undefined) {
      first.set(name, id);
      return [];
    }
    const why = `${before} has this name too, and steps call parts by name`;
    const expected = 'a name of its own';
    return [should(at(`parts/${id}/name`), { got: name, expected, why })];
  });
}

/** What is no fault and still worth a look. */
function remarks({ content, at }: Subject): FileProblem[] {
  const nameOf = (joint: string) => content.joints[joint]?.name ?? joint;
  return Object.entries(content.parts).flatMap(([id, part]) => {
    const ways = Object.entries(part.ways ?? {});
    const problems: FileProblem[] = [];
    if (part.stays === true && ways.length > 0) {
      const expected = 'no ways, or stays left out';
      const why = `${part.name} stays, so its ways are never used`;
      problems.push(should(at(`parts/${id}/ways`), { got: ways.map(([w]) => w), expected, why }));
    }
    const guarded = ways.map(([, { joints }]) =>
      joints.find((joint) => content.joints[joint]?.doNotDisturb !== undefined),
    );
    const [first] = guarded;
    if (first !== undefined && guarded.every((joint) => joint !== undefined)) {
      problems.push(
        should(at(`parts/${id}/ways`), {
          got: first,
          expected: 'one way that leaves it alone',
          why: `${nameOf(first)} is not to be disturbed, and no way spares it`,
        }),
      );
    }
    return problems;
  });
}
