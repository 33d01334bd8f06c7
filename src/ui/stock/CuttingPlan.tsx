/** Which part is cut from which stick, section by section. */
import type { ReactNode } from 'react';
import { toCut } from '../../core/stock/to-cut.ts';
import { useDocument, useResults } from '../../store/page.ts';

export function CuttingPlan(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const plans = useResults((state) => state.plans);
  return toCut(derived).map(({ section }) => {
    const planned = plans.get(section);
    const { name } = derived.job.sections.find(({ id }) => id === section)!;
    return (
      <section key={section} aria-label={`Plan for ${name}`}>
        <h3>{name}</h3>
        <p>{planned === undefined ? 'Working out the cutting plan…' : `${planned.plan.sticks.length} sticks`}</p>
      </section>
    );
  });
}
