/** Nodes: where members begin, end and turn. */
import * as v from 'valibot';
import { placePart, type Place } from '../places.ts';
import type { NodeId } from '../reference.ts';
import { named } from './fields.ts';
import type { Kind } from './kind.ts';

/** Called FrameNode because the DOM's own `Node` would type-check silently in its place. */
export interface FrameNode {
  readonly id: NodeId;
  readonly name: string;
  readonly at: Place;
  /** Put there by the program for a start, by a figure that nobody has measured or said is right. */
  readonly guessed?: true;
}

export const nodeKind: Kind<FrameNode> = {
  word: 'node',
  letter: 'n',
  shape: v.looseObject({ ...named, at: placePart.shape, guessed: v.exactOptional(v.literal(true)) }),
  keys: ['id name at guessed', ...placePart.keys],
  hasImage: () => true,
  beyondShape: ({ at: place }, at) => placePart.beyondShape(place, `${at}.at`),
};
