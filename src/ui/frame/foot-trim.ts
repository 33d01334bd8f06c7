/** What this shop leaves long at a foot of the job, mm. */
import { FIRST_FOOT_TRIM } from '../../core/job/kinds/foot-trim.ts';
import type { Job } from '../../core/job/types.ts';
import { shopRecord } from '../../store/page.ts';

export const footTrimOf = ({ lengthUnit }: Pick<Job, 'lengthUnit'>): number =>
  shopRecord.getState().shop.footTrim ?? FIRST_FOOT_TRIM[lengthUnit];
