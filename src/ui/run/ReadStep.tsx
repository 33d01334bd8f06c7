/**
 * The bend is let go and read. The reading is in the log of pulls at once; what it says of the bend stands here with what
 * can be done: go on, pull on, read again, or leave the bend as it is.
 */
import { useEffect, useRef, useState, type FormEvent, type ReactNode } from 'react';
import { keepBend, logReading } from '../../core/edit/bent.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { BentBend, BentTube } from '../../core/job/kinds/bent.ts';
import { pulledTo } from '../../core/job/read-by-hand.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { Verdict } from '../../core/run/judge.ts';
import { measurableAt, type BendRun, type RunStep } from '../../core/run/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { isMisread } from '../../core/springback/pull-law.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { bendAngleKind } from '../fields/kinds.ts';
import { Refused } from '../kit/Refused.tsx';
import { Across } from './Across.tsx';
import { Measured } from './Measured.tsx';
import { RunKey } from './RunKey.tsx';
import { onTo } from './stops.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { verdictInWords } from '../../core/words/run.ts';
import { onScale } from '../../core/words/turns.ts';

type Read = Extract<RunStep, { kind: 'read' }>;

export function ReadStep(props: {
  tube: SolvedTube;
  run: BentTube;
  progress: BendRun;
  step: Read;
  onRead: () => void;
  onNext: () => void;
}): ReactNode {
  const { tube, run, progress, step, onRead } = props;
  const { reading, verdict } = step;
  const pull = progress.steps.find((one) => one.kind === 'pull' && one.bend === step.bend);
  const asked = pull?.kind === 'pull' ? pull.advice.pullTo : null;
  const next = progress.steps[progress.current];
  const more = verdict?.kind === 'short' ? verdict.pullTo : null;
  const toMeasure = measurableAt(
    step.bend,
    run.bends.map(({ bend }) => bend),
  );
  return (
    <>
      <p>
        Asked for <strong className="figure">{formatAngle(toDegrees(step.target), 1)}°</strong>. Let go, then read the
        bend.
      </p>
      {reading !== null && verdict !== null && <Said verdict={verdict} reading={reading} />}
      {!step.done && (
        <Reading
          // Another reading to make is another form.
          key={`${reading?.pulled} ${reading?.net}`}
          tube={tube.id}
          bend={step.bend}
          start={step.start}
          pulled={more ?? reading?.pulled ?? asked}
          again={reading !== null}
          onRead={onRead}
        />
      )}
      {/* After the next reading's field, so that Tab comes to that first. */}
      {reading !== null &&
        verdict !== null &&
        verdict.kind !== 'within' &&
        !reading.fitted &&
        mayBeLeft(verdict, reading) && <LeaveKey tube={tube.id} reading={reading} />}
      {step.done && (
        <RunKey live onPress={props.onNext}>
          {onTo(next)}
        </RunKey>
      )}
      {step.done && reading !== null && (
        <details className="fold-more">
          <summary>Read it again</summary>
          <Reading
            key={`${reading.pulled} ${reading.net}`}
            tube={tube.id}
            bend={step.bend}
            start={step.start}
            pulled={pulledTo(reading)}
            again
            onRead={onRead}
          />
        </details>
      )}
      {reading !== null && (
        <details className="fold-more">
          <summary>How far from round</summary>
          <Across tube={tube.id} made={reading} />
        </details>
      )}
      {toMeasure.length > 0 && (
        <details className="fold-more">
          <summary>Rotation and straight as measured</summary>
          {toMeasure.map((bend) => (
            <Measured key={bend} tube={tube} run={run} bend={bend} />
          ))}
        </details>
      )}
    </>
  );
}

