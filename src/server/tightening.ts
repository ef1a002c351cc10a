// Files of results at a job: one taken into its record, whole or not at all, and one given out.

import type { Context } from 'hono';
import { resultsOf, takeResults } from '../exchange/tightening-acts.ts';
import { sha256Hex } from '../quantity/sha.ts';
import type { Problem } from '../quantity/types.ts';
import { mayRecord } from '../record/closing.ts';
import { fold } from '../record/fold.ts';
import type { ServerParts } from './parts.ts';
import { notThere, refuse, refuseOne } from './problems.ts';

type Parts = Pick<ServerParts, 'archive' | 'now'>;

/** Other writers on the same file are rare; who loses a turn this often is told so. */
const TRIES = 5;

async function jobAt({ archive }: Parts, id: string) {
  const [acts, packs, heads] = await Promise.all([
    archive.acts(),
    archive.packs(),
    archive.heads(),
  ]);
  const state = fold({ acts, packs });
  const job = state.jobs[id];
  const pack = packs.find((each) => each.id === job?.packInForce);
  return job === undefined || pack === undefined ? null : { acts, packs, heads, state, job, pack };
}

const noJob = (c: Context, id: string): Response =>
  refuseOne(c, 404, notThere('job', id, 'a job with a pack in force'));

/** What was made up, bolt by bolt, as a file for other programs. */
export async function giveResults(c: Context, parts: Parts): Promise<Response> {
  const id = c.req.param('id') ?? '';
  const at = await jobAt(parts, id);
  if (at === null) return noJob(c, id);
  return c.body(JSON.stringify(resultsOf(at.job, at.pack, at.acts), null, 2), 200, {
    'Content-Type': 'application/json',
    'Content-Disposition': `attachment; filename="tightening-${at.job.target}.json"`,
  });
}

/** The bytes are hashed as they came: each act says from which file it is. */
export async function takeResultsFile(c: Context, parts: Parts): Promise<Response> {
  const id = c.req.param('id') ?? '';
  const by = (c.req.query('by') ?? '').trim();
  const type = c.req.header('content-type') ?? '';
  const expected = 'application/json';
  if (type.split(';')[0]?.trim().toLowerCase() !== expected) {
    const why = 'the body must say that it is JSON';
    return refuseOne(c, 415, { path: 'Content-Type', got: type, expected, why });
  }
  if (by === '' || by.length > 200)
    return refuseOne(c, 400, { path: 'by', got: by, expected: 'a name', why: 'who takes it in?' });
  const bytes = new Uint8Array(await c.req.arrayBuffer());
  let raw: unknown;
  try {
    raw = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    const why = 'it cannot be read as JSON';
    return refuseOne(c, 400, { path: 'body', got: null, expected, why });
  }
  return record(c, parts, id, { by, file: { hash: sha256Hex(bytes), raw } });
}

type Given = {
  readonly by: string;
  readonly file: { readonly hash: string; readonly raw: unknown };
};

async function record(c: Context, parts: Parts, id: string, given: Given): Promise<Response> {
  for (let turn = 0; turn < TRIES; turn += 1) {
    const here = await jobAt(parts, id);
    if (here === null) return noJob(c, id);
    const taken = takeResults(here.job, here.pack, given.file, given.by);
    if (!taken.ok) return refuse(c, 422, taken.problems);
    const at = parts.now();
    for (const draft of taken.drafts) {
      const refusal = mayRecord(here.state, id, draft, here.packs, at);
      if (refusal === null) continue;
      const problem: Problem = {
        path: draft.kind,
        got: String(draft.body.thing),
        expected: refusal.stop,
        why: refusal.why,
      };
      return c.json({ error: { problems: [problem], refusal } }, 409);
    }
    const kept = await parts.archive.append({
      drafts: [...taken.drafts],
      at,
      heads: here.heads,
    });
    if (kept.ok) return c.json({ acts: kept.acts.map((act) => act.hash) }, 201);
  }
  const why = 'others were writing at the same time; nothing was recorded, say it again';
  return refuseOne(c, 409, { path: 'heads', got: null, expected: 'a turn to write', why });
}
