/** What is left of a stick: worth keeping, or scrap. */
import { FIRST_KEPT } from '../job/kinds/stock.ts';
import { LEAST_SIZE } from '../job/limits.ts';
import type { Job } from '../job/types.ts';

/** Whether `left`, mm, goes back on the rack. */
export const isKept = ({ stock }: Pick<Job, 'stock'>, left: number): boolean =>
  left >= Math.max(stock?.keepFrom ?? FIRST_KEPT, LEAST_SIZE);
