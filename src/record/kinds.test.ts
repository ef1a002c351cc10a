// The table of kinds is the one in docs/record.md, and its shapes refuse what they should.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { PackFacts } from '../pack/types.ts';
import { bodies, type Kind } from './bodies.ts';
import { fixturePack, wholeJob } from './fixture.ts';
import { kindOf, kinds } from './kinds.ts';
import type { ActBody } from './types.ts';

const given = fixturePack().facts;
const guard = given.joints.guard;

/** One joint J with a seal S, a loose part L and a proof P, which the part X also owes. */
function symbols(): PackFacts {
  if (guard === undefined) throw new Error('the fixture has a guard');
  const J = {
    ...guard,
    seals: [{ id: 'S', name: 'S', count: 1 }],
    loose: [{ id: 'L', name: 'L', count: 1 }],
    proofs: ['P'],
  };
  const proof = { name: 'P', what: '', owedBy: ['part/X'] };
  const asFound = { target: 'I', name: 'I', owedBy: ['part/X'] };
  return { ...given, joints: { J }, proofs: { P: proof }, asFound };
}

const THINGS: Partial<Record<Kind, string>> = {
  shut: 'closure/C',
  restored: 'closure/C',
  tagged: 'tag/n',
  untagged: 'tag/n',
  'drain-opened': 'drain/D',
  'drain-shut': 'drain/D',
  'proved-dead': 'drain/D',
  'put-in': 'temp/n',
  'taken-away': 'temp/n',
  undone: 'joint/J',
  made: 'joint/J',
  'moved-off': 'part/X',
  'moved-aside': 'part/X',
  refitted: 'part/X',
  'item-out': 'item/I',
  'item-in': 'item/I',
  'as-found': 'item/I',
  accounted: 'missing/I',
  'checked-tight': 'joint/J',
  're-tightened': 'joint/J',
  'seal-out': 'seal/J:S',
  'seal-in': 'seal/J:S',
  'loose-out': 'loose/J:L',
  'loose-in': 'loose/J:L',
  proof: 'proof/P',
  'took-off': 'part/X',
  'put-back': 'part/X',
  'shut-or-unplugged': 'closure/C',
};

/** A thing taken off with all that it may be said to have. */
const TAKEN = { fasteners: [{ count: 6, what: 'bolt' }], seals: 1, sealsLeft: 1, wet: 'yes' };

function table(): string {
  const facts = symbols();
  const lines = Object.entries(kinds).map(([kind, row]) => {
    const thing = THINGS[kind as Kind] ?? 'job';
    const more = kind === 'took-off' ? TAKEN : kind === 'as-found' ? { missing: 1 } : {};
    const found = { left: 0 };
    const says = (result: string) => ({ thing, result, ...more }) as ActBody;
    const opens = row.opens(says('fail'), facts).map((o) => `\`${o.thing}\``);
    const closes = row.closes({ ...says('pass'), ...found }, facts).map((t) => `\`${t}\``);
    const cells = [
      `\`${kind}\``,
      row.says,
      row.stream.join(', '),
      opens.join(' ') || '–',
      closes.join(' ') || '–',
      row.step ? 'yes' : '–',
    ];
    return `| ${cells.join(' | ')} |`;
  });
  const head = '| kind | says | stream | opens | closes | reports a step |';
  return [head, '| --- | --- | --- | --- | --- | --- |', ...lines].join('\n');
}

test('docs/record.md holds this table', () => {
  const doc = readFileSync(new URL('../../docs/record.md', import.meta.url), 'utf8');
  const [, between] = doc.split(/<!-- kinds: .* -->\n/);
  expect(between?.trim()).toBe(table());
});

test('every verb of a step is a kind that reports a step, and no other kind does', () => {
  const used = new Set(fixturePack().steps.map((s) => s.verb as string));
  for (const verb of used) expect(kindOf(verb)?.step).toBe(true);
  const ofJob = Object.entries(kinds).filter(([, row]) => row.step);
  expect(ofJob).toHaveLength(35);
});

test('every kind has a body, and a whole job is of sound bodies', () => {
  expect(Object.keys(kinds).sort()).toEqual(Object.keys(bodies).sort());
  for (const draft of wholeJob(fixturePack()))
    expect(kindOf(draft.kind)?.body.safeParse(draft.body).success, draft.kind).toBe(true);
});

test('an unknown kind, and names that every object has, are no kinds', () => {
  for (const kind of ['sung', 'toString', '__proto__', 'constructor'])
    expect(kindOf(kind)).toBeNull();
});

test.each<[string, Kind, ActBody]>([
  ['a thing of another sort', 'undone', { thing: 'part/pump' }],
  ['no thing', 'made', {}],
  ['holes that are no words', 'made', { thing: 'joint/x', holes: [{}] }],
  ['a count below nothing', 'seal-out', { thing: 'seal/x:y', count: -1 }],
  ['a nested answer', 'checked', { thing: 'check/x', result: { deep: true } }],
  ['an unknown result', 'proof', { thing: 'proof/x', result: 'fine' }],
  ['a proof of nothing seen', 'proved-dead', { thing: 'drain/x' }],
  ['no reason', 'used-anyway', { thing: 'part/x', limits: 'l' }],
  ['an empty reason', 'used-anyway', { thing: 'part/x', reason: ' ', limits: 'l' }],
  ['a field too many', 'found', { thing: 'part/x', what: 'y', more: 1 }],
])('refused: %s', (_, kind, body) => {
  expect(bodies[kind].safeParse(body).success).toBe(false);
});
