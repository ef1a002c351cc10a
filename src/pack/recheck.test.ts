// What may be done to a joint that is tight: the rule over every combination, and in a pack.

import { expect, test } from 'vitest';
import type { Fastener, Joint, ValueEntry } from '../plant/schema.ts';
import { recheckRule, type WhyNot } from './recheck.ts';

const LOCKING = [undefined, 'threadlock, medium', 'tab washer', 'nylon insert'] as const;
const BY = [undefined, 'torque', 'angle', 'yield'] as const;
const SEALS = ['none', 'ring', 'gasket', 'both'] as const;
const ISSUED = ['none', 'torque', 'torque and angle', 'range'] as const;
const RETIGHTEN = ['none', 'torque', 'clearance', 'unknown'] as const;
const KINDS = ['stud and nut', 'hose clip'] as const;

const torque = (value: string): ValueEntry => ({ name: 'Nuts', kind: 'torque', value });
const VALUES: Readonly<Record<string, ValueEntry>> = {
  torque: torque('48 N.m'),
  'torque and angle': torque('40 N.m + 90 deg'),
  range: { name: 'Nuts', kind: 'torque', min: '40 N.m', max: '50 N.m' },
  clearance: { name: 'Gap', kind: 'clearance', value: '1 mm' },
};

type Case = {
  readonly locking: (typeof LOCKING)[number];
  readonly by: (typeof BY)[number];
  readonly seals: (typeof SEALS)[number];
  readonly issued: (typeof ISSUED)[number];
  readonly retighten: (typeof RETIGHTEN)[number];
  readonly kind: (typeof KINDS)[number];
};

const cases: readonly Case[] = LOCKING.flatMap((locking) =>
  BY.flatMap((by) =>
    SEALS.flatMap((seals) =>
      ISSUED.flatMap((issued) =>
        RETIGHTEN.flatMap((retighten) =>
          KINDS.map((kind) => ({ locking, by, seals, issued, retighten, kind })),
        ),
      ),
    ),
  ),
);

const seal = (kind: 'ring' | 'gasket') => ({ [kind]: { kind, count: 1 } });

const jointOf = ({ locking, by, seals, issued, retighten, kind }: Case): Joint => {
  const nuts: Fastener = {
    kind,
    count: 4,
    ...(locking === undefined ? {} : { locking }),
    ...(by === undefined ? {} : { tightenedBy: by }),
    ...(issued === 'none' ? {} : { tightening: issued }),
  };
  return {
    name: 'J',
    fasteners: { nuts },
    seals: {
      ...(seals === 'ring' || seals === 'both' ? seal('ring') : {}),
      ...(seals === 'gasket' || seals === 'both' ? seal('gasket') : {}),
    },
    ...(retighten === 'none' ? {} : { retighten: { value: retighten, when: 'cold' } }),
  };
};

/** Said by hand, case by case, and not as the code says it. */
const turnable = (c: Case): boolean =>
  c.kind === 'stud and nut' &&
  (c.locking === undefined || c.locking === 'nylon insert') &&
  (c.by === undefined || c.by === 'torque') &&
  c.issued !== 'torque and angle' &&
  c.seals !== 'ring';

test(`each of ${cases.length} combinations is offered what may be done, or told why not`, () => {
  let [checks, retightenings] = [0, 0];
  for (const c of cases) {
    const { check, retighten } = recheckRule(jointOf(c), VALUES);
    const [one] = check;
    const mayCheck = turnable(c) && c.issued === 'torque';
    expect(one?.value, JSON.stringify(c)).toBe(mayCheck ? 'torque' : null);
    expect(one?.why.length === 0, JSON.stringify(c)).toBe(mayCheck);
    const gasket = c.seals === 'gasket' || c.seals === 'both';
    const may = turnable(c) && gasket && c.retighten === 'torque';
    expect(retighten.value, JSON.stringify(c)).toBe(may ? 'torque' : null);
    expect(retighten.why.length === 0, JSON.stringify(c)).toBe(may);
    if (mayCheck) checks += 1;
    if (may) retightenings += 1;
  }
  // 2 lockings × 2 ways of tightening × seals × …: neither list is empty, nor all of them.
  expect(cases).toHaveLength(2048);
  expect(checks).toBe(2 * 2 * 3 * 4);
  expect(retightenings).toBe(2 * 2 * 2 * 3);
});

