/**
 * The canvas and the renderer on it. Only the kinds of object that the bay draws are made known to the renderer: the
 * library's own canvas component would bring in all of them, a seventh of what a first visit loads.
 */
import { Component, useEffect, useInsertionEffect, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import { createRoot, extend, type ReconcilerRoot } from '@react-three/fiber';
import { Color, Group, LineSegments, Mesh, MeshBasicMaterial, Points } from 'three';
import type { Picture } from './NoPicture.tsx';
import type { Size } from './useSize.ts';

extend({ Color, Group, LineSegments, Mesh, MeshBasicMaterial, Points });

/** Hands what fails inside the drawing to the page around it, which stands in another React root. */
class Forward extends Component<{ readonly children: ReactNode; readonly report: (error: unknown) => void }> {
  static getDerivedStateFromError = (): object => ({ failed: true });
  override state = { failed: false };
  override componentDidCatch(error: unknown): void {
    this.props.report(error);
  }
  override render(): ReactNode {
    return this.state.failed ? null : this.props.children;
  }
}

interface DrawingProps {
  /** The bay's, in CSS pixels. */
  readonly size: Size;
  /** Called when the card is taken away, and when it is given back; a new start is a new drawing. */
  readonly picture: Pick<Picture, 'lose' | 'restore'>;
  readonly children: ReactNode;
}

/** Draws its children on demand. */
export function Drawing({ size, picture: { lose, restore }, children }: DrawingProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const root = useRef<ReconcilerRoot<HTMLCanvasElement> | null>(null);
  const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null);
  if (failure !== null) throw failure.error;

  // Only the last removal ends the renderer: a canvas whose context was given up cannot be drawn on again.
  useInsertionEffect(
    () => () => {
      root.current?.unmount();
      root.current = null;
    },
    [],
  );

  useEffect(() => {
    const element = canvas.current!;
    element.addEventListener('webglcontextlost', lose);
    element.addEventListener('webglcontextrestored', restore);
    return () => {
      element.removeEventListener('webglcontextlost', lose);
      element.removeEventListener('webglcontextrestored', restore);
    };
  }, [lose, restore]);

  const { width, height } = size;
  useLayoutEffect(() => {
    const report = (error: unknown): void => setFailure({ error });
    if (width === 0 || height === 0) return;
    root.current ??= createRoot(canvas.current!);
    root.current
      .configure({
        frameloop: 'demand',
        orthographic: true,
        flat: true,
        dpr: [1, 2],
        camera: { near: 100, far: 60_000 },
        size: { width, height, top: 0, left: 0 },
        onCreated: ({ gl, invalidate }) =>
          // The card was taken away and given back: nothing else would ask for the frame.
          gl.domElement.addEventListener('webglcontextrestored', () => invalidate()),
      })
      .then(() => root.current?.render(<Forward report={report}>{children}</Forward>), report);
  });

  return <canvas className="bay-canvas" ref={canvas} aria-hidden="true" />;
}
