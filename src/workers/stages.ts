/** The worker for slow stages. It may run WebAssembly (scripts/policy.mjs). */
import { ALL_WORK } from '../core/compare/work.ts';
import { proof } from '../core/stages/proof.ts';
import { proveSection } from '../core/stock/of-job.ts';
import type { ToCut } from '../core/stock/to-cut.ts';
import { loadedSolver } from './solver.ts';
import { createStageWork, type Ask } from './stage-work.ts';

const work = createStageWork(ALL_WORK, [{ ...proof, run: (section: ToCut) => proveSection(section, loadedSolver) }]);

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  void (async () => postMessage(await work(data)))();
});
