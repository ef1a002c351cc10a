// The pack on one sheet: figures first, then what differs, what to make safe, what to settle.

import { removalMap } from '../../drawing/removal-map.ts';
import type { Pack, PlanView } from '../../pack/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { Figure } from '../shared/figure.tsx';
import { useVessel } from '../shared/replica.tsx';
import { Speaking, useMaking, useTold, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { tallyWidth } from '../shared/width.ts';
import { PackValues } from '../values/changed-since.tsx';
import { Decisions } from './decisions.tsx';
import { FasteningList } from './fastenings.tsx';
import { IsolationList } from './isolation.tsx';
import { LiftList } from './lifts.tsx';
import { Lists } from './lists.tsx';
import { Seals } from './seals.tsx';
import { StartJob } from './start.tsx';
import { StepList } from './step-list.tsx';
import { TakeAway } from './take-away.tsx';

export function PackScreen({ id }: { readonly id: string }) {
  const { replica } = useVessel();
  const { packSheet: w } = useWords();
  const pack = replica.packs.find((each) => each.id === id);
  if (pack === undefined) {
    return (
      <Sheet title={w.title}>
        <p>{w.notHere}</p>
      </Sheet>
    );
  }
  return (
    <Speaking said={pack.said}>
      <PackSheet pack={pack} />
    </Speaking>
  );
}

function PackSheet({ pack }: { readonly pack: Pack }) {
  const { packSheet: w } = useWords();
  return (
    <Sheet
      title={pack.title}
      block={[
        [w.machine, pack.machine.name],
        [w.plate, pack.machine.plate ?? w.notStated],
        ...pack.valueIssues.map((each): [string, string] => [
          w.values(each.sheet),
          w.issue(each.issue, each.date, each.authority),
        ]),
        [w.pack, pack.id.slice(0, 12)],
      ]}
    >
      <WhyAndWhen pack={pack} />
      <PackValues pack={pack} />
      <Figures pack={pack} />
      <OtherSide pack={pack} />
      <IsolationList pack={pack} />
      <Decisions pack={pack} />
      <Removal id="comesOff" plan={pack.plan} />
      {pack.bench === null ? null : <Removal id="atBench" plan={pack.bench} />}
      <FasteningList pack={pack} />
      <Seals pack={pack} />
      <LiftList pack={pack} />
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
  const { packSheet: w } = useWords();
  const said = [why, when, people?.join(', ')].filter((each) => each !== undefined);
  return <p className="small">{said.length === 0 ? w.noReason : said.join(' · ')}</p>;
}

function Figures({ pack }: { readonly pack: Pack }) {
  const undone = pack.plan.order.filter((each) => each.do === 'undo').length;
  const off = pack.plan.order.length - undone;
  const { packSheet: w } = useWords();
  const told = useTold();
  return (
    <section aria-label={w.figures} className="figures">
      <Figure
        field="minutes"
        name={w.wholeJob}
        value={pack.minutes.value}
        unit={pack.minutes.unit}
        working={pack.workings.minutes ?? []}
      />
      <Figure field="people" name={pack.people === 1 ? w.hand : w.hands} value={pack.people} />
      <Figure field="undone" name={w.toUndo} value={undone} />
      <Figure field="off" name={w.off} value={off} />
      <Figure field="steps" name={w.toDo} value={pack.steps.length} />
      <Figure
        field="removal-minutes"
        name={w.chosenBy}
        value={pack.plan.minutes.value}
        unit={pack.plan.minutes.unit}
        working={pack.plan.working}
      />
      <p>
        {pack.plan.proven
          ? w.proven
          : w.notProven(String(pack.plan.bound.value), String(pack.plan.gap))}
      </p>
      {pack.interval === null ? null : (
        <p>
          {w.interval} <b>{pack.interval.shown ?? w.notStated}</b> · {told(pack.interval.origin)}
        </p>
      )}
    </section>
  );
}

function OtherSide({ pack }: { readonly pack: Pack }) {
  const other = pack.otherSide;
  const { packSheet: w } = useWords();
  const told = useTold();
  if (other === null) return null;
  return (
    <section aria-labelledby="other-head">
      <h2 id="other-head">
        <span data-figure="differences">{other.count}</span> {w.differencesFrom(other.name)}
      </h2>
      {other.count === 0 ? (
        <p>{w.sameJob}</p>
      ) : (
        <details>
          <summary>{w.whatDiffers}</summary>
          <ul className="ruled-list">
            {other.list.map((each) => (
              <li key={each}>{told(each)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

type RemovalProps = { readonly id: 'comesOff' | 'atBench'; readonly plan: PlanView };

function Removal({ id, plan }: RemovalProps) {
  const making = useMaking();
  const width = tallyWidth();
  const { packSheet: w } = useWords();
  const told = useTold();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{w[id]}</h2>
      {plan.cautions.map((each) => (
        <p key={each}>{told(each)}</p>
      ))}
      <Drawn drawing={making(() => removalMap(plan.order, { width }))} className="drawn map" />
      <details>
        <summary>{w.inWords}</summary>
        <ul>
          {plan.order.map((each) => (
            <li key={`${each.do} ${each.id}`}>
              {w.movement[each.do](each.name)}
              {each.tool === null ? '' : `, ${told(each.tool)}`}
              {each.place === null ? '' : `, ${told(each.place)}`}: {told(each.reason)}
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

function Notes({ pack }: { readonly pack: Pack }) {
  const { packSheet: w } = useWords();
  const told = useTold();
  const lists = [
    [w.cannotCheck, pack.notChecked],
    [w.saidOfBoxUp, pack.boxUpNotes],
  ] as const;
  return lists.map(([name, list]) =>
    list.length === 0 ? null : (
      <details key={name} className="list">
        <summary>{w.counted(list.length, name)}</summary>
        <ul>
          {list.map((each) => (
            <li key={each}>{told(each)}</li>
          ))}
        </ul>
      </details>
    ),
  );
}
