// Findings, each with its owner and what is decided about it.

import { useState } from 'react';
import type { PackFacts } from '../../pack/types.ts';
import type { Finding, JobState } from '../../record/types.ts';
import { Field, Pick, Plain } from '../shared/controls.tsx';
import { nameOf } from '../shared/names.ts';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';

type FindingsProps = { readonly job: JobState; readonly pack: { readonly facts: PackFacts } };

export function Findings({ job, pack }: FindingsProps) {
  return (
    <section aria-labelledby="findings-head">
      <h2 id="findings-head">Findings</h2>
      {job.findings.length === 0 ? <p>None.</p> : null}
      <ul className="ruled-list">
        {job.findings.map((finding) => (
          <li key={finding.id} data-finding={finding.id}>
            {finding.kind} · {nameOf(finding.thing, pack)}: {finding.what}
            {finding.decision === null ? null : (
              <>
                <br />
                Decided by {finding.decision.by}: {finding.decision.what}. Owner{' '}
                {finding.decision.owner}.
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

function Decide({ job, finding }: { readonly job: JobState; readonly finding: Finding }) {
  const { record } = useVessel();
  const { name } = useHolder();
  const [open, setOpen] = useState(false);
  const [owner, setOwner] = useState('');
  const [what, setWhat] = useState('');
  const [pack, setPack] = useState('');
  const isAmendment = finding.kind === 'two amendments';
  if (!open) return <Plain onPress={() => setOpen(true)}>Decide: {finding.what}</Plain>;
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
      <Field label="What is decided" value={what} onChange={setWhat} lines={2} />
      <Person label="Owner" value={owner} onChange={setOwner} />
      {isAmendment ? (
        <Pick
          label="Pack in force"
          value={pack}
          onChange={setPack}
          options={job.packs.map((id) => ({ id, name: id.slice(0, 12) }))}
          empty="choose a pack"
        />
      ) : null}
      <Plain onPress={decide} disabled={!ready}>
        Record the decision
      </Plain>{' '}
      <Plain onPress={() => setOpen(false)}>Leave it</Plain>
    </div>
  );
}
