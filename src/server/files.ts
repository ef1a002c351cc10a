// Serves the built app. The files are listed once at the start: no path of a request touches disk.

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import type { Context } from 'hono';
import { limits } from '../limits.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

export type AppFiles = ReadonlyMap<string, { readonly file: string; readonly type: string }>;

/** Empty when the app has not been built; the server then says so instead of a blank page. */
export function listFiles(folder: string): AppFiles {
  const found = new Map<string, { file: string; type: string }>();
  if (statSync(folder, { throwIfNoEntry: false }) === undefined) return found;
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = TYPES[extname(entry.name)];
    if (!entry.isFile() || entry.name.startsWith('.') || type === undefined) continue;
    if (found.size >= limits.server.appFiles) break;
    const file = join(entry.parentPath, entry.name);
    found.set(`/${relative(folder, file).split(sep).join('/')}`, { file, type });
  }
  return found;
}

export function serveFile(files: AppFiles, c: Context): Response {
  const path = c.req.path === '/' ? '/index.html' : c.req.path;
  const found = files.get(path);
  if (found === undefined) {
    const missing = files.size === 0 ? 'The app is not built: run `npm start`.' : 'Nothing here.';
    return c.text(missing, 404);
  }
  const cache = path.startsWith('/built/') ? 'max-age=31536000, immutable' : 'no-cache';
  const body = new Uint8Array(readFileSync(found.file));
  return c.body(body, 200, { 'Content-Type': found.type, 'Cache-Control': cache });
}
