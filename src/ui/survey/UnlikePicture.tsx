/** Left and right as a picture: from above and from behind, each pair's difference as an arrow, many times as long as it is. */
import { useMemo, type ReactNode } from 'react';
import type { PointPair } from '../../core/survey/point-pairs.ts';
import { toMeasure } from '../../core/survey/to-measure.ts';
import { timesInWords } from '../../core/words/sides.ts';
import { timesEnlarged, unlikeSides } from '../../drawing/car/unlike.ts';
import { useDocument } from '../../store/page.ts';
import { Drawn } from '../kit/Drawn.tsx';
import { screenLetters } from '../kit/letters.ts';
import './walk.css';

/** mm, at so many pixels each. */
const SIZES = { above: { width: 86, height: 56 }, behind: { width: 86, height: 60 } } as const;
const SCALE = 4;

export default function UnlikePicture({ pairs }: { readonly pairs: readonly PointPair[] }): ReactNode {
  const job = useDocument((state) => state.job);
  const pictures = useMemo(() => {
    const all = toMeasure(job, null);
    const ids = new Set(pairs.flatMap(({ left, right }) => [left.id, right.id]));
    const places = all.places.filter(({ sides }) => sides.some(({ point }) => point !== null && ids.has(point.id)));
    return (['above', 'behind'] as const).map((view) => ({
      view,
      ...unlikeSides({ ...all, places, view, ...SIZES[view] }, pairs, screenLetters),
    }));
  }, [job, pairs]);
  return (
    <figure className="unlike">
      {pictures.map(({ view, ...picture }) => (
        <Drawn
          key={view}
          {...picture}
          scale={SCALE}
          label={`Left and right seen from ${view}; the table says the figures`}
        />
      ))}
      <figcaption className="small">{timesInWords(timesEnlarged(pairs))}</figcaption>
    </figure>
  );
}
