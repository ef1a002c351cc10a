// Laws of every drawing, and its snapshot in git, to be reviewed as a picture.

import { describe, expect, test } from 'vitest';
import type { SealNeed } from '../pack/seal-types.ts';
import { CAUTIONS, cautionFor, type Hazard } from '../quantity/authority.ts';
import { cautionDrawing, SIGNS } from './caution.ts';
import { fixturePack } from './fixture.ts';
import { isolationDrawing } from './isolation.ts';
import { holeCentres, holeStates, type JointInput, jointDrawing } from './joint.ts';
import { handsDrawing, slingDrawing } from './lift.ts';
import { removalMap } from './removal-map.ts';
import { sealMap, sealMaps } from './seal-map.ts';
import { stepDrawing } from './step.ts';
import { type Drawing, el, escapeText, HIT, MIN_TEXT, wrap, write } from './svg.ts';
import { openWords, tallyDrawing } from './tally.ts';
import { wrenchDrawing } from './wrench.ts';

const mounting = fixturePack.facts.joints['pump-mounting'];
const suction = fixturePack.facts.joints['suction-flange'];
if (mounting === undefined || suction === undefined) throw new Error('the fixture lost a joint');

const order = ['1', '5', '3', '7', '2', '6', '4', '8'];
const rounds = ['hand', '60 %', '100 %'];
const halfway: JointInput = {
  joint: mounting,
  order,
  round: '60 %',
  value: '29 N.m',
  states: holeStates(mounting.holes, '60 %', rounds, { hand: mounting.holes, '60 %': ['1', '5'] }),
};

const wrench = {
  fastener: 'bolts',
  what: '8 bolts M10',
  wrenchId: 'wrench-middle',
  wrench: 'Middle torque wrench',
  shown: '48 N·m',
  rounds: [{ round: '60 %', shown: '29 N·m', belowRange: false }],
  gripPointMm: 290,
  angleDeg: null,
  offsetMm: null,
};
const wrenchSays = { alt: 'Middle torque wrench: set to 29 N·m', grip: 'hand here, 290 mm' };

const need = (kind: string, name: string, count: number, joint: string): SealNeed => ({
  ...{ thing: `seal/${joint}:${kind}`, joint, jointName: joint, name, kind, count },
  ...{ size: 'ISO 3601 99.5x3', compound: 'NBR', thickness: null, sealant: null, short: 0 },
  ...{ grease: kind === 'ring' ? 'silicone grease' : null },
  ...{ drawn: [], notDrawn: [], against: [], notChecked: [], notes: [] },
});
const mapNeeds = [
  need('ring', 'Spigot O-ring', 1, 'Pump mounting'),
  need('gasket', 'Plate gaskets', 41, 'Pump mounting'),
  need('sealing washer', 'Banjo washers', 2, 'Gauge pipe union'),
  need('shaft seal', 'Water seal', 1, 'Water seal in its seat'),
];
const mapSays = {
  alt: 'Seals by joint, 45 in all',
  grease: (name: string) => `grease: ${name}`,
  sealant: (name: string) => `sealant: ${name}`,
  noSize: 'size not stated',
};

const entries = (open: number, good: number) => [
  ...Array.from({ length: good }, () => ({ open: false })),
  ...Array.from({ length: open }, () => ({ open: true })),
];

/** Every drawing of the room, on both surfaces and at a phone's and a sheet's width. */
const all = (surface: 'screen' | 'paper', width: number): Readonly<Record<string, Drawing>> => {
  const options = { surface, width };
  return {
    'joint on a ring': jointDrawing(halfway, options),
    'joint, positions not known': jointDrawing({ joint: suction, order: suction.holes }, options),
    'removal map': removalMap(fixturePack.plan.order, options),
    'tally of 14 open': tallyDrawing(entries(14, 9), options),
    'tally of none': tallyDrawing([], options),
    'lift by hand': handsDrawing(
      {
        alt: '16 kg, walkway plate, by hand',
        weight: '12 kg each',
        from: { hCm: 30, vCm: 20 },
        to: { hCm: 30, vCm: 75 },
        floor: 'ahead of the ankles →, above the floor ↑',
      },
      options,
    ),
    'sling of two legs': slingDrawing(
      {
        alt: '71 kg on two legs',
        weight: '71 kg',
        anglesDeg: [30],
        legs: 2,
        legSays: '41 kg on a leg',
      },
      options,
    ),
    'wrench, straight': wrenchDrawing(wrench, '60 %', wrenchSays, options),
    'wrench with an open end': wrenchDrawing(
      { ...wrench, offsetMm: 45, angleDeg: 0 },
      null,
      wrenchSays,
      options,
    ),
    isolation: isolationDrawing(fixturePack, options),
    'seal map': sealMap(mapNeeds, mapSays, options),
    'isolation not stated': isolationDrawing(
      {
        ...fixturePack,
        facts: {
          ...fixturePack.facts,
          isolation: { ...fixturePack.facts.isolation, stated: false },
        },
      },
      options,
    ),
    ...Object.fromEntries(
      fixturePack.steps.map((step) => [
        `step ${step.id}`,
        stepDrawing({ pack: fixturePack, step }, options),
      ]),
    ),
    ...Object.fromEntries(
      hazards.map((hazard) => [
        `caution ${hazard}`,
        cautionDrawing(cautionFor(hazard), { surface }),
      ]),
    ),
  };
};

