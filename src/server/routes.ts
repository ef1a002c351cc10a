// What the server answers: the replica, acts and packs taken in, photographs, prints, calculations.

import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { z } from 'zod';
import type { Archive } from '../archive/contract.ts';
import { listCalculations, runCalc } from '../calc/register.ts';
import { limits } from '../limits.ts';
import { makePack } from '../pack/pack.ts';
import { requestSchema } from '../pack/request.ts';
import { withDay } from '../pack/sheet-age.ts';
import type { PackRequest } from '../pack/types.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { mayRecord } from '../record/closing.ts';
import { fold } from '../record/fold.ts';
import type { Draft } from '../record/types.ts';
import { isLanguage, type Language } from '../words/words.ts';
import { isExchange, readSent, receiveActs } from './exchange.ts';
import { heldOn } from './held.ts';
import type { ServerParts } from './parts.ts';
import { checkPhoto } from './photos.ts';
import { fromZod, notThere, refuse, refuseOne } from './problems.ts';
import { dueLines, replicaOf } from './replica.ts';
import { solverWithin } from './solver.ts';
import { giveResults, takeResultsFile } from './tightening.ts';

const draftSchema = z.strictObject({
  stream: z.strictObject({ kind: z.enum(['job', 'machine', 'vessel']), id: z.string().min(1) }),
  kind: z.string().min(1),
  by: z.string().min(1),
  body: z.record(z.string(), z.json()),
});

/** Other writers on the same file are rare; who loses a turn this often is told so. */
const TRIES = 5;

export function apiRoutes(parts: ServerParts): Hono {
  const api = new Hono();
  api.use('/photos', tooLarge(limits.server.bodyBytes));
  api.use('/acts', tooLarge(limits.server.actsBytes));
  api.use('/packs', tooLarge(limits.server.jsonBytes));
  api.use('/jobs/*', tooLarge(limits.server.jsonBytes));
  api.use('/calc/*', tooLarge(limits.server.jsonBytes));
  api.get('/replica', async (c) => c.json(await replicaOf(parts, c.req.query('seen') ?? '')));
  api.get('/due', async (c) => c.json({ authority: AUTHORITY_LINE, due: await due(parts) }));
  api.post('/acts', async (c) => takeAct(c, parts));
  api.post('/packs', async (c) => takeRequest(c, parts));
  api.get('/packs/:id/pdf', async (c) => packSheet(c, parts));
  api.get('/packs/:id/proof/pdf', async (c) => proofSheet(c, parts));
  api.get('/jobs/:id/pdf', async (c) => recordSheet(c, parts));
  api.get('/jobs/:id/tightening-results', async (c) => giveResults(c, parts));
  api.post('/jobs/:id/tightening-results', async (c) => takeResultsFile(c, parts));
  api.get('/jobs/:id/proof/pdf', async (c) => jobProofSheet(c, parts));
  api.post('/photos', async (c) => takePhoto(c, parts));
  api.get('/photos/:hash', async (c) => givePhoto(c, parts));
  api.get('/calc', (c) => c.json({ authority: AUTHORITY_LINE, calculations: listed() }));
  api.post('/calc/:name', async (c) => calculate(c));
  api.all('*', (c) => refuseOne(c, 404, notThere('path', c.req.path, 'an address of this server')));
  return api;
}

const tooLarge = (maxSize: number) =>
  bodyLimit({
    maxSize,
    onError: (c) =>
      refuseOne(c, 413, {
        path: 'body',
        got: c.req.header('content-length') ?? 'a stream',
        expected: `at most ${maxSize} bytes`,
        why: 'it is too large',
      }),
  });

type Body =
  | { readonly ok: true; readonly body: unknown }
  | { readonly ok: false; readonly no: Response };

