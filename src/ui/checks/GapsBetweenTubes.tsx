/** Every gap between tubes that are not joined, the least first; a press goes to its place, where the bay draws it. */
import type { ReactNode } from 'react';
import { setTorchGap } from '../../core/edit/torch-gap.ts';
import type { TubeGap } from '../../core/gaps/measure-gaps.ts';
import { FIRST_TORCH_GAP } from '../../core/job/kinds/torch-gap.ts';
import { tubeName } from '../../core/solve/names.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { GapLength } from '../fields/Readings.tsx';
import { leastFirst } from './order.ts';

export function GapsBetweenTubes(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const torchGap = useDocument((state) => state.job.torchGap ?? FIRST_TORCH_GAP);
  const selection = useEditor((state) => state.selection);
  const chosen = ({ tubes }: TubeGap): boolean => selection?.kind === 'tube' && tubes[1] === selection.id;
  return (
    <>
      <div className="fields">
        <LengthField
          label="Room for the torch"
          value={torchGap}
          {...jobEdit<number>('Room for the torch', setTorchGap)}
        />
      </div>
      {derived.gaps.length === 0 ? (
        <p className="empty">No two tubes come that near without being joined.</p>
      ) : (
        <div className="gap-list">
          <table className="table table-plain">
            <caption className="spoken-only">Gaps between tubes that are not joined, the least first</caption>
            <thead>
              <tr>
                <th scope="col">Tubes</th>
                <th scope="col" className="number">
                  Gap
                </th>
              </tr>
            </thead>
            <tbody>
              {leastFirst(derived.gaps).map((gap) => (
                <tr key={gap.tubes.join(' ')} className={chosen(gap) ? 'chosen' : undefined}>
                  <th scope="row">
                    <button
                      type="button"
                      className="link"
                      onClick={() => editor.getState().goTo(gap.at, { kind: 'tube', id: gap.tubes[1] })}
                    >
                      {tubeName(derived, gap.tubes[0])} and {tubeName(derived, gap.tubes[1])}
                    </button>
                  </th>
                  <td className="number">
                    <GapLength mm={gap.distance} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}
