/** The order of bending that the job keeps for a tube: what it is, the way back to the plain one, and the key that keeps another. */
import type { ReactNode } from 'react';
import { findRun } from '../../core/edit/bent.ts';
import { setTubeOrder } from '../../core/edit/feeds.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import { sameOrder } from '../../core/solve/bend-order.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { orderInWords } from '../../core/words/rehearsal.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { useFeed } from './useFeed.ts';
import './marks.css';

/** Nothing where the tube is bent as its marks come, or in its bend run. */
export function KeptOrder({ tube }: { tube: SolvedTube }): ReactNode {
  const { order, orderFrom, outdated } = useFeed(tube);
  if (outdated) {
    return (
      <div className="notice-warning kept-order" role="status">
        <p>
          <span aria-hidden="true">▲ </span>
          The order kept for this tube is of other bends than are drawn now: it is not used.
        </p>
        <DropOrder tube={tube}>Drop it</DropOrder>
      </div>
    );
  }
  if (orderFrom !== 'tube') return null;
  return (
    <div className="advice kept-order">
      <p>
        <strong>Kept for this tube:</strong> {orderInWords(order)}.
      </p>
      <DropOrder tube={tube}>Bend it as the marks come</DropOrder>
    </div>
  );
}

const DropOrder = ({ tube, children }: { tube: SolvedTube; children: ReactNode }): ReactNode => (
  <Command quiet step={`Bend ${tube.name} as the marks come`} run={(job) => setTubeOrder(job, tube.id, null)}>
    {children}
  </Command>
);

/** Keeps this order for the tube, or says that it is kept; nothing where it is the plain one, and once its run is begun. */
export function KeepOrder({ tube, order }: { tube: SolvedTube; order: readonly BendStep[] }): ReactNode {
  const begun = useDocument((state) => findRun(state.job, tube.id) !== undefined);
  const feed = useFeed(tube);
  if (begun) return null;
  if (sameOrder(order, feed.order)) {
    return feed.orderFrom === 'tube' && <p className="small">This order is kept for the tube.</p>;
  }
  const kept = sameOrder(order, feed.plain) ? null : order.map(({ bend, front }) => ({ bend, front }));
  return (
    <Command step={`Order of bending for ${tube.name}`} run={(job) => setTubeOrder(job, tube.id, kept)}>
      Use this order
    </Command>
  );
}
