/** A batch that is asked for and that no stick of the section is of: as of a tube that had another section before. Apart from wanting.ts, for the page does not search for plans. */
import type { ToCut } from './to-cut.ts';
import type { Wanting } from './wanting.ts';

/** Whether no stick of the section is of the batch that is asked for, not only too few: it may be of the section that the tube had before. */
export const isUnknownBatch = ({ sticks }: Pick<ToCut, 'sticks'>, { batch, why }: Wanting): boolean =>
  batch !== null && why !== 'none-listed' && sticks.every((stick) => stick.batch !== batch);
