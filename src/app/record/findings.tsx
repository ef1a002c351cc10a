// Findings, each with its owner and what is decided about it.

import { useState } from 'react';
import type { PackFacts } from '../../pack/types.ts';
import { rivalsOf } from '../../record/rivals.ts';
import type { Finding, JobState } from '../../record/types.ts';
import type { Words } from '../../words/words.ts';
import { Field, Pick, Plain } from '../shared/controls.tsx';
import { nameOf } from '../shared/names.ts';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type FindingsProps = { readonly job: JobState; readonly pack: { readonly facts: PackFacts } };

export function Findings({ job, pack }: FindingsProps) {
  const words = useWords();
  const { findings: w } = words;
  const told = useTold();
  return (
    <section aria-labelledby="findings-head">
      <h2 id="findings-head">{w.head}</h2>
      {job.findings.length === 0 ? <p>{w.none}</p> : null}
      <ul className="ruled-list">
        {job.findings.map((finding) => (
          <li key={finding.id} data-finding={finding.id}>
            {kindWords(finding.kind, w)} · {nameOf(finding.thing, pack, words)}:{' '}
            {told(finding.what)}
            {finding.decision === null ? null : (
              <>
                <br />
                {w.decidedBy(finding.decision.by, finding.decision.what, finding.decision.owner)}
              </>
            )}
            {finding.needsDecision && finding.decision === null ? (
              <Decide job={job} finding={finding} />
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A kind younger than these words stays as the record has it. */
const kindWords = (kind: string, w: Words['findings']): string =>
  Object.entries(w.kinds).find(([each]) => each === kind)?.[1] ?? kind;

function Decide({ job, finding }: { readonly job: JobState; readonly finding: Finding }) {
  const { record, replica } = useVessel();
  const { name } = useHolder();
  const { findings: w } = useWords();
  const told = useTold();
  const [open, setOpen] = useState(false);
  const [owner, setOwner] = useState('');
  const [what, setWhat] = useState('');
  const [pack, setPack] = useState('');
  const isAmendment = finding.kind === 'two amendments';
  const rivals = isAmendment ? rivalsOf(replica.acts, job, finding.id) : [];
  if (!open) return <Plain onPress={() => setOpen(true)}>{w.decide(told(finding.what))}</Plain>;
  const ready =
    owner.trim() !== '' && what.trim() !== '' && name !== '' && (!isAmendment || pack !== '');
  const decide = () =>
    void record({
      stream: { kind: 'job', id: job.id },
      kind: 'decided',
      by: name,
      body: { finding: finding.id, owner, what, ...(isAmendment ? { pack } : {}) },
    });
  return (
    <div className="form">
      <Field label={w.whatIsDecided} value={what} onChange={setWhat} lines={2} />
      <Person label={w.owner} value={owner} onChange={setOwner} />
      {isAmendment ? (
        <Pick
          label={w.packInForce}
          value={pack}
          onChange={setPack}
          options={rivals.map(({ pack: id, why, by }) => ({ id, name: w.rival(why, by) }))}
          empty={w.choosePack}
        />
      ) : null}
      <Plain onPress={decide} disabled={!ready}>
        {w.recordIt}
      </Plain>{' '}
      <Plain onPress={() => setOpen(false)}>{w.leaveIt}</Plain>
    </div>
  );
}
