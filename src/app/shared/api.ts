// Talks to the server this page came from, and to nothing else.

import { limits } from '../../limits.ts';
import type { Pack, PackRequest } from '../../pack/types.ts';
import type { Problem } from '../../quantity/types.ts';
import type { ReplicaAnswer } from '../../record/replica.ts';
import type { Act, Refusal } from '../../record/types.ts';
import { wordsNow } from './words-now.ts';

export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly refusal: Refusal | null };

type Wrong = {
  readonly error: { readonly problems: readonly Problem[]; readonly refusal?: Refusal };
};

async function ask<T>(path: string, init?: RequestInit): Promise<Answer<T>> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch {
    const { refused: w } = wordsNow();
    return problem({ path, got: null, expected: w.anAnswer, why: w.noAnswer });
  }
  const body: unknown = await response.json().catch(() => null);
  if (response.ok) return { ok: true, value: body as T };
  if (isWrong(body)) {
    return { ok: false, problems: body.error.problems, refusal: body.error.refusal ?? null };
  }
  const { refused: w } = wordsNow();
  return problem({ path, got: response.status, expected: w.anAnswer, why: w.failed });
}

export const problem = (one: Problem): Answer<never> => ({
  ok: false,
  problems: [one],
  refusal: null,
});

const isWrong = (body: unknown): body is Wrong =>
  typeof body === 'object' &&
  body !== null &&
  'error' in body &&
  typeof body.error === 'object' &&
  body.error !== null &&
  'problems' in body.error &&
  Array.isArray(body.error.problems);

const json = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'Content-Type': 'application/json' },
  body: JSON.stringify(body),
});

/** A phone out of reach may get no answer at all, not even a refusal: it stops waiting. */
const soon = () => ({ signal: AbortSignal.timeout(limits.server.answerSeconds * 1000) });

export type Received = {
  readonly taken: readonly string[];
  readonly known: readonly string[];
  readonly refused: readonly { readonly hash: string; readonly why: string }[];
};

export const getReplica = (seen: string) =>
  ask<ReplicaAnswer>(`/api/replica?seen=${encodeURIComponent(seen)}`, soon());
export const postActs = (acts: readonly Act[]) =>
  ask<Received>('/api/acts', { ...json({ acts }), ...soon() });
export const postPack = (request: PackRequest) =>
  ask<{ readonly pack: Pack }>('/api/packs', json(request));
export const postResults = (job: string, by: string, file: Blob) =>
  ask<{ readonly acts: readonly string[] }>(
    `/api/jobs/${encodeURIComponent(job)}/tightening-results?by=${encodeURIComponent(by)}`,
    { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: file },
  );
export const postPhoto = (file: Blob) =>
  ask<{ readonly hash: string; readonly type: string }>('/api/photos', {
    method: 'POST',
    headers: { 'Content-Type': file.type === '' ? 'application/octet-stream' : file.type },
    body: file,
  });

export const postCalculation = (name: string, input: unknown) =>
  ask<Readonly<Record<string, unknown>>>(`/api/calc/${encodeURIComponent(name)}`, json(input));
