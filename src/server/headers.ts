// What every answer carries so that a page can load nothing, and talk to nothing, but this server.

import { createHash } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';

/**
 * The one style that the button library writes into the page (it stops a double tap from zooming).
 * Its hash is let through; any other inline style or script is not.
 */
export const BUTTON_STYLE = `@layer {
  [data-react-aria-pressable] {
    touch-action: pan-x pan-y pinch-zoom;
  }
}`;

const sha256 = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' ${sha256(BUTTON_STYLE)}`,
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

// No Strict-Transport-Security: a tablet that once saw it would be locked out of plain HTTP at sea.
const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
};

export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(HEADERS)) c.header(name, value);
  if (c.req.path.startsWith('/api/') && !c.res.headers.has('Cache-Control')) {
    c.header('Cache-Control', 'no-store');
  }
};
