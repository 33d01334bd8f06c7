/** Brings an element into view when it becomes the chosen one, wherever the choice was made. */
import { useEffect, useRef, type RefObject } from 'react';

export function useScrollIntoView<Element extends HTMLElement>(chosen: boolean): RefObject<Element | null> {
  const element = useRef<Element>(null);
  useEffect(() => {
    if (chosen) element.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  return element;
}
