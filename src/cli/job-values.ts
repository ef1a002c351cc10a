// The command by which a named person says that they looked at a value superseded at a joint.

import type { Command } from 'commander';
import { lookBody, unlooked } from '../record/superseded.ts';
import type { Act } from '../record/types.ts';
import { type By, byName, draftOf, onJob, recorded } from './job-common.ts';
import { BadInput, isRefusal, refused } from './job-session.ts';

export const lookedCommand = (): Command =>
  byName('value-looked-at', 'a value superseded since the pack was made, looked at at its joint')
    .argument('<job>')
    .argument('<joint>', 'joint/…; all its superseded values are meant')
    .action((wanted: string, joint: string, o: By) =>
      onJob(o, wanted, async (job, _packs, session) => {
        const thing = joint.startsWith('joint/') ? joint : `joint/${joint}`;
        const rows = unlooked(job).filter((r) => r.thing === thing);
        if (rows.length === 0) throw new BadInput(`no value of ${thing} waits for a look`);
        const acts: Act[] = [];
        for (const row of rows) {
          const draft = draftOf(job, 'value-looked-at', o.by, lookBody(row));
          const answer = await session.record(draft);
          if (isRefusal(answer)) return refused(answer);
          acts.push(answer);
        }
        return await recorded(acts, job.id, session);
      }),
    );
