/** Every tube that can be bent, rehearsed on its bender: tens of ms a tube. Its work stands in work.ts. */
import { swingFindings } from '../checks/swing-findings.ts';
import { isBendable, type BendableTube } from '../rehearse/bendable.ts';
import type { Rehearsal } from '../rehearse/types.ts';
import { feedOf } from '../solve/feed.ts';
import type { SlowStage } from './slow-stage.ts';

export const rehearsals: SlowStage<BendableTube, Rehearsal> = {
  name: 'rehearsals',
  items: ({ tubes }) => tubes.filter(isBendable),
  idOf: ({ id }) => id,
  findings: ({ job }, tube, rehearsal) => swingFindings(tube, rehearsal, feedOf(job, tube).order),
};
