/** The size of an element, in CSS pixels, followed as it changes; nothing by nothing until it was measured. */
import { useLayoutEffect, useState, type RefObject } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function useSize(element: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = element.current!;
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element.current!);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
