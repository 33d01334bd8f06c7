/** The space in pixels that drawings may fill; 0 until it is laid out. */
import { useEffect, useRef, useState, type RefObject } from 'react';

export function useSpace(): { frame: RefObject<HTMLDivElement | null>; width: number; height: number } {
  const frame = useRef<HTMLDivElement>(null);
  const [space, setSpace] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setSpace({ width: element.clientWidth, height: element.clientHeight }));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { frame, ...space };
}
