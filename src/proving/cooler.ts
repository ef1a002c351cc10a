// `cooler`: solves a heat exchanger for what is not known, and says what does not agree.

import { FRESH_TO_C } from '../media/fluid.ts';
import { HIGHEST_C } from '../media/sea-water.ts';
import { echoed, missing } from '../quantity/sheet.ts';
import type { Problem, Quantity } from '../quantity/types.ts';
import { disagreements, needsOf } from './cooler-check.ts';
import {
  arrangementOf,
  capacityAt,
  massFlow,
  type SideGiven,
  sideOf,
  takenLayout,
} from './cooler-given.ts';
import type { CoolerInput, CoolerOutput } from './cooler-model.ts';
import {
  capacityRatio,
  effectivenessFrom,
  type Known,
  possible,
  solveCooler,
  streamsOf,
} from './cooler-solve.ts';
import { coolerRows } from './cooler-working.ts';
import { type Arrangement, leastOf, meanDifference, ntuOf } from './exchanger.ts';

export type CoolerAnswer =
  | { readonly ok: true; readonly result: CoolerOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type Surface = {
  readonly areaM2: number | null;
  readonly uWM2K: number | null;
  readonly cleanUWM2K: number | null;
  readonly foulingM2KW: number | null;
};

export type Solved = {
  readonly known: Known;
  readonly arrangement: Arrangement | null;
  readonly hot: SideGiven;
  readonly cold: SideGiven;
  readonly hotCp: number | null;
  readonly coldCp: number | null;
  readonly hotKgS: number | null;
  readonly coldKgS: number | null;
  readonly surface: Surface;
  readonly lmtd: number | null;
  readonly correction: number | null;
  readonly ntu: number | null;
  readonly effectiveness: number | null;
  readonly ratio: number | null;
};

const PASSES = 40;

const mean = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : (a + b) / 2;

export function surfaceOf(input: CoolerInput, uaWK: number | null): Surface {
  const area = input.area?.value ?? null;
  const clean = input.cleanU?.value ?? null;
  const foul = input.fouling?.value ?? null;
  const u =
    input.U?.value ??
    (clean !== null && foul !== null
      ? 1 / (1 / clean + foul)
      : uaWK !== null && area !== null
        ? uaWK / area
        : null);
  return {
    areaM2: area ?? (u !== null && uaWK !== null ? uaWK / u : null),
    uWM2K: u,
    cleanUWM2K: clean,
    foulingM2KW: foul ?? (u !== null && clean !== null ? 1 / u - 1 / clean : null),
  };
}

// Heat capacities hang on the temperatures they lead to: round and round until they stand.
function settle(input: CoolerInput): Solved {
  const arrangement = arrangementOf(input);
  const [hot, cold] = [sideOf(input.hot), sideOf(input.cold)];
  const bare = surfaceOf(input, null);
  const ua = bare.uWM2K !== null && bare.areaM2 !== null ? bare.uWM2K * bare.areaM2 : null;
  const latent = (side: SideGiven, kgS: number | null) =>
    side.heat?.kind === 'latent' && kgS !== null ? kgS * side.heat.JKg : null;
  let known: Known | null = null;
  let [hotCp, coldCp]: (number | null)[] = [null, null];
  for (let pass = 0; pass < PASSES; pass += 1) {
    const all = mean(mean(hot.inC, hot.outC), mean(cold.inC, cold.outC));
    const hotMean = mean(known?.hotIn ?? hot.inC, known?.hotOut ?? hot.outC) ?? all;
    const coldMean = mean(known?.coldIn ?? cold.inC, known?.coldOut ?? cold.outC) ?? all;
    const before = [hotCp, coldCp];
    hotCp = capacityAt(hot, hotMean);
    coldCp = capacityAt(cold, coldMean);
    const [hotKgS, coldKgS] = [massFlow(hot, hotMean), massFlow(cold, coldMean)];
    const capacity = (side: SideGiven, cp: number | null | undefined, kgS: number | null) => {
      if (side.heat?.kind === 'latent') return Number.POSITIVE_INFINITY;
      return cp === null || cp === undefined || kgS === null ? null : cp * kgS;
    };
    known = solveCooler(
      {
        ...{ hotIn: hot.inC, hotOut: hot.outC, coldIn: cold.inC, coldOut: cold.outC },
        dutyW:
          input.duty === undefined
            ? (latent(hot, hotKgS) ?? latent(cold, coldKgS))
            : 1_000 * input.duty.value,
        hotWK: capacity(hot, hotCp, hotKgS),
        coldWK: capacity(cold, coldCp, coldKgS),
        effectiveness: input.effectiveness?.value ?? null,
        uaWK: ua,
      },
      arrangement,
    );
    const still = (now: number | null | undefined, then: number | null | undefined) =>
      now === then || Math.abs((now ?? 0) - (then ?? 0)) <= 1e-13 * Math.abs(now ?? 0);
    if (still(hotCp, before[0]) && still(coldCp, before[1])) break;
  }
  if (known === null) throw new Error('a cooler was solved in no pass');
  return finish(input, { known, arrangement, hot, cold, hotCp, coldCp });
}

type Core = Pick<Solved, 'known' | 'arrangement' | 'hot' | 'cold'> & {
  readonly hotCp: number | null | undefined;
  readonly coldCp: number | null | undefined;
};

function finish(input: CoolerInput, core: Core): Solved {
  const { known, arrangement, hot, cold } = core;
  const flowOf = (
    side: SideGiven,
    cp: number | null,
    capacity: number | null,
    meanC: number | null,
  ) =>
    massFlow(side, meanC) ??
    (side.heat?.kind === 'latent'
      ? known.dutyW === null
        ? null
        : known.dutyW / side.heat.JKg
      : cp === null || capacity === null || !Number.isFinite(capacity)
        ? null
        : capacity / cp);
  const [hotCp, coldCp] = [core.hotCp ?? null, core.coldCp ?? null];
  const { hotIn, hotOut, coldIn, coldOut } = known;
  const streams = streamsOf(known);
  const effectiveness = known.effectiveness ?? effectivenessFrom(known);
  const ntu =
    arrangement !== null && streams !== null && effectiveness !== null
      ? known.uaWK !== null && known.hotWK !== null && known.coldWK !== null
        ? known.uaWK / leastOf(streams)
        : ntuOf(arrangement, effectiveness, streams)
      : null;
  const ends =
    hotIn === null || hotOut === null || coldIn === null || coldOut === null
      ? null
      : { hotIn, hotOut, coldIn, coldOut };
  const lmtd =
    arrangement === null || ends === null ? null : meanDifference(arrangement.kind, ends);
  const most =
    ends === null ? null : Math.max(ends.hotIn - ends.hotOut, ends.coldOut - ends.coldIn);
  const correction =
    lmtd === null || ntu === null || most === null || ntu === 0 ? null : most / (ntu * lmtd);
  return {
    ...{ known, arrangement, hot, cold, hotCp, coldCp },
    hotKgS: flowOf(hot, hotCp, known.hotWK, mean(hotIn, hotOut)),
    coldKgS: flowOf(cold, coldCp, known.coldWK, mean(coldIn, coldOut)),
    surface: surfaceOf(input, known.uaWK),
    ...{ lmtd, correction, ntu, effectiveness },
    ratio: capacityRatio(known),
  };
}

const WHERE = {
  hotIn: 'hot/in',
  hotOut: 'hot/out',
  coldIn: 'cold/in',
  coldOut: 'cold/out',
} as const;

function impossible(input: CoolerInput, found: Solved): Problem[] {
  const problems: Problem[] = [];
  const { known, arrangement, effectiveness, hot, cold } = found;
  const wrong = (path: string, got: unknown, expected: string, why: string) =>
    problems.push({ path, got: got ?? null, expected, why });
  for (const [name, side] of [
    ['hot', hot],
    ['cold', cold],
  ] as const) {
    if (side.heat?.kind === 'latent' && side.inC !== side.outC) {
      const why = 'what condenses or boils stays at its temperature';
      wrong(`${name}/out`, side.outC, `as in: ${side.inC} °C`, why);
    }
    const given = input[name];
    const says = [given?.fluid, given?.heatCapacity, given?.latentHeat];
    if (says.filter((one) => one !== undefined).length > 1) {
      const why = 'what flows is given twice, and the two may disagree';
      wrong(`${name}/fluid`, given?.fluid, 'fluid, heatCapacity or latentHeat', why);
    }
    const cp = name === 'hot' ? found.hotCp : found.coldCp;
    const meanC =
      name === 'hot' ? mean(known.hotIn, known.hotOut) : mean(known.coldIn, known.coldOut);
    if (side.heat?.kind === 'named' && cp === null && meanC !== null) {
      const top = side.heat.name.startsWith('sea') ? HIGHEST_C : FRESH_TO_C;
      const why = `${side.heat.name} is not known at a mean of ${meanC.toFixed(1)} °C`;
      wrong(`${name}/fluid`, side.heat.name, `to ${top} °C, or give heatCapacity`, why);
    }
  }
  if (!possible(known)) {
    const [name] = (Object.keys(WHERE) as (keyof typeof WHERE)[]).filter(
      (one) => known[one] !== null,
    );
    const shown = Object.entries(WHERE)
      .flatMap(([key, path]) => {
        const value = known[key as keyof typeof WHERE];
        return value === null ? [] : [`${path} ${Number(value.toPrecision(6))} °C`];
      })
      .join(', ');
    const expected = 'the hot side cools, the cold side warms, and neither passes the other';
    wrong(name === undefined ? '' : WHERE[name], shown, expected, 'heat does not go that way');
  }
  if (effectiveness !== null && effectiveness > 1 + 1e-9) {
    const why = 'that is more heat than any exchanger could pass with these flows';
    wrong('', effectiveness, 'an effectiveness of at most 1', why);
  } else if (problems.length === 0 && arrangement !== null && found.ntu === null) {
    const streams = streamsOf(known);
    if (effectiveness !== null && effectiveness < 1 && streams !== null && known.hotIn !== null) {
      const why = `a ${arrangement.kind} exchanger of this form can't reach these temperatures`;
      wrong('arrangement', arrangement.kind, 'an arrangement that can, or other readings', why);
    }
  }
  return problems;
}

export function cooler(input: CoolerInput): CoolerAnswer {
  const found = settle(input);
  const bad = impossible(input, found);
  const problems = bad.length > 0 ? bad : disagreements(input, found);
  if (problems.length > 0) return { ok: false, problems };
  const { known, surface } = found;
  const out = (value: number | null, unit: string, from?: Quantity) =>
    value === null || !Number.isFinite(value) ? null : echoed(value, unit, from);
  const kW = known.dutyW === null ? null : known.dutyW / 1_000;
  const side = (name: 'hot' | 'cold', kgS: number | null) => ({
    flow: out(kgS, 'kg/s', input[name]?.flow?.unit === 'kg/s' ? input[name]?.flow : undefined),
    in: out(name === 'hot' ? known.hotIn : known.coldIn, 'Cel', input[name]?.in),
    out: out(name === 'hot' ? known.hotOut : known.coldOut, 'Cel', input[name]?.out),
  });
  const plain = {
    duty: out(kW, 'kW', input.duty),
    lmtd: out(found.lmtd, 'K'),
    correction: out(found.correction, '1'),
    ua: out(known.uaWK, 'W/K'),
    effectiveness: out(found.effectiveness, '1', input.effectiveness),
    ntu: out(found.ntu, '1'),
    capacityRatio: out(found.ratio, '1'),
    U: out(surface.uWM2K, 'W/(m2.K)', input.U),
    area: out(surface.areaM2, 'm2', input.area),
    fouling: out(surface.foulingM2KW, 'm2.K/W', input.fouling),
  };
  const sides = { hot: side('hot', found.hotKgS), cold: side('cold', found.coldKgS) };
  const nested = Object.fromEntries(
    Object.entries(sides).flatMap(([name, values]) =>
      Object.entries(values).map(([field, value]) => [`${name}.${field}`, value]),
    ),
  );
  if (
    Object.values(plain).every((value) => value === null || value.given !== undefined) &&
    !anySolved(input, plain, nested)
  ) {
    const expected = 'flows and temperatures of one side, four temperatures, or U with area';
    const why = 'nothing can be worked out from this';
    return { ok: false, problems: [{ path: '', got: null, expected, why }] };
  }
  return {
    ok: true,
    result: {
      ...plain,
      ...sides,
      solved: solvedNames(input, plain, nested),
      working: [...coolerRows(found, surface)],
      cautions: cautionsOf(input, found),
      notWorkedOut: [...missing({ ...plain, ...nested }, needsOf(input, found))],
    } as CoolerOutput,
  };
}

type Values = Readonly<Record<string, Quantity | null>>;

function solvedNames(input: CoolerInput, plain: Values, nested: Values): string[] {
  const own = ['duty', 'effectiveness', 'U', 'area', 'fouling'] as const;
  return [
    ...own.filter((name) => plain[name] !== null && input[name] === undefined),
    ...Object.entries(nested).flatMap(([name, value]) => {
      const [side, field] = name.split('.') as ['hot' | 'cold', 'flow' | 'in' | 'out'];
      return value !== null && input[side]?.[field] === undefined ? [name] : [];
    }),
  ];
}

function anySolved(input: CoolerInput, plain: Values, nested: Values): boolean {
  const more = ['lmtd', 'correction', 'ua', 'ntu', 'capacityRatio'] as const;
  return solvedNames(input, plain, nested).length > 0 || more.some((name) => plain[name] !== null);
}

function cautionsOf(input: CoolerInput, found: Solved): string[] {
  const said: string[] = [];
  const taken = takenLayout(input);
  if (taken !== null) said.push(taken);
  const { surface, correction, known } = found;
  if (surface.foulingM2KW !== null && surface.foulingM2KW < 0) {
    said.push('It passes more heat than when clean: a reading or cleanU is off.');
  }
  if (correction !== null && correction < 0.75) {
    said.push(
      'The correction is under 0.75: small errors of temperature grow large (common practice).',
    );
  }
  for (const side of [found.hot, found.cold]) {
    if (side.heat?.kind === 'named' && /^sea/.test(side.heat.name) && side.heat.saltGKg === null) {
      said.push('Sea water is taken as standard, 35.165 g/kg; give its salinity where it differs.');
    }
  }
  const { hotWK, coldWK, hotIn, hotOut, coldIn, coldOut } = known;
  const all = [hotWK, coldWK, hotIn, hotOut, coldIn, coldOut].every((one) => one !== null);
  if (all && Number.isFinite(hotWK) && Number.isFinite(coldWK)) {
    const [a, b] = [
      (hotWK ?? 0) * ((hotIn ?? 0) - (hotOut ?? 0)),
      (coldWK ?? 0) * ((coldOut ?? 0) - (coldIn ?? 0)),
    ];
    if (Math.abs(a - b) > 1e-6 * Math.max(a, b)) {
      const share = ((100 * Math.abs(a - b)) / Math.max(a, b)).toFixed(1);
      said.push(`The heat of the two sides differs by ${share} %; the hot side is taken.`);
    }
  }
  return said;
}
