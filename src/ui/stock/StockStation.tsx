/** Stock: what the tubes are cut from and how, what to order, and what it costs. */
import { useState, type ReactNode } from 'react';
import { useDocument } from '../../store/page.ts';
import { useKept } from '../kit/kept.ts';
import { Tabs, type Tab } from '../kit/Tabs.tsx';
import { CuttingPlan } from './CuttingPlan.tsx';
import { OrderList } from './OrderList.tsx';
import { Quote } from './Quote.tsx';
import { Rack } from './Rack.tsx';
import { Variants } from './Variants.tsx';
import '../kit/ui.css';
import './stock.css';

export default function StockStation(): ReactNode {
  const hasTubes = useDocument((state) => state.derived.tubes.length > 0);
  const [said, say] = useState('');
  const [part, show] = useKept('stock-part', readPart);
  return (
    <div className="station">
      <Tabs label="Parts of Stock" tabs={PARTS} shown={part} onShow={show}>
        {part === 'plan' && <CuttingPlan hasTubes={hasTubes} toRack={() => show('rack')} say={say} />}
        {part === 'rack' && <Rack />}
        {part === 'order' && <OrderList />}
        {part === 'quote' && <Quote />}
        {part === 'variants' && <Variants />}
      </Tabs>
      <p className="spoken-only" role="status" aria-live="polite">
        {said}
      </p>
    </div>
  );
}

const PARTS = [
  { name: 'plan', title: 'Cutting plan' },
  { name: 'rack', title: 'Sticks' },
  { name: 'order', title: 'To order' },
  { name: 'quote', title: 'Quote' },
  { name: 'variants', title: 'Variants' },
] as const satisfies readonly Tab<string>[];

const readPart = (kept: unknown): (typeof PARTS)[number]['name'] =>
  PARTS.find(({ name }) => name === kept)?.name ?? 'plan';
