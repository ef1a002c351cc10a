// One row of a sheet, as it lies on the table: ticked or blank, or said by itself with one tap.

import { useState } from 'react';
import type { Ask, Pack, Step } from '../../pack/types.ts';
import type { PaperRow, WrittenRow } from '../../record/from-paper.ts';
import type { JobState } from '../../record/types.ts';
import { Choice, Plain } from '../shared/controls.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { Asks } from '../work/asks.tsx';
import { quickOf } from '../work/done-acts.tsx';
import { type Answers, answersIn, asksShown, isWanted } from '../work/draft.ts';
import { LookRows, lookOf } from './look-row.tsx';

/** Without a tick on the sheet. */
export const BLANK = 'blank';

export type RowSaid =
  | typeof BLANK
  | {
      readonly ticked: boolean;
      readonly answers: Readonly<Record<string, string>>;
      /** Where not all bolts are ticked: those that are. */
      readonly holes: readonly string[] | null;
      /** Who signed this row, where another than whoever did the sheet must have. */
      readonly by?: string;
    };

const NOTHING = { ticked: false, answers: {}, holes: null } as const;

/** Null where the one tap for the sheet covers it, or nobody said it yet. */
export function writtenRow(
  job: JobState,
  { step, alone }: PaperRow,
  said: RowSaid | null,
): WrittenRow | null {
  if (said === null || said === BLANK) return null;
  if (step.verb === 'second-look') return writtenLook(job, step, said);
  const answers = answersIn(step.asks, said.answers);
  if (step.perHole) return said.ticked ? { answers, holes: said.holes ?? step.holes } : null;
  const given = Object.keys(answers).length > 0;
  return given || (alone !== null && said.ticked) ? { answers } : null;
}

function writtenLook(job: JobState, step: Step, said: Answered): WrittenRow | null {
  const rows = (lookOf(job, step)?.rows ?? []).map(({ thing }) => ({
    thing,
    position: said.answers[thing] ?? '',
  }));
  const by = said.by ?? '';
  if (by.trim() === '' || rows.some(({ position }) => position === '')) return null;
  return { answers: { rows, alone: false }, by };
}

type Answered = Exclude<RowSaid, typeof BLANK>;

type RowProps = {
  readonly pack: Pack;
  readonly job: JobState;
  readonly row: PaperRow;
  readonly said: RowSaid | null;
  readonly onSay: (said: RowSaid) => void;
};

export function PaperRowView({ job, pack, row, said, onSay }: RowProps) {
  const { paper: w } = useWords();
  const told = useTold();
  const { step, alone } = row;
  const blank = said === BLANK;
  const now: Answered = said === null || said === BLANK ? NOTHING : said;
  const answer = (more: Answers) =>
    onSay({ ...now, ticked: true, answers: { ...now.answers, ...more } });
  return (
    <>
      <p className="paper-text">{told(step.text)}</p>
      {blank ? null : step.verb === 'second-look' ? (
        <LookRows
          job={job}
          pack={pack}
          step={step}
          by={now.by ?? ''}
          seen={now.answers}
          onBy={(by) => onSay({ ...now, by })}
          onSeen={(thing, position) => answer({ [thing]: position })}
        />
      ) : step.perHole ? (
        <Bolts step={step} said={now} onSay={onSay} />
      ) : (
        <Questions step={step} alone={alone !== null} said={now} onAnswer={answer} onSay={onSay} />
      )}
      <p className="paper-tick">
        <Plain onPress={() => onSay(blank ? NOTHING : BLANK)}>
          {blank ? `☐ ${w.isBlank}` : alone === null ? `☑ ${w.isTicked}` : w.leaveBlank}
        </Plain>
      </p>
    </>
  );
}

type QuestionsProps = {
  readonly step: Step;
  readonly alone: boolean;
  readonly said: Answered;
  readonly onAnswer: (more: Answers) => void;
  readonly onSay: (said: RowSaid) => void;
};

