/** The selected point: its measures, and everything that moves with it. */
import { shownName } from '../../core/job/shown.ts';
import type { ReactNode } from 'react';
import { removePoint, renamePoint, setTrim } from '../../core/edit/points.ts';
import { bareId } from '../../core/job/reference.ts';
import type { Adjusted } from '../../core/survey/adjust.ts';
import { isMeasured } from '../../core/survey/network.ts';
import { referencesOf } from '../../core/job/references.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import { usesOfPoint } from '../../core/survey/point-uses.ts';
import { pointUsesInWords } from '../../core/words/point-uses.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { setPointGap } from '../../core/edit/least-gap.ts';
import { SizeOrNothingField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { MeasuredPlace, TypedPlace } from './PlaceOfPoint.tsx';
import { ScanMark } from './ScanMark.tsx';
import { StandInKey } from './StandIns.tsx';
import { TrimGapList } from './TrimGapList.tsx';
import { UnlessDatum } from './UnlessDatum.tsx';
import { leastOf, type TrimOf } from './useTrim.ts';

/** `point` where it was measured. */
export function PointCard({
  point,
  survey,
  trimOf,
}: {
  point: Point;
  survey: Adjusted | null;
  trimOf: TrimOf;
}): ReactNode {
  const job = useDocument((state) => state.job);
  const select = useEditor((state) => state.select);
  const all = trimOf('point', point.id);
  const nodes = job.nodes.filter((node) =>
    referencesOf('nodes', node).some(({ list, to }) => list === 'points' && bareId(to) === point.id),
  );
  const lines = job.bodyLines.filter((line) => line.points.some((reference) => bareId(reference) === point.id));
  const uses = pointUsesInWords(usesOfPoint(job, point.id));
  return (
    <article className="card chosen-card" aria-label={`Point ${shownName(point.name)}`}>
      <div className="fields">
        <TextField
          label="Point"
          value={point.name}
          {...jobEdit<string>('Rename a point', (before, name) => renamePoint(before, point.id, name))}
        />
        {isMeasured(point) ? <MeasuredPlace point={point} survey={survey} /> : <TypedPlace point={point} />}
      </div>
      <ScanMark point={point} />
      <h4>Gap to the nearest tube</h4>
      <div className="fields">
        <SizeOrNothingField
          label="Least gap wanted"
          value={point.leastGap ?? null}
          {...jobEdit<number | null>(`Least gap at ${point.name}`, (before, gap) => setPointGap(before, point.id, gap))}
        />
      </div>
      <div className="fields">
        <SizeOrNothingField
          label="Trim that goes over it"
          value={point.trim ?? null}
          {...jobEdit<number | null>(`Trim over ${point.name}`, (before, trim) => setTrim(before, point.id, trim))}
        />
        <p className="small">
          Measured on the bare skin: headliner, door card or carpet comes on top, and gaps are taken from its face.
        </p>
        <StandInKey point={point} />
        {point.standIn && <p className="small">Not the real seat or door: measure it again once that is there.</p>}
      </div>
      {all[0]!.stretches.length === 0 ? (
        <p className="small">A tube stands on the car here: no gap is asked.</p>
      ) : (
        leastOf(all) === null && <p className="small">No tube comes near.</p>
      )}
      <TrimGapList all={all} />
      <h4>Placed from this point</h4>
      {nodes.length + lines.length === 0 ? (
        <p className="small">{uses === '' ? 'Nothing yet: it can be deleted freely.' : 'Nothing yet.'}</p>
      ) : (
        <ul className="chips">
          {nodes.map((node) => (
            <li key={node.id}>
              <button type="button" className="chip" onClick={() => select({ kind: 'node', id: node.id })}>
                Node {shownName(node.name)}
              </button>
            </li>
          ))}
          {lines.map((line) => (
            <li key={line.id} className="chip chip-still">
              Body line {shownName(line.name)}
            </li>
          ))}
        </ul>
      )}
      {uses !== '' && <p className="small">Deleted: {uses}</p>}
      <UnlessDatum
        ids={[point.id]}
        quiet
        destroys={point.id}
        step={`Delete ${point.name}`}
        run={(before) => removePoint(before, point.id)}
      >
        Delete the point
      </UnlessDatum>
    </article>
  );
}
