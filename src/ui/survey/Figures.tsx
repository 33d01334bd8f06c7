/** For who wants the figures: how sure each place is, by axis and as an ellipsoid; what is left of each reading; and the two figures of the whole. */
import { useMemo, type ReactNode } from 'react';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { pointName } from '../../core/solve/names.ts';
import { suspectLimit, type Adjusted } from '../../core/survey/adjust.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { fineInWords, halfAxes, wholeInWords } from '../../core/words/figures.ts';
import { capital } from '../../core/words/lists.ts';
import { measurementInWords } from '../../core/words/survey.ts';
import { CAR_AXES } from '../kit/vectors.ts';

export default function Figures({ job, survey }: { job: Job; survey: Adjusted }): ReactNode {
  return (
    <>
      {wholeInWords(survey).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <h4>How sure each point is</h4>
      <p className="small">
        One standard deviation in {job.lengthUnit === 'in' ? 'inches' : 'millimetres'}, along the car’s axes and along
        the ellipsoid’s own. Two of three places lie within one, nearly all within three.
      </p>
      <PointFigures job={job} survey={survey} />
      <h4>What is left of each reading</h4>
      <p className="small">
        Left: what the places make of it, less what was read. In its own deviation: beyond{' '}
        {suspectLimit(survey.residuals.length).toFixed(1)} it is suspected. Checked: how much of a slip would show; at 0
        nothing checks it.
      </p>
      <ReadingFigures job={job} survey={survey} />
    </>
  );
}

function PointFigures({ job, survey }: { job: Job; survey: Adjusted }): ReactNode {
  const rows = useMemo(() => survey.points.map((point) => ({ ...point, axes: halfAxes(point) })), [survey]);
  const show = (mm: number | null): string => (mm === null ? 'not fixed' : fineInWords(mm, job.lengthUnit));
  return (
    <div className="figures-list" tabIndex={0} role="group" aria-label="How sure each point is">
      <table className="table table-plain">
        <thead>
          <tr>
            <th scope="col">Point</th>
            {CAR_AXES.map(({ header }) => (
              <th key={header} scope="col" className="number">
                {header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, sigma, axes }) => (
            <tr key={id}>
              <th scope="row">
                {shownName(pointName(job, id))}
                <span className="sure">
                  {axes.map(({ length, way }) => `${fineInWords(length, job.lengthUnit)} ${way}`).join(' · ')}
                </span>
              </th>
              {sigma.map((mm, k) => (
                <td key={CAR_AXES[k]!.header} className="number">
                  {show(mm)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const ReadingFigures = ({ job, survey }: { job: Job; survey: Adjusted }): ReactNode => (
  <div className="figures-list" tabIndex={0} role="group" aria-label="What is left of each reading">
    <table className="table table-plain">
      <thead>
        <tr>
          <th scope="col">Reading</th>
          <th scope="col" className="number">
            Left
          </th>
          <th scope="col" className="number">
            In its deviation
          </th>
          <th scope="col" className="number">
            Checked
          </th>
        </tr>
      </thead>
      <tbody>
        {survey.residuals.map(({ index, residual, standardised, share }) => {
          const reading = job.measurements[index]!;
          return (
            <tr key={reading.id}>
              <th scope="row">{capital(measurementInWords(job, reading))}</th>
              <td className="number">
                {reading.kind === 'inclination'
                  ? `${formatAngle(residual, 2)}°`
                  : fineInWords(residual, job.lengthUnit)}
              </td>
              <td className="number">{share === 0 ? '–' : standardised.toFixed(1)}</td>
              <td className="number">{(100 * share).toFixed(0)} %</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  </div>
);
