// The one drawing that shows a step best: joint, valve, part, seal, temporary thing or proof.

import type { Pack, Step } from '../pack/types.ts';
import { now, say } from '../words/heard.ts';
import { assertNever } from './assert-never.ts';
import { holeStates, type JointInput, jointDrawing } from './joint.ts';
import { partDrawing } from './part.ts';
import { peopleClear, rotationDrawing, speedLadder } from './proof.ts';
import { countedThings, gapDrawing, sealDrawing, temporaryDrawing, wordsDrawing } from './small.ts';
import {
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  PHONE_WIDTH,
  paragraph,
  path,
  text,
  wrap,
} from './svg.ts';
import { ground, mediumColour } from './theme.ts';
import { closureSymbol, tagAt } from './valve.ts';

export type StepInput = {
  readonly pack: Pick<Pack, 'facts' | 'lists' | 'rotation' | 'speeds'>;
  readonly step: Step;
  /** The joint's tally of the record: round → hole labels; shows ticks when given. */
  readonly tally?: Readonly<Record<string, readonly string[]>>;
};

/** What `jointDrawing` needs for this step, or null when the step is not about a joint's holes. */
export const jointInputOf = (input: StepInput): JointInput | null => {
  const { step, pack, tally } = input;
  const joint = pack.facts.joints[idOf(step.thing)];
  if (kindOf(step.thing) !== 'joint' || joint === undefined) return null;
  if (step.verb !== 'made' && step.verb !== 'undone') return null;
  const round = step.verb === 'undone' ? 'undone' : (step.round ?? 'made');
  const rounds = step.verb === 'undone' ? ['undone'] : joint.rounds;
  const figures = [...new Set(step.values.map((each) => each.shown ?? 'no value'))];
  const shown = figures.length === 0 ? null : figures.join(' / ');
  // A round in per cent is a share of the issued figure: the figure alone would be read as its own.
  const share = round.endsWith('%') && round !== '100 %';
  const value = shown !== null && share ? say('shareOf', shown) : shown;
  return {
    joint,
    // Without places on the joint no order of slackening can be drawn.
    order: step.verb === 'undone' && joint.layout.kind === 'unknown' ? [] : step.holes,
    round: step.verb === 'undone' ? 'undo' : round === 'hand' ? 'by hand' : round,
    value,
    ...(tally === undefined ? {} : { states: holeStates(joint.holes, round, rounds, tally) }),
  };
};

export const stepDrawing = (input: StepInput, options: DrawingOptions = {}): Drawing => {
  const { step, pack } = input;
  const asJoint = jointInputOf(input);
  if (asJoint !== null && asJoint.joint.holes.length > 0) return jointDrawing(asJoint, options);
  const name = now(nameOf(step, pack));
  switch (step.verb) {
    case 'shut':
    case 'tagged':
    case 'untagged':
    case 'restored':
    case 'drain-opened':
    case 'drain-shut':
    case 'proved-dead':
      return closureDrawing(input, name, options);
    case 'told':
      return wordsDrawing(name, ['told by name', step.place ?? ''], options);
    case 'measured':
      return gapDrawing(name, step.round === 'left' ? 'as left' : 'as found', options);
    case 'second-look':
      return wordsDrawing('Second look', ['blank list, another person', step.place ?? ''], options);
    case 'checked':
      return wordsDrawing(name, ['look and feel', step.place ?? ''], options);
    case 'put-in':
    case 'taken-away':
      return temporaryDrawing(name, step.verb === 'put-in', options);
    case 'moved-off':
    case 'moved-aside':
    case 'refitted':
    case 'item-out':
    case 'as-found':
    case 'item-in':
      return partDrawing(name, step.verb, massOf(step, pack), options);
    case 'seal-out':
    case 'seal-in':
      return sealDrawing(name, step.count?.n ?? 1, step.verb === 'seal-in', options);
    case 'loose-out':
    case 'loose-in':
    case 'undone':
    case 'made':
      return countedThings(name, step.count?.n ?? 1, countWords(step), options);
    case 'people-clear':
      return peopleClear(options);
    case 'turned':
      return rotationDrawing(pack.rotation, options);
    case 'started':
    case 'proof':
      return speedLadder(name, pack.speeds, options);
    default:
      return assertNever(step.verb);
  }
};

