/** Stock: what the tubes are cut from, and how. */
import type { ReactNode } from 'react';
import { useDocument } from '../../store/page.ts';
import { CuttingPlan } from './CuttingPlan.tsx';
import '../kit/ui.css';

export default function StockStation(): ReactNode {
  const hasTubes = useDocument((state) => state.derived.tubes.length > 0);
  return (
    <div className="station">
      <h2>Cutting plan</h2>
      {hasTubes ? <CuttingPlan /> : <p className="empty">No tubes yet.</p>}
    </div>
  );
}
