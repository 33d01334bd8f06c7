/** The canvas, and what is drawn on it. */
import { useInsertionEffect, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import type { Picture } from './NoPicture.tsx';
import { Standing } from './parts.tsx';
import { setUp, type Stage } from './stage.ts';
import type { Size } from './useSize.ts';

interface DrawingProps {
  /** The bay's, in CSS pixels. */
  readonly size: Size;
  /** Called when the card is taken away, and when it is given back; a new start is a new drawing. */
  readonly picture: Pick<Picture, 'lose' | 'restore'>;
  /** The colour behind everything. */
  readonly ground: string;
  readonly children: ReactNode;
}

/** Draws its children on demand. */
export function Drawing({ size, picture: { lose, restore }, ground, children }: DrawingProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [made, setMade] = useState<{ readonly stage: Stage } | { readonly failure: unknown } | null>(null);
  const stage = made !== null && 'stage' in made ? made.stage : null;
  if (made !== null && 'failure' in made) throw made.failure;

  // Heard no longer than the canvas stands: giving its card back is not losing it.
  useLayoutEffect(() => {
    const element = canvas.current!;
    element.addEventListener('webglcontextlost', lose);
    element.addEventListener('webglcontextrestored', restore);
    return () => {
      element.removeEventListener('webglcontextlost', lose);
      element.removeEventListener('webglcontextrestored', restore);
    };
  }, [lose, restore]);

  const isSeen = size.width > 0 && size.height > 0;
  useLayoutEffect(() => {
    if (!isSeen || made !== null) return;
    try {
      setMade({ stage: setUp(canvas.current!) });
    } catch (failure) {
      setMade({ failure });
    }
  }, [isSeen, made]);
  // Only the last removal ends the renderer: a canvas whose context was given up cannot be drawn on again.
  useInsertionEffect(() => () => stage?.end(), [stage]);

  useLayoutEffect(() => {
    if (isSeen) stage?.resize(size);
  }, [stage, isSeen, size]);
  useLayoutEffect(() => stage?.paint(ground), [stage, ground]);

  return (
    <>
      <canvas className="bay-canvas" ref={canvas} aria-hidden="true" />
      {stage !== null && <Standing stage={stage}>{children}</Standing>}
    </>
  );
}
