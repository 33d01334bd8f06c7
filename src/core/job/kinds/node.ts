import type { Place } from '../places.ts';
import type { NodeId } from '../reference.ts';

/** Called FrameNode because the DOM's own `Node` would type-check silently in its place. */
export interface FrameNode {
  readonly id: NodeId;
  readonly name: string;
  readonly at: Place;
}
