// Calculations: what is registered, each to be tried with its own example, with its working.

import { useEffect, useState } from 'react';
import { AUTHORITY_LINE } from '../../quantity/authority.ts';
import type { Problem } from '../../quantity/types.ts';
import { type CalculationView, getCalculations, postCalculation } from '../shared/api.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { WorkingTable } from '../shared/figure.tsx';
import { to } from '../shared/route.ts';
import { Sheet } from '../shared/sheet.tsx';
import { isWorking, ResultRows } from './result.tsx';

export function CalcScreen({ name }: { readonly name: string | null }) {
  const [list, setList] = useState<readonly CalculationView[] | null>(null);
  useEffect(() => {
    void getCalculations().then((answer) => setList(answer.ok ? answer.value.calculations : []));
  }, []);
  const one = list?.find((each) => each.name === name);
  return (
    <Sheet title={one === undefined ? 'Calculations' : `Calculation: ${one.name}`}>
      {list === null ? <p role="status">Reading the list …</p> : null}
      {one === undefined ? (
        <ul className="ruled-list">
          {(list ?? []).map((each) => (
            <li key={each.name}>
              <a href={to.calc(each.name)}>{each.name}</a> · {each.summary}
            </li>
          ))}
        </ul>
      ) : (
        <Calculation key={one.name} one={one} />
      )}
    </Sheet>
  );
}

function Calculation({ one }: { readonly one: CalculationView }) {
  const [text, setText] = useState(JSON.stringify(one.example, null, 2));
  const [result, setResult] = useState<Readonly<Record<string, unknown>> | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const run = async () => {
    let input: unknown;
    try {
      input = JSON.parse(text);
    } catch (error) {
      const why = error instanceof Error ? error.message : 'it cannot be read';
      setResult(null);
      setProblems([{ path: 'input', got: null, expected: 'one JSON object', why }]);
      return;
    }
    const answer = await postCalculation(one.name, input);
    setResult(answer.ok ? answer.value : null);
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <>
      <p>{one.summary}</p>
      <Field
        label="Input (JSON; the example stands in it)"
        value={text}
        onChange={setText}
        lines={14}
      />
      <Plain onPress={() => void run()}>Work it out</Plain>
      {problems.length === 0 ? null : (
        <section role="alert" aria-label="Problems" className="refused">
          <h2>It cannot be worked out</h2>
          <ul>
            {problems.map((each) => (
              <li key={`${each.path} ${each.why}`}>
                {each.path}: {each.why}; expected {each.expected}
              </li>
            ))}
          </ul>
        </section>
      )}
      {result === null ? null : (
        <section aria-labelledby="result-head">
          <h2 id="result-head">Result</h2>
          <p className="small">{AUTHORITY_LINE}</p>
          <ResultRows result={result} />
          {isWorking(result.working) ? <WorkingTable working={result.working} /> : null}
          <details>
            <summary>The whole result (JSON)</summary>
            <pre data-result>{JSON.stringify(result, null, 2)}</pre>
          </details>
        </section>
      )}
    </>
  );
}
