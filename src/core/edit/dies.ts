/** Edits of bending dies. */
import { FIRST_BENDER } from '../job/kinds/bender.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Obstacle } from '../job/kinds/obstacle.ts';
import type { DieId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, patched, updateRecord, type Edited, type Fields } from './records.ts';
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

/** The machine that the die is used in, with these fields; the first time the rest is as at first. */
export const setBender = (job: Job, id: DieId, fields: Partial<Bender>): Job =>
  changeRecord(job, 'dies', id, (die) => {
    const bender = patched(die.bender ?? FIRST_BENDER, fields);
    return bender === die.bender ? die : { ...die, bender };
  });

/** Forgets the machine, and the room round it. */
export const clearBender = (job: Job, id: DieId): Job =>
  changeRecord(job, 'dies', id, (die) => {
    if (die.bender === undefined) return die;
    const { bender: _, ...rest } = die;
    return rest;
  });

/** What stands round the die's bender: the new one comes last. */
export const addObstacle = (job: Job, id: DieId, obstacle: Obstacle): Job =>
  changeRoom(job, id, (room) => [...room, obstacle]);

/** Another in its place, counted from 0; nothing where there is none. */
export const changeObstacle = (job: Job, id: DieId, index: number, obstacle: Obstacle): Job =>
  changeRoom(job, id, (room) => mapKeeping(room, (before, at) => (at === index ? obstacle : before)));

export const removeObstacle = (job: Job, id: DieId, index: number): Job =>
  changeRoom(job, id, (room) => (room[index] === undefined ? room : room.toSpliced(index, 1)));

/** A die without a bender gets one only when there is something to put round it. */
const changeRoom = (job: Job, id: DieId, change: (room: Bender['room']) => Bender['room']): Job =>
  changeRecord(job, 'dies', id, (die) => {
    const bender = die.bender ?? FIRST_BENDER;
    const room = change(bender.room);
    return room === bender.room ? die : { ...die, bender: { ...bender, room } };
  });

/** Refused while members are bent on it. */
export const removeDie = (job: Job, id: DieId): Edited => removeUnused(job, 'dies', id);
