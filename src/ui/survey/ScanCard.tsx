/** One scan of the job: whether it is seen, what it is, the pairs that it is laid by and how they fit, and what is picked on it. */
import { useId, useState, type ReactNode } from 'react';
import { addPointFromScan, removeScan, updateScan } from '../../core/edit/scans.ts';
import { GREATEST_ACCURACY } from '../../core/job/limits.ts';
import type { Scan } from '../../core/job/kinds/scan.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { align, residualsOf, sizeHint } from '../../core/scan/align.ts';
import { inCar, laidDown, placingOf, quarterTurned, unsigned } from '../../core/scan/place.ts';
import { laidByPairs, liesOffPairs, pairsInCar, withoutPair, withPair } from '../../core/shape/scans.ts';
import { pointName } from '../../core/solve/names.ts';
import {
  countInWords,
  NOT_HERE,
  OFF_PAIRS,
  pairLabel,
  pointLabel,
  sizeHintInWords,
  UNIT_NAMES,
  whyNotLaid,
} from '../../core/words/scan.ts';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { scans, useScans } from '../../store/scan-page.ts';
import { DeviationField, SelectField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { Length } from '../fields/Readings.tsx';
import { Command } from '../kit/Command.tsx';
import { withImages } from '../kit/names.ts';
import { ScanTyped } from './ScanTyped.tsx';
import { UNIT_LABEL, UNITS, UP_LABEL, UPS } from './scan-choices.ts';

interface Props {
  readonly scan: Scan;
  readonly onChooseFile: () => void;
}

export function ScanCard({ scan, onChooseFile }: Props): ReactNode {
  const data = useScans((state) => state.data.get(scan.data));
  const name = shownName(scan.name);
  /** Read another way it is laid anew: by its pairs, or on the floor. */
  const read = (job: Job, how: Partial<Pick<Scan, 'unit' | 'up'>>): Job => {
    const next = updateScan(job, scan.id, how);
    return laidByPairs(
      data == null ? next : updateScan(next, scan.id, { placement: laidDown(data, { ...scan, ...how }) }),
      scan.id,
    );
  };
  return (
    <article className="card" aria-label={`Scan ${name}`}>
      <TextField
        label="Scan"
        value={scan.name}
        {...jobEdit<string>('Rename a scan', (job, next) => updateScan(job, scan.id, { name: next }))}
      />
      <p className="small">
        {shownName(scan.file)}: {countInWords(scan)}
      </p>
      {data === null && (
        <div className="notice-warning">
          <p role="status">
            <span aria-hidden="true">▲ </span>
            {NOT_HERE}
          </p>
          <button type="button" className="press" onClick={onChooseFile}>
            Choose {shownName(scan.file)} again…
          </button>
        </div>
      )}
      <Command
        quiet
        step={scan.shown ? `Hide ${scan.name}` : `Show ${scan.name}`}
        run={(job) => updateScan(job, scan.id, { shown: !scan.shown })}
      >
        {scan.shown ? 'Hide it in the bay' : 'Show it in the bay'}
      </Command>
      <Pairs scan={scan} onUnit={(job, unit) => read(job, { unit })} />
      <NewPoint scan={scan} isHere={data != null} />
      <details className="scan-more">
        <summary>Unit, axis, accuracy, place</summary>
        <div className="fields">
          <JobSelect
            label={UNIT_LABEL}
            value={scan.unit}
            choices={UNITS}
            step={`Unit of ${scan.name}`}
            change={(job, unit) => read(job, { unit: unit as Scan['unit'] })}
          />
          <JobSelect
            label={UP_LABEL}
            value={scan.up}
            choices={UPS}
            step={`Axis of ${scan.name}`}
            change={(job, up) => read(job, { up: up as Scan['up'] })}
          />
          <DeviationField
            label="A place picked on it is off by (standard deviation)"
            greatest={GREATEST_ACCURACY}
            value={scan.accuracy}
            {...jobEdit<number>(`Accuracy of ${scan.name}`, (job, accuracy) => updateScan(job, scan.id, { accuracy }))}
          />
        </div>
        <p className="row">
          <Command
            quiet
            step={`Turn ${scan.name}`}
            run={(job) => updateScan(job, scan.id, { placement: quarterTurned(scan.placement) })}
          >
            Turn it left by a quarter
          </Command>
          {data != null && (
            <Command
              quiet
              step={`Put ${scan.name} down`}
              run={(job) => updateScan(job, scan.id, { placement: laidDown(data, scan) })}
            >
              Put it down over the datum
            </Command>
          )}
        </p>
      </details>
      <Command quiet destroys={scan.id} step={`Delete ${scan.name}`} run={(job) => removeScan(job, scan.id)}>
        Delete the scan
      </Command>
    </article>
  );
}

/** The pairs with what is left between scan and tape, the worst named, and the next one. */
function Pairs({ scan, onUnit }: { scan: Scan; onUnit: (job: Job, unit: Scan['unit']) => Job }): ReactNode {
  const job = useDocument((state) => state.job);
  const isHere = useScans((state) => state.data.get(scan.data) != null);
  const [point, setPoint] = useState('');
  const title = useId();
  const pairs = pairsInCar(job, scan);
  const laid = align(scan, pairs);
  const left = pairs.length === 0 ? null : residualsOf(scan, pairs);
  const hint = sizeHint(scan, pairs);
  return (
    <section aria-labelledby={title} className="fields">
      <h4 id={title}>Laid by pairs</h4>
      {laid.ok && left !== null ? (
        <p>
          {pairs.length} pairs, <Length mm={left.rms} withUnit /> off in the mean (root mean square). The worst is{' '}
          <strong>{pointName(job, scan.pairs[left.worst]!.point)}</strong>,{' '}
          <Length mm={left.distances[left.worst]!} withUnit /> off
          {left.withoutWorst !== null && (
            <>
              ; laid without it, the others are <Length mm={left.withoutWorst} withUnit /> off
            </>
          )}
          .
        </p>
      ) : (
        <p className="small">{!laid.ok && whyNotLaid(laid, pairs.length)}</p>
      )}
      {liesOffPairs(job, scan) && (
        <div className="notice-warning">
          <p role="status">
            <span aria-hidden="true">▲ </span>
            {OFF_PAIRS}
          </p>
          <Command step={`Lay ${scan.name}`} run={(before) => laidByPairs(before, scan.id)}>
            Lay it by its pairs
          </Command>
        </div>
      )}
      {hint !== null && (
        <div className="notice-warning">
          <p role="status">
            <span aria-hidden="true">▲ </span>
            {sizeHintInWords(hint, scan.unit)}
          </p>
          {hint.unit !== null && (
            <Command step={`Unit of ${scan.name}`} run={(before) => onUnit(before, hint.unit!)}>
              It is in {UNIT_NAMES[hint.unit]}
            </Command>
          )}
        </div>
      )}
      <ul className="lines" aria-label="Pairs">
        {scan.pairs.map((pair, i) => (
          <li key={pair.point} className="scan-pair">
            <span>
              {left !== null && laid.ok && i === left.worst && pairs.length > 3 && <strong>! </strong>}
              {pointName(job, pair.point)}
            </span>
            {laid.ok && left !== null && <Length mm={left.distances[i]!} withUnit />}
            <Command
              quiet
              destroys={`${scan.id} ${pair.point}`}
              step={`Pair ${pointName(job, pair.point)} taken out`}
              label={`Take out the pair ${pointName(job, pair.point)}`}
              run={(before) => withoutPair(before, scan.id, pair.point)}
            >
              Take out
            </Command>
          </li>
        ))}
      </ul>
      <SelectField label="Measured point" value={point} choices={withImages(job.points)} onChoose={setPoint} />
      {isHere && (
        <button
          type="button"
          className="press"
          disabled={point === ''}
          onClick={() => scans.getState().pick({ scan: scan.id, point })}
        >
          Pick its place on the scan
        </button>
      )}
      {point !== '' && (
        <ScanTyped
          label={`Type the place of ${pointName(job, point)} on it`}
          verb="Pair it"
          unit={scan.unit}
          onEnter={(at) =>
            jobDocument.getState().edit(pairLabel(job, point), (before) => withPair(before, scan.id, { at, point }))
          }
        />
      )}
    </section>
  );
}

/** A point that nobody has measured, picked on the scan; those that were. */
function NewPoint({ scan, isHere }: { scan: Scan; isHere: boolean }): ReactNode {
  const points = useDocument((state) => state.job.points);
  const select = useEditor((state) => state.select);
  const [name, setName] = useState('');
  const from = points.filter((point) => point.from?.scan === scan.id);
  const called = name === '' ? `From scan ${from.length + 1}` : name;
  return (
    <section className="fields" aria-label="Points from the scan">
      <h4>Points from it</h4>
      {from.length > 0 && (
        <ul className="chips">
          {from.map((point) => (
            <li key={point.id}>
              <button type="button" className="chip" onClick={() => select({ kind: 'point', id: point.id })}>
                {shownName(point.name)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <TextField
        label="What is picked"
        value={called}
        commit={(next) => {
          setName(next);
          return [];
        }}
      />
      {isHere && (
        <button
          type="button"
          className="press"
          onClick={() => {
            scans.getState().pick({ scan: scan.id, name: called });
            setName('');
          }}
        >
          Pick a new point on it
        </button>
      )}
      <ScanTyped
        label="Type where it is on the scan"
        verb="Add the point of the scan"
        unit={scan.unit}
        onEnter={(at) =>
          jobDocument
            .getState()
            .edit(pointLabel(called), (job) =>
              addPointFromScan(job, scan.id, called, unsigned(inCar(placingOf(scan), at))),
            )
        }
      />
    </section>
  );
}