/** Only what says it is JSON is read: a form of another site can't say so without being asked. */
async function jsonOf(c: Context): Promise<Body> {
  const type = c.req.header('content-type') ?? '';
  const expected = 'application/json';
  if (type.split(';')[0]?.trim().toLowerCase() !== expected) {
    const why = 'the body must say that it is JSON';
    return { ok: false, no: refuseOne(c, 415, { path: 'Content-Type', got: type, expected, why }) };
  }
  try {
    return { ok: true, body: await c.req.json() };
  } catch {
    const why = 'it cannot be read as JSON';
    return { ok: false, no: refuseOne(c, 400, { path: 'body', got: null, expected, why }) };
  }
}

async function due({ plant, archive }: ServerParts) {
  const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
  return dueLines(plant, fold({ acts, packs }));
}

/** Checked against the very heads it is written after: between the two nothing may slip in. */
async function takeAct(c: Context, { archive, now }: ServerParts): Promise<Response> {
  const read = await jsonOf(c);
  if (!read.ok) return read.no;
  if (isExchange(read.body)) return takeActs(c, archive, read.body);
  if (JSON.stringify(read.body).length > limits.record.bodyBytes) {
    const why = 'one act may not be so large';
    const expected = `at most ${limits.record.bodyBytes} bytes`;
    return refuseOne(c, 413, { path: 'body', got: 'more', expected, why });
  }
  const parsed = draftSchema.safeParse(read.body);
  if (!parsed.success) return refuse(c, 400, fromZod(parsed.error));
  const draft: Draft = parsed.data;
  if (draft.kind === 'values-issued') {
    const why = 'an issue of values is made known from the plant folder, not over the network';
    return refuseOne(c, 403, { path: 'kind', got: draft.kind, expected: 'another kind', why });
  }
  for (let turn = 0; turn < TRIES; turn += 1) {
    const [acts, packs, heads] = await Promise.all([
      archive.acts(),
      archive.packs(),
      archive.heads(),
    ]);
    const at = now();
    const refusal = mayRecord(fold({ acts, packs }), draft.stream.id, draft, packs, at);
    if (refusal !== null) {
      const problem = { path: draft.kind, got: draft.kind, expected: refusal.stop };
      return c.json({ error: { problems: [{ ...problem, why: refusal.why }], refusal } }, 409);
    }
    const kept = await archive.append({ drafts: [draft], at, heads });
    const act = kept.ok ? kept.acts[0] : undefined;
    if (act !== undefined) return c.json({ hash: act.hash, act }, 201);
  }
  const why = 'others were writing at the same time; nothing was recorded, say it again';
  return refuseOne(c, 409, { path: 'heads', got: null, expected: 'a turn to write', why });
}

/** Acts made elsewhere are taken as they are; the same one twice is no error. */
async function takeActs(c: Context, archive: Archive, body: unknown): Promise<Response> {
  const sent = readSent(body);
  if (!sent.success) return refuse(c, 400, fromZod(sent.error));
  return c.json(await receiveActs(archive, sent.data));
}

async function takeRequest(c: Context, parts: ServerParts): Promise<Response> {
  const read = await jsonOf(c);
  if (!read.ok) return read.no;
  const parsed = requestSchema.safeParse(read.body);
  if (!parsed.success) return refuse(c, 400, fromZod(parsed.error));
  // The schema drops nothing and adds nothing; absent and undefined are one in what was parsed.
  const today = parts.now().utc;
  const request = withDay(parts.plant, parsed.data as PackRequest, today);
  const held = await heldOn(parts, today);
  const made = await makePack(parts.plant, request, parts.solver, held);
  if (made.kind === 'problems') return refuse(c, 422, made.problems);
  if (made.kind === 'infeasible') {
    const expected = 'a way to get it off';
    return refuseOne(c, 422, { path: 'target', got: request.target, expected, why: made.why });
  }
  await parts.archive.addPack(made.pack);
  return c.json({ pack: made.pack }, 201);
}

function pdf(c: Context, bytes: Uint8Array, name: string): Response {
  return c.body(new Uint8Array(bytes), 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': `inline; filename="${name}.pdf"`,
  });
}

