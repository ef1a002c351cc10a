// When a hot part may be touched and when opened: Newton's cooling from readings after the peak.

import { formatNumber } from '../quantity/quantity.ts';
import { echoed, entered, newSheet, quantity, type Sheet } from '../quantity/sheet.ts';
import type { Problem, Quantity, Source } from '../quantity/types.ts';
import type { CoolDownIn, CoolDownOut } from './cool-down-model.ts';
import { type Cooling, fitted, type Reading } from './cooling-fit.ts';
import { burnRow, burnSource, LEAST_CONTACT_S } from './tables/burns.ts';

export type CoolDownAnswer =
  | { readonly ok: true; readonly result: CoolDownOut }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const newton: Source = {
  kind: 'published',
  title: 'Heat Transfer in SI units, J. P. Holman',
  edition: 'as worked in its public companion notebook',
  place: 'Example 4.1, lumped capacity',
};

type Limits = {
  readonly touch: Quantity | null;
  readonly touchFrom: string | null;
  readonly open: Quantity | null;
  readonly openFrom: string | null;
};

export function coolDown(input: CoolDownIn): CoolDownAnswer {
  const sheet = newSheet();
  const ambient = input.ambient?.value;
  if (ambient !== undefined) sheet.take('T_a', 'ambient', ambient, 'Cel', entered);
  const cooling = coolingOf(input, sheet);
  if ('problems' in cooling) return { ok: false, problems: cooling.problems };
  const used = limitsOf(input);
  const after = (symbol: string, text: string, limit: Quantity | null, from: Source) =>
    ambient === undefined || limit === null
      ? undefined
      : minuteOf(cooling, { symbol, text, limit: limit.value, from, ambient }, sheet);
  const touchSource = input.touchLimit === undefined ? burnSource : entered;
  const touch = after('touch', 'may be touched', used.touch, touchSource);
  const open = after('open', 'may be opened', used.open, entered);
  const out = (value: number | null | undefined) =>
    value === undefined || value === null ? null : quantity(value, 'min');
  const result: CoolDownOut = {
    timeConstant: cooling.given ?? quantity(cooling.timeConstantMin, 'min'),
    estimate: cooling.given !== null,
    touchAfter: out(touch),
    openAfter: out(open),
    limitsUsed: used,
    working: [...sheet.rows],
    cautions: cautionsOf(input, cooling, { touch, open }),
    notWorkedOut: wantingOf(input, used, { touch, open }),
  };
  return { ok: true, result };
}

type Known = Cooling & { readonly given: Quantity | null; readonly firstMinute: number };
type Refused = { readonly problems: readonly Problem[] };

function coolingOf(input: CoolDownIn, sheet: Sheet): Known | Refused {
  const { ambient, readings } = input;
  if (Array.isArray(readings)) return fromReadings(readings, ambient?.value, sheet);
  const inside = readings !== undefined;
  const start = inside ? readings.start : input.start;
  const constant = inside ? readings.timeConstant : input.timeConstant;
  if (start === undefined || constant === undefined)
    throw new Error('the border lets none through');
  if (ambient !== undefined && start.value <= ambient.value) {
    const why = 'it is no warmer than the ambient, so it does not cool';
    const path = inside ? 'readings/start' : 'start';
    return { problems: [{ path, got: start.value, expected: 'above the ambient', why }] };
  }
  sheet.take('T_0', 'temperature at minute 0', start.value, 'Cel', entered);
  sheet.take('tau', 'time constant, an estimate', constant.value, 'min', entered);
  return {
    given: echoed(constant.value, 'min', constant),
    timeConstantMin: constant.value,
    startCelsius: start.value,
    firstMinute: 0,
    leftOut: 0,
    spanMin: null,
    worstCelsius: null,
  };
}

function fromReadings(
  given: readonly { readonly minute: Quantity; readonly temperature: Quantity }[],
  ambient: number | undefined,
  sheet: Sheet,
): Known | Refused {
  const problems: Problem[] = [];
  if (ambient === undefined) {
    const why = 'readings alone do not say what it cools towards';
    problems.push({ path: 'ambient', got: null, expected: 'the ambient temperature', why });
  }
  const list: Reading[] = given.map(({ minute, temperature }) => ({
    minute: minute.value,
    celsius: temperature.value,
  }));
  list.forEach(({ minute, celsius }, at) => {
    if (minute <= (list[at - 1]?.minute ?? -1)) {
      const why = 'readings come in the order of time, each later than the one before';
      problems.push({
        path: `readings/${at}/minute`,
        got: minute,
        expected: 'a later minute',
        why,
      });
    }
    if (ambient !== undefined && celsius <= ambient) {
      const path = `readings/${at}/temperature`;
      const why = 'it is not above the ambient, so the ambient is not what it cools towards';
      problems.push({ path, got: celsius, expected: `more than ${ambient} Cel`, why });
    }
  });
  if (ambient === undefined || problems.length > 0) return { problems };
  const cooling = fitted(list, ambient, sheet);
  if (cooling === null) {
    const why = 'from the highest on, the readings do not fall: the peak is not past';
    const got = list.map(({ celsius }) => celsius);
    return { problems: [{ path: 'readings', got, expected: 'two falling readings', why }] };
  }
  return { ...cooling, given: null };
}

