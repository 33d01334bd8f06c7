/** The gussets of a frame: quick, but by what only few jobs need. Its work stands in work.ts. */
import type { Finding } from '../checks/types.ts';
import type { Frame } from '../solve/types.ts';
import type { SlowStage } from './slow-stage.ts';

export const gussets: SlowStage<Frame, readonly Finding[]> = {
  name: 'gussets',
  items: (frame) => (frame.job.gussets.length > 0 ? [frame] : []),
  idOf: () => '',
  findings: (_frame, _item, found) => found,
};
