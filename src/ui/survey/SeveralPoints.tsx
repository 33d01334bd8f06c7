/** What can be done with all marked points at once. */
import type { ReactNode } from 'react';
import { movePoints, removeSeveral } from '../../core/edit/several.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import { isMeasured } from '../../core/survey/network.ts';
import Marked from '../table/Marked.tsx';
import type { Marks } from '../table/marks.ts';
import MoveMarked from '../table/MoveMarked.tsx';
import { UnlessDatum } from './UnlessDatum.tsx';

export default function SeveralPoints({ marks, points }: { marks: Marks; points: readonly Point[] }): ReactNode {
  const still = points.filter((point) => marks.marked.has(point.id) && isMeasured(point)).length;
  const count = marks.marked.size - still;
  const ids = [...marks.marked];
  const these = ids.length === 1 ? '1 marked point' : `${ids.length} marked points`;
  return (
    <Marked
      marks={marks}
      noun="points"
      removal={
        <UnlessDatum
          ids={ids}
          quiet
          destroys="marked"
          step={`Delete ${these}`}
          run={(job) => removeSeveral(job, 'points', ids)}
        >
          Delete the {these}
        </UnlessDatum>
      }
    >
      <MoveMarked
        these={`${count} ${count === 1 ? 'point' : 'points'}`}
        disabled={count === 0}
        move={(job, by) => movePoints(job, marks.marked, by)}
      />
      {still > 0 && (
        <p className="small">
          {still === 1 ? '1 of the marked points stays' : `${still} of the marked points stay`} where the measurements
          put {still === 1 ? 'it' : 'them'}.
        </p>
      )}
    </Marked>
  );
}
