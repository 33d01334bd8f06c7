/** The shapes of fields that more kinds than one have, with the words for what lies outside of them. */
import * as v from 'valibot';
import { FARTHEST } from '../../geometry/tolerance.ts';
import { PAST_A_TURN } from '../../units/angle.ts';
import { NOT_FINITE, NOT_WHOLE } from '../fault.ts';
import {
  GREATEST_ANGLE,
  GREATEST_TUBE,
  LEAST_ANGLE,
  HEAVIEST,
  LEAST_SIZE,
  LONGEST_ID,
  LONGEST_TEXT,
  MOST_BENDS,
} from '../limits.ts';

export const number = (least: number, greatest: number, below: string, beyond: string) =>
  v.pipe(v.number(), v.minValue(least, numberMessage(below)), v.maxValue(greatest, numberMessage(beyond)));

/** Infinity counts as beyond; NaN is no number to begin with. */
const numberMessage = (outside: string) => (issue: { input: number }) =>
  Number.isFinite(issue.input) ? outside : NOT_FINITE;

/** mm from 0 on. */
export const upTo = (greatest: number) => number(0, greatest, 'below zero', `beyond ${greatest} mm`);

export const coordinate = number(-FARTHEST, FARTHEST, 'beyond 100 m', 'beyond 100 m');
export const length = number(0, FARTHEST, 'below zero', 'beyond 100 m');
export const size = number(LEAST_SIZE, FARTHEST, `below ${LEAST_SIZE} mm`, 'beyond 100 m');
/** Across a tube. */
export const across = number(LEAST_SIZE, GREATEST_TUBE, `below ${LEAST_SIZE} mm`, `beyond ${GREATEST_TUBE} mm`);
/** kg, of a car. */
export const mass = number(0, HEAVIEST, 'below zero', `beyond ${HEAVIEST} kg`);
export const vector = v.strictTuple([coordinate, coordinate, coordinate]);
export const offset = v.optional(vector, [0, 0, 0]);

export const turn = number(-360, 360, PAST_A_TURN, PAST_A_TURN);
/** Of a box, about the fixed axes. */
export const rotation = v.optional(v.strictTuple([turn, turn, turn]), [0, 0, 0]);
export const angle = (least: number, greatest: number) =>
  number(least, greatest, `below ${least} degrees`, `beyond ${greatest} degrees`);
/** Of a bend as it was pulled, or came out. */
export const bendAngle = angle(LEAST_ANGLE, GREATEST_ANGLE);
export const bendNumber = v.pipe(
  number(1, MOST_BENDS, 'bends count from 1', `beyond ${MOST_BENDS}`),
  v.integer(NOT_WHOLE),
);

/** Of the one that is meant, among those that lie along a tube. */
export const count = v.pipe(number(1, MOST_BENDS, 'counts from 1', `beyond ${MOST_BENDS}`), v.integer(NOT_WHOLE));

/** No control character, none of Unicode's own line breaks, no half of a character, and no prime at the end. */
const ID = /^[^\p{Cc}\p{Zl}\p{Zp}\p{Cs}]*[^\p{Cc}\p{Zl}\p{Zp}\p{Cs}']$/u;

export const id = v.pipe(
  v.string(),
  v.minLength(1, 'empty'),
  v.maxLength(LONGEST_ID, `longer than ${LONGEST_ID} characters`),
  v.regex(ID, ({ input }) =>
    input.endsWith("'")
      ? "ends in a prime ('), which stands for the mirror image"
      : 'holds a control character or a line break',
  ),
);
/** Ends ids, so it may hold nothing that means something in one. */
export const idMark = v.pipe(v.string(), v.regex(/^[a-z0-9]{1,8}$/u, 'not one to eight small letters and digits'));
/** The name is filled in from the id where a file leaves it out. */
export const named = { id, name: v.optional(v.string()) };

/** A person's own words, as long as an article of a rule book may need. */
export const words = v.pipe(v.string(), v.maxLength(LONGEST_TEXT, `longer than ${LONGEST_TEXT} characters`));
