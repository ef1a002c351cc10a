// A calculation that runs on this phone: its fields above, its result under them as they change.

import { useEffect, useMemo, useState } from 'react';
import {
  type CalcAnswer,
  type Calculation,
  inputJsonSchema,
  runCalc,
} from '../../calc/register.ts';
import type { Solver } from '../../removal/model.ts';
import { Plain } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useWords } from '../shared/say.tsx';
import { fieldOf } from './fields.ts';
import { Editor, wordsOf } from './form.tsx';
import { Outcome } from './outcome.tsx';

const noSolver: Solver = () => Promise.reject(new Error('this calculation was lent no solver'));

/** Typing goes on while an answer is worked out; the last one counts. */
const PAUSE = 150;

export function Live({ one }: { readonly one: Calculation }) {
  const w = useWords().calcForm;
  const [kept, keep] = useKept(`case.${one.name}`, '');
  const field = useMemo(() => fieldOf(inputJsonSchema(one)), [one]);
  const input = useMemo(() => caseOf(kept) ?? one.example, [kept, one]);
  const answer = useAnswer(one.name, input);
  return (
    <>
      <p>{one.summary}</p>
      {answer === null ? null : <Answered answer={answer} />}
      <div className="calc-form">
        <Editor
          field={field}
          label=""
          value={input}
          onChange={(next) => keep(JSON.stringify(next ?? {}))}
        />
      </div>
      <p className="small">{w.kept}</p>
      <Plain onPress={() => keep('')}>{w.startOver}</Plain>
      <details>
        <summary>{w.asText}</summary>
        <pre data-case>{JSON.stringify(input, null, 2)}</pre>
      </details>
    </>
  );
}

function caseOf(kept: string): Readonly<Record<string, unknown>> | null {
  if (kept === '') return null;
  try {
    const read: unknown = JSON.parse(kept);
    return typeof read === 'object' && read !== null ? { ...read } : null;
  } catch {
    return null;
  }
}

function useAnswer(name: string, input: unknown): CalcAnswer | null {
  const [answer, setAnswer] = useState<CalcAnswer | null>(null);
  useEffect(() => {
    let wanted = true;
    const timer = setTimeout(() => {
      void runCalc(name, input, { solver: noSolver }).then((next) => {
        if (wanted) setAnswer(next);
      });
    }, PAUSE);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [name, input]);
  return answer;
}

function Answered({ answer }: { readonly answer: CalcAnswer }) {
  const w = useWords().calcForm;
  if (answer.ok) return <Outcome result={answer.result} />;
  const { problems } = answer.error.error;
  return (
    <section role="alert" aria-label={w.cannot} className="refused">
      <h2>{w.cannot}</h2>
      <ul>
        {problems.map(({ path, why, expected }) => (
          <li key={`${path} ${why}`}>{w.expected(pathWords(path), why, expected)}</li>
        ))}
      </ul>
    </section>
  );
}

const pathWords = (path: string): string => path.split('/').map(wordsOf).join(', ');
