/** How the scans are seen: how much of the frame shows through, in which tube's plane they are cut, and that on paper. */
import { useMemo, useState, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import { numbered } from '../../core/words/ends.ts';
import { planeOfTube } from '../../core/run/tube-plane.ts';
import { placingOf } from '../../core/scan/place.ts';
import { sectionOf, slabOf } from '../../core/scan/section.ts';
import type { ScanData } from '../../core/scan/types.ts';
import type { ScanCut } from '../../exports/layout/scan-section-pdf.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { scans, useScans } from '../../store/scan-page.ts';
import { requestSection } from '../../workers/client.ts';
import { SelectField } from '../fields/Fields.tsx';
import { downloadFile } from '../kit/download.ts';
import { printSettings, usePrint } from '../kit/print.ts';
import { Refused } from '../kit/Refused.tsx';

/** Of all scans that are shown and here, in the plane of the tube. */
function cutsOf(derived: Derived, tubeId: string, data: ReadonlyMap<string, ScanData | null>): readonly ScanCut[] {
  const tube = derived.byId.get(tubeId);
  const plane = tube === undefined ? null : planeOfTube(tube);
  if (plane === null) return [];
  return derived.job.scans.flatMap((scan): ScanCut[] => {
    const found = data.get(scan.data);
    if (!scan.shown || found == null) return [];
    const placing = placingOf(scan);
    const isMesh = found.kind === 'triangles';
    return [
      {
        name: scan.name,
        accuracy: scan.accuracy,
        curves: isMesh ? sectionOf(found, placing, plane).map((curve) => curve.map(plane.flat.onPlane)) : [],
        dots: isMesh ? [] : slabOf(found, placing, plane).map(plane.flat.onPlane),
      },
    ];
  });
}

export function ScanSection(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const data = useScans((state) => state.data);
  const opacity = useScans((state) => state.opacity);
  const asked = useScans((state) => state.section);
  const [print] = usePrint();
  const [making, setMaking] = useState<AbortController | null>(null);
  const [trouble, setTrouble] = useState('');
  const flat = useMemo(() => derived.tubes.filter((tube) => planeOfTube(tube) !== null), [derived.tubes]);
  // The tube may be gone, or bent out of its plane.
  const section = flat.some(({ id }) => id === asked) ? asked : null;
  const cuts = useMemo(() => (section === null ? [] : cutsOf(derived, section, data)), [derived, section, data]);
  const count = cuts.reduce((sum, cut) => sum + cut.curves.length + cut.dots.length, 0);

  async function take(tube: string): Promise<void> {
    const stopper = new AbortController();
    setMaking(stopper);
    setTrouble('');
    try {
      const settings = { ...printSettings(print), day: dayOf(new Date()) };
      const { job } = jobDocument.getState();
      downloadFile(await requestSection({ job, tube, cuts, print: settings }, stopper.signal));
    } catch (error) {
      if (!stopper.signal.aborted) setTrouble(error instanceof Error ? error.message : String(error));
    }
    setMaking(null);
  }

  return (
    <section className="fields" aria-label="How scans are seen">
      <label className="scan-opacity">
        <span className="entry-label">How solid the ghost is</span>
        <input
          type="range"
          min={0.05}
          max={1}
          step={0.05}
          value={opacity}
          onChange={(event) => scans.getState().setOpacity(Number(event.target.value))}
        />
      </label>
      {flat.length > 0 && (
        <SelectField
          label="Cut the scan in the plane of"
          value={section ?? 'none'}
          choices={[
            { value: 'none', label: 'no tube' },
            ...flat.map((tube) => ({ value: tube.id, label: numbered(tube) })),
          ]}
          onChoose={(tube) => scans.getState().cutAt(tube === 'none' ? null : tube)}
        />
      )}
      {section !== null && (
        <>
          <p className="small" role="status">
            {count === 0 ? 'No scan reaches that plane.' : 'Brass in the bay: where that plane cuts it.'}
          </p>
          {count > 0 && making === null && (
            <button type="button" className="press" onClick={() => void take(section)}>
              On paper, at full size
            </button>
          )}
          {making !== null && (
            <p className="row">
              <span role="status">Being made…</span>
              <button type="button" className="press press-quiet" onClick={() => making.abort()}>
                Cancel
              </button>
            </p>
          )}
          <Refused why={trouble} />
        </>
      )}
    </section>
  );
}
