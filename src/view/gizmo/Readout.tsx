/** Where the selected node is, in big figures, while it is moved and after. */
import { useWorkspace } from '../../store/workspace.ts';
import { bareId, isPrimed } from '../../core/job/reference.ts';
import { Figure } from '../Figure.tsx';
import type { Freedom } from './freedom.ts';
import type { DragNews } from './useGrips.ts';

const SIDES = [
  ['forward', 'back'],
  ['left', 'right'],
  ['up', 'down'],
] as const;

export function Readout({ freedom, news }: { readonly freedom: Freedom; readonly news: DragNews | null }) {
  const job = useWorkspace((state) => state.job);
  const selection = useWorkspace((state) => state.selection);
  const id = selection?.id ?? '';
  const node = job.nodes.find((candidate) => candidate.id === bareId(id));
  return (
    <div className="bay-readout" aria-hidden="true">
      <div className="bay-readout-name">
        {node?.name || bareId(id)}
        {isPrimed(id) && ', mirror image'}
      </div>
      <dl>
        {freedom.place.map((mm, axis) => {
          const [ahead, behind] = SIDES[axis]!;
          return (
            <div key={ahead}>
              <dt>{mm < -0.05 ? behind : ahead}</dt>
              <dd>
                <Figure mm={Math.abs(mm)} unit={job.lengthUnit} />
              </dd>
            </div>
          );
        })}
        {freedom.free === 'line' && freedom.host !== null && (
          <div>
            <dt>{freedom.told}</dt>
            <dd>
              <Figure mm={freedom.value} unit={job.lengthUnit} />
            </dd>
          </div>
        )}
        {freedom.free === 'line' && !freedom.inMm && (
          <div>
            <dt>{freedom.told}</dt>
            <dd className="bay-figure">{(freedom.value * 100).toFixed(1)} %</dd>
          </div>
        )}
      </dl>
      {news !== null && news.refused && <p className="bay-refused">! The frame cannot be made with it there.</p>}
      {news !== null && news.inLineWith.length > 0 && <p>In line with {news.inLineWith.join(', ')}.</p>}
    </div>
  );
}
