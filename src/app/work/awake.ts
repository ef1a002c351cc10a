// Keeps the screen awake in Work where the browser can: gloves can't wake a phone.

import { useEffect } from 'react';

/** Asked again when the page comes back; a refusal changes nothing but that the screen sleeps. */
export function useAwake(wanted: boolean): void {
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return;
    let lock: WakeLockSentinel | null = null;
    let over = false;
    const hold = async () => {
      if (document.visibilityState !== 'visible') return;
      const held = await navigator.wakeLock.request('screen').catch(() => null);
      if (over) await held?.release();
      else lock = held;
    };
    const again = () => void hold();
    void hold();
    document.addEventListener('visibilitychange', again);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', again);
      void lock?.release();
    };
  }, [wanted]);
}
