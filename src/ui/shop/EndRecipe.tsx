/** One end of a tube: what it is cut to, and for each cut what the notcher is set to. */
import { capital } from '../../core/words/lists.ts';
import { deepSide, longSide, type EndMark } from '../../core/cope/end-mark.ts';
import { plateOffSquare } from '../../core/cope/end-cut.ts';
import { scribedInWords } from '../../core/words/turns.ts';
import type { ReactNode } from 'react';
import { toDegrees, wrapHalfTurn } from '../../core/geometry/angle.ts';
import type { Cut, SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { useDocument } from '../../store/page.ts';
import { Drawn } from '../kit/Drawn.tsx';
import { Angle, Length } from '../fields/Readings.tsx';
import {
  bothInWords,
  deepSideOf,
  lineInWords,
  longSideOf,
  lookInWords,
  markInWords,
  offsetInWords,
  ROUND,
  throatInWords,
} from '../../core/words/cope-mark.ts';
import {
  ALLOWANCE,
  endInWords,
  fromNodeInWords,
  insteadOfNotcher,
  SAW_DEPTH,
  sawCautions,
  turnInWords,
} from '../../core/words/ends.ts';
import { endPicture } from '../../drawing/end-on/cope.ts';
import { landedOn } from '../../core/solve/bar-tubes.ts';
import { endNodeName } from '../../core/solve/names.ts';
import { useFeed } from '../bending/useFeed.ts';

/** Pixels a millimetre of the picture. */
const SCALE = 4.4;

export function EndRecipe({ tube, which }: { tube: SolvedTube; which: 0 | 1 }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { order } = useFeed(tube);
  const end = tube.ends[which];
  const long = longSide(tube, which);
  const marks = end.plateNormal !== null ? (long === null ? [] : [long]) : end.cuts.map((cut) => deepSide(tube, cut));
  const firstByTemplate = end.cuts.findIndex((cut) => cut.reaches && insteadOfNotcher(cut) !== null);
  const throat = end.high === null ? null : throatInWords(tube, which, end.high.phi);
  const scribed = scribedInWords(tube, order, which, derived.job.lengthUnit);
  const whereTheLineIs = (
    <div className="end-line">
      <Drawn
        {...endPicture(marks, tube.bends.length > 0)}
        scale={SCALE}
        label={`${lookInWords(which)} ${marks.map((mark, i) => `${marks.length > 1 ? `Mark ${i + 1}` : 'The mark'}: ${markInWords(mark)}.`).join(' ')}`}
      />
      <p>
        {lineInWords(tube, which)} <strong>{lookInWords(which)}</strong>
        {scribed !== null && ` ${scribed}`}
      </p>
    </div>
  );
  return (
    <section className="end" aria-label={`End ${which === 0 ? 'A' : 'B'}`}>
      <h3>
        <span className="end-letter">{which === 0 ? 'A' : 'B'}</span>
        {capital(endInWords(derived, end))}
      </h3>
      {end.plateNormal !== null && (
        <div className="recipe">
          <p className="recipe-line">
            Saw set over, off square: <Angle radians={plateOffSquare(end)} />
          </p>
          {long !== null && (
            <>
              {whereTheLineIs}
              <dl className="facts">
                <MarkFacts what={longSideOf(tube)} mark={long} />
              </dl>
            </>
          )}
        </div>
      )}
      {end.cuts.map((cut, index) => (
        <Recipe
          key={cut.against}
          cut={cut}
          mark={marks[index]!}
          what={deepSideOf(tube)}
          throat={index === firstByTemplate ? throat : null}
          count={end.cuts.length}
          index={index}
          first={index === 0 ? null : (end.cuts[0] ?? null)}
          name={landedOn(derived.byId, cut).name}
        >
          {index === 0 && whereTheLineIs}
        </Recipe>
      ))}
      <dl className="facts">
        <div>
          <dt>Node</dt>
          <dd>{endNodeName(derived.job, end.node)}</dd>
        </div>
        {end.tip !== null && (
          <div>
            <dt>{fromNodeInWords('Tip', end.tip)}</dt>
            <dd>
              <Length mm={Math.abs(end.tip)} withUnit />
            </dd>
          </div>
        )}
        {end.throat !== null && (
          <div>
            <dt>{fromNodeInWords('Throat', end.throat)}</dt>
            <dd>
              <Length mm={Math.abs(end.throat)} withUnit />
            </dd>
          </div>
        )}
        <div>
          <dt>{ALLOWANCE}</dt>
          <dd>
            <Length mm={end.allowance} withUnit />
          </dd>
        </div>
      </dl>
    </section>
  );
}

/** Where a mark is put: how far from the line, and the same round the tube's surface. */
const MarkFacts = ({ what, mark }: { what: string; mark: EndMark }): ReactNode => (
  <>
    <div>
      <dt>{what}</dt>
      <dd className="figure">{markInWords(mark)}</dd>
    </div>
    <div>
      <dt>{ROUND}</dt>
      <dd>
        <Length mm={mark.round} parts={64} withUnit />
      </dd>
    </div>
  </>
);

/** `children` stand between what the notcher is set to and where the marks are put. */
function Recipe(props: {
  cut: Cut;
  mark: EndMark;
  /** The mark's name, with the line it is counted from. */
  what: string;
  throat: string | null;
  index: number;
  count: number;
  first: Cut | null;
  name: string;
  children: ReactNode;
}): ReactNode {
  const { cut, mark, first, index, count } = props;
  const offset = offsetInWords(cut);
  const both = bothInWords(mark);
  const instead = insteadOfNotcher(cut);
  return (
    <div className="recipe">
      <h4>{`Cut ${count > 1 ? `${index + 1} ` : ''}to ${props.name}`}</h4>
      {instead === null ? (
        <dl className="recipe-angles">
          <div>
            <dt>Off square: set the notcher to</dt>
            <dd>
              <Angle radians={cut.offSquare} />
            </dd>
          </div>
          <div>
            <dt>Included angle: between the tubes</dt>
            <dd>
              <Angle radians={cut.includedAngle} />
            </dd>
          </div>
        </dl>
      ) : (
        <div className="recipe-instead">
          <strong>{instead}</strong>
          <span className="small">
            Off square <Angle radians={cut.offSquare} />, included between the tubes{' '}
            <Angle radians={cut.includedAngle} />
          </span>
        </div>
      )}
      {props.children}
      <dl className="facts">
        <MarkFacts what={props.what} mark={mark} />
        {first && (
          <div>
            <dt>From cut 1</dt>
            <dd className="figure">{turnInWords(wrapHalfTurn(cut.clocking - first.clocking))}</dd>
          </div>
        )}
        {instead === null && (
          <>
            <div>
              <dt>Hole saw</dt>
              <dd>
                <Length mm={cut.sawDiameter} withUnit /> across
              </dd>
            </div>
            <div>
              <dt>{SAW_DEPTH}</dt>
              <dd>
                <Length mm={cut.sawDepth!} withUnit />
              </dd>
            </div>
          </>
        )}
        <div>
          <dt>Axis offset</dt>
          <dd>{offset === null ? 'none, the axes meet' : <Length mm={Math.abs(cut.axisOffset)} withUnit />}</dd>
        </div>
      </dl>
      {[both, offset, props.throat].map(
        (words) =>
          words !== null && (
            <p key={words} className="small">
              {words}
            </p>
          ),
      )}
      {sawCautions(cut).map((caution) => (
        <p key={caution} className="notice-warning">
          <span aria-hidden="true">! </span>
          {caution}
        </p>
      ))}
      <p className="spoken-only">{`Included angle ${formatAngle(toDegrees(cut.includedAngle), 1)} degrees`}</p>
    </div>
  );
}