/** What the reading says, spoken when it comes. */
function Said({ verdict, reading }: { verdict: Verdict; reading: BentBend }): ReactNode {
  const { pulled, net, fitted = false } = reading;
  const kept = reading.kept === true || fitted;
  const unit = useDocument((state) => state.job.lengthUnit);
  const { title, words } = verdictInWords(verdict, unit, kept);
  // The key that was pressed is gone.
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [title, kept]);
  const good = verdict.kind === 'within';
  return (
    <section
      className={good ? 'run-said run-said-good' : 'run-said run-said-off'}
      role="status"
      aria-label="What the reading says"
    >
      <h4 ref={heading} tabIndex={-1}>
        <span aria-hidden="true">{good ? '✓ ' : '▲ '}</span>
        {title}
      </h4>
      {verdict.kind === 'short' && !kept && (
        <p className="run-figure run-figure-second">
          Pull {onScale(verdict.pullTo - pulled)}° more, to {onScale(verdict.pullTo)}°
        </p>
      )}
      {verdict.kind === 'impossible' && (
        <p>
          Pulled to {onScale(pulled)}°, read as {onScale(net)}°.
        </p>
      )}
      <p>{words}</p>
    </section>
  );
}

/** What cannot be was misread: there is nothing to leave, but one that was left before can be taken back. */
const mayBeLeft = ({ kind }: Verdict, { kept = false }: BentBend): boolean => kind !== 'impossible' || kept;

/** A bend that is not what was asked for, left so; or that taken back. */
function LeaveKey({ tube, reading }: { tube: TubeRef; reading: BentBend }): ReactNode {
  const { bend, kept = false } = reading;
  return (
    <RunKey
      key={kept ? 'back' : 'leave'}
      onPress={() =>
        jobDocument
          .getState()
          .edit(kept ? `Go on with bend ${bend}` : `Leave bend ${bend} as it is`, (job) =>
            keepBend(job, tube, bend, !kept),
          )
      }
    >
      {kept ? 'Take that back' : 'Leave it as it is'}
    </RunKey>
  );
}

/** The typed reading; refused beside its field, and nothing logged, while it cannot be one. */
function Reading(props: {
  tube: TubeRef;
  bend: number;
  /** As BentBend.start. */
  start: number;
  /** What the machine was asked to be pulled to; the person says if it was another. */
  pulled: number | null;
  again: boolean;
  onRead: () => void;
}): ReactNode {
  const { tube, bend, start } = props;
  const edit = useDocument((state) => state.edit);
  const [netText, setNet] = useState('');
  const [pulledText, setPulled] = useState(props.pulled === null ? '' : onScale(props.pulled));
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const net = bendAngleKind.read(netText);
  const pulled = bendAngleKind.read(pulledText);

  // The first reading is what this step is for; before another one, what the last one said is to be heard.
  const { again } = props;
  useEffect(() => {
    if (!again) form.current?.querySelector('input')?.focus();
  }, [again]);

  function log(event: FormEvent): void {
    event.preventDefault();
    setAsked(true);
    if (!net.ok || !pulled.ok) {
      form.current?.querySelector<HTMLInputElement>('[data-unread]')?.focus();
      return;
    }
    const faults = edit(`Read bend ${bend}`, (job) =>
      logReading(job, tube, bend, {
        pulled: pulled.value,
        net: net.value,
        on: dayOf(new Date()),
        start,
        misread: isMisread(pulled.value, net.value),
      }),
    );
    setRefusal(faults.map((fault) => fault.message).join('; '));
    if (faults.length === 0) props.onRead();
  }

  return (
    <form ref={form} className="run-reading" aria-label={`Reading of bend ${bend}`} noValidate onSubmit={log}>
      <DraftField
        label={again ? 'Now reads' : 'Reads'}
        unit="°"
        text={netText}
        entered={net}
        asked={asked}
        onType={setNet}
      />
      <DraftField label="Pulled to" unit="°" text={pulledText} entered={pulled} asked={asked} onType={setPulled} />
      <button type="submit" className="press press-live run-key">
        Log the reading
      </button>
      <Refused why={refusal} />
    </form>
  );
}
