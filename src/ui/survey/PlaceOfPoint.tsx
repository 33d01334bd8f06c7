/** Where the chosen point is: typed, or out of its measurements; and from the one to the other. */
import type { ReactNode } from 'react';
import { holdCoordinate, letCoordinateGo } from '../../core/edit/holds.ts';
import { measurePoint, typePlace } from '../../core/edit/measurements.ts';
import { movePoint } from '../../core/edit/points.ts';
import type { Axis } from '../../core/geometry/vector.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import type { Adjusted } from '../../core/survey/adjust.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Length } from '../fields/Readings.tsx';
import { Command } from '../kit/Command.tsx';
import { withAxis } from '../kit/vectors.ts';
import { Sure } from './Sure.tsx';
import { UnlessDatum } from './UnlessDatum.tsx';

const COORDINATES = ['Along', 'Offset', 'Height'] as const;
const AXES: readonly Axis[] = ['x', 'y', 'z'];

export const TypedPlace = ({ point }: { point: Point }): ReactNode => (
  <>
    <div className="trio">
      {COORDINATES.map((label, axis) => (
        <LengthField
          key={label}
          label={label}
          value={point.position[axis] ?? 0}
          {...jobEdit<number>(`Move ${point.name}`, (before, value) =>
            movePoint(before, point.id, withAxis(point.position, axis as 0 | 1 | 2, value)),
          )}
        />
      ))}
    </div>
    <Command quiet step={`Measure ${point.name}`} run={(job) => measurePoint(job, point.id)}>
      Place it by measurements
    </Command>
  </>
);

export function MeasuredPlace({ point, survey }: { point: Point; survey: Adjusted | null }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const holds = useDocument((state) => state.job.holds);
  const sigma = survey?.points.find(({ id }) => id === point.id)?.sigma;
  return (
    <>
      <div className="trio">
        {COORDINATES.map((label, k) => {
          const hold = holds.find(
            (each) => (each.point === point.id || each.and === point.id) && each.axis === AXES[k],
          );
          return hold === undefined || hold.and !== undefined ? (
            <div key={label} className="measured-coordinate">
              <span className="entry-label">
                {label} <span className="entry-unit">{unit}</span>
              </span>
              <Length mm={point.position[k]!} />
              <Sure mm={sigma?.[k] ?? null} unit={unit} />
              {hold !== undefined && <span className="small">The middle of a pair is held.</span>}
              <Command
                quiet
                step={`Hold ${label.toLowerCase()} of ${point.name}`}
                label={`Hold ${label.toLowerCase()}`}
                run={(job) => holdCoordinate(job, point.id, AXES[k]!, point.position[k]!)}
              >
                Hold
              </Command>
            </div>
          ) : (
            <div key={label} className="measured-coordinate">
              <LengthField
                label={`${label}, held`}
                value={hold.value}
                {...jobEdit<number>(`Hold ${label.toLowerCase()} of ${point.name}`, (job, value) =>
                  holdCoordinate(job, point.id, AXES[k]!, value),
                )}
              />
              <Command
                quiet
                step={`Let ${label.toLowerCase()} of ${point.name} go`}
                label={`Let ${label.toLowerCase()} go`}
                run={(job) => letCoordinateGo(job, point.id, AXES[k]!)}
              >
                Let go
              </Command>
            </div>
          );
        })}
      </div>
      <p className="small">
        Its place comes of the measurements. A coordinate that is held is laid down and not asked for.
      </p>
      <UnlessDatum ids={[point.id]} quiet step={`Type where ${point.name} is`} run={(job) => typePlace(job, point.id)}>
        Type its place
      </UnlessDatum>
    </>
  );
}