/** `4 bolts M12`: the words of a count may hold its figure already. */
export const countWords = (step: Pick<Step, 'count'>): string => {
  if (step.count === null) return '';
  const { n, what } = step.count;
  return /^\d/.test(what) ? now(what) : say('counted', n, what).trim();
};

export const kindOf = (thing: string): string => thing.split('/')[0] ?? '';
export const idOf = (thing: string): string => thing.split('/').slice(1).join('/');

/** The thing's own name from the pack, or the id where the pack has none. */
export const nameOf = (step: Step, pack: StepInput['pack']): string => {
  const id = idOf(step.thing);
  const { facts, lists } = pack;
  switch (kindOf(step.thing)) {
    case 'joint':
      return facts.joints[id]?.name ?? id;
    case 'part':
      return facts.parts[id]?.name ?? id;
    case 'item':
      return facts.items[id]?.name ?? id;
    case 'closure':
    case 'tag':
      return facts.closures[closureOf(step, pack)]?.name ?? id;
    case 'temp':
      return facts.temps[id]?.name ?? id;
    case 'check':
      return facts.checks[id]?.name ?? id;
    case 'setting':
      return facts.settings[id]?.name ?? id;
    case 'proof':
      return facts.proofs[id]?.name ?? id;
    case 'seal':
      return lists.seals.find((row) => row.thing === step.thing)?.name ?? id;
    case 'loose':
      return lists.loose.find((row) => row.thing === step.thing)?.name ?? id;
    default:
      return step.text;
  }
};

/** The closure a step is about; a tag's number leads to the closure it hangs on. */
const closureOf = (step: Step, pack: StepInput['pack']): string => {
  const id = idOf(step.thing);
  if (kindOf(step.thing) !== 'tag') return id;
  return pack.lists.closures.find((row) => row.tags.includes(Number(id)))?.closure ?? id;
};

const massOf = (step: Step, pack: StepInput['pack']): number | null =>
  kindOf(step.thing) === 'part' ? (pack.facts.parts[idOf(step.thing)]?.massKg ?? null) : null;

const positionAfter = (step: Step, input: StepInput): string => {
  const id = closureOf(step, input.pack);
  const facts = input.pack.facts.closures[id];
  const work =
    input.pack.lists.closures.find((row) => row.closure === id)?.position ?? facts?.workPosition;
  switch (step.verb) {
    case 'drain-opened':
    case 'proved-dead':
      return 'open';
    case 'drain-shut':
      return 'shut';
    case 'restored':
      return facts?.normal ?? 'normal position not stated';
    default:
      return work ?? 'position not stated';
  }
};

const closureDrawing = (input: StepInput, name: string, options: DrawingOptions): Drawing => {
  const { step, pack } = input;
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  const id = closureOf(step, pack);
  const facts = pack.facts.closures[id];
  const position = positionAfter(step, input);
  const colour = mediumColour(facts?.medium ?? null, surface);
  const lines = wrap(name, width - 20, 16);
  const y = lines.length * 20 + 104;
  const x = width / 2;
  const tags = pack.lists.closures.find((row) => row.closure === id)?.tags ?? [];
  const branch = facts?.kind === 'drain' || facts?.kind === 'vent';
  const away = step.verb === 'proved-dead' ? 'runs, then dies away to nothing' : null;
  return drawing(
    { x: 0, y: 0, width, height: y + 168 },
    say('listedThing', name, position),
    surface,
    [
      ...paragraph(x, 22, lines, { size: 16, anchor: 'middle' }),
      colour === null
        ? null
        : el('path', {
            d: path('M', 10, y, 'L', width - 10, y),
            stroke: colour,
            'stroke-width': 12,
          }),
      el('path', { d: path('M', 10, y, 'L', width - 10, y), 'stroke-width': 1.5 }),
      branch
        ? null
        : el('rect', {
            x: x - 60,
            y: y - 8,
            width: 120,
            height: 16,
            fill: ground(surface),
            stroke: 'none',
          }),
      closureSymbol(facts?.kind ?? 'valve', position, x, y, branch ? 80 : 120, surface),
      text(12, y - 12, facts?.medium ?? 'medium not stated'),
      step.verb === 'tagged' && tags[0] !== undefined
        ? tagAt(x + 78, y - 46, String(tags[0]), surface)
        : null,
      text(x, y + 146, now(position).toUpperCase(), { size: 24, anchor: 'middle', bold: true }),
      away === null ? null : text(x, y + 164, away, { anchor: 'middle' }),
    ],
  );
};
