/**
 * A key of the run. One that has just come stands still for a moment: a glove that presses twice means the key that was there
 * before. Keyboards and screen readers press at once; theirs is a press without a place.
 */
import { useEffect, useState, type ReactNode } from 'react';

/** Two presses that mean one come closer than this, ms. */
const STANDS_STILL = 400;

/** Whether what has just come takes presses yet. */
export function useReady(): boolean {
  const [ready, setReady] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setReady(true), STANDS_STILL);
    return () => clearTimeout(timer);
  }, []);
  return ready;
}

export function RunKey(props: {
  live?: boolean;
  quiet?: boolean;
  onPress: () => void;
  children: ReactNode;
}): ReactNode {
  const { live = false, quiet = false, onPress } = props;
  const ready = useReady();
  return (
    <button
      type="button"
      className={`press ${live ? 'press-live ' : quiet ? 'press-quiet ' : ''}run-key`}
      aria-disabled={ready ? undefined : true}
      onClick={({ detail }) => {
        if (ready || detail === 0) onPress();
      }}
    >
      {props.children}
    </button>
  );
}
