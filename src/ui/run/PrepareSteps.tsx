/** Before the first bend: the blank to cut, and the marks to draw on it. */
import { Fragment, type ReactNode } from 'react';
import { roundingInWords, sideNote } from '../../core/words/marks.ts';
import { sawMarks } from '../../core/marks/tape.ts';
import type { RunStep } from '../../core/run/run.ts';
import type { Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { sectionInWords } from '../../core/job/sizes.ts';
import { useDocument } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { TapePicks } from '../bending/TapePicks.tsx';
import { Leans, MarkPlace, Scrap, Zero } from '../bending/TapeParts.tsx';
import { useFeed } from '../bending/useFeed.ts';
import { Tick } from './Tick.tsx';

type StepOf<K extends RunStep['kind']> = Extract<RunStep, { kind: K }>;

export function CutStep(props: { tube: SolvedTube; step: StepOf<'cut'>; onTicked: () => void }): ReactNode {
  const { tube, step } = props;
  return (
    <>
      <ToCut tube={tube} blank={step.blank} grip={step.grip} />
      <Tick tube={tube.id} step={step} onTicked={props.onTicked}>
        It is cut
      </Tick>
    </>
  );
}

/** `blank` and `grip` as in the tube's feed. */
export function ToCut(props: { tube: SolvedTube; blank: number; grip: Feed['grip'] }): ReactNode {
  const { tube, blank, grip } = props;
  const unit = useDocument((state) => state.job.lengthUnit);
  const stick = tube.section.stick;
  return (
    <>
      <p className="run-figure">
        <Length mm={blank} withUnit />
      </p>
      <p>
        of <strong>{sectionInWords(tube.section, unit)}</strong>, cut square. Name its ends A and B.
      </p>
      <Scrap grip={grip} />
      {stick !== undefined && stick < blank && (
        <p className="notice-warning">
          <span aria-hidden="true">▲ </span>
          Longer than a stick, <Length mm={stick} withUnit />.
        </p>
      )}
    </>
  );
}

export function MarkStep(props: { tube: SolvedTube; step: StepOf<'mark'>; onTicked: () => void }): ReactNode {
  const { tube, step } = props;
  const { tape } = step;
  const feed = useFeed(tube);
  const unit = useDocument((state) => state.job.lengthUnit);
  const rounding = roundingInWords(tape.rounding, feed.from, unit);
  return (
    <>
      <p>
        <Zero tape={tape} from={feed.from} />
      </p>
      <dl className="run-marks">
        {tape.steps
          .toSorted((a, b) => Math.abs(a.marks[0]!.at) - Math.abs(b.marks[0]!.at))
          .map((bend) => (
            <Fragment key={bend.bend}>
              <dt>bend {bend.bend}</dt>
              <dd>
                {bend.marks.map((mark) => (
                  <div key={mark.kind}>
                    <MarkPlace mark={mark} step={bend} view={feed} withUnit />
                  </div>
                ))}
              </dd>
            </Fragment>
          ))}
        {sawMarks(tape).map(({ end, exact }) => (
          <Fragment key={end}>
            <dt>saw off</dt>
            <dd>
              <Length mm={exact} withUnit /> <span className="small">the grip at end {end}, after bending</span>
            </dd>
          </Fragment>
        ))}
      </dl>
      <p className="small">All from that one zero. {sideNote(feed.mark)}</p>
      <Leans steps={tape.steps} view={feed} />
      {rounding !== null && (
        <p className="notice-warning">
          <span aria-hidden="true">▲ </span>
          {rounding}
        </p>
      )}
      <Tick tube={tube.id} step={step} onTicked={props.onTicked}>
        They are marked
      </Tick>
      <details className="fold-more">
        <summary>Mark it another way</summary>
        <TapePicks tube={tube} />
      </details>
    </>
  );
}
