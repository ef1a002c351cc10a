// Calculations: what is registered, each to be tried with its own example, with its working.

import { useState } from 'react';
import { type Calculation, listCalculations } from '../../calc/register.ts';
import { AUTHORITY_LINE } from '../../quantity/authority.ts';
import type { Problem } from '../../quantity/types.ts';
import { postCalculation } from '../shared/api.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { WorkingTable } from '../shared/figure.tsx';
import { to } from '../shared/route.ts';
import { useTold, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { Live } from './live.tsx';
import { isWorking, ResultRows } from './result.tsx';

export function CalcScreen({ name }: { readonly name: string | null }) {
  const { calcSheet: w } = useWords();
  const list = listCalculations();
  const one = list.find((each) => each.name === name);
  return (
    <Sheet title={one === undefined ? w.title : w.one(one.name)}>
      {one === undefined ? (
        <ul className="ruled-list">
          {list.map((each) => (
            <li key={each.name}>
              <a href={to.calc(each.name)}>{each.name}</a> · {each.summary}
            </li>
          ))}
        </ul>
      ) : (
        <Chosen key={one.name} one={one} />
      )}
    </Sheet>
  );
}

/** Where a solver is needed the server works it out; everything else runs on this phone. */
const Chosen = ({ one }: { readonly one: Calculation }) =>
  one.needsSolver ? <ByServer one={one} /> : <Live one={one} />;

function ByServer({ one }: { readonly one: Calculation }) {
  const { calcSheet: w, refused } = useWords();
  const told = useTold();
  const [text, setText] = useState(JSON.stringify(one.example, null, 2));
  const [result, setResult] = useState<Readonly<Record<string, unknown>> | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const run = async () => {
    let input: unknown;
    try {
      input = JSON.parse(text);
    } catch (error) {
      const why = error instanceof Error ? error.message : w.cannotBeRead;
      setResult(null);
      setProblems([{ path: 'input', got: null, expected: w.oneObject, why }]);
      return;
    }
    const answer = await postCalculation(one.name, input);
    setResult(answer.ok ? answer.value : null);
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <>
      <p>{one.summary}</p>
      <Field label={w.input} value={text} onChange={setText} lines={14} />
      <Plain onPress={() => void run()}>{w.workOut}</Plain>
      {problems.length === 0 ? null : (
        <section role="alert" aria-label={w.problems} className="refused">
          <h2>{w.cannot}</h2>
          <ul>
            {problems.map((each) => (
              <li key={`${each.path} ${each.why}`}>
                {refused.problem(each.path, each.why, each.expected)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {result === null ? null : (
        <section aria-labelledby="result-head">
          <h2 id="result-head">{w.result}</h2>
          <p className="small">{told(AUTHORITY_LINE)}</p>
          <ResultRows result={result} />
          {isWorking(result.working) ? <WorkingTable working={result.working} /> : null}
          <details>
            <summary>{w.whole}</summary>
            <pre data-result>{JSON.stringify(result, null, 2)}</pre>
          </details>
        </section>
      )}
    </>
  );
}
