// Lets the browser keep the app, so that it starts without its server where that is allowed.

import { browserMeans } from './offline-lines.tsx';
import { startWords } from './offline-words.ts';
import { wordsNow } from './words-now.ts';

export function keepApp(): void {
  if (import.meta.env.DEV || startWords(browserMeans(), wordsNow()) !== null) return;
  // Refused (a private window, a policy): the page works on, it only does not start by itself.
  navigator.serviceWorker.register('/sw.js').catch(() => undefined);
  // Asked so that a full phone does not throw away what was not yet sent; it may say no.
  void navigator.storage?.persist?.().catch(() => false);
}
