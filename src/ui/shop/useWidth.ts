/** The width in pixels that a drawing may fill; 0 until it is laid out. */
import { useEffect, useRef, useState, type RefObject } from 'react';

export function useWidth(): { frame: RefObject<HTMLDivElement | null>; width: number } {
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { frame, width };
}
