// What the server answers when it can't do what was asked: problems as data, with their status.

import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { ZodError } from 'zod';
import type { Problem } from '../quantity/types.ts';

export function refuse(c: Context, status: ContentfulStatusCode, problems: readonly Problem[]) {
  return c.json({ error: { problems } }, status);
}

export function refuseOne(c: Context, status: ContentfulStatusCode, problem: Problem) {
  return refuse(c, status, [problem]);
}

export const notThere = (path: string, got: unknown, expected: string): Problem => ({
  path,
  got,
  expected,
  why: 'it is not here',
});

/** All of a body's faults, each at its own path. */
export function fromZod(error: ZodError): Problem[] {
  return error.issues.map((issue) => ({
    path: issue.path.map(String).join('/'),
    got: issue.input ?? null,
    expected: issue.message,
    why: issue.code,
  }));
}
