/** What recipes go by: nothing where a job has no tools; it takes the shop's in one step, also where those are others by now. */
import type { ReactNode } from 'react';
import { setTools } from '../../core/edit/tools.ts';
import { sameData } from '../../core/job/equal.ts';
import { toolsOf } from '../../core/shop/tools.ts';
import { jobDocument, useDocument, useShop } from '../../store/page.ts';

export function ToolsNote(): ReactNode {
  const tools = useDocument((state) => state.job.tools);
  // Made of the record here: a selector that makes a new object would never come to rest.
  const shop = useShop((state) => state.shop);
  const inShop = toolsOf(shop);
  if (sameData(tools && toolsOf(tools), inShop) || (tools !== undefined && inShop === undefined)) {
    return tools === undefined ? (
      <p className="small">
        Recipes are general: no notcher and no saw is known. Put them into the shop record, in the menu, and what your
        machine cannot do is said here.
      </p>
    ) : null;
  }
  return (
    <p className="small">
      {tools === undefined
        ? 'Recipes are general: this job has no notcher and no saw. '
        : 'The shop has other notchers and saws than this job by now. '}
      <button
        type="button"
        className="press"
        onClick={() => jobDocument.getState().edit('Use the shop’s notchers and saws', (job) => setTools(job, inShop!))}
      >
        Use the shop’s notchers and saws
      </button>
    </p>
  );
}
