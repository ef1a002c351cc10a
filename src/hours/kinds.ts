// Kinds of use, to which a history is held: spells of running and standing, hours a day.

/** Mean and spread of a spell in days (normal, whole days, at least one). */
export type Spell = { readonly days: number; readonly sd: number };

export type SpellKind = {
  readonly name: string;
  /** Hours a day while under way and while alongside: mean and spread, kept within 0 to 24. */
  readonly run: { readonly hours: number; readonly sd: number; readonly spell: Spell };
  readonly stand: { readonly hours: number; readonly sd: number; readonly spell: Spell };
  /** Chance that a run ends in a lay-up instead of a stand. */
  readonly layUp: { readonly chance: number; readonly spell: Spell };
  /** Days of the year between which it runs; outside nine days of ten are still. */
  readonly season: { readonly from: number; readonly to: number } | null;
};

/**
 * The four kinds whose rhythm is held against a history, besides the loose kind that follows the
 * history's own mean. They are the rhythms of the generated vessels the forecast is measured on.
 */
export const spellKinds: readonly SpellKind[] = [
  {
    name: 'long spells',
    run: { hours: 12, sd: 1.5, spell: { days: 250, sd: 60 } },
    stand: { hours: 0.5, sd: 0.5, spell: { days: 4, sd: 2 } },
    layUp: { chance: 0.5, spell: { days: 14, sd: 4 } },
    season: null,
  },
  {
    name: 'passages',
    run: { hours: 22.5, sd: 1.5, spell: { days: 6, sd: 3 } },
    stand: { hours: 2, sd: 1.5, spell: { days: 2.5, sd: 1.2 } },
    layUp: { chance: 0.01, spell: { days: 20, sd: 6 } },
    season: null,
  },
  {
    name: 'short calls',
    run: { hours: 6, sd: 3, spell: { days: 3, sd: 2 } },
    stand: { hours: 1, sd: 1, spell: { days: 1.5, sd: 0.8 } },
    layUp: { chance: 0.005, spell: { days: 7, sd: 2 } },
    season: null,
  },
  {
    name: 'season',
    run: { hours: 8, sd: 3, spell: { days: 4, sd: 2 } },
    stand: { hours: 0.3, sd: 0.4, spell: { days: 2, sd: 1 } },
    layUp: { chance: 0.02, spell: { days: 10, sd: 3 } },
    season: { from: 105, to: 288 },
  },
];

/** Outside its season one day in ten runs, at three tenths of its hours. */
export const OFF = { chance: 0.1, share: 0.3 };

/** What the loose kind may be; each member draws its own between these. */
export const loose = {
  /** Weight against each of the other kinds before any reading. */
  prior: 0.03,
  /** Spread of its mean about that of the history, in ln. */
  mean: 0.1,
  /** Spread of a day's hours about its mean, as a share. */
  daily: [0.4, 1],
  /** Spread in ln of the slow drift about the mean, and the days it takes to forget. */
  drift: [0.1, 0.3],
  memory: [40, 150],
  /** Chance a day that it stops, in ln, and the days it then stands. */
  stop: [1 / 400, 1 / 30],
  still: 12,
} as const;

/**
 * A lasting change of level: chance a day; mostly close to one of these levels, else spread in ln;
 * how often it is proposed, how near the reading, from how many hours on.
 */
export const CHANGE = {
  chance: 1 / 600,
  levels: [0.5, 0.7, 1.3, 1.6],
  usual: 0.75,
  close: 0.03,
  spread: 0.45,
  proposed: 0.1,
  near: 0.15,
  leastHours: 4,
};

const LONGEST = 1_500;

/** By age in days: the chance that a spell which has lasted so long ends with this day. */
export function endings({ days, sd }: Spell): Float64Array {
  const below = (x: number) => normalBelow((x - days) / sd);
  return Float64Array.from({ length: LONGEST }, (_, at) => {
    const age = at + 1;
    const alive = age === 1 ? 1 : 1 - below(age - 0.5);
    if (alive < 1e-9) return 1;
    return Math.min(1, (alive - (1 - below(age + 0.5))) / alive);
  });
}

/** Standard normal distribution (Zelen and Severo's form, error below 1e-7). */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.231_641_9 * Math.abs(z));
  const sum =
    t *
    (0.319_381_53 +
      t * (-0.356_563_782 + t * (1.781_477_937 + t * (-1.821_255_978 + t * 1.330_274_429))));
  const tail = density(z) * sum;
  return z > 0 ? 1 - tail : tail;
}

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Mean and variance of a normal kept within 0 to 24 hours. */
export function clipped(mean: number, sd: number): { mean: number; variance: number } {
  if (sd <= 0) return { mean: Math.min(24, Math.max(0, mean)), variance: 0 };
  const [a, b] = [-mean / sd, (24 - mean) / sd];
  const [pa, pb, da, db] = [normalBelow(a), normalBelow(b), density(a), density(b)];
  const inside = pb - pa;
  const first = mean * inside + sd * (da - db) + 24 * (1 - pb);
  const second =
    (mean * mean + sd * sd) * inside +
    2 * mean * sd * (da - db) +
    sd * sd * (a * da - b * db) +
    576 * (1 - pb);
  return { mean: first, variance: Math.max(0, second - first * first) };
}
