/** The cage in its car: a ms or two, by what somebody else has to fetch. Its work stands in work.ts. */
import type { Finding } from '../checks/types.ts';
import type { Frame } from '../solve/types.ts';
import type { SlowStage } from './slow-stage.ts';

export const fitting: SlowStage<Frame, readonly Finding[]> = {
  name: 'fitting',
  // Nothing measured, nothing to find.
  items: (frame) => (frame.job.points.length > 0 || frame.job.doorOpening !== undefined ? [frame] : []),
  idOf: () => '',
  findings: (_frame, _item, found) => found,
};
