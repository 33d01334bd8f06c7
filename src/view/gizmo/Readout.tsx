/** Where the selected node, or the middle of the selected bar, is, in big figures and with the tables' words and signs, while it is moved and after. */
import { useLayoutEffect, useRef, type RefObject } from 'react';
import { useDocument } from '../../store/page.ts';
import { Figure } from '../canvas/Figure.tsx';
import type { PlaceOnLine } from '../../core/shape/free-directions.ts';
import type { PlaceLabels } from '../labels/LabelLayer.tsx';
import type { DragNews, Held } from './held.ts';

const AXES = [
  { name: 'along', means: '+ forward' },
  { name: 'offset', means: '+ left' },
  { name: 'height', means: '+ up' },
] as const;

/** What the one number is that moves a node along its line. */
function measured(at: PlaceOnLine): string {
  switch (at.kind) {
    case 'on':
      if (at.bend !== undefined) return `from the ${at.where} of bend ${at.bend}`;
      return at.from === 'end' ? 'from end B' : 'from end A';
    case 'between':
      return 'part of the way';
    case 'ray':
      return `until ${AXES['xyz'.indexOf(at.until.axis)]?.name} is`;
  }
}

interface Props {
  /** Called for each frame. */
  readonly overlay: RefObject<PlaceLabels>;
  readonly held: Held;
  readonly news: DragNews | null;
}

/** Pixels round the place that the grips and their letters take. */
const GRIPS = 130;

export default function Readout({ overlay, held: { title, freedom, free }, news }: Props) {
  const card = useRef<HTMLDivElement>(null);
  // It stands in the upper right corner while the place, or its grips, would lie under it in the left one; where it takes the whole width,
  // along the lower edge.
  useLayoutEffect(() => {
    overlay.current = (view) => {
      const { x, y } = view.toScreen(freedom.place);
      const { offsetWidth, offsetHeight, dataset } = card.current!;
      const isWide = offsetWidth >= view.width - 1;
      const isUnder = isWide || x < Math.min(view.width / 2, offsetWidth + GRIPS);
      dataset['aside'] = String(isUnder && y < offsetHeight + (isWide ? GRIPS / 2 : GRIPS));
    };
    return () => {
      overlay.current = () => {};
    };
  }, [overlay, freedom]);
  const unit = useDocument((state) => state.job.lengthUnit);
  const placed =
    freedom.free === 'line'
      ? []
      : AXES.filter((_, axis) => !freedom.open.includes(axis as 0 | 1 | 2)).map(({ name }) => name);
  return (
    <div className="bay-readout" ref={card}>
      <div aria-hidden="true">
        <div className="bay-readout-name">{title}</div>
        <dl>
          {AXES.map(({ name, means }, axis) => (
            <div key={name} className={freedom.free === 'line' ? 'bay-readout-place' : undefined}>
              <dt>
                {name} <span className="bay-readout-means">{means}</span>
              </dt>
              <dd>
                <Figure mm={freedom.place[axis] ?? 0} unit={unit} />
              </dd>
            </div>
          ))}
          {freedom.free === 'line' && (
            <div>
              <dt>{measured(freedom.at)}</dt>
              <dd>
                {freedom.inMm ? (
                  <Figure mm={freedom.value} unit={unit} />
                ) : (
                  <span className="figure">{freedom.value.toFixed(3)}</span>
                )}
              </dd>
            </div>
          )}
        </dl>
        {placed.length > 0 && <p>Placed by others: {placed.join(', ')}.</p>}
        {news !== null && news.refused !== null && <p className="bay-refused">! {news.refused}</p>}
        {news !== null && news.inLineWith.length > 0 && <p>In line with {news.inLineWith.join(', ')}.</p>}
      </div>
      {free !== null && news === null && (
        <button type="button" className="press press-small" onClick={free}>
          To move it: place it at fixed figures
        </button>
      )}
    </div>
  );
}
