// The units a person reads in, kept on the device, and a conversion beside what was issued.

import { useMemo } from 'react';
import { besideIn, OWN_UNITS, type OwnDimension, type OwnUnits } from '../../quantity/own-units.ts';
import { useKept } from './kept.ts';
import { useHolder } from './person.tsx';

const dimensions = Object.keys(OWN_UNITS) as OwnDimension[];

/** `pressure [psi];length [in_i]`: what is not named stays as it was issued or asked. */
function read(kept: string): OwnUnits {
  const rows = kept.split(';').flatMap((row): [OwnDimension, string][] => {
    const name = dimensions.find((each) => row.startsWith(`${each} `));
    return name === undefined ? [] : [[name, row.slice(name.length + 1)]];
  });
  return Object.fromEntries(rows);
}

export function useOwnUnits(): readonly [OwnUnits, (next: OwnUnits) => void] {
  const { name } = useHolder();
  const [kept, keep] = useKept(`units.${name}`, '');
  const own = useMemo(() => read(kept), [kept]);
  const choose = (next: OwnUnits) =>
    keep(dimensions.flatMap((each) => (next[each] ? [`${each} ${next[each]}`] : [])).join(';'));
  return [own, choose];
}

/** Smaller, after the figure as it was issued or recorded; nothing where there is none to show. */
export function Beside({ shown }: { readonly shown: string | null }) {
  const [own] = useOwnUnits();
  const beside = shown === null ? null : besideIn(shown, own);
  return beside === null ? null : <span className="small"> {beside}</span>;
}
