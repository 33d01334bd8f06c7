/** Left and right: how unlike the two sides of the car are, pair by pair, and what has no pair. */
import { lazy, Suspense, useMemo, type ReactNode } from 'react';
import type { Point } from '../../core/job/kinds/point.ts';
import { pairsFollowed, type PairFollowed } from '../../core/shape/followed.ts';
import { pairsOfPoints } from '../../core/survey/point-pairs.ts';
import { unpaired } from '../../core/survey/unpaired.ts';
import { shownName } from '../../core/job/shown.ts';
import { decimalLength } from '../../core/units/length.ts';
import { withoutSide } from '../../core/words/measuring.ts';
import { aloneInWords, asymmetryInWords, goesByInWords } from '../../core/words/sides.ts';
import { useDocument, useEditor } from '../../store/page.ts';

const UnlikePicture = lazy(() => import('./UnlikePicture.tsx'));

const WAYS = ['Forward', 'Outward', 'Up'] as const;

export function LeftAndRight({ points }: { points: readonly Point[] }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const selection = useEditor((state) => state.selection);
  const job = useDocument((state) => state.job);
  const followed = useMemo(() => pairsFollowed(job), [job]);
  const { pairs } = pairsOfPoints(points);
  const alone = unpaired(points);
  const show = (mm: number): string => decimalLength(mm, unit, unit === 'in' ? 3 : 1);
  const isChosen = (point: Point): boolean => selection?.kind === 'point' && selection.id === point.id;
  return (
    <>
      {pairs.length === 0 ? (
        <p className="empty">No point has one on the other side of the car yet. Measure both sides.</p>
      ) : (
        <>
          <p>
            <strong>{asymmetryInWords(points, unit)}</strong>
          </p>
          <p className="small">
            How far the right point is from the mirror image of the left, in {unit === 'in' ? 'inches' : 'millimetres'};
            minus is back, inward, down.
          </p>
          <Suspense fallback={null}>
            <UnlikePicture pairs={pairs} />
          </Suspense>
          <div className="pair-list">
            <table className="table table-plain">
              <caption className="spoken-only">Pairs of points, the most unlike first</caption>
              <thead>
                <tr>
                  <th scope="col">Pair</th>
                  {WAYS.map((way) => (
                    <th scope="col" className="number" key={way}>
                      {way}
                    </th>
                  ))}
                  <th scope="col">Frame by</th>
                </tr>
              </thead>
              <tbody>
                {pairs.map(({ left, right, differs }, i) => (
                  <tr key={left.id} className={isChosen(left) || isChosen(right) ? 'chosen' : undefined}>
                    <th scope="row">
                      {i + 1} <PairLinks left={left} right={right} />
                    </th>
                    {differs.map((by, axis) => (
                      <td className="number" key={WAYS[axis]}>
                        {show(by)}
                      </td>
                    ))}
                    <td>
                      <GoesBy followed={followed.get(left.id)} />
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
      {alone.length > 0 && (
        <>
          <h4>Without a pair</h4>
          <ul className="lines">
            {alone.map((each) => (
              <li key={each.point.id} className="small">
                <PointLink point={each.point} />: {aloneInWords(each, unit)}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** Which side the frame goes by at the pair; the key leads to the tube where that is chosen. */
function GoesBy({ followed }: { followed: PairFollowed | undefined }): ReactNode {
  const select = useEditor((state) => state.select);
  const setStation = useEditor((state) => state.setStation);
  if (followed === undefined) return 'nothing';
  const words = goesByInWords(followed.sides);
  const [id] = followed.members;
  return (
    <button
      type="button"
      className="link"
      aria-label={`${words}: to the tube where that is chosen`}
      onClick={() => {
        select({ kind: 'tube', id: id! });
        setStation('frame');
      }}
    >
      {words}
    </button>
  );
}

/** The name that both have, and a link to each; where they are named otherwise both names. */
function PairLinks({ left, right }: { left: Point; right: Point }): ReactNode {
  const [stem, other] = [left, right].map(({ name }) => withoutSide(shownName(name)));
  if (stem !== other) {
    return (
      <>
        <PointLink point={left} /> · <PointLink point={right} />
      </>
    );
  }
  return (
    <>
      {stem}: <PointLink point={left} shown="left" /> · <PointLink point={right} shown="right" />
    </>
  );
}

function PointLink({ point, shown }: { point: Point; shown?: string }): ReactNode {
  const select = useEditor((state) => state.select);
  const name = shownName(point.name);
  return (
    <button type="button" className="link" aria-label={name} onClick={() => select({ kind: 'point', id: point.id })}>
      {shown ?? name}
    </button>
  );
}
