/**
 * What stands in the bay's place, or over it, where the browser cannot draw in 3D: at the start, or because the graphics card was
 * taken away from the page and has not been given back. The work itself goes on.
 */
import { useCallback, useState } from 'react';

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
export function NoPicture({ picture, again = picture.again }: { picture: Picture; again?: () => void }) {
  const { state, tries } = picture;
  if (state === 'drawn') return null;
  const lost = state === 'lost';
  return (
    <div className="bay-missing">
      <div role={lost ? 'alert' : 'note'}>
        <h2>{lost ? 'The 3D view has stopped' : 'No 3D view here'}</h2>
        <p>
          {lost
            ? 'The graphics card was taken away from this page: the machine slept, its driver started anew, or another program wanted it.'
            : 'This browser cannot draw in 3D: WebGL 2 is missing or switched off.'}
        </p>
        <p>
          {lost ? 'Nothing of the job is lost. ' : ''}Everything else works: tables, checks, tube data, undo and
          downloads.
        </p>
        <button type="button" className="press press-live" onClick={again}>
          Try again
        </button>
        <p role="status">
          {tries > 0 && `Tried ${tries === 1 ? 'once' : `${tries} times`}: it still cannot be drawn.`}
        </p>
        <p>
          {lost
            ? 'If it does not come back, close other pages that draw in 3D, or load this page anew.'
            : 'To see the frame, switch on hardware acceleration in the browser’s settings, or open the job in another browser.'}
        </p>
      </div>
    </div>
  );
}

/** True where the bay can be drawn. */
function canDraw(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  // Browsers allow few contexts at once: this one is given back.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
