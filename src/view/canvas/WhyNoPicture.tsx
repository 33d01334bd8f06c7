/** That there is no 3D view, why, and the key that tries again. The work itself goes on. */
import type { Picture } from './NoPicture.tsx';

export default function WhyNoPicture({ picture, again = picture.again }: { picture: Picture; again?: () => void }) {
  const { state, tries } = picture;
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
