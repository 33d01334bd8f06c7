/** Where the middle of a bar is: another figure moves the whole bar, along an axis that all its nodes can go along. */
import { useMemo, type ReactNode } from 'react';
import type { Member } from '../../core/job/kinds/member.ts';
import type { Coordinate } from '../../core/shape/free-directions.ts';
import { barFreedom } from '../../core/shape/move-bar.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Length } from '../fields/Readings.tsx';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';

export function MoveBar({ member }: { member: Member }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const freedom = useMemo(() => barFreedom(derived, member.id), [derived, member.id]);
  if (freedom === null) return null;
  const { place, open, moved } = freedom;
  return (
    <>
      <h3>Where its middle is</h3>
      <p className="small">
        {open.length === 0
          ? 'It goes by other bars and points: move those.'
          : 'Another figure moves the whole bar. An end on another bar slides along that, so bends and lengths may change.'}
      </p>
      <fieldset className="trio" aria-label="Middle of the bar">
        {CAR_AXES.map(({ header }, axis) =>
          open.includes(axis as Coordinate) ? (
            <LengthField
              key={header}
              label={header}
              value={place[axis] ?? 0}
              {...jobEdit<number>(`Move ${member.name}`, (job, mm) =>
                moved(job, withAxis(place, axis as Coordinate, mm)),
              )}
            />
          ) : (
            <p className="entry" key={header}>
              <span className="entry-label">{header}</span>
              <Length mm={place[axis] ?? 0} withUnit />
            </p>
          ),
        )}
      </fieldset>
    </>
  );
}
