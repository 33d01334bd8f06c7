/**
 * A cutting plan that the own search did not prove, gone through by a solver of linear programs: up to a minute, so only while somebody looks at the plans. Which sections want it is known once `stock` has their
 * plans; until then each may. Its work wants the solver, which only some workers can have (workers/stages.ts).
 */
import { toCut, type ToCut } from '../stock/to-cut.ts';
import type { Planned } from '../stock/of-job.ts';
import type { SlowStage } from './slow-stage.ts';

export const proof: SlowStage<ToCut, Planned> = {
  name: 'proof',
  items: toCut,
  idOf: ({ section }) => section,
  findings: () => [],
  patience: 300_000,
};
