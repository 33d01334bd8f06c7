/** How the joints of a frame will fit: seconds, and no findings, so it is gone through only while somebody looks at it. Its work stands in work.ts. */
import type { Forecast } from '../forecast/types.ts';
import type { Frame } from '../solve/types.ts';
import type { SlowStage } from './slow-stage.ts';

export const forecast: SlowStage<Frame, Forecast> = {
  name: 'forecast',
  items: (frame) => (frame.tubes.length > 0 ? [frame] : []),
  idOf: () => '',
  findings: () => [],
};
