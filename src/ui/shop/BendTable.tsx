/** What the bender is told: straight, rotation and angle of each bend, and the marks on the tape. */
import type { ReactNode } from 'react';
import { bendMarks, type BendMarks } from '../../core/shop/marks.ts';
import { halfWidthInWords, pullNote } from '../../core/shop/pull-words.ts';
import { layStick } from '../../core/shop/stick.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Angle, Length } from '../fields/Readings.tsx';

export function BendTable({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const stick = layStick(tube);
  const marks = bendMarks(tube);
  const last = tube.straights.length - 1;
  return (
    <section aria-label="Bends">
      <h3>Bends, fed from end A</h3>
      <table className="table table-plain">
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="number">
              Straight, {unit}
            </th>
            <th scope="col" className="number">
              Rotation
            </th>
            <th scope="col" className="number">
              Angle
            </th>
            <th scope="col" className="number">
              Pull to
            </th>
          </tr>
        </thead>
        <tbody>
          {tube.bends.map((bend, index) => (
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              <td className="number">
                <Straight mm={tube.straights[index] ?? 0} />
              </td>
              <td className="number">{index === 0 ? '–' : <Angle radians={bend.rotation} />}</td>
              <td className="number">
                <Angle radians={bend.angle} />
              </td>
              <td className="number">
                <PullTo mark={marks[index]} />
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">end B</th>
            <td className="number">
              <Straight mm={tube.straights[last] ?? 0} />
            </td>
            <td colSpan={3} />
          </tr>
        </tbody>
      </table>
      <p className="small">
        The straight before each bend runs to tangent, the first and the last from the end nodes. Rotation is the turn
        from the bend before, seen along the feed: plus is clockwise. {pullNote(tube.pullLaw)}
      </p>
      <h3>Marks from the blank’s end A</h3>
      <table className="table table-plain">
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="number">
              Starts, {unit}
            </th>
            <th scope="col" className="number">
              Ends, {unit}
            </th>
            <th scope="col" className="number">
              Clamp, {unit}
            </th>
            <th scope="col" className="number">
              CLR, {unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {stick.zones.map((zone) => (
            <tr key={zone.bend}>
              <th scope="row">{zone.bend}</th>
              <td className="number">
                <Length mm={zone.start} parts={32} />
              </td>
              <td className="number">
                <Length mm={zone.end} parts={32} />
              </td>
              <td className="number">
                <Length mm={zone.clamp} parts={32} />
              </td>
              <td className="number">
                <Length mm={tube.bends[zone.bend - 1]?.radius ?? 0} parts={32} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small">
        Hook the tape over the blank’s end A; the node stands at <Length mm={stick.fromNode} parts={32} withUnit /> on
        it. The files count from the node. The bend lies beyond its start and its clamp mark, towards end B.
      </p>
    </section>
  );
}

/** A straight; one that is less than nothing cannot be bent, and says so. */
const Straight = ({ mm }: { mm: number }): ReactNode => (
  <>
    {mm < 0 && <span className="sign-error">▲ overlaps </span>}
    <Length mm={mm} parts={32} />
  </>
);

/** What the machine is pulled to, and under it how sure that is, where it is known. */
function PullTo({ mark }: { mark: BendMarks | undefined }): ReactNode {
  if (mark === undefined || mark.machineAngle === null) return '–';
  return (
    <>
      <Angle radians={mark.machineAngle} />
      {mark.machineAngleWithin !== null && (
        <span className="small under">{`± ${halfWidthInWords(mark.machineAngleWithin)}`}</span>
      )}
    </>
  );
}
