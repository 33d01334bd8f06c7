/** What a job says of the fitting of its cage in the car: room for the torch, how far aside the roof is looked for, and the door. */
import { upTo } from './fields.ts';

/** mm. Before anybody has said: the torch held upright, its cup on the joint (common practice). */
export const FIRST_TORCH_ROOM = 60;

/** mm. A torch and the hand over it. */
export const GREATEST_TORCH_ROOM = 300;

/** mm. Before anybody has said: a hand’s breadth. */
export const FIRST_ROOF_REACH = 100;

/** mm. Half of a car's roof. */
export const GREATEST_ROOF_REACH = 500;

/** mm. A van's. */
export const GREATEST_DOOR = 5000;

/** Above a joint; 0 where nobody asks for any. */
export const torchRoom = upTo(GREATEST_TORCH_ROOM);

export const roofReach = upTo(GREATEST_ROOF_REACH);

export const doorOpening = upTo(GREATEST_DOOR);
