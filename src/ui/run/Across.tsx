/** How far a bend is from round: the least and the greatest diameter over it, as calipers read them. Left empty, nobody has measured it. */
import type { ReactNode } from 'react';
import { setBentAcross } from '../../core/edit/bent.ts';
import type { BentBend } from '../../core/job/kinds/bent.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField } from '../fields/EntryField.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { orNothing, wallKind } from '../fields/kinds.ts';

export function Across({ tube, made }: { tube: TubeRef; made: BentBend }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const kind = orNothing(wallKind(unit));
  const { bend, across } = made;
  // One alone stands for both until the other is typed.
  const edit = (which: 0 | 1) =>
    jobEdit<number | null>(`Diameters over bend ${bend}`, (job, value) =>
      setBentAcross(job, tube, bend, value === null ? null : [value, across?.[1 - which] ?? value]),
    );
  return (
    <fieldset className="run-measured">
      <legend>Over bend {bend}, by calipers</legend>
      {(['Least across', 'Greatest across'] as const).map((label, i) => (
        <EntryField
          key={label}
          label={label}
          unit={unit}
          numeric
          kind={kind}
          value={across?.[i as 0 | 1] ?? null}
          commit={edit(i as 0 | 1).commit}
        />
      ))}
    </fieldset>
  );
}
