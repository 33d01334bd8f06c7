/** What a file holds under "stock": how sticks are sawn. Sticks, spares and what was sawn are lists of the job as others are. */
import * as v from 'valibot';
import { MOST_BEGUN } from '../limits.ts';
import { begunStick, type BegunStick } from './begun.ts';
import { length, upTo } from './fields.ts';
import type { Part } from './kind.ts';
import { sawnKind } from './sawn.ts';
import { spareKind } from './spare.ts';
import { stickKind } from './stick.ts';

/** How sticks are sawn, mm. */
export interface Sawing {
  /** What the saw takes of a cut; left out, FIRST_KERF. */
  readonly kerf?: number;
  /** Cut off a stick's end before its first part; left out, nothing. */
  readonly squareOff?: number;
  /** What is left of a stick is worth its place on the rack from this length up; left out, FIRST_KEPT. */
  readonly keepFrom?: number;
}

/** What of it is no list of records. */
export interface StockBlock extends Sawing {
  /** Sticks of plans that are being sawn, which are still to come: see core/stock/begun-plan.ts. */
  readonly begun?: readonly BegunStick[];
}

/** mm. Before anybody has said: a bandsaw or a cold saw takes from one to three (common practice). */
export const FIRST_KERF = 2.5;

/** mm. A foot is enough for a gusset, a test of a weld, a short strut (common practice). */
export const FIRST_KEPT = 300;

/** mm: of what a saw takes, and of what is cut off to begin with. */
const GREATEST_KERF = 20;
const GREATEST_SQUARE_OFF = 500;

const sawingFields = {
  kerf: v.exactOptional(upTo(GREATEST_KERF)),
  squareOff: v.exactOptional(upTo(GREATEST_SQUARE_OFF)),
  keepFrom: v.exactOptional(length),
};

/** How sticks are sawn in a shop: what a new job begins with. */
export const sawingPart: Part<Sawing> = { shape: v.looseObject(sawingFields), keys: ['kerf squareOff keepFrom'] };

export const stockPart: Part<StockBlock> = {
  shape: v.looseObject({
    ...sawingFields,
    begun: v.exactOptional(
      v.pipe(v.array(begunStick), v.maxLength(MOST_BEGUN, `more than ${MOST_BEGUN} sticks of a plan`)),
    ),
    sticks: v.optional(v.array(stickKind.shape), []),
    spares: v.optional(v.array(spareKind.shape), []),
    sawn: v.optional(v.array(sawnKind.shape), []),
  }),
  keys: ['kerf squareOff keepFrom begun sticks spares sawn', 'stick number cuts proven', 'tube spare'],
};
