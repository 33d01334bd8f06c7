/** What a person reads of the kept shop record. */
import type { Fault } from '../../core/job/fault.ts';
import type { Notice, Version } from '../types.ts';

const plain = (message: string): Notice => ({ message, damaged: [] });

export const newerShopNotice = plain(
  'The shop record kept in this browser was made by a newer Cagewright. It stays where it is, untouched; an empty one is used, and not kept.',
);

export const missedShopNotice = plain(
  'The shop record kept in this browser can be reached again. What was changed meanwhile stands in it as well.',
);

/** `isOther`: its other copy could be read. */
export const damagedShopNotice = (damaged: readonly Version[], isOther: boolean): Notice => ({
  message: `The shop record kept in this browser could not be read. What is left of it is set aside, under Earlier versions. ${isOther ? 'Its other copy is used.' : 'An empty one is used.'}`,
  damaged,
});

export const unreadShopNotice = plain(
  'The shop record kept in this browser could not be read yet: the new job begins without it. What is in it can be taken later, under Shop record.',
);

/** What was logged or sawn in the job that the record cannot take. */
export const unfollowedNotice = (faults: readonly Fault[]): Notice =>
  plain(
    `The shop record did not take what was done in the job: ${faults.map(({ place, message }) => `${place}: ${message}`).join('; ')}.`,
  );
