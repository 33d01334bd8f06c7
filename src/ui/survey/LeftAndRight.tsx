/** Left and right: how unlike the two sides of the car are, pair by pair, and what has no pair. */
import type { ReactNode } from 'react';
import type { Point } from '../../core/job/kinds/point.ts';
import { pairsOfPoints } from '../../core/survey/point-pairs.ts';
import { unpaired } from '../../core/survey/unpaired.ts';
import { shownName } from '../../core/job/shown.ts';
import { decimalLength } from '../../core/units/length.ts';
import { aloneInWords, asymmetryInWords } from '../../core/words/sides.ts';
import { useDocument, useEditor } from '../../store/page.ts';

const WAYS = ['Forward', 'Outward', 'Up'] as const;

export function LeftAndRight({ points }: { points: readonly Point[] }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const selection = useEditor((state) => state.selection);
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
                </tr>
              </thead>
              <tbody>
                {pairs.map(({ left, right, differs }) => (
                  <tr key={left.id} className={isChosen(left) || isChosen(right) ? 'chosen' : undefined}>
                    <th scope="row">
                      <PointLink point={left} /> · <PointLink point={right} />
                    </th>
                    {differs.map((by, axis) => (
                      <td className="number" key={WAYS[axis]}>
                        {show(by)}
                      </td>
                    ))}
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

function PointLink({ point }: { point: Point }): ReactNode {
  const select = useEditor((state) => state.select);
  return (
    <button type="button" className="link" onClick={() => select({ kind: 'point', id: point.id })}>
      {shownName(point.name)}
    </button>
  );
}
