/** Scans of the car: files are opened here, and each that the job has has its card. */
import { useEffect, useState, type ReactNode } from 'react';
import { addScan, anotherFile, FIRST_SCAN_ACCURACY } from '../../core/edit/scans.ts';
import { faultLine } from '../../core/job/fault.ts';
import type { Scan } from '../../core/job/kinds/scan.ts';
import { shownName } from '../../core/job/shown.ts';
import { everyFor, ordinal } from '../../core/scan/gather.ts';
import { guessed } from '../../core/scan/guess.ts';
import { laidDown, reachOf, upright } from '../../core/scan/place.ts';
import { SCAN_FILES } from '../../core/scan/read.ts';
import { countOf } from '../../core/scan/types.ts';
import { countInWords, NOT_KEPT, OTHER_FILE } from '../../core/words/scan.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { scans, useScans } from '../../store/scan-page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { Length } from '../fields/Readings.tsx';
import { Picks } from '../kit/Picks.tsx';
import { Refused } from '../kit/Refused.tsx';
import { UNIT_LABEL, UNITS, UP_LABEL, UPS } from './scan-choices.ts';
import { ScanCard } from './ScanCard.tsx';
import { ScanSection } from './ScanSection.tsx';
import './scan.css';

/** What a job keeps of the file itself. */
const fieldsOf = ({ sum, file, data, every }: CameIn): Pick<Scan, 'data' | 'file' | 'kind' | 'count' | 'every'> => ({
  data: sum,
  file,
  kind: data.kind,
  count: countOf(data),
  ...(every > 1 && { every }),
});

type CameIn = NonNullable<ReturnType<typeof scans.getState>['came']>;

function chooseFile(chosen: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = SCAN_FILES.join(',');
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) chosen(file);
  });
  input.click();
}

export default function Scans(): ReactNode {
  const list = useDocument((state) => state.job.scans);
  const isReading = useScans((state) => state.reading !== null);
  const unkept = useScans((state) => state.unkept);
  /** The scan whose file is chosen again. */
  const [again, setAgain] = useState<string | null>(null);
  const open = (scan: Scan | null): void =>
    chooseFile((file) => {
      setAgain(scan?.id ?? null);
      void scans.getState().read(file, scan?.every ?? 1);
    });
  return (
    <>
      {list.length === 0 && (
        <p className="small">
          A scan of the car lies round the frame as a ghost: to look at, to cut in the plane of a hoop, to pick points
          on. No tube is fitted to it.
        </p>
      )}
      {list.map((scan) => (
        <ScanCard key={scan.id} scan={scan} onChooseFile={() => open(scan)} />
      ))}
      {list.length > 0 && <ScanSection />}
      {unkept && (
        <p className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          {NOT_KEPT}
        </p>
      )}
      <Reading />
      <CameInNow again={list.find(({ id }) => id === again) ?? null} />
      {!isReading && (
        <button type="button" className="press" onClick={() => open(null)}>
          Open a scan…
        </button>
      )}
      <p className="small">OBJ, PLY, STL or GLB, up to 500 000 triangles or points. It stays in this browser.</p>
    </>
  );
}

/** How far the reading is, or why nothing came of it. */
function Reading(): ReactNode {
  const reading = useScans((state) => state.reading);
  const refused = useScans((state) => state.refused);
  if (reading !== null) {
    return (
      <div className="scan-reading" role="group" aria-label="Being read">
        <p role="status">
          Reading <strong>{shownName(reading.file)}</strong>
        </p>
        <progress max={1} value={reading.share} aria-label={reading.file} />
        <button type="button" className="press press-quiet" onClick={() => scans.getState().cancel()}>
          Cancel
        </button>
      </div>
    );
  }
  if (refused === null) return null;
  const { file, fault, points } = refused;
  return (
    <>
      <Refused why={`${shownName(file.name)}, ${faultLine(fault)}`} />
      {points !== undefined && (
        <button type="button" className="press" onClick={() => void scans.getState().read(file, everyFor(points))}>
          Take every {ordinal(everyFor(points))} point
        </button>
      )}
    </>
  );
}

/** What has been read: the data of a scan that the job has, another file for one, or a new scan, of which unit and axis are asked. */
function CameInNow({ again }: { again: Scan | null }): ReactNode {
  const came = useScans((state) => state.came);
  const isOwn = came !== null && again?.data === came.sum;
  useEffect(() => {
    if (isOwn) scans.getState().keep(came);
  }, [isOwn, came]);
  if (came === null || isOwn) return null;
  return again === null ? <NewScan key={came.sum} came={came} /> : <OtherFile scan={again} came={came} />;
}

function OtherFile({ scan, came }: { scan: Scan; came: CameIn }): ReactNode {
  const { keep, settle } = scans.getState();
  const [refusal, setRefusal] = useState('');
  function use(): void {
    const faults = jobDocument
      .getState()
      .edit(`Another file for ${scan.name}`, (job) => anotherFile(job, scan.id, fieldsOf(came)));
    setRefusal(faults.map(faultLine).join('; '));
    if (faults.length === 0) keep(came);
  }
  return (
    <div className="notice-warning">
      <p role="alert">
        <span aria-hidden="true">▲ </span>
        <strong>{shownName(came.file)}</strong>: {OTHER_FILE}
      </p>
      <p className="row">
        <button type="button" className="press" onClick={use}>
          Use it all the same
        </button>
        <button type="button" className="press press-quiet" onClick={settle}>
          Leave it
        </button>
      </p>
      <Refused why={refusal} />
    </div>
  );
}

function NewScan({ came }: { came: CameIn }): ReactNode {
  const { data, file } = came;
  const [how, setHow] = useState(() => guessed(file, data));
  const [refusal, setRefusal] = useState('');
  const { low, high } = reachOf(data);
  const [from, to] = [upright(how, low), upright(how, high)];
  const size = [0, 1, 2].map((axis) => Math.abs(to[axis]! - from[axis]!));

  function add(): void {
    const { edit } = jobDocument.getState();
    const faults = edit(`Scan ${file}`, (job) =>
      addScan(job, {
        name: shownName(file.replace(/\.[^.]*$/u, '')),
        accuracy: FIRST_SCAN_ACCURACY,
        ...fieldsOf(came),
        ...how,
        placement: laidDown(data, how),
        pairs: [],
        shown: true,
      }),
    );
    setRefusal(faults.map(faultLine).join('; '));
    if (faults.length === 0) scans.getState().keep(came);
  }

  return (
    <article className="card" aria-label={`Scan ${file}`}>
      <h4>{shownName(file)}</h4>
      <p>{countInWords(fieldsOf(came))}. Guessed from its size:</p>
      <Picks legend={UNIT_LABEL} value={how.unit} choices={UNITS} onPick={(unit) => setHow({ ...how, unit })} />
      <SelectField
        label={UP_LABEL}
        value={how.up}
        choices={UPS}
        onChoose={(up) => setHow({ ...how, up: up as Scan['up'] })}
      />
      <p>
        So it is <Length mm={size[0]!} withUnit /> × <Length mm={size[1]!} withUnit /> and{' '}
        <Length mm={size[2]!} withUnit /> high. Is that the car?
      </p>
      <p className="row">
        <button type="button" className="press press-live" onClick={add}>
          Put it round the frame
        </button>
        <button type="button" className="press press-quiet" onClick={() => scans.getState().settle()}>
          Leave it
        </button>
      </p>
      <Refused why={refusal} />
    </article>
  );
}
