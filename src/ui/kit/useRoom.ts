/** The room in pixels that drawings may fill; 0 until it is laid out. */
import { useEffect, useRef, useState, type RefObject } from 'react';

export function useRoom(): { frame: RefObject<HTMLDivElement | null>; width: number; height: number } {
  const frame = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setRoom({ width: element.clientWidth, height: element.clientHeight }));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { frame, ...room };
}
