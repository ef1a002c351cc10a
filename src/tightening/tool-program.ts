// The fewest distinct tools for a whole job: an integer programme, and a quick answer first.

import type { Program } from '../quantity/solver.ts';

/** One way of doing one fastening: which tools by id, and how far off the middle of a range. */
export type Choice = { readonly tools: readonly string[]; readonly offMiddle: number };

/** For each fastening the choices there are; none of the lists is empty. */
export type Choices = readonly (readonly Choice[])[];

/** Which choice each fastening takes. */
export type Picked = readonly number[];

export const toolsOf = (choices: Choices, picked: Picked): ReadonlySet<string> =>
  new Set(picked.flatMap((at, f) => choices[f]?.[at]?.tools ?? []));

/** One tool more weighs more than all settings off the middle together. */
const weightOf = (choices: Choices): number =>
  1 + choices.reduce((sum, list) => sum + Math.max(...list.map((one) => one.offMiddle)), 0);

export const objectiveOf = (choices: Choices, picked: Picked): number =>
  weightOf(choices) * toolsOf(choices, picked).size +
  picked.reduce((sum, at, f) => sum + (choices[f]?.[at]?.offMiddle ?? 0), 0);

/** Tools that a bound of the objective proves to be needed. */
export const toolsBound = (choices: Choices, bound: number): number =>
  Math.max(0, Math.ceil((bound - (weightOf(choices) - 1)) / weightOf(choices) - 1e-6));

/** Fastening by fastening, those with the fewest choices first, the fewest new tools each time. */
export function quickPick(choices: Choices): Picked {
  const order = choices.map((_, f) => f);
  order.sort((a, b) => (choices[a]?.length ?? 0) - (choices[b]?.length ?? 0) || a - b);
  const held = new Set<string>();
  const picked = choices.map(() => 0);
  for (const f of order) {
    const list = choices[f] ?? [];
    const rank = (one: Choice) =>
      one.tools.filter((tool) => !held.has(tool)).length * 1_000 + one.offMiddle;
    let best = 0;
    list.forEach((one, at) => {
      const now = list[best];
      if (now !== undefined && rank(one) < rank(now)) best = at;
    });
    picked[f] = best;
    for (const tool of list[best]?.tools ?? []) held.add(tool);
  }
  return picked;
}

const TERMS_A_LINE = 12;

/** Variables: `y` a tool is laid out, `x` a fastening takes a choice. */
export function toolProgram(choices: Choices, start: Picked): Program {
  const ids = [...new Set(choices.flat().flatMap(({ tools }) => tools))];
  const weight = weightOf(choices);
  const y = (id: string) => `y${ids.indexOf(id)}`;
  const x = (f: number, at: number) => `x${f}_${at}`;
  const objective = [
    ...ids.map((id) => `${weight} ${y(id)}`),
    ...choices.flatMap((list, f) =>
      list.flatMap((one, at) => (one.offMiddle === 0 ? [] : [`${one.offMiddle} ${x(f, at)}`])),
    ),
  ];
  const rows = choices.flatMap((list, f) => [
    `${sum(list.map((_, at) => x(f, at)))} = 1`,
    ...[...new Set(list.flatMap(({ tools }) => tools))].map((id) => {
      const using = list.flatMap((one, at) => (one.tools.includes(id) ? [x(f, at)] : []));
      return `${sum(using)} - ${y(id)} <= 0`;
    }),
  ]);
  const binaries = [...ids.map(y), ...choices.flatMap((list, f) => list.map((_, at) => x(f, at)))];
  const text = [
    'Minimize',
    ` obj: ${sum(objective)}`,
    'Subject To',
    ...rows.map((row, at) => ` c${at}: ${row}`),
    'Binary',
    ...binaries.map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n');
  const held = toolsOf(choices, start);
  const values = new Map<string, number>();
  for (const id of ids) values.set(y(id), held.has(id) ? 1 : 0);
  choices.forEach((list, f) => {
    list.forEach((_, at) => {
      values.set(x(f, at), start[f] === at ? 1 : 0);
    });
  });
  return { text, start: values };
}

function sum(terms: readonly string[]): string {
  const lines: string[] = [];
  for (let at = 0; at < terms.length; at += TERMS_A_LINE) {
    lines.push(terms.slice(at, at + TERMS_A_LINE).join(' + '));
  }
  return lines.join('\n   + ');
}

/** What a solver's values pick; null where a fastening was left without. */
export function pickedOf(choices: Choices, values: ReadonlyMap<string, number>): Picked | null {
  const picked = choices.map((list, f) =>
    list.findIndex((_, at) => (values.get(`x${f}_${at}`) ?? 0) > 0.5),
  );
  return picked.includes(-1) ? null : picked;
}
