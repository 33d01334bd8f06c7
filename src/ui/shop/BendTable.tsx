/** What the bender is told: straight, rotation, angle and radius of each bend, and how far to pull. */
import type { ReactNode } from 'react';
import { ROTATION_SIGN } from '../../core/shop/turn-words.ts';
import { beyondNode } from '../../core/solve/amount.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { mendingPullOf, pullAdvices, type PullAdvice } from '../../core/springback/pull-advice.ts';
import { halfWidthInWords, KIND_WORDS, pullFigure, pullNote, workedOut } from '../../core/springback/pull-words.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Angle, Length } from '../fields/Readings.tsx';

export function BendTable({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const pulls = pullAdvices(tube);
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
                <span className="small under">
                  CLR <Length mm={bend.radius} parts={32} />
                </span>
              </td>
              <td className="number">
                <PullTo pull={pulls[index]!} />
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
        The straight before each bend runs from tangent to tangent, the first and the last from the end nodes. The blank
        is sawn <Sawn mm={beyondNode(tube.ends[0])} end="A" /> and <Sawn mm={beyondNode(tube.ends[1])} end="B" />.
        {ROTATION_SIGN} {pullNote(tube.pullLaw, pulls, mendingPullOf(tube))}
      </p>
    </section>
  );
}

/** Under this, mm, the tape shows no difference. */
const UNSEEN = 0.4;

/** Where the blank is sawn, without the grip, from the end's node. */
const Sawn = ({ mm, end }: { mm: number; end: 'A' | 'B' }): ReactNode =>
  Math.abs(mm) < UNSEEN ? (
    `at end ${end}’s node`
  ) : (
    <>
      <Length mm={Math.abs(mm)} parts={32} withUnit /> {mm > 0 ? 'beyond' : 'inside'} end {end}’s node
    </>
  );

/** A straight; one that is less than nothing cannot be bent, and says so. */
const Straight = ({ mm }: { mm: number }): ReactNode => (
  <>
    {mm < 0 && <span className="sign-error">▲ overlaps </span>}
    <Length mm={mm} parts={32} />
  </>
);

/** What the machine is pulled to, and under it what kind of number that is and how sure. */
const PullTo = ({ pull }: { pull: PullAdvice }): ReactNode => {
  const exact = workedOut(pull);
  return (
    <>
      <span className="figure">{pullFigure(pull)}</span>
      {pull.kind !== 'law' && <span className="small under pull-kind">{KIND_WORDS[pull.kind]}</span>}
      {exact !== null && <span className="small under pull-kind">{exact}</span>}
      {pull.kind === 'law' && pull.within !== null && (
        <span className="small under">{`± ${halfWidthInWords(pull.within)}`}</span>
      )}
    </>
  );
};
