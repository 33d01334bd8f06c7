/** One end of a tube: what it is cut to, and for each cut what the notcher is set to. */
import type { ReactNode } from 'react';
import { toDegrees, wrapHalfTurn } from '../../core/geometry/angle.ts';
import type { Cut, SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Angle, Length } from '../fields/Readings.tsx';
import {
  endInWords,
  plateOffSquare,
  referenceInWords,
  sawCautions,
  scribeInWords,
  turnInWords,
} from '../../core/shop/ends.ts';
import { nodeName, tubeName } from '../../core/solve/names.ts';

export function EndRecipe({ tube, which }: { tube: SolvedTube; which: 0 | 1 }): ReactNode {
  const derived = useWorkspace((state) => state.derived);
  const end = tube.ends[which];
  const reference = referenceInWords(tube, which);
  const scribe = scribeInWords(tube);
  const scribedHere = which === 0 || tube.ends[0].cuts.length === 0;
  const line = scribe !== null && scribedHere ? `${reference} (${scribe})` : reference;
  const longest = end.fit === 'plate' && end.tip !== null ? end.outer.indexOf(end.tip) : -1;
  return (
    <section className="end" aria-label={`End ${which === 0 ? 'A' : 'B'}`}>
      <h3>
        <span className="end-letter">{which === 0 ? 'A' : 'B'}</span>
        {capital(endInWords(derived, end))}
      </h3>
      {end.fit === 'plate' && (
        <p className="recipe-line">
          Saw set over <Angle radians={plateOffSquare(end)} />
          {longest >= 0 && plateOffSquare(end) > 1e-9 && (
            <>
              , longest {turnInWords(wrapHalfTurn((longest * Math.PI) / 180))} from the {reference}
            </>
          )}
          .
        </p>
      )}
      {end.cuts.map((cut, index) => (
        <Recipe
          key={cut.against}
          cut={cut}
          first={index === 0 ? null : (end.cuts[0] ?? null)}
          turnFrom={index === 0 ? line : reference}
          name={tubeName(derived, cut.against)}
        />
      ))}
      {(end.cuts.length > 0 || end.fit === 'plate') && (
        <p className="small">Clockwise as you look into this end. 0° is the {reference}.</p>
      )}
      <dl className="facts">
        <div>
          <dt>Node</dt>
          <dd>{nodeName(derived.job, end.node)}</dd>
        </div>
        {end.tip !== null && (
          <div>
            <dt>Tip, from the node</dt>
            <dd>
              <Length mm={end.tip} parts={32} withUnit />
            </dd>
          </div>
        )}
        {end.throat !== null && (
          <div>
            <dt>Throat, from the node</dt>
            <dd>
              <Length mm={end.throat} parts={32} withUnit />
            </dd>
          </div>
        )}
        <div>
          <dt>Allowance</dt>
          <dd>
            <Length mm={end.allowance} parts={32} withUnit />
          </dd>
        </div>
      </dl>
    </section>
  );
}

function Recipe(props: { cut: Cut; first: Cut | null; turnFrom: string; name: string }): ReactNode {
  const { cut, first } = props;
  const offset = Math.abs(cut.axisOffset) < 0.005 ? null : cut.axisOffset;
  return (
    <div className="recipe">
      <h4>Cut to {props.name}</h4>
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
      <dl className="facts">
        <div>
          <dt>Turn from the {props.turnFrom}</dt>
          <dd className="figure">{turnInWords(cut.clocking)}</dd>
        </div>
        {first && (
          <div>
            <dt>Turn from the first cut</dt>
            <dd className="figure">{turnInWords(wrapHalfTurn(cut.clocking - first.clocking))}</dd>
          </div>
        )}
        <div>
          <dt>Hole saw</dt>
          <dd>
            <Length mm={cut.sawDiameter} parts={32} withUnit /> across
          </dd>
        </div>
        <div>
          <dt>Saw depth, blank past the cut</dt>
          <dd>
            {cut.sawDepth === null ? (
              'no saw reaches: the tubes run alongside'
            ) : (
              <Length mm={cut.sawDepth} parts={32} withUnit />
            )}
          </dd>
        </div>
        <div>
          <dt>Axis offset</dt>
          <dd>
            {offset === null ? (
              'none, the axes meet'
            ) : (
              <>
                <Length mm={Math.abs(offset)} parts={32} withUnit /> to the {offset > 0 ? 'right' : 'left'}
              </>
            )}
          </dd>
        </div>
      </dl>
      {offset !== null && (
        <p className="small">
          This tube’s axis passes on the {offset > 0 ? 'right' : 'left'} of the other’s, looking into the end with the
          acute side up.
        </p>
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

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