type Asked = {
  readonly symbol: string;
  readonly text: string;
  readonly limit: number;
  readonly from: Source;
  readonly ambient: number;
};

/** The minute at which the limit is come to; null: the ambient is too warm for it. */
function minuteOf(cooling: Known, asked: Asked, sheet: Sheet): number | null {
  const { ambient, limit, symbol, text } = asked;
  sheet.take(`T_${symbol}`, `limit: ${text}`, limit, 'Cel', asked.from);
  if (limit <= ambient) return null;
  const { firstMinute, startCelsius, timeConstantMin } = cooling;
  const ratio = (startCelsius - ambient) / (limit - ambient);
  const minute = Math.max(firstMinute, timeConstantMin * Math.log(ratio));
  const expression = `max(${firstMinute}, tau*ln((T_0 - T_a)/(T_${symbol} - T_a)))`;
  sheet.work(`t_${symbol}`, text, expression, minute, 'min', newton);
  return minute;
}

function limitsOf({ contactTime, material, openLimit, touchLimit }: CoolDownIn): Limits {
  const open = openLimit === undefined ? null : echoed(openLimit.value, 'Cel', openLimit);
  const openFrom = open === null ? null : 'entered';
  if (touchLimit !== undefined) {
    const touch = echoed(touchLimit.value, 'Cel', touchLimit);
    return { touch, touchFrom: 'entered', open, openFrom };
  }
  if (material === undefined || contactTime === undefined) {
    return { touch: null, touchFrom: null, open, openFrom };
  }
  const row = burnRow(material, contactTime.value);
  const of = burnSource.kind === 'from memory' ? burnSource.of : '';
  const touchFrom = `from memory: ${of}: ${row.says}`;
  return { touch: quantity(row.celsius, 'Cel'), touchFrom, open, openFrom };
}

type After = {
  readonly touch: number | null | undefined;
  readonly open: number | null | undefined;
};

function wantingOf(input: CoolDownIn, used: Limits, after: After): CoolDownOut['notWorkedOut'] {
  const ambient = input.ambient === undefined ? ['ambient'] : [];
  const wanting: CoolDownOut['notWorkedOut'] = [];
  const table = [
    ...(input.material === undefined ? ['material'] : []),
    ...(input.contactTime === undefined ? ['contactTime'] : []),
  ].join(' and ');
  const touch = used.touch === null ? [`touchLimit, or ${table}`] : [];
  const open = used.open === null ? ['openLimit'] : [];
  if (after.touch === undefined) {
    wanting.push({ output: 'touchAfter', needs: [...ambient, ...touch] });
  }
  if (after.open === undefined) wanting.push({ output: 'openAfter', needs: [...ambient, ...open] });
  for (const [end, needs] of [
    ['touch', touch],
    ['open', open],
  ] as const) {
    if (needs.length === 0) continue;
    wanting.push({ output: `limitsUsed/${end}`, needs: [...needs] });
    wanting.push({ output: `limitsUsed/${end}From`, needs: [...needs] });
  }
  return wanting;
}

function cautionsOf(input: CoolDownIn, cooling: Known, after: After): string[] {
  const said = [
    'This plans time. The gate is a measured temperature, with pressure nought and a vent opened.',
  ];
  if (cooling.given !== null)
    said.push('An estimate: no reading of this machine stands behind it.');
  if (cooling.leftOut > 0) {
    said.push(
      `${cooling.leftOut} readings before the highest one are left out: not past the peak.`,
    );
  }
  const { spanMin, timeConstantMin, worstCelsius } = cooling;
  if (spanMin !== null && spanMin < timeConstantMin / 2) {
    said.push(
      `The readings span ${formatNumber(spanMin)} min, less than half the time constant: ` +
        'what comes later is drawn out from little.',
    );
  }
  if (worstCelsius !== null && worstCelsius > WORST) {
    said.push(`One reading lies ${formatNumber(worstCelsius)} K off the curve: it may not hold.`);
  }
  if (after.touch === null) said.push('The ambient is too warm for the touch limit: never.');
  if (after.open === null) said.push('The ambient is too warm for the opening limit: never.');
  said.push(...tableCautions(input));
  return said;
}

/** Further off than a contact thermometer is used to read. */
const WORST = 3;

function tableCautions({ contactTime, material, touchLimit }: CoolDownIn): string[] {
  if (material === undefined || contactTime === undefined) return [];
  const row = burnRow(material, contactTime.value);
  const said: string[] = [];
  if (touchLimit === undefined) {
    said.push(
      'The touch limit is from memory: thresholds of burning on healthy skin, not of pain.',
    );
  } else if (touchLimit.value > row.celsius) {
    said.push(
      `The touch limit entered is above ${row.celsius} Cel (${row.says}), at which skin burns, ` +
        'by ISO 13732-1 from memory.',
    );
  }
  if (contactTime.value < LEAST_CONTACT_S) {
    said.push(
      `A contact under ${LEAST_CONTACT_S} s is outside ISO 13732-1; the row of 1 s or more stands.`,
    );
  }
  return said;
}
