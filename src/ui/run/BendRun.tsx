/**
 * The bend run: a page for a telephone or tablet beside the machine, one step at a time. What is ticked off and read
 * stands in the job at once; the page itself only remembers which step a person looks back at.
 */
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import { findRun, removeRun } from '../../core/edit/bent.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import { toBeBent } from '../../core/run/laid-out.ts';
import { radiusAnswers } from '../../core/run/radius-answers.ts';
import { bendRun, isOfOtherBends, type BendRun as Run, type RunStep } from '../../core/run/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { findingInWords } from '../../core/words/findings.ts';
import { NOTABLE_LENGTH } from '../../core/marks/tape.ts';
import { useDocument, useResults } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { KeptReadings } from '../bending/KeptReadings.tsx';
import { useToMake } from '../bending/to-make.ts';
import { useFeed } from '../bending/useFeed.ts';
import { useNarrow } from '../kit/useNarrow.ts';
import { CheckStep } from './CheckStep.tsx';
import { ClampStep } from './ClampStep.tsx';
import { CutStep, MarkStep } from './PrepareSteps.tsx';
import { PullStep } from './PullStep.tsx';
import { ReadStep } from './ReadStep.tsx';
import { leaveRun } from '../bending/open-run.ts';
import { RadiusQuestion, useAnsweredOnce } from './RadiusQuestion.tsx';
import { RunKey } from './RunKey.tsx';
import { KeptAwake } from './KeptAwake.tsx';
import { RunStart } from './RunStart.tsx';
import { RunStrip } from './RunStrip.tsx';
import { StraightTube } from './StraightTube.tsx';
import { Touches } from './Touches.tsx';
import { NOT_ANSWERED_YET } from '../../core/words/radius.ts';
import { blankInWords, changeInWords, titleOf } from '../../core/words/run.ts';
import { spokenOf } from './stops.ts';
import '../kit/ui.css';
import '../kit/draw.css';
import '../bending/tube.css';
import './run.css';

export default function BendRun({ tube: reference }: { tube: TubeRef }): ReactNode {
  const tube = useDocument((state) => state.derived.byId.get(reference));
  const run = useDocument((state) => findRun(state.job, reference));
  const isFromList = useToMake() === 'open';
  const narrow = useNarrow();
  if (tube === undefined) return null;
  return (
    <div className="run">
      <header className="run-head">
        <button type="button" className="press run-back" onClick={() => leaveRun(reference)}>
          <span aria-hidden="true">‹ </span>
          {isFromList && narrow ? 'Tubes' : 'Shop'}
        </button>
        <h2>
          <span className="number-tag">{tube.number}</span>
          <span className="run-name">{tube.name}</span>
        </h2>
      </header>
      <KeptAwake />
      <Body key={tube.id} tube={toBeBent(tube, run)} run={run} />
    </div>
  );
}

interface BodyProps {
  readonly tube: SolvedTube;
  readonly run: BentTube | undefined;
}

function Body({ tube, run }: BodyProps): ReactNode {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const errors = errorsOf(findings, tube.id);
  // A tube that is half made is not left in the machine: its faults are shown, and it can be gone on with.
  if (run !== undefined) {
    return (
      <>
        {errors.length > 0 && <Faulty reasons={errors.map((error) => findingInWords(error, derived))} />}
        <Steps tube={tube} run={run} />
      </>
    );
  }
  const isStraight = tube.bends.length === 0;
  if (errors.length > 0) {
    return (
      <Barred
        title={isStraight ? faultInWords(errors) : `${faultInWords(errors)}: it is not to be bent`}
        reasons={errors.map((error) => findingInWords(error, derived))}
      />
    );
  }
  return isStraight ? <StraightTube tube={tube} /> : <RunStart tube={tube} />;
}

