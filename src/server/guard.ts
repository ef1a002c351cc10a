// Keeps other sites out of a server that has no passwords yet: only this computer's own names and
// the addresses that a person let in, only pages served from here. A web page elsewhere could
// otherwise point its own name at 127.0.0.1 and write into the record.

import type { MiddlewareHandler } from 'hono';
import { refuseOne } from './problems.ts';

export const LOOPBACK = '127.0.0.1';

/** The port is asked for at each request, since it is known only once the server listens. */
export function onlyFromHere(
  port: () => number,
  addresses: readonly string[] = [],
): MiddlewareHandler {
  return async (c, next) => {
    const hosts = [LOOPBACK, 'localhost', ...addresses].map((name) => `${name}:${port()}`);
    const host = c.req.header('host') ?? '';
    if (!hosts.includes(host)) {
      return refuseOne(c, 421, {
        path: 'Host',
        got: host,
        expected: hosts.join(' or '),
        why:
          addresses.length === 0
            ? 'this server answers to this computer only'
            : 'this server answers to its own addresses only',
      });
    }
    const origin = c.req.header('origin');
    if (origin !== undefined && !hosts.some((name) => origin === `http://${name}`)) {
      return refuseOne(c, 403, fromElsewhere('Origin', origin));
    }
    const site = c.req.header('sec-fetch-site') ?? 'none';
    const isApi = c.req.path.startsWith('/api/');
    if (isApi && site !== 'same-origin' && site !== 'none') {
      return refuseOne(c, 403, fromElsewhere('Sec-Fetch-Site', site));
    }
    return next();
  };
}

const fromElsewhere = (path: string, got: string) => ({
  path,
  got,
  expected: 'a page served from here',
  why: 'another site may not read or write the record',
});