test.each<[string, Partial<Joint>, WhyNot[]]>([
  [
    'a split pin',
    { fasteners: { a: { kind: 'nut', count: 1, locking: 'split pin' } } },
    ['locked by a device', 'no torque issued'],
  ],
  [
    'a tab washer under the head',
    { fasteners: { a: { kind: 'bolt', count: 2, washer: 'tab washer', tightening: 'torque' } } },
    ['locked by a device'],
  ],
  [
    'a value for threadlocked threads',
    { fasteners: { a: { kind: 'bolt', count: 2, tightening: 'locked' } } },
    ['threadlocked'],
  ],
  [
    'an unknown value',
    { fasteners: { a: { kind: 'bolt', count: 2, tightening: 'gone' } } },
    ['no torque issued'],
  ],
])('%s is no nut to be checked', (_, joint, why) => {
  const locked = { ...torque('20 N.m'), threadCondition: 'clean, threadlock on the thread' };
  const rule = recheckRule({ ...joint }, { ...VALUES, locked });
  expect(rule.check[0]?.why).toEqual(why);
  expect(rule.check[0]?.value).toBeNull();
});

test.each<[WhyNot, readonly string[]]>([
  ['threadlocked', ['locking compound', 'adhesive, strong', 'thread-locker', 'Thread sealant']],
  ['locked by a device', ['tabwasher', 'tabbed washer', 'lockplate', 'locktab', 'split-pin']],
  ['locked by a device', ['castle nut', 'bent-up washer', 'spring pin', 'lockwired', 'pinned']],
])('%s, in the words of a plant file: %j', (why, words) => {
  for (const locking of words) {
    const nuts: Fastener = { kind: 'nut', count: 4, tightening: 'torque', locking };
    const retighten = { value: 'torque', when: 'cold' };
    const rule = recheckRule({ fasteners: { nuts }, seals: seal('gasket'), retighten }, VALUES);
    expect([locking, rule.check[0]?.why, rule.retighten.why]).toEqual([locking, [why], [why]]);
  }
});

test.each(['spring washer', 'nylon insert', 'wire-brushed', 'flat washer 2 mm'])(
  '%s holds no nut back',
  (washer) => {
    const nuts: Fastener = { kind: 'nut', count: 4, tightening: 'torque', washer };
    expect(recheckRule({ fasteners: { nuts } }, VALUES).check[0]?.why).toEqual([]);
  },
);

test.each(['20 N.m + 90 degrees', '20 N.m + 1/4 turn', '20 N.m then 60°'])(
  'what is tightened to %s is tightened by angle, and its gasket is not re-tightened',
  (value) => {
    const nuts: Fastener = { kind: 'nut', count: 4, tightening: 'turned' };
    const retighten = { value: 'torque', when: 'cold' };
    const joint = { fasteners: { nuts }, seals: seal('gasket'), retighten };
    const rule = recheckRule(joint, { ...VALUES, turned: torque(value) });
    expect([rule.check[0]?.why, rule.retighten.why]).toEqual([
      ['by angle or yield'],
      ['by angle or yield'],
    ]);
  },
);

test('of two kinds of fastener one may be checked, and the gasket is not re-tightened', () => {
  const joint: Joint = {
    name: 'J',
    fasteners: {
      nuts: { kind: 'nut', count: 4, tightening: 'torque' },
      screws: { kind: 'cap screw', count: 2, tightening: 'torque', locking: 'threadlock' },
    },
    seals: seal('gasket'),
    retighten: { value: 'torque', when: 'cold, after 4 h' },
  };
  const rule = recheckRule(joint, VALUES);
  expect(rule.check.map(({ fastener, value }) => [fastener, value])).toEqual([
    ['nuts', 'torque'],
    ['screws', null],
  ]);
  expect(rule.retighten).toEqual({ value: null, why: ['threadlocked'] });
});

test('a joint with nothing screwed is offered neither', () => {
  const rule = recheckRule({ seals: seal('gasket') }, VALUES);
  expect(rule).toEqual({
    check: [],
    retighten: { value: null, why: ['not issued', 'not screwed'] },
  });
});
