/** Where a tube that leads was measured in the car: what is typed holds, and the rest lies as near to the drawing as that leaves it. */
import type { ReactNode } from 'react';
import { setSeat, setSeatPoint } from '../../core/edit/seat.ts';
import { SEAT_PLACES, type BentTube, type SeatPlace } from '../../core/job/kinds/bent.ts';
import { seatPlace } from '../../core/solve/seat.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { comparedLength } from '../../core/words/lengths.ts';
import { offInWords } from '../../core/words/seat-findings.ts';
import { SEAT_TITLE, seatPlaceInWords } from '../../core/words/seat.ts';
import { useDocument, useResults } from '../../store/page.ts';
import { LengthOrNothingField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { Length } from '../fields/Readings.tsx';
import { measuredPlaces } from '../kit/names.ts';
import { Section } from '../kit/Section.tsx';
import { CAR_AXES } from '../kit/vectors.ts';

/** `tube` as it stands in the frame. */
export function Seats({ tube, run }: { tube: SolvedTube; run: BentTube }): ReactNode {
  const measured = run.seat ?? [];
  return (
    <Section title="As it stands in the car: measured" count={measured.length} open={measured.length > 0} onlyOpen>
      <p className="small">
        Enter what you measured of it in the car, to its centreline: as much or as little as you have. These figures
        hold; the rest of it lies as near to the drawing as they leave it.
      </p>
      {SEAT_PLACES.map((at) => (
        <Place key={at} tube={tube} run={run} at={at} />
      ))}
    </Section>
  );
}

function Place({ tube, run, at }: { tube: SolvedTube; run: BentTube; at: SeatPlace }): ReactNode {
  const job = useDocument((state) => state.job);
  const seat = run.seat?.find((each) => each.at === at);
  const findings = useResults((state) => state.findings);
  const missed = findings
    .flatMap((each) => (each.id === 'made/seat-missed' && each.tube === tube.id ? each.missed : []))
    .find(({ place }) => place === at);
  const step = `${tube.name}: where it stands in the car`;
  const stands = seatPlace(tube, at);
  return (
    <fieldset className="seat" aria-describedby={`seat-${at}`}>
      <legend>{SEAT_TITLE[at]}</legend>
      <p id={`seat-${at}`} className="small">
        {seatPlaceInWords(tube, at, job)}
      </p>
      {job.points.length > 0 && (
        <JobSelect
          label="Measured at"
          value={seat?.point ?? BY_TAPE}
          choices={[{ value: BY_TAPE, label: 'the figures below' }, ...measuredPlaces(job, seat?.point)]}
          step={step}
          change={(before, point) => setSeatPoint(before, tube.id, at, point === BY_TAPE ? null : point)}
        />
      )}
      {seat?.point === undefined && (
        <div className="trio">
          {AXES.map((axis, i) => (
            <LengthOrNothingField
              key={axis}
              label={CAR_AXES[i]!.header}
              value={seat?.[axis] ?? null}
              {...jobEdit<number | null>(step, (before, value) => setSeat(before, tube.id, at, axis, value))}
            />
          ))}
        </div>
      )}
      <p className="small">
        Stands at{' '}
        {AXES.map((axis, i) => (
          <span key={axis}>
            {i > 0 && ', '}
            {CAR_AXES[i]!.header.toLowerCase()} <Length mm={stands[i]!} />
          </span>
        ))}
        {missed === undefined ? (
          '.'
        ) : (
          <strong>: {offInWords(missed.by, (mm) => comparedLength(mm, job.lengthUnit))} than measured.</strong>
        )}
      </p>
    </fieldset>
  );
}

const AXES = ['x', 'y', 'z'] as const;

/** No point has this id: none is empty. */
const BY_TAPE = '';