const hazards = Object.keys(CAUTIONS) as readonly Hazard[];

/** Reads the tags strictly enough to find one left open or a stray bracket. */
const wellFormed = (svg: string): boolean => {
  const stack: string[] = [];
  const rest = svg.replace(
    /<(\/?)([a-zA-Z]+)((?:\s[a-zA-Z:-]+="[^"<]*")*)(\/?)>/g,
    (_, end, name, _attrs, self) => {
      if (end === '/') return stack.pop() === name ? '' : '<';
      if (self !== '/') stack.push(String(name));
      return '';
    },
  );
  return stack.length === 0 && !/[<>]/.test(rest);
};

describe.each([
  ['screen', 390],
  ['paper', 515],
  ['screen', 320],
] as const)('laws on %s at %i', (surface, width) => {
  test.each(Object.entries(all(surface, width)))('%s', (_, made) => {
    expect(made.viewBox.width).toBeGreaterThan(0);
    expect(made.viewBox.height).toBeGreaterThan(0);
    expect(wellFormed(made.svg)).toBe(true);
    expect(made.svg).toContain(`<title>${escapeText(made.alt)}</title>`);
    const sizes = [...made.svg.matchAll(/font-size="([\d.]+)"/g)].map((match) => Number(match[1]));
    expect(sizes.length + Number(made.viewBox.width < 100)).toBeGreaterThan(0);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(MIN_TEXT);
    expect(made.svg).not.toMatch(/NaN|undefined|Infinity|style=/);
    if (surface === 'paper') expect(made.svg).not.toContain('var(');
  });

  test('nothing written runs out of the box at the sides', () => {
    for (const [name, made] of Object.entries(all(surface, width))) {
      for (const [, attrs, words] of made.svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)) {
        const value = (key: string): string =>
          new RegExp(`(?:^| )${key}="([^"]*)"`).exec(attrs ?? '')?.[1] ?? '';
        const long =
          (words ?? '').replaceAll(/&#?\w+;/g, 'x').length * Number(value('font-size')) * 0.52;
        const anchor = value('text-anchor');
        const start =
          Number(value('x')) - (anchor === 'end' ? long : anchor === 'middle' ? long / 2 : 0);
        expect(start, `${name}: ${words}`).toBeGreaterThanOrEqual(-2);
        expect(start + long, `${name}: ${words}`).toBeLessThanOrEqual(made.viewBox.width + 2);
      }
    }
  });
});

test.each(Object.entries(all('screen', 390)))('snapshot: %s', async (name, made) => {
  const file = name.replaceAll(/[^a-z0-9]+/g, '-').replaceAll(/^-|-$/g, '');
  await expect(`${made.svg}\n`).toMatchFileSnapshot(`snapshots/${file}.svg`);
});

describe('holes', () => {
  const many = (count: number, layout: 'ring' | 'unknown'): JointInput => {
    const holes = Array.from({ length: count }, (_, i) => String(i + 1));
    const mm = holes.map(
      (_, i) =>
        [
          200 * Math.cos((i * 2 * Math.PI) / count),
          200 * Math.sin((i * 2 * Math.PI) / count),
        ] as const,
    );
    return {
      joint: {
        name: 'Cover',
        holes,
        layout: layout === 'ring' ? { kind: 'positions', mm } : { kind: 'unknown' },
      },
      order: [...holes].reverse(),
    };
  };

  test('each hole is drawn once, its target at least 44 px at 390 px, from 1 to 60', () => {
    for (let count = 1; count <= 60; count += 1)
      for (const layout of ['ring', 'unknown'] as const) {
        const input = many(count, layout);
        const { svg } = jointDrawing(input);
        const drawn = [...svg.matchAll(/data-hole="(\d+)"/g)].map((match) => match[1]);
        expect(drawn).toEqual(input.joint.holes);
        const { holes, viewBox } = holeCentres(input);
        expect(holes.map((hole) => hole.label)).toEqual(input.joint.holes);
        holes.forEach((a, i) => {
          expect(a.radius * 2).toBeGreaterThanOrEqual(HIT);
          expect(a.x - a.radius).toBeGreaterThanOrEqual(0);
          expect(a.x + a.radius).toBeLessThanOrEqual(viewBox.width);
          expect(a.y + a.radius).toBeLessThanOrEqual(viewBox.height);
          for (const b of holes.slice(i + 1))
            expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(HIT);
        });
        for (const place of Object.keys(input.joint.holes))
          expect(svg).toContain(`>${ordinalOf(Number(place) + 1)}<`);
      }
  });

  const ordinalOf = (n: number): string =>
    `${n}${[11, 12, 13].includes(n % 100) ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')}`;

  test('unknown positions are said, in words', () => {
    expect(jointDrawing(many(6, 'unknown')).svg).toContain('positions not known');
    expect(jointDrawing(many(6, 'ring')).svg).not.toContain('positions not known');
  });

  test('state by shape: this round, an earlier one, not yet', () => {
    const states = holeStates(['1', '2', '3'], '60 %', rounds, { hand: ['1', '2'], '60 %': ['1'] });
    expect(states).toEqual({ 1: 'this round', 2: 'earlier round', 3: 'not yet' });
  });
});

describe('tally', () => {
  test('one mark an entry, struck when made good, and the count in words', () => {
    const { svg } = tallyDrawing(entries(14, 9));
    expect(svg.match(/data-mark="open"/g)).toHaveLength(14);
    expect(svg.match(/data-mark="made good"/g)).toHaveLength(9);
    expect(openWords(entries(14, 9))).toBe('14 open');
    expect(svg).toContain('>14 open<');
    expect(openWords(entries(0, 3))).toBe('nothing open');
  });
});

describe('removal map', () => {
  test('every element once; what it waits for is an arrow or said in words', () => {
    for (const width of [320, 390, 515, 900]) {
      const { svg } = removalMap(fixturePack.plan.order, { width });
      expect(svg.match(/data-node=/g)).toHaveLength(fixturePack.plan.order.length);
      const arrows = [...svg.matchAll(/data-arrow="(\d+) (\d+)"/g)].length;
      const said = [...svg.matchAll(/>after ([\d, ]+)</g)].flatMap((m) => (m[1] ?? '').split(','));
      expect(arrows + said.length).toBe(7);
    }
  });
});

describe('safety of the text', () => {
  const nasty = '</svg><script>alert("&\'")</script>\u0000\ud800';

  test('names from files are escaped in every place', () => {
    const joint = {
      ...mounting,
      name: nasty,
      holes: [nasty],
      layout: { kind: 'unknown' } as const,
    };
    for (const { svg } of [
      jointDrawing({ joint, order: [nasty], round: nasty, value: nasty }),
      removalMap(fixturePack.plan.order.map((each) => ({ ...each, name: nasty, id: nasty }))),
    ]) {
      expect(svg).not.toContain('<script');
      expect(svg).not.toContain('\u0000');
      expect(svg.match(/<\/svg>/g)).toHaveLength(1);
      expect(wellFormed(svg)).toBe(true);
    }
  });

  test('a name that is no plain name is refused', () => {
    expect(() => write(el('a b'))).toThrow('plain name');
    expect(() => write(el('g', { 'on"x': 1 }))).toThrow('plain name');
  });

  test('wrapping loses no letter', () => {
    const words = 'Sea-water pump suction flange abcdefghijklmnopqrstuvwxyz';
    const lines = wrap(words, 100, 13);
    expect(lines.join('').replaceAll(/[- ]/g, '')).toBe(words.replaceAll(/[- ]/g, ''));
  });
});

test('every caution has a sign of its own drawing, and its word', () => {
  for (const hazard of hazards) {
    const caution = cautionFor(hazard);
    expect(SIGNS).toContain(caution.sign);
    expect(cautionDrawing(caution).svg).toContain(`>${hazard}<`);
  }
});

test('the seal map shows each seal once, whole joints a piece', () => {
  const drawn = [...sealMap(mapNeeds, mapSays).svg.matchAll(/data-seal="([^"]+)"/g)];
  expect(drawn.map(([, thing]) => thing)).toEqual(mapNeeds.map(({ thing }) => thing));
  const pieces = sealMaps(mapNeeds, mapSays, { surface: 'paper', width: 510 }, 1);
  expect(pieces).toHaveLength(3);
  const all = pieces.flatMap(({ svg }) => [...svg.matchAll(/data-count="(\d+)"/g)]);
  expect(all.map(([, n]) => Number(n)).reduce((a, b) => a + b, 0)).toBe(45);
});
