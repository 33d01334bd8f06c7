/** The cutting plan of each section that the job has sticks of: a second or two where many parts leave no waste. Its work stands in work.ts. */
import { stockFindings } from '../checks/stock-findings.ts';
import { toCut, type ToCut } from '../stock/to-cut.ts';
import type { Planned } from '../stock/of-job.ts';
import type { SlowStage } from './slow-stage.ts';

export const stock: SlowStage<ToCut, Planned> = {
  name: 'stock',
  items: toCut,
  idOf: ({ section }) => section,
  findings: (frame, _section, { wanting }) => stockFindings(frame, wanting),
};
