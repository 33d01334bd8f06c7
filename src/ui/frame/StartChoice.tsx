/** An empty job asks what is to be built: a picture for each layout, drawn from the usual car. */
import { useMemo, type ReactNode } from 'react';
import { layoutLines } from '../../core/shape/starters/layout-lines.ts';
import { FIRST_BARS, firstFigures } from '../../core/shape/starters/asked.ts';
import { LAYOUTS, type LayoutName } from '../../core/survey/spots.ts';
import { spotsByName } from '../../core/survey/spots-by-name.ts';
import { withTube } from '../../core/shape/starters/with-tube.ts';
import { LAYOUT_WORDS } from '../../core/words/starters.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { editor, jobDocument } from '../../store/page.ts';
import { MassField } from '../fields/MassField.tsx';
import { beginCage, startName } from './ask-cage.ts';
import './start.css';

export default function StartChoice(): ReactNode {
  return (
    <section aria-labelledby="start-choice">
      <h3 id="start-choice">What do you build?</h3>
      <ul className="start-choice">
        {LAYOUTS.map((layout) => (
          <li key={layout}>
            <button type="button" className="start-card" onClick={() => begin(layout)}>
              <LayoutPicture layout={layout} />
              <strong>{startName({ layout })}</strong>
              <span className="small">{LAYOUT_WORDS[layout].is}</span>
            </button>
          </li>
        ))}
      </ul>
      <div className="start-mass">
        <MassField />
        <p className="small">Rule books ask for more tube in heavier cars. It may follow later, in Checks.</p>
      </div>
    </section>
  );
}

/** With the shop's tube, the points that are measured, and usual figures for the rest; or the figures of the form that was left last. */
function begin(layout: LayoutName): void {
  const { job } = jobDocument.getState();
  const { figures, driver, bars, feet } = editor.getState().lastAsked ?? {
    figures: firstFigures(job.lengthUnit),
    driver: 'left',
    bars: FIRST_BARS,
    feet: 'plates',
  };
  beginCage({ layout, figures, driver, bars, feet, points: spotsByName(job), ...withTube(job).tube });
}

const [WIDTH, HEIGHT] = [150, 92];

/** Seen from ahead, from the left and from above. */
const across = ([x, y]: Vec3): number => 0.86 * x * 0.55 - 0.86 * y * 0.75;
const up = ([x, y, z]: Vec3): number => z + 0.32 * x * 0.6 + 0.22 * y;

function LayoutPicture({ layout }: { readonly layout: LayoutName }): ReactNode {
  const lines = useMemo(() => layoutLines(layout), [layout]);
  const all = lines.flatMap(({ line }) => line);
  const [left, right] = [Math.min(...all.map(across)), Math.max(...all.map(across))];
  const [low, high] = [Math.min(...all.map(up)), Math.max(...all.map(up))];
  const scale = Math.min((WIDTH - 12) / (right - left), (HEIGHT - 12) / (high - low));
  const at = (place: Vec3): string =>
    `${(WIDTH / 2 + scale * (across(place) - (left + right) / 2)).toFixed(1)} ${(HEIGHT / 2 - scale * (up(place) - (low + high) / 2)).toFixed(1)}`;
  return (
    <svg className="drawing" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {lines.map(({ id, isMain, line }) => (
        <path key={id} className={isMain ? 'start-main' : 'start-light'} d={`M${line.map(at).join('L')}`} />
      ))}
    </svg>
  );
}