/** What was found on the tube since its run began; it folds, since the step's figure stands under it. */
const Faulty = ({ reasons }: { reasons: readonly string[] }): ReactNode => (
  <details className="cannot run-found" open>
    <summary>
      <span className="cannot-sign" aria-hidden="true">
        ×
      </span>
      Found since this run began: {reasons.length}
    </summary>
    <div role="status">
      {reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      <p>Bend on only if it does no harm to this tube; else mend the drawing first.</p>
    </div>
  </details>
);

/** Why nothing is bent here. The focus goes to it, as to a step. */
function Barred({ title, reasons }: { title: string; reasons: readonly string[] }): ReactNode {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="cannot run-barred">
      <h3 ref={heading} tabIndex={-1}>
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
}

function Steps({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const feed = useFeed(tube);
  const progress = useMemo(() => bendRun(tube, run, feed), [tube, run, feed]);
  const [looking, look] = useState<string | null>(null);
  const { steps, current, changed } = progress;
  if (isOfOtherBends(progress)) return <Outdated tube={tube} run={run} progress={progress} />;

  const now = steps[current];
  const shown = steps.find(({ key }) => key === looking) ?? now ?? steps.at(-1)!;
  return (
    <>
      <RunStrip steps={steps} current={current} shown={shown.key} onLook={look} />
      <p className="spoken-only" role="status">
        {`${titleOf(shown)}. ${spokenOf(shown, unit)}`}
      </p>
      {changed.length > 0 ? (
        <Changed tube={tube} run={run} progress={progress} />
      ) : (
        progress.blankLacks > NOTABLE_LENGTH && <Lacking lacks={progress.blankLacks} />
      )}
      {now !== undefined && now.kind !== 'check' && <Radius tube={tube} run={run} />}
      <main key={shown.key} className="run-step">
        <StepTitle step={shown} />
        <StepBody
          {...{ tube, run, progress }}
          step={shown}
          onTicked={() => look(null)}
          onRead={() => look(shown.key)}
        />
        {now !== undefined && shown !== now && shown.done && shown.kind !== 'read' && (
          <RunKey onPress={() => look(null)}>Back to where you are: {titleOf(now).toLowerCase()}</RunKey>
        )}
      </main>
    </>
  );
}

/** Asked again where the pulls since the run began say that bends open: what is not bent yet can still follow them. */
function Radius({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  const feed = useFeed(tube);
  const answered = useAnsweredOnce(tube, run);
  const answers = useMemo(
    () => (answered === null ? radiusAnswers(tube, run, feed) : null),
    [tube, run, feed, answered],
  );
  if (answers === null) return null;
  return (
    <RadiusQuestion tube={tube} answers={answers} answered={answered}>
      {NOT_ANSWERED_YET}
    </RadiusQuestion>
  );
}

/** The heading takes the focus when its step comes; a step that is typed into gives it to its field. */
function StepTitle({ step }: { step: RunStep }): ReactNode {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.closest('.run-page')?.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h3 ref={heading} tabIndex={-1} className="run-title">
      {titleOf(step)}
    </h3>
  );
}

function StepBody(props: {
  tube: SolvedTube;
  run: BentTube;
  progress: Run;
  step: RunStep;
  onTicked: () => void;
  onRead: () => void;
}): ReactNode {
  const { tube, run, progress, step, onTicked } = props;
  const { fine } = useFeed(tube);
  switch (step.kind) {
    case 'cut':
      return <CutStep tube={tube} step={step} onTicked={onTicked} />;
    case 'mark':
      return <MarkStep tube={tube} step={step} onTicked={onTicked} />;
    case 'clamp':
      return (
        <>
          <Touches run={run} bend={step.bend} />
          <ClampStep tube={tube} step={step} moved={movedOf(progress, step.bend)} onTicked={onTicked} />
        </>
      );
    case 'pull':
      return (
        <>
          <Touches run={run} bend={step.bend} />
          <PullStep tube={tube} step={step} onTicked={onTicked} />
        </>
      );
    case 'read':
      return <ReadStep tube={tube} run={run} progress={progress} step={step} onRead={props.onRead} onNext={onTicked} />;
    case 'check':
      return <CheckStep tube={tube} run={run} progress={progress} step={step} fine={fine} />;
  }
}

function movedOf({ marksMoved }: Run, bend: number): number {
  return marksMoved.find((each) => each.bend === bend)?.by ?? 0;
}

interface ChangedProps {
  readonly tube: SolvedTube;
  readonly run: BentTube;
  readonly progress: Run;
}

/** The drawing was changed since the run began, but the bends are the same ones: what was done may still do. */
const Changed = ({ tube, run, progress }: ChangedProps): ReactNode => (
  <section className="run-changed" role="status">
    <h3>
      <span aria-hidden="true">▲ </span>Drawn otherwise since this run began
    </h3>
    <Changes run={progress} />
    <p>What stands here is for the tube as it is drawn now. Bends that are made stay as they are.</p>
    <KeptReadings run={run} />
    <StartAnew tube={tube} />
  </section>
);

/** The drawing is the same, but the pulls since have made its bends tighter than those it was cut for. */
function Lacking({ lacks }: { lacks: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return (
    <p className="notice-warning" role="status">
      <span aria-hidden="true">▲ </span>
      {blankInWords(lacks, unit)}
    </p>
  );
}

/** The record is of another tube than is drawn now. */
const Outdated = ({ tube, run, progress }: ChangedProps): ReactNode => (
  <section className="run-changed run-barred">
    <h3>
      <span aria-hidden="true">▲ </span>This run is of another tube than is drawn now
    </h3>
    <Changes run={progress} />
    <KeptReadings run={run} />
    <p>
      Draw it as it was, and the run goes on. To bend the tube as it is drawn now, start anew: its pulls stay in the
      log, the rest goes with the run. Undo brings it back.
    </p>
    <StartAnew tube={tube} />
  </section>
);

function Changes({ run }: { run: Run }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return (
    <ul>
      {run.changed.map((change) => {
        const words = changeInWords(change, unit);
        return <li key={words}>{words}</li>;
      })}
      {Math.abs(run.blankLacks) > NOTABLE_LENGTH && <li>{blankInWords(run.blankLacks, unit)}</li>}
    </ul>
  );
}

const StartAnew = ({ tube }: { tube: SolvedTube }): ReactNode => (
  <Command step={`Start bending ${tube.name} anew`} run={(job) => removeRun(job, tube.id)}>
    Start anew
  </Command>
);
