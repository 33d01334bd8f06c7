/** The tube off the bender: what the tape should read on it as it was bent, what it did read, and where its far end lies. */
import { checkInWords, SIDES, whenChecked } from '../../core/words/run.ts';
import { useMemo, type ReactNode } from 'react';
import { removeRun, setCheck } from '../../core/edit/bent.ts';
import type { BentTube } from '../../core/job/kinds/bent.ts';
import type { BendRun, RunCheck, RunStep } from '../../core/run/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { letteredChecks } from '../../drawing/bent/bent-views.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { EntryField } from '../fields/EntryField.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { orNothing, tapeKind } from '../fields/kinds.ts';
import { Length } from '../fields/Readings.tsx';
import { FarEnd, MadeBends } from '../bending/AsBent.tsx';
import { TapeFit } from '../bending/TapeFit.tsx';
import { Leads } from '../bending/Leads.tsx';
import { Opened } from '../bending/Opened.tsx';
import { useFeed } from '../bending/useFeed.ts';
import { WhereTaken } from '../bending/WhereTaken.tsx';
import { leaveRun } from '../bending/open-run.ts';
import { useToMake } from '../bending/to-make.ts';
import { RunKey } from './RunKey.tsx';
import { Tick } from './Tick.tsx';

type Check = Extract<RunStep, { kind: 'check' }>;

export function CheckStep(props: {
  tube: SolvedTube;
  run: BentTube;
  progress: BendRun;
  step: Check;
  fine: boolean;
}): ReactNode {
  const { tube, run, progress, step, fine } = props;
  const feed = useFeed(tube);
  const isFromList = useToMake() === 'open';
  const { form } = progress.asBent;
  const lettered = useMemo(() => letteredChecks(form), [form]);
  return (
    <>
      <FarEnd tube={tube} asBent={progress.asBent} />
      <p>
        What the tape should read on the tube as it was bent, {whenChecked(feed.grip)}
        {step.checks.length > 3 ? ` (${SIDES})` : ''}:
      </p>
      {lettered.length > 0 && <WhereTaken form={form} lettered={lettered} />}
      <ol className="run-checks">
        {step.checks.map((check) => (
          <li key={check.predicted.id}>
            <OneCheck
              tube={tube}
              check={check}
              letter={lettered.find((each) => each.check.id === check.predicted.id)?.letter ?? null}
              fine={fine}
            />
          </li>
        ))}
      </ol>
      <Opened tube={tube} run={run} opened={progress.opened} />
      <TapeFit
        tube={tube}
        run={run}
        laid={progress.laid}
        blank={progress.blank}
        read={step.checks.flatMap(({ predicted, measured }) =>
          measured === null ? [] : [{ check: predicted, measured }],
        )}
      />
      <MadeBends tube={tube} run={run} />
      <Leads tube={tube} run={run} />
      {step.done && (
        <RunKey live onPress={() => leaveRun(tube.id)}>
          {isFromList ? 'Back to the tubes to make' : 'Back to the Shop'}
        </RunKey>
      )}
      <Tick tube={tube.id} step={step} onTicked={() => {}}>
        It is checked
      </Tick>
      <Command quiet step={`Start bending ${tube.name} anew`} run={(job) => removeRun(job, tube.id)}>
        Start anew with another tube
      </Command>
      <p className="small">Its pulls stay in the log. Undo brings the run back.</p>
    </>
  );
}

interface OneCheckProps {
  readonly tube: SolvedTube;
  readonly check: RunCheck;
  /** By which it is drawn. */
  readonly letter: string | null;
  readonly fine: boolean;
}

function OneCheck({ tube, check, letter, fine }: OneCheckProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { predicted, drawn, measured } = check;
  const parts = fine ? 32 : 16;
  const name = checkInWords(predicted);
  const edit = jobEdit<number | null>(`Check: ${name}`, (job, value) => setCheck(job, tube.id, predicted.id, value));
  return (
    <>
      <h4>
        {letter !== null && <span className="dimension-letter">{letter}</span>}
        {name}
      </h4>
      <p className="run-check-figure">
        <Length mm={predicted.value} parts={parts} withUnit />
        <span className="small under">
          drawn <Length mm={drawn} parts={parts} />
        </span>
      </p>
      <EntryField
        label="Measured"
        unit={unit}
        numeric
        kind={orNothing(tapeKind(unit))}
        value={measured}
        commit={edit.commit}
      />
      {measured !== null && <Difference mm={measured - predicted.value} parts={parts} />}
    </>
  );
}

/** mm. By more than this a tape was misread sooner than a tube misbent: 1 degree at a bend moves 1 m of leg by 17.5 mm. */
const MISREAD = 60;

const Difference = ({ mm, parts }: { mm: number; parts: 16 | 32 }): ReactNode => (
  <p className={Math.abs(mm) > MISREAD ? 'notice-warning' : 'run-difference'} role="status">
    {Math.abs(mm) > MISREAD && <span aria-hidden="true">▲ </span>}
    <Length mm={Math.abs(mm)} parts={parts} withUnit /> {mm < 0 ? 'less' : 'more'} than predicted
    {Math.abs(mm) > MISREAD && ': measure it again'}
  </p>
);
