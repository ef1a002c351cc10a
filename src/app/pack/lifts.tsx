// The weights of a pack: how each is carried, drawn from the side, and what is still to be settled.

import { handsDrawing, slingDrawing } from '../../drawing/lift.ts';
import type { LiftView } from '../../pack/lift-types.ts';
import {
  liftAt,
  liftHead,
  liftLines,
  liftWeight,
  liftWhat,
  sailingLines,
  worthALine,
} from '../../pack/lift-words.ts';
import type { Pack } from '../../pack/types.ts';
import { formatNumber } from '../../quantity/quantity.ts';
import { Drawn } from '../shared/drawn.tsx';
import { WorkingTable } from '../shared/figure.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';
import { tallyWidth } from '../shared/width.ts';

export function LiftList({ pack }: { readonly pack: Pack }) {
  const { lifting: w } = useWords();
  const { lifts } = pack;
  if (lifts === undefined) return null;
  const rows = worthALine(lifts);
  const sailing = sailingLines(lifts, w);
  if (rows.length === 0 && sailing.length === 0) return null;
  return (
    <section aria-labelledby="lifts-head">
      <h2 id="lifts-head">{w.title}</h2>
      {sailing.map((each) => (
        <p key={each} data-sailing>
          {each}
        </p>
      ))}
      {rows.map((one) => (
        <OneLift key={`${one.part} ${one.as}`} one={one} />
      ))}
    </section>
  );
}

function OneLift({ one }: { readonly one: LiftView }) {
  const { lifting: w } = useWords();
  const told = useTold();
  const working = [...(one.gear?.working ?? []), ...(one.hand?.working ?? [])];
  return (
    <article className="fastening" data-lift={one.part} data-how={one.how}>
      <p className="step-value">
        <b>{liftWeight(one, w)}</b> · {liftWhat(one, w)}
      </p>
      <LiftDrawn one={one} />
      <ul className="small">
        {liftLines(one, w, told).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {working.length === 0 ? null : (
        <details>
          <summary>{w.working}</summary>
          {one.gear === null ? null : <WorkingTable working={one.gear.working} />}
          {one.hand === null ? null : <WorkingTable working={one.hand.working} />}
        </details>
      )}
    </article>
  );
}

const kgOf = (value: number | undefined): string =>
  value === undefined ? '' : `${formatNumber(value, 3)} kg`;

function LiftDrawn({ one }: { readonly one: LiftView }) {
  const { lifting: w } = useWords();
  const making = useMaking();
  const width = tallyWidth();
  const { gear, hand } = one;
  const alt = liftHead(one, w);
  if (gear !== null && gear.legs > 0 && gear.tension !== null) {
    const bears = gear.needs.find((need) => need.kind === 'sling')?.bears.value;
    const given = {
      alt,
      weight: kgOf(one.weight?.value),
      anglesDeg: gear.anglesDeg,
      legs: gear.legs,
      legSays: w.onLeg(kgOf(bears)),
    };
    return <Drawn drawing={making(() => slingDrawing(given, { width }))} />;
  }
  if (hand === null || hand.share === null) return null;
  const given = {
    alt,
    weight: w.each(kgOf(hand.share.value)),
    from: hand.from,
    to: hand.to,
    floor: w.drawn,
  };
  return <Drawn drawing={making(() => handsDrawing(given, { width }))} />;
}

type LiftAtStepProps = { readonly pack: Pack; readonly thing: string };

/** Beside a step that moves a part: by whom or what it is carried, and on what it hangs. */
export function LiftAtStep({ pack, thing }: LiftAtStepProps) {
  const { lifting: w } = useWords();
  const told = useTold();
  const one = liftAt(pack.lifts, thing);
  if (one === null) return null;
  return (
    <div className="step-facts" data-lift={one.part} data-how={one.how}>
      <b>{liftHead(one, w)}</b>
      <ul className="small">
        {liftLines(one, w, told).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
