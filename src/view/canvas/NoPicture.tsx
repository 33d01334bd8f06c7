/**
 * Whether the browser can draw in 3D: it may not at the start, or the graphics card was taken away from the page and has not been given
 * back. What then stands in the bay's place, or over it, is fetched.
 */
import { lazy, Suspense, useCallback, useState, type ReactNode } from 'react';

export interface Picture {
  /** 'missing': it never could be drawn; 'lost': it could, and the bay stands with its view as it was. */
  readonly state: 'drawn' | 'lost' | 'missing';
  /** Counts up with each new start, which wants a new canvas: the old one's card is gone for good. */
  readonly start: number;
  /** Tries without success since it was last drawn. */
  readonly tries: number;
  /** The browser took the card away, and gave it back. */
  readonly lose: () => void;
  readonly restore: () => void;
  /** Tries to draw; answers whether it can. */
  readonly again: () => boolean;
}

export function usePicture(): Picture {
  const [{ state, start, tries }, set] = useState<Pick<Picture, 'state' | 'start' | 'tries'>>(() => ({
    state: canDraw() ? 'drawn' : 'missing',
    start: 0,
    tries: 0,
  }));
  const lose = useCallback(() => set((now) => ({ ...now, state: 'lost' })), []);
  const restore = useCallback(() => set((now) => ({ ...now, state: 'drawn', tries: 0 })), []);
  const again = useCallback((): boolean => {
    const can = canDraw();
    set((now) => (can ? { state: 'drawn', start: now.start + 1, tries: 0 } : { ...now, tries: now.tries + 1 }));
    return can;
  }, []);
  return { state, start, tries, lose, restore, again };
}

/** `again`: what the button does, the picture's own unless said. Nothing while it is drawn. */
export const NoPicture = (props: { picture: Picture; again?: () => void }): ReactNode =>
  props.picture.state === 'drawn' ? null : (
    <Suspense fallback={null}>
      <WhyNoPicture {...props} />
    </Suspense>
  );

/** Most pages never show it. */
const WhyNoPicture = lazy(() => import('./WhyNoPicture.tsx'));

/** True where the bay can be drawn. */
function canDraw(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  // Browsers allow few contexts at once: this one is given back.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