/** The first question is one tap; figures are keyed in where they stand on the sheet. */
function Questions({ step, alone, said, onAnswer, onSay }: QuestionsProps) {
  const { paper: w } = useWords();
  const told = useTold();
  const quick = quickOf(step);
  const shown = asksShown(step, said.answers);
  const rest = quick?.kind === 'choice' ? shown.filter((ask) => !isIn(quick.says, ask)) : shown;
  const needed = step.asks.some((ask) => ask.optional !== true);
  return (
    <>
      {quick?.kind !== 'choice' ? null : (
        <Choice
          label={told(quick.label)}
          choices={quick.choices}
          value={quick.choices.find((each) => isSaid(quick.says[each], said.answers)) ?? ''}
          onChange={(choice) => onAnswer(quick.says[choice] ?? {})}
        />
      )}
      {needed || !alone ? null : (
        <Choice
          label={w.onTheSheet}
          choices={[w.isTicked]}
          value={said.ticked ? w.isTicked : ''}
          onChange={() => onSay({ ...said, ticked: true })}
        />
      )}
      <Rest asks={rest} answers={said.answers} onAnswer={onAnswer} />
    </>
  );
}

const isIn = (says: Readonly<Record<string, Answers>>, ask: Ask): boolean =>
  Object.values(says).some((answers) => ask.name in answers);

const isSaid = (says: Answers | undefined, answers: Answers): boolean =>
  says !== undefined && Object.entries(says).every(([name, value]) => answers[name] === value);

type RestProps = {
  readonly asks: readonly Ask[];
  readonly answers: Answers;
  readonly onAnswer: (more: Answers) => void;
};

/** A keypad is large: it opens where somebody has a figure to key in. */
function Rest({ asks, answers, onAnswer }: RestProps) {
  const { paper: w } = useWords();
  const told = useTold();
  const [open, setOpen] = useState(false);
  const figures = asks.filter((ask) => ask.kind === 'number');
  const words = asks.filter((ask) => ask.kind !== 'number' && isWanted(ask, answers));
  const more = asks.filter((ask) => ask.kind !== 'number' && !isWanted(ask, answers));
  const wanted = figures.some((ask) => isWanted(ask, answers));
  const say = (name: string, value: string) => onAnswer({ [name]: value });
  const folded = figures.length + more.length;
  return (
    <>
      <Asks asks={words} answers={answers} onAnswer={say} />
      {folded === 0 ? null : open || wanted ? (
        <Asks asks={[...more, ...figures]} answers={answers} onAnswer={say} />
      ) : (
        <Plain onPress={() => setOpen(true)}>
          {w.keyIn([...more, ...figures].map((ask) => told(ask.label)).join(', '))}
        </Plain>
      )}
    </>
  );
}

type BoltsProps = {
  readonly step: Step;
  readonly said: Answered;
  readonly onSay: (said: RowSaid) => void;
};

function Bolts({ step, said, onSay }: BoltsProps) {
  const { paper: w } = useWords();
  const all = w.allBolts(step.holes.length);
  const value = !said.ticked ? '' : said.holes === null ? all : w.notAll;
  const holes = said.holes ?? [];
  const turn = (hole: string) =>
    holes.includes(hole) ? holes.filter((each) => each !== hole) : [...holes, hole];
  return (
    <>
      <Choice
        label={w.bolts}
        choices={[all, w.notAll]}
        value={value}
        onChange={(choice) => onSay({ ...said, ticked: true, holes: choice === all ? null : [] })}
      />
      {said.ticked && said.holes !== null ? (
        <p className="quick">
          {step.holes.map((hole) => (
            <Plain key={hole} onPress={() => onSay({ ...said, holes: turn(hole) })}>
              {holes.includes(hole) ? '☑' : '☐'} {hole}
            </Plain>
          ))}
        </p>
      ) : null}
    </>
  );
}
