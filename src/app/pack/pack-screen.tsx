// The pack on one sheet: figures first, then what differs, what to make safe, what to settle.

import { removalMap } from '../../drawing/removal-map.ts';
import type { Pack, PlanView } from '../../pack/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { Figure } from '../shared/figure.tsx';
import { useVessel } from '../shared/replica.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { tallyWidth } from '../shared/width.ts';
import { Decisions } from './decisions.tsx';
import { IsolationList } from './isolation.tsx';
import { Lists } from './lists.tsx';
import { StartJob } from './start.tsx';
import { StepList } from './step-list.tsx';
import { TakeAway } from './take-away.tsx';

export function PackScreen({ id }: { readonly id: string }) {
  const { replica } = useVessel();
  const pack = replica.packs.find((each) => each.id === id);
  if (pack === undefined) {
    return (
      <Sheet title="Pack">
        <p>This pack is not kept here.</p>
      </Sheet>
    );
  }
  return (
    <Sheet
      title={pack.title}
      block={[
        ['Machine', pack.machine.name],
        ['Plate', pack.machine.plate ?? 'not stated'],
        ...pack.valueIssues.map((each): [string, string] => [
          `Values, ${each.sheet}`,
          `issue ${each.issue}, ${each.date}, ${each.authority}`,
        ]),
        ['Pack', pack.id.slice(0, 12)],
      ]}
    >
      <WhyAndWhen pack={pack} />
      <Figures pack={pack} />
      <OtherSide pack={pack} />
      <IsolationList pack={pack} />
      <Decisions pack={pack} />
      <Removal title="What comes off, in order" plan={pack.plan} />
      {pack.bench === null ? null : <Removal title="At the bench" plan={pack.bench} />}
      <Lists pack={pack} />
      <Notes pack={pack} />
      <StepList pack={pack} />
      <TakeAway pack={pack} />
      <StartJob pack={pack} />
    </Sheet>
  );
}

function WhyAndWhen({ pack }: { readonly pack: Pack }) {
  const { why, when, people } = pack.request;
  const said = [why, when, people?.join(', ')].filter((each) => each !== undefined);
  return (
    <p className="small">{said.length === 0 ? 'No reason or day given.' : said.join(' · ')}</p>
  );
}

function Figures({ pack }: { readonly pack: Pack }) {
  const undone = pack.plan.order.filter((each) => each.do === 'undo').length;
  const off = pack.plan.order.length - undone;
  return (
    <section aria-label="Figures" className="figures">
      <Figure
        field="minutes"
        name="for the whole job"
        value={pack.minutes.value}
        unit={pack.minutes.unit}
        working={pack.workings.minutes ?? []}
      />
      <Figure field="people" name={pack.people === 1 ? 'hand' : 'hands'} value={pack.people} />
      <Figure field="undone" name="joints to undo" value={undone} />
      <Figure field="off" name="parts off or aside" value={off} />
      <Figure field="steps" name="things to do and report" value={pack.steps.length} />
      <Figure
        field="removal-minutes"
        name="by which the way off was chosen"
        value={pack.plan.minutes.value}
        unit={pack.plan.minutes.unit}
        working={pack.plan.working}
      />
      <p>
        {pack.plan.proven
          ? 'Proven: no other way off takes fewer minutes.'
          : `Not proven: at least ${pack.plan.bound.value} min; gap ${pack.plan.gap}.`}
      </p>
      {pack.interval === null ? null : (
        <p>
          Interval <b>{pack.interval.shown ?? 'not stated'}</b> · {pack.interval.origin}
        </p>
      )}
    </section>
  );
}

function OtherSide({ pack }: { readonly pack: Pack }) {
  const other = pack.otherSide;
  if (other === null) return null;
  return (
    <section aria-labelledby="other-head">
      <h2 id="other-head">
        <span data-figure="differences">{other.count}</span> differences from {other.name}
      </h2>
      {other.count === 0 ? (
        <p>The same job on both.</p>
      ) : (
        <details>
          <summary>What is different here</summary>
          <ul className="ruled-list">
            {other.list.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Removal({ title, plan }: { readonly title: string; readonly plan: PlanView }) {
  const id = title.toLowerCase().replaceAll(/[^a-z]+/g, '-');
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {plan.cautions.map((each) => (
        <p key={each}>{each}</p>
      ))}
      <Drawn drawing={removalMap(plan.order, { width: tallyWidth() })} className="drawn map" />
      <details>
        <summary>In words, with the reason of each</summary>
        <ul>
          {plan.order.map((each) => (
            <li key={`${each.do} ${each.id}`}>
              {each.do === 'undo' ? `Undo ${each.name}` : `${each.name} ${each.do}`}
              {each.tool === null ? '' : `, ${each.tool}`}
              {each.place === null ? '' : `, ${each.place}`}: {each.reason}
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

function Notes({ pack }: { readonly pack: Pack }) {
  const lists = [
    ['Cannot be checked', pack.notChecked],
    ['Said of the box-up', pack.boxUpNotes],
  ] as const;
  return lists.map(([name, list]) =>
    list.length === 0 ? null : (
      <details key={name} className="list">
        <summary>
          {list.length} · {name}
        </summary>
        <ul>
          {list.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </details>
    ),
  );
}
