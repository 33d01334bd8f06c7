/** Keeps the screen from going dark while a run is looked at; where the browser does not, that is said once. */
import { useEffect, useState, type ReactNode } from 'react';
import { useKept } from '../kit/kept.ts';
import { useWayBack } from '../kit/useWayBack.ts';

const readSaid = (kept: unknown): boolean => kept === true;

export function KeptAwake(): ReactNode {
  const goesDark = useAwake();
  const [isSaid, say] = useKept('goes-dark-said', readSaid);
  const { onFocus, answered } = useWayBack();
  if (!goesDark || isSaid) return null;
  return (
    <section className="run-dark" aria-label="The screen" onFocus={onFocus}>
      <p>
        This browser lets the screen go dark while nothing is touched. Set the device itself to stay lit longer; the run
        waits where it is.
      </p>
      <button
        type="button"
        className="press"
        onClick={() => {
          answered();
          say(true);
        }}
      >
        Got it
      </button>
    </section>
  );
}

/** Asks the browser to keep the screen lit, again each time the page is seen anew; answers whether it refuses, or has no such thing. */
function useAwake(): boolean {
  const [isRefused, setRefused] = useState(!hasWakeLock());
  useEffect(() => {
    if (!hasWakeLock()) return;
    let lock: WakeLockSentinel | null = null;
    let isAsking = false;
    let isLeft = false;
    const ask = async (): Promise<void> => {
      if (isAsking || document.visibilityState !== 'visible' || lock?.released === false) return;
      isAsking = true;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (isLeft) void lock.release();
        else setRefused(false);
      } catch {
        setRefused(!isLeft && document.visibilityState === 'visible'); // the battery is low, or the page is not to
      }
      isAsking = false;
    };
    const seen = (): void => void ask();
    seen();
    document.addEventListener('visibilitychange', seen);
    return () => {
      isLeft = true;
      document.removeEventListener('visibilitychange', seen);
      void lock?.release();
    };
  }, []);
  return isRefused;
}

/** Over a network without encryption no browser has it. */
const hasWakeLock = (): boolean => 'wakeLock' in navigator;
