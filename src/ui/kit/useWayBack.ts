/** For what goes away when it is answered: whoever answered it stands again where they came from, not before the page. */
import { useEffect, useRef, type FocusEvent } from 'react';

interface WayBack {
  /** For the element that goes away. */
  readonly onFocus: (event: FocusEvent<HTMLElement>) => void;
  /** Called before that which makes it go. */
  readonly answered: () => void;
}

export function useWayBack(): WayBack {
  const cameFrom = useRef<HTMLElement | null>(null);
  const isAnswered = useRef(false);
  useEffect(
    () => () => {
      if (!isAnswered.current) return;
      const place = cameFrom.current?.isConnected ? cameFrom.current : document.querySelector('main');
      place?.focus({ preventScroll: true });
    },
    [],
  );
  return {
    onFocus: ({ currentTarget, relatedTarget }) => {
      if (relatedTarget instanceof HTMLElement && !currentTarget.contains(relatedTarget))
        cameFrom.current = relatedTarget;
    },
    answered: () => {
      isAnswered.current = true;
    },
  };
}
