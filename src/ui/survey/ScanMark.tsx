/** Of a point that was picked on a scan: that it was, and how sure it is. */
import type { ReactNode } from 'react';
import type { Point } from '../../core/job/kinds/point.ts';
import { shownName } from '../../core/job/shown.ts';
import { useDocument } from '../../store/page.ts';
import { GapLength } from '../fields/Readings.tsx';

export function ScanMark({ point: { from, accuracy, by } }: { point: Point }): ReactNode {
  const scan = useDocument((state) => state.job.scans.find(({ id }) => id === from?.scan));
  if (scan === undefined || accuracy === undefined || by === 'survey') return null;
  return (
    <p className="small">
      From the scan {shownName(scan.name)}, ± <GapLength mm={accuracy} />: nobody has measured it on the car.
    </p>
  );
}
