/** The selected tube's head: what to cut, or why not to, and which other tube is its mirror image. */
import { massInWords } from '../../core/units/mass.ts';
import { cutLengths } from '../../core/cope/end-cut.ts';
import type { ReactNode } from 'react';
import { primed } from '../../core/job/reference.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument, useEditor, useResults } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { revisionOf } from '../../core/solve/revision.ts';
import { revisionInWords } from '../../core/words/revision.ts';
import { sectionInWords } from '../../core/job/sizes.ts';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import { AS_DRAWN, CUT_TO, LENGTH_NAMES } from '../../core/words/blank.ts';
import { findingInWords } from '../../core/words/findings.ts';
import { MAKE_ONE_OF_EACH, twinIs } from '../../core/words/twins.ts';
import { Scrap } from '../bending/TapeParts.tsx';
import { BendKey } from '../bending/AsBent.tsx';
import { useFeed } from '../bending/useFeed.ts';
import { HeldNotes } from './MadeSoFar.tsx';
import '../bending/tube.css';

export function TubeHead({ tube }: { tube: SolvedTube }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const { tubes } = derived;
  const twin = derived.byId.get(primed(tube.id));
  const place = tubes.indexOf(tube);
  const select = useEditor((state) => state.select);
  const errors = errorsOf(findings, tube.id);
  const { cutLength, grip } = useFeed(tube);
  return (
    <article className="card tube-head" aria-label={`Tube ${tube.number}, ${tube.name}`}>
      <div className="tube-title">
        <h2>
          <span className="number-tag number-tag-large">{tube.number}</span>
          <span>
            {tube.name}
            <span className="tube-revision">{revisionInWords(revisionOf(derived.job, tube))}</span>
          </span>
        </h2>
        <Neighbour tube={tubes[place - 1]} word="Tube before" sign="‹" />
        <Neighbour tube={tubes[place + 1]} word="Next tube" sign="›" />
      </div>
      {errors.length > 0 && (
        <Cannot title={faultInWords(errors)} reasons={errors.map((error) => findingInWords(error, derived))} />
      )}
      {twin && (
        <p className="small">
          <strong>{MAKE_ONE_OF_EACH}</strong> {twinIs(tube, twin)}:{' '}
          <button type="button" className="link" onClick={() => select({ kind: 'tube', id: twin.id })}>
            {twin.number} · {twin.name}
          </button>
        </p>
      )}
      <HeldNotes tube={tube} />
      <div className="tube-cut">
        <dl className={errors.length > 0 ? 'headline headline-off' : 'headline'}>
          <dt>{errors.length > 0 ? `${AS_DRAWN}, not to be cut` : CUT_TO}</dt>
          <dd>
            <Length mm={cutLength} withUnit />
          </dd>
        </dl>
        <BendKey tube={tube} />
      </div>
      <Scrap grip={grip} />
    </article>
  );
}

/** To the tube before or after in build order; at either end of it a key that does nothing, so that the other stays where it is. */
function Neighbour({ tube, word, sign }: { tube: SolvedTube | undefined; word: string; sign: string }): ReactNode {
  const select = useEditor((state) => state.select);
  return (
    <button
      type="button"
      className="press tube-step"
      aria-label={tube === undefined ? word : `${word}: ${tube.number}, ${tube.name}`}
      aria-disabled={tube === undefined}
      onClick={() => tube && select({ kind: 'tube', id: tube.id })}
    >
      <span aria-hidden="true">{sign}</span>
    </button>
  );
}

const Cannot = ({ title, reasons }: { title: string; reasons: readonly string[] }): ReactNode => (
  <section className="cannot" aria-label={title}>
    <h3>
      <span className="cannot-sign" aria-hidden="true">
        ×
      </span>
      {title}
    </h3>
    {reasons.map((reason) => (
      <p key={reason}>{reason}</p>
    ))}
  </section>
);

/** The lengths that shops cut by, and what the tube is made of. */
export function TubeFacts({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { tips, throats, axis } = cutLengths(tube);
  return (
    <dl className="facts">
      <Fact name={LENGTH_NAMES.tips} mm={tips} />
      <Fact name={LENGTH_NAMES.throats} mm={throats} />
      <Fact name={LENGTH_NAMES.axis} mm={axis} />
      <Fact name={LENGTH_NAMES.corners} mm={tube.sharpCornerLength} />
      <Fact name="Left long, both ends" mm={tube.ends[0].allowance + tube.ends[1].allowance} />
      <div>
        <dt>Section, OD x wall</dt>
        <dd>{sectionInWords(tube.section, unit)}</dd>
      </div>
      {tube.die && tube.bends.length > 0 && (
        <div>
          <dt>Die</dt>
          <dd>{tube.die.name}</dd>
        </div>
      )}
      <div>
        <dt>Mass</dt>
        <dd className="figure">{massInWords(tube.mass, unit)}</dd>
      </div>
    </dl>
  );
}

const Fact = ({ name, mm }: { name: string; mm: number }): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd>
      <Length mm={mm} withUnit />
    </dd>
  </div>
);
