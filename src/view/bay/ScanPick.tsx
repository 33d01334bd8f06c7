/** Picking on a scan in the bay: the next press is a place on it, for a pair or for a new point. Turning the view goes on as ever. */
import { useLayoutEffect, useState, type RefObject } from 'react';
import { addPointFromScan } from '../../core/edit/scans.ts';
import { faultLine } from '../../core/job/fault.ts';
import { shownName } from '../../core/job/shown.ts';
import { pickOn } from '../../core/scan/pick.ts';
import { placingOf } from '../../core/scan/place.ts';
import { withPair } from '../../core/shape/scans.ts';
import { pointName } from '../../core/solve/names.ts';
import { pairLabel, pointLabel } from '../../core/words/scan.ts';
import { editor, jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { scans, useScans } from '../../store/scan-page.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Tool } from '../draw/tool.ts';
import './scan-pick.css';

/** Pixels round a press in which a point of a cloud counts as hit. */
const NEAR = 6;

interface Props {
  readonly viewpoint: Viewpoint;
  readonly tool: RefObject<Tool | null>;
}

/** Makes of the place under the pixel what is asked for; or answers why nothing came of it, and the next press is for the same. */
function whyNot(viewpoint: Viewpoint, x: number, y: number, reach: number): string | null {
  const { picking, data } = scans.getState();
  const { job, edit } = jobDocument.getState();
  const scan = job.scans.find(({ id }) => id === picking?.scan);
  const found = scan === undefined ? undefined : data.get(scan.data);
  if (picking === null || scan === undefined || found == null) return BESIDE;
  const view = viewpoint.projection();
  const sight = { through: view.toPlace(x, y), toEye: view.toEye };
  const picked = pickOn(found, placingOf(scan), sight, (NEAR + reach) / view.pixelsPerMm);
  if (picked === null) return BESIDE;
  if ('point' in picking) {
    const { point } = picking;
    const faults = edit(pairLabel(job, point), (before) => withPair(before, scan.id, { at: picked.at, point }));
    if (faults.length > 0) return faults.map(faultLine).join('; ');
  } else {
    const faults = edit(pointLabel(picking.name), (before) =>
      addPointFromScan(before, scan.id, picking.name, picked.place),
    );
    if (faults.length > 0) return faults.map(faultLine).join('; ');
    editor.getState().select({ kind: 'point', id: jobDocument.getState().job.points.at(-1)!.id });
  }
  scans.getState().pick(null);
  return null;
}

const BESIDE = 'The scan is not there: press on it.';

export default function ScanPick({ viewpoint, tool }: Props) {
  const picking = useScans((state) => state.picking);
  const isHere = useEditor((state) => state.station === 'survey');
  const job = useDocument((state) => state.job);
  /** The last that was asked for and did not come to anything. */
  const [missed, setMissed] = useState<{ readonly of: typeof picking; readonly why: string } | null>(null);
  const isPicking = picking !== null && isHere;

  useLayoutEffect(() => {
    if (!isPicking) return;
    const stop = (): void => scans.getState().pick(null);
    const own: Tool = {
      point: () => {},
      leave: () => {},
      pick: (x, y, reach) => {
        const why = whyNot(viewpoint, x, y, reach);
        setMissed(why === null ? null : { of: picking, why });
      },
      takeHold: () => null,
      onKey: (key) => {
        if (key !== 'Escape') return false;
        stop();
        return true;
      },
    };
    tool.current = own;
    return () => {
      if (tool.current === own) tool.current = null;
    };
  }, [isPicking, picking, viewpoint, tool]);

  if (!isPicking) return null;
  const what = 'point' in picking ? pointName(job, picking.point) : shownName(picking.name);
  return (
    <div className="scan-pick">
      <p role="status">
        Press on the scan where <strong>{what}</strong> is.
        {missed?.of === picking && ` ${missed.why}`}
      </p>
      <button type="button" className="press press-quiet" onClick={() => scans.getState().pick(null)}>
        Leave it
      </button>
    </div>
  );
}
