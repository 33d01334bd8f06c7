/** Enter takes a figure and leads to the next, as one reads them off the list; where it was not taken, one stays. */
import { useRef, type KeyboardEvent } from 'react';

/** For the handlers of a list; what is marked `data-aside` is passed by. */
export function useOnward() {
  // One that was pressed elsewhere, and let go of here, means nothing.
  const entered = useRef<EventTarget | null>(null);
  return {
    onKeyDownCapture: ({ key, target }: KeyboardEvent): void => {
      entered.current = key === 'Enter' ? target : null;
    },
    onKeyUp: ({ key, target, currentTarget }: KeyboardEvent): void => {
      if (key !== 'Enter' || target !== entered.current || !(target instanceof HTMLInputElement)) return;
      if (target.getAttribute('aria-invalid') === 'true') return;
      const fields = [...currentTarget.querySelectorAll<HTMLInputElement>('input:not([data-aside])')];
      const next = fields[fields.indexOf(target) + 1];
      next?.focus();
      next?.select();
    },
  };
}
