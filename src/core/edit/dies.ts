/** Edits of bending dies. */
import type { Die, DieId, Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, updateRecord, type Edited, type Fields } from './records.ts';
import { removeUnused } from './references.ts';

/** 1 3/4 in tube on a 6 in centreline radius (common practice). */
const FIRST = { outerDiameter: 44.45, centrelineRadius: 152.4 };

/**
 * A new die like the last one, or a common one, called what `nameOf` makes of its size. What the machine needs to hold
 * is for the shop to measure: zero.
 */
export function addDie(job: Job, nameOf: (size: Pick<Die, 'centrelineRadius'>) => string): Job {
  const { outerDiameter, centrelineRadius } = job.dies.at(-1) ?? FIRST;
  return appendRecord(job, 'dies', {
    id: nextId(job, 'dies'),
    name: nameOf({ centrelineRadius }),
    outerDiameter,
    centrelineRadius,
    clampOffset: 0,
    leastStraight: 0,
    leastGrip: 0,
    greatestAngle: 180,
    radius: 'nominal',
  });
}

export const updateDie = (job: Job, id: DieId, fields: Fields<'dies'>): Job => updateRecord(job, 'dies', id, fields);

/** Refused while members are bent on it. */
export const removeDie = (job: Job, id: DieId): Edited => removeUnused(job, 'dies', id);
