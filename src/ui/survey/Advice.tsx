/** What the readings say of one another: whether they agree, which is off and what to do, what nothing fixes, what may lie on either side. */
import { useDeferredValue, useMemo, type ReactNode } from 'react';
import { guessAt, leaveOut, takeMisread, turnRound } from '../../core/edit/measurements.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { subtract } from '../../core/geometry/vector.ts';
import type { Measurement } from '../../core/job/kinds/measurement.ts';
import type { Job } from '../../core/job/types.ts';
import { pointName } from '../../core/solve/names.ts';
import type { Adjusted, Suspect } from '../../core/survey/adjust.ts';
import type { Elsewhere } from '../../core/survey/mirror.ts';
import { misreads, type Misread } from '../../core/survey/misread.ts';
import { nextMeasurement } from '../../core/survey/next-measurement.ts';
import { sidesOpen } from '../../core/survey/sides-open.ts';
import { onWrongSide } from '../../core/survey/wrong-side.ts';
import { formatLength } from '../../core/units/length.ts';
import { looseInWords, measurementInWords, readInWords } from '../../core/words/survey.ts';
import {
  agreementInWords,
  misreadInWords,
  nextInWords,
  suspectInWords,
  wrongSideInWords,
} from '../../core/words/survey-advice.ts';
import { farInWords } from '../../core/words/ways.ts';
import { useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { lineFor, type Line } from './line.ts';

interface Props {
  /** As it is written: points by their guesses. */
  readonly job: Job;
  readonly survey: Adjusted;
  onAgain(id: string): void;
  onBegin(line: Line): void;
}

export function Advice({ job, survey, onAgain, onBegin }: Props): ReactNode {
  return (
    <>
      <p className={survey.suspects.length > 0 ? 'agreement agreement-not' : 'agreement'} role="status">
        {agreementInWords(job, survey)}
      </p>
      <ul className="lines">
        {survey.suspects.map((suspect) => (
          <OffReading key={job.measurements[suspect.index]!.id} {...{ job, survey, suspect, onAgain }} />
        ))}
        <WrongSides job={job} />
        <Sides job={job} survey={survey} />
        <NotFixed job={job} survey={survey} onBegin={onBegin} />
      </ul>
    </>
  );
}

function OffReading({
  job,
  survey,
  suspect,
  onAgain,
}: Omit<Props, 'onBegin'> & { readonly suspect: Suspect }): ReactNode {
  const reading = job.measurements[suspect.index]!;
  const found = useMemo(() => misreads(job, survey, suspect, job.lengthUnit), [job, survey, suspect]);
  const name = measurementInWords(job, reading);
  return (
    <li className="advice-item advice-off">
      <p>
        <span aria-hidden="true">▲ </span>
        {suspectInWords(job, suspect)}
      </p>
      {found.map((misread) => (
        <p key={keyOf(misread)} className="small">
          {misreadInWords(job, reading, misread)}
        </p>
      ))}
      <div className="row">
        {found.map((misread) => (
          <Command
            key={keyOf(misread)}
            step={`Change ${name}`}
            run={(before) => takeMisread(before, reading.id, misread)}
          >
            Take {takenInWords(job, reading, misread)}
          </Command>
        ))}
        <Command
          quiet
          step={`Leave out ${name}`}
          label={`Leave out ${name}`}
          run={(before) => leaveOut(before, reading.id, true)}
        >
          Leave it out
        </Command>
        <button
          type="button"
          className="press press-quiet"
          aria-label={`Measure again: ${name}`}
          onClick={() => onAgain(reading.id)}
        >
          Measure it again
        </button>
      </div>
    </li>
  );
}

const keyOf = (misread: Misread): string =>
  `${misread.how} ${'point' in misread ? `${misread.key} ${misread.point}` : misread.reads}`;

const takenInWords = (job: Job, reading: Measurement, misread: Misread): string =>
  'point' in misread
    ? pointName(job, misread.point)
    : readInWords(reading, misread.reads, 'unit' in misread ? misread.unit : job.lengthUnit);

function NotFixed({ job, survey, onBegin }: Omit<Props, 'onAgain'>): ReactNode {
  const points = useMemo(() => [...new Set(survey.loose.map(({ point }) => point))], [survey]);
  return points.map((point) => {
    const next = nextMeasurement(job, survey, point);
    const directions = survey.loose.filter((each) => each.point === point).map(({ direction }) => direction);
    return (
      <li key={point} className="advice-item">
        <p>{looseInWords(pointName(job, point), directions)}.</p>
        {next !== null && (
          <div className="row">
            <button type="button" className="press" onClick={() => onBegin(lineFor(job, next))}>
              {nextInWords(job, next)}
            </button>
          </div>
        )}
      </li>
    );
  });
}

/** One that is called right and lies on the left, or the other way: its offset turned round is one key away. */
function WrongSides({ job }: Pick<Props, 'job'>): ReactNode {
  return onWrongSide(job).map(({ point, by, offsets }) => (
    <li key={point} className="advice-item advice-off">
      <p>
        <span aria-hidden="true">▲ </span>
        {wrongSideInWords(pointName(job, point), by, job.lengthUnit)}
      </p>
      {offsets.length > 0 && (
        <div className="row">
          <Command
            step={`Turn round the offset of ${pointName(job, point)}`}
            run={(before) => turnRound(before, new Set(offsets.map(({ id }) => id)))}
          >
            Turn its offset round
          </Command>
        </div>
      )}
    </li>
  ));
}

function Sides({ job, survey }: Pick<Props, 'job' | 'survey'>): ReactNode {
  const { points, holds, measurements, survey: block } = job;
  // It looks for each point from all sides: what was typed is shown before that.
  const asked = useDeferredValue(
    useMemo(
      () => ({ surveyed: { points, holds, measurements, ...(block && { survey: block }) }, survey }),
      [points, holds, measurements, block, survey],
    ),
  );
  const open = useMemo(() => sidesOpen(asked.surveyed, asked.survey), [asked]);
  return open.map((each) => <WhichSide key={each.point} job={job} {...each} />);
}

function WhichSide({ job, point, here, there }: Elsewhere & { readonly job: Job }): ReactNode {
  const select = useEditor((state) => state.select);
  const name = pointName(job, point);
  const key = (place: Vec3, other: Vec3): ReactNode => (
    <Command step={`Say where ${name} is`} run={(before) => guessAt(before, point, place)}>
      {farInWords(subtract(place, other))}: {placeInWords(place, job)}
    </Command>
  );
  return (
    <li className="advice-item">
      <p>
        The readings fit two places of{' '}
        <button type="button" className="link" onClick={() => select({ kind: 'point', id: point })}>
          {shownName(name)}
        </button>
        . Which is it?
      </p>
      <div className="row">
        {key(here, there)}
        {key(there, here)}
      </div>
    </li>
  );
}

/** "along 120 in, offset 21 in, height 36 in" */
const placeInWords = (place: Vec3, { lengthUnit }: Job): string =>
  ['along', 'offset', 'height']
    .map((word, axis) => `${word} ${formatLength(place[axis]!, lengthUnit).text} ${lengthUnit}`)
    .join(', ');