/** A sheet is printed in the language that is asked for, where there are words in it. */
function languageOf(c: Context): Language {
  const wanted = c.req.query('language') ?? '';
  return isLanguage(wanted) ? wanted : 'en';
}

async function packSheet(c: Context, { archive, packPdf }: ServerParts): Promise<Response> {
  const id = c.req.param('id');
  const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
  const pack = packs.find((each) => each.id === id);
  if (pack === undefined) return refuseOne(c, 404, notThere('pack', id, 'a pack that is kept'));
  // Whoever prints it is told what changed since their last such job, and so are the hands.
  const people = [c.req.query('for') ?? '', ...(pack.request.people ?? [])];
  const about = { state: fold({ acts, packs }), packs, people, language: languageOf(c) };
  return pdf(c, await packPdf(pack, about), `pack-${pack.target.id}`);
}

async function proofSheet(c: Context, { archive, proofPdf }: ServerParts): Promise<Response> {
  const id = c.req.param('id');
  const pack = (await archive.packs()).find((each) => each.id === id);
  if (pack === undefined) return refuseOne(c, 404, notThere('pack', id, 'a pack that is kept'));
  return pdf(c, await proofPdf(pack, null, languageOf(c)), `proof-${pack.target.id}`);
}

/** With what was said of the proof so far; a job stripped without a pack has no such sheet. */
async function jobProofSheet(c: Context, { archive, proofPdf }: ServerParts): Promise<Response> {
  const id = c.req.param('id') ?? '';
  const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
  const job = fold({ acts, packs }).jobs[id];
  const pack = packs.find((each) => each.id === job?.packInForce);
  if (job === undefined || pack === undefined)
    return refuseOne(c, 404, notThere('job', id, 'a job with a pack in force'));
  return pdf(c, await proofPdf(pack, { job, acts }, languageOf(c)), `proof-${job.target}`);
}

async function recordSheet(c: Context, { archive, recordPdf }: ServerParts): Promise<Response> {
  const id = c.req.param('id') ?? '';
  const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
  const state = fold({ acts, packs });
  const job = state.jobs[id];
  if (job === undefined) return refuseOne(c, 404, notThere('job', id, 'a job that was started'));
  return pdf(c, await recordPdf({ job: id, state, packs, acts }), `record-${job.target}`);
}

async function takePhoto(c: Context, { archive }: ServerParts): Promise<Response> {
  const bytes = new Uint8Array(await c.req.arrayBuffer());
  const checked = checkPhoto(bytes);
  if (!checked.ok) return refuseOne(c, 415, checked.problem);
  const hash = await archive.addAttachment(checked.type, bytes);
  return c.json({ hash, type: checked.type }, 201);
}

async function givePhoto(c: Context, { archive }: ServerParts): Promise<Response> {
  const hash = c.req.param('hash') ?? '';
  const photo = await archive.attachment(hash);
  if (photo === null) return refuseOne(c, 404, notThere('photo', hash, 'a photo that is kept'));
  return c.body(new Uint8Array(photo.bytes), 200, {
    'Content-Type': photo.type,
    'Cache-Control': 'private, max-age=31536000, immutable',
  });
}

const listed = () =>
  listCalculations().map(({ name, summary, help, example }) => ({ name, summary, help, example }));

/** In a thread of its own with a limit in time, so that a hard case holds up nobody. */
async function calculate(c: Context): Promise<Response> {
  const name = c.req.param('name') ?? '';
  const names = listCalculations().map((each) => each.name);
  if (!names.includes(name)) {
    return refuseOne(c, 404, notThere('name', name, `one of: ${names.join(', ')}`));
  }
  const read = await jsonOf(c);
  if (!read.ok) return read.no;
  const { solver, close } = solverWithin(limits.server.calculationSeconds);
  try {
    const answer = await runCalc(name, read.body, { solver });
    return answer.ok ? c.json(answer.result) : c.json(answer.error, 422);
  } finally {
    await close();
  }
}
