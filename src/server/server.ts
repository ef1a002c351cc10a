// The server: on this computer, or its network where a person said so; app, and record.

import { serve } from '@hono/node-server';
import { Hono } from 'hono';
import { limits } from '../limits.ts';
import { listFiles, serveFile } from './files.ts';
import { LOOPBACK, onlyFromHere } from './guard.ts';
import { securityHeaders } from './headers.ts';
import type { ServerParts } from './parts.ts';
import { refuseOne } from './problems.ts';
import { apiRoutes } from './routes.ts';

export function makeServer(parts: ServerParts): Hono {
  const files = listFiles(parts.dist);
  const server = new Hono();
  server.use(securityHeaders);
  server.use(onlyFromHere(parts.port, parts.addresses));
  server.route('/api', apiRoutes(parts));
  server.get('*', (c) => serveFile(files, c));
  server.onError((error, c) => {
    // The person is told that it failed and where; what is inside stays in the server's own log.
    process.stderr.write(`boxup: ${error.stack ?? error.message}\n`);
    const path = c.req.path;
    return refuseOne(c, 500, {
      path,
      got: null,
      expected: 'an answer',
      why: 'the server failed; nothing was recorded by this',
    });
  });
  return server;
}

/** Every IPv4 address of this computer; the guard still answers to the listed ones alone. */
const EVERY = '0.0.0.0';

export type Listening = { readonly port: number; readonly close: () => Promise<void> };

/** On 127.0.0.1 only, unless addresses beyond it were let in; port 0 takes a free one. */
export function listen(parts: Omit<ServerParts, 'port'>, port: number): Promise<Listening> {
  let taken = port;
  const { fetch } = makeServer({ ...parts, port: () => taken });
  return new Promise((resolve, reject) => {
    const beyond = (parts.addresses ?? []).length > 0;
    const hostname = beyond ? EVERY : LOOPBACK;
    const server = serve({ fetch, hostname, port }, (info) => {
      taken = info.port;
      resolve({
        port: taken,
        close: () => {
          const ended = new Promise<void>((done) => server.close(() => done()));
          // A browser opens connections it may never use; waiting for them would take a minute.
          const rest = () => 'closeAllConnections' in server && server.closeAllConnections();
          setTimeout(rest, limits.server.closeSeconds * 1000).unref();
          return ended;
        },
      });
    });
    server.once('error', reject);
  });
}
