/** Which tubes come near a point or a line, and how near; a press goes to the place. */
import type { ReactNode } from 'react';
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import type { TrimGaps } from '../../core/gaps/measure-trim.ts';
import { isPrimed } from '../../core/job/reference.ts';
import { tubeName } from '../../core/solve/names.ts';
import { editor, useDocument } from '../../store/page.ts';
import { GapLength, ShortfallLength } from '../fields/Readings.tsx';

export function TrimGapList({ all }: { all: readonly TrimGaps[] }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const rows = all.flatMap(({ trim, wanted, gaps }) => gaps.map((gap) => ({ ...gap, trim, wanted })));
  if (rows.length === 0) return null;
  return (
    <ul className="lines">
      {rows.map(({ trim, wanted, tube, distance, at }) => (
        <li key={`${trim.id} ${tube}`} className="small">
          <button type="button" className="link" onClick={() => editor.getState().goTo(at, { kind: 'tube', id: tube })}>
            {tubeName(derived, tube)}
            {trim.kind === 'point' && isPrimed(trim.id) && ', at the mirror image'}
          </button>
          : <GapLength mm={distance} />
          {wanted !== null && distance < wanted - ROUNDING && (
            <strong>
              {' '}
              ! short by <ShortfallLength mm={wanted - distance} />
            </strong>
          )}
        </li>
      ))}
    </ul>
  );
}
