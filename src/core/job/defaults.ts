/** The values that a file, or a person, need not give. The schema fills them in; edits and sheets begin with them. */
import type { Bender } from './kinds/bender.ts';

/** A bender as it is before anybody has said more of it. */
export const FIRST_BENDER: Bender = {
  turns: 'left',
  bendLies: 'beyond',
  planeHeight: 1000,
  rotationBy: 'level',
  levelStep: 0.1,
  wheelStep: 1,
  pullStep: 0.5,
  room: [],
};
