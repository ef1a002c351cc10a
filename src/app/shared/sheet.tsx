// The sheet every screen is drawn on: who and what on top, the title block and authority below.

import type { ReactNode } from 'react';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../../quantity/authority.ts';
import { DeviceLines, StartStrip } from './offline-lines.tsx';
import { PaletteSwitch } from './palette.tsx';
import { HolderLine } from './person.tsx';
import { RefusedStrip } from './refused.tsx';
import { useVessel } from './replica.tsx';
import { to } from './route.ts';
import { useTold, useWords } from './say.tsx';

type SheetProps = {
  readonly title: string;
  /** True where the head says it already: the heading is then only heard. */
  readonly quietTitle?: boolean;
  /** Rows of the title block besides the ones every sheet has. */
  readonly block?: readonly (readonly [string, string])[];
  readonly head?: ReactNode;
  readonly children: ReactNode;
};

export function Sheet({ title, quietTitle = false, block = [], head, children }: SheetProps) {
  const { replica } = useVessel();
  const { sheet: w } = useWords();
  const told = useTold();
  const issue = replica.plantIssue;
  const rows: (readonly [string, string])[] = [
    [w.sheet, title],
    ...block,
    [w.machinery, w.issue(String(issue.number), issue.date)],
    [w.names, told(NAMES_NOT_PROVED)],
  ];
  return (
    <>
      <header className="top">
        <p className="vessel">
          <a href={to.log()}>{replica.vessel.name}</a>
        </p>
        <HolderLine />
      </header>
      <DeviceLines />
      <main>
        {head}
        {head === undefined ? <StartStrip /> : null}
        <RefusedStrip />
        <h1 className={quietTitle ? 'heard' : undefined}>{title}</h1>
        {children}
      </main>
      <footer>
        <p className="authority" data-authority>
          {told(AUTHORITY_LINE)}
        </p>
        <dl className="title-block">
          <div>
            <dt>{replica.vessel.kind === 'vessel' ? w.vessel : w.station}</dt>
            <dd>
              {replica.vessel.name}
              {replica.invented ? w.invented : ''}
            </dd>
          </div>
          {rows.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <nav aria-label={w.sheets}>
          <a href={to.log()}>{w.logLink}</a> <a href={to.calc()}>{w.calculations}</a>{' '}
          {replica.stores === undefined ? null : <a href={to.stores()}>{w.titles.stores}</a>}{' '}
          <a href={to.setup()}>{w.setUp}</a>
        </nav>
        <PaletteSwitch />
      </footer>
    </>
  );
}
