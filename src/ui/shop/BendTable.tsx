/** What each bend is made by: straight, rotation, angle and radius, and how far to pull. */
import { Fragment, type ReactNode } from 'react';
import type { Degrees } from '../../core/geometry/angle.ts';
import { FIRST_BENDER } from '../../core/job/kinds/bender.ts';
import { ROTATION_SIGN } from '../../core/words/turns.ts';
import { beyondNode } from '../../core/solve/amount.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { mendingPullOf, pullAdvices, type PullAdvice } from '../../core/springback/pull-advice.ts';
import { kindInWords, pullFigure, pullHead, pullNote, sureInWords, workedOut } from '../../core/words/pulls.ts';
import { useDocument } from '../../store/page.ts';
import { Angle, Length } from '../fields/Readings.tsx';

export function BendTable({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const pulls = pullAdvices(tube);
  const { pullStep } = tube.die?.bender ?? FIRST_BENDER;
  const last = tube.straights.length - 1;
  const note = pullNote(tube.pullLaw, pulls, mendingPullOf(tube));
  return (
    <section aria-label="Bends">
      <h3>Bends, counted from end A</h3>
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
              {pullHead(pulls)}
            </th>
          </tr>
        </thead>
        <tbody>
          {tube.bends.map((bend, index) => {
            const pull = pulls[index]!;
            const kind = besideIt(pull, pullStep);
            return (
              <Fragment key={index}>
                <tr>
                  <th scope="row">{index + 1}</th>
                  <td className="number">
                    <Straight mm={tube.straights[index] ?? 0} />
                  </td>
                  <td className="number">{index === 0 ? 'none' : <Angle radians={bend.rotation} />}</td>
                  <td className="number">
                    <Angle radians={bend.angle} />
                    <span className="small under">
                      CLR <Length mm={bend.radius} />
                    </span>
                  </td>
                  <td className={`number figure${pull.kind === 'estimate' ? ' small' : ''}`}>{pullFigure(pull)}</td>
                </tr>
                {kind !== '' && (
                  <tr>
                    <td colSpan={5} className="bend-pull small">
                      {kind}
                    </td>
                  </tr>
                )}
              </Fragment>
            );
          })}
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
      </p>
      <p className="small">{ROTATION_SIGN}</p>
      {note !== '' && <p className="small">{note}</p>}
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
      <Length mm={Math.abs(mm)} withUnit /> {mm > 0 ? 'beyond' : 'inside'} end {end}’s node
    </>
  );

/** A straight; one that is less than nothing cannot be bent, and says so. */
const Straight = ({ mm }: { mm: number }): ReactNode => (
  <>
    {mm < 0 && <span className="sign-error">▲ overlaps </span>}
    <Length mm={mm} />
  </>
);

/** What kind of number the one to pull to is, and how sure; '' where it needs nothing. */
function besideIt(pull: PullAdvice, step: Degrees): string {
  const sure = pull.kind === 'law' && pull.within !== null ? sureInWords(pull.within) : '';
  return [kindInWords(pull), workedOut(pull, step) ?? '', sure].filter((words) => words !== '').join(' · ');
}
