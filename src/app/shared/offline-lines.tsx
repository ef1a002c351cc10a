// The lines under the head of every screen: what is on this phone only, and what it cannot do.

import { type ReactNode, useEffect, useState, useSyncExternalStore } from 'react';
import { limits } from '../../limits.ts';
import { deviceView, subscribe } from './offline.ts';
import { db } from './offline-db.ts';
import { startWords, unsentWords } from './offline-words.ts';
import { useTold, useWords } from './say.tsx';

export const useDevice = () => useSyncExternalStore(subscribe, deviceView);

export const browserMeans = () => ({
  secure: window.isSecureContext,
  worker: 'serviceWorker' in navigator,
});

/** True when something has waited longer than an answer on a sound line takes. */
function useLate(waiting: boolean): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (!waiting) {
      setLate(false);
      return;
    }
    const timer = window.setTimeout(() => setLate(true), limits.server.loudSeconds * 1000);
    return () => window.clearTimeout(timer);
  }, [waiting]);
  return late;
}

export function DeviceLines() {
  const { unsent, elsewhere, refused, lost, broken } = useDevice();
  const w = useWords();
  const told = useTold();
  const words = unsentWords(unsent, w);
  const late = useLate(words !== null && lost === null);
  const reason = refused[0] ?? null;
  return (
    <>
      {broken === null ? null : <Loud about="nothing-kept">{w.offline.broken(broken)}</Loud>}
      {words === null || (lost === null && !late && reason === null) ? null : (
        <Loud about="unsent">
          <b>{words}</b>
          {reason === null ? '' : w.offline.notTaken(refused.length, told(reason))}
        </Loud>
      )}
      {elsewhere === 0 ? null : <Loud about="elsewhere">{w.offline.elsewhere(elsewhere)}</Loud>}
      {lost === null ? null : (
        <p className="strip" role="alert">
          {w.offline.cutOff(lost)}
        </p>
      )}
    </>
  );
}

/** A shape and a word: a triangle drawn beside the sentence, whatever the palette. */
function Loud({ about, children }: { readonly about: string; readonly children: ReactNode }) {
  return (
    <p className="loud" role="status" data-device={about}>
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        <path d="M10 2 19 18H1Z" fill="none" stroke="currentColor" strokeWidth="2" />
        <path d="M10 7v6M10 15v2" stroke="currentColor" strokeWidth="2" />
      </svg>
      <span>{children}</span>
    </p>
  );
}

/** Over plain HTTP: what this phone cannot do, in words. */
export function StartStrip() {
  const words = startWords(browserMeans(), useWords());
  return words === null ? null : (
    <p className="strip" data-device="no-start">
      {words}
    </p>
  );
}

/** The server's copy, or this phone's own while the server is out of reach. */
export function KeptPhoto({ hash, alt }: { readonly hash: string; readonly alt: string }) {
  const [own, setOwn] = useState<string | null>(null);
  const [looked, setLooked] = useState(false);
  useEffect(() => {
    let url: string | null = null;
    let over = false;
    const show = async () => {
      const row = await db.photos.get(hash).catch(() => undefined);
      if (over) return;
      if (row !== undefined) {
        url = URL.createObjectURL(new Blob([row.bytes], { type: row.type }));
        setOwn(url);
      }
      setLooked(true);
    };
    void show();
    return () => {
      over = true;
      if (url !== null) URL.revokeObjectURL(url);
    };
  }, [hash]);
  return looked ? <img src={own ?? `/api/photos/${hash}`} alt={alt} /> : null;
}
