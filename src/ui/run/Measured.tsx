/** What may be measured of a bend beside its angle: its plane, and the straight before it. Left empty, it counts as planned. */
import type { ReactNode } from 'react';
import { setBentRotation, setBentStraight } from '../../core/edit/bent.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import { ROTATION_SIGN } from '../../core/words/turns.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { formatLength } from '../../core/units/length.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField } from '../fields/EntryField.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { orNothing, rotationKind, tapeKind } from '../fields/kinds.ts';

const ROTATION = orNothing(rotationKind);

export function Measured({ tube, run, bend }: { tube: SolvedTube; run: BentTube; bend: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const made = run.bends.find((one) => one.bend === bend);
  const planned = tube.bends[bend - 1];
  // One that was reckoned from the whole tube's figures has its plane and its place by them.
  if (made === undefined || made.fitted || planned === undefined) return null;
  const between = `bend ${bend - 1} and bend ${bend}`;
  // Half an edit: a field that may be empty has nothing to nudge.
  const rotation = jobEdit<number | null>(`Rotation of bend ${bend}`, (job, value) =>
    setBentRotation(job, tube.id, bend, value),
  );
  const straight = jobEdit<number | null>(`Straight before bend ${bend}`, (job, value) =>
    setBentStraight(job, tube.id, bend, value),
  );
  return (
    <fieldset className="run-measured">
      <legend>Between {between}</legend>
      <div>
        <EntryField
          label="Rotation"
          unit="°"
          numeric
          kind={ROTATION}
          value={made.rotation ?? null}
          commit={rotation.commit}
        />
        <p className="small">
          planned {formatAngle(toDegrees(planned.rotation), 1)}°. {ROTATION_SIGN}
        </p>
      </div>
      <div>
        <EntryField
          label="Straight"
          unit={unit}
          numeric
          kind={orNothing(tapeKind(unit))}
          value={made.straight ?? null}
          commit={straight.commit}
        />
        <p className="small">
          planned {formatLength(tube.straights[bend - 1] ?? 0, unit).text} {unit}, tangent to tangent
        </p>
      </div>
    </fieldset>
  );
}
