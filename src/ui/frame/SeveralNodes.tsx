/** What can be done with all marked nodes at once. Only those at fixed places are moved: the others stand where something else puts them. */
import type { ReactNode } from 'react';
import { moveFixedNodes, removeSeveral } from '../../core/edit/several.ts';
import { useDocument } from '../../store/page.ts';
import Marked from '../table/Marked.tsx';
import type { Marks } from '../table/marks.ts';
import MoveMarked from '../table/MoveMarked.tsx';

export default function SeveralNodes({ marks }: { marks: Marks }): ReactNode {
  const { marked } = marks;
  const fixed = useDocument(
    (state) => state.job.nodes.filter(({ id, at }) => at.kind === 'fixed' && marked.has(id)).length,
  );
  const others = marked.size - fixed;
  return (
    <Marked marks={marks} noun="nodes" remove={(job, ids) => removeSeveral(job, 'nodes', ids)}>
      {fixed > 0 && (
        <MoveMarked
          these={`${fixed} ${fixed === 1 ? 'node' : 'nodes'}`}
          move={(job, by) => moveFixedNodes(job, marked, by)}
        />
      )}
      {others > 0 && (
        <p className="small">
          {others === 1 ? '1 of the marked is' : `${others} of the marked are`} not at a fixed place: move what{' '}
          {others === 1 ? 'it stands' : 'they stand'} on instead.
        </p>
      )}
    </Marked>
  );
}
