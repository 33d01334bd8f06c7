/** All points, every number edited where it stands. */
import { lazy, Suspense, useMemo, type ReactNode } from 'react';
import { movePoint, renamePoint } from '../../core/edit/points.ts';
import { isMeasured } from '../../core/survey/network.ts';
import type { Adjusted } from '../../core/survey/adjust.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import type { PointId } from '../../core/job/reference.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { lengthColumn, textColumn, type Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { GapLength, Length } from '../fields/Readings.tsx';
import { MarkSwitch } from '../table/MarkSwitch.tsx';
import { useMarks } from '../table/marks.ts';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';
import { Sure } from './Sure.tsx';
import { leastOf, type TrimOf } from './useTrim.ts';

const SeveralPoints = lazy(() => import('./SeveralPoints.tsx'));

interface Props {
  /** Where they were measured. */
  readonly points: readonly Point[];
  readonly survey: Adjusted | null;
  readonly chosen: PointId | null;
  readonly trimOf: TrimOf;
}

export function PointsTable({ points, survey, chosen, trimOf }: Props): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const select = useEditor((state) => state.select);
  const marks = useMarks(useMemo(() => points.map(({ id }) => id), [points]));
  const columns = useMemo((): Column<Point>[] => {
    const coordinate = (header: string, means: string, axis: 0 | 1 | 2): Column<Point> =>
      withSureness(
        survey,
        axis,
        unit,
        lengthColumn<Point>(unit, {
          header,
          means,
          step: 'Move a point',
          value: (point) => point.position[axis],
          change: (job, { id }, value) => {
            const now = job.points.find((point) => point.id === id);
            return now === undefined ? job : movePoint(job, id, withAxis(now.position, axis, value));
          },
        }),
      );
    return [
      textColumn<Point>({
        header: 'Point',
        step: 'Rename a point',
        value: (point) => point.name,
        change: (job, { id }, name) => renamePoint(job, id, name),
      }),
      ...CAR_AXES.map(({ header, means }, axis) => coordinate(header, means, axis as 0 | 1 | 2)),
      gapColumn(trimOf),
    ];
  }, [unit, survey, trimOf]);
  return (
    <>
      <MarkSwitch marks={marks} noun="point" />
      <EditTable
        marks={marks}
        tight
        caption={`Measured points, in ${unit === 'in' ? 'inches' : 'millimetres'}`}
        rows={points}
        columns={columns}
        rowId={(point) => point.id}
        rowName={(point) => point.name}
        selected={chosen}
        onSelect={(point) => select({ kind: 'point', id: point.id })}
      />
      {marks.marked.size > 0 && (
        <Suspense>
          <SeveralPoints marks={marks} points={points} />
        </Suspense>
      )}
    </>
  );
}

/** A place that comes of measurements is only read, with how sure it is below it. */
function withSureness(
  survey: Adjusted | null,
  axis: 0 | 1 | 2,
  unit: LengthUnit,
  column: Column<Point>,
): Column<Point> {
  const sure = new Map(survey?.points.map(({ id, sigma }) => [id, sigma[axis]]));
  return {
    ...column,
    show: (point) =>
      isMeasured(point) ? (
        <>
          {sure.get(point.id) === null ? '–' : <Length mm={point.position[axis]} />}
          <Sure mm={sure.get(point.id) ?? null} unit={unit} />
        </>
      ) : (
        column.show(point)
      ),
    isRead: isMeasured,
  };
}

/** The least from the point, or from its image, to a tube. */
const gapColumn = (trimOf: TrimOf): Column<Point> => ({
  header: 'Gap',
  numeric: true,
  show: ({ id }) => <LeastGap mm={leastOf(trimOf('point', id))} />,
});

const LeastGap = ({ mm }: { readonly mm: number | null }): ReactNode =>
  mm === null ? '–' : <GapLength mm={mm} unseenUnit />;
