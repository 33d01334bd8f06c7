/** What can be done with all marked points at once. */
import type { ReactNode } from 'react';
import { movePoints, removeSeveral } from '../../core/edit/several.ts';
import Marked from '../table/Marked.tsx';
import type { Marks } from '../table/marks.ts';
import MoveMarked from '../table/MoveMarked.tsx';

export default function SeveralPoints({ marks }: { marks: Marks }): ReactNode {
  const count = marks.marked.size;
  return (
    <Marked marks={marks} noun="points" remove={(job, ids) => removeSeveral(job, 'points', ids)}>
      <MoveMarked
        these={`${count} ${count === 1 ? 'point' : 'points'}`}
        move={(job, by) => movePoints(job, marks.marked, by)}
      />
    </Marked>
  );
}
