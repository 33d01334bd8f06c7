/** What a place may be given from: the nodes that do not hang on it themselves, and which of them comes first. */
import { dependentNodes } from '../edit/references.ts';
import { distance, type Axis, type Vec3 } from '../geometry/vector.ts';
import { bareId, type NodeId, type NodeRef } from '../job/reference.ts';
import type { Frame } from '../solve/types.ts';

/** Two nodes have a third between them when it lies this near their line, mm: below what a tape reads. */
export const ON_THE_LINE = 0.01;

/** A node that lies no further than this from another is in its place, mm: a line from there would have no direction to trust. */
export const SAME_PLACE = 1;

/** In the order of a vector's coordinates. */
export const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** Nodes and mirror images that do not move with this one, and do not stand in its place. */
export function freeNodes({ job, nodes }: Frame, id: NodeId): { reference: NodeRef; at: Vec3 }[] {
  const dependents = dependentNodes(job, id);
  const here = nodes.get(id);
  return [...nodes]
    .filter(
      ([reference, at]) => !dependents.has(bareId(reference)) && here !== undefined && distance(at, here) > SAME_PLACE,
    )
    .map(([reference, at]) => ({ reference, at }));
}

/** Every two of them, once. */
export function* pairsOf<T>(nodes: readonly T[]): Generator<{ readonly first: T; readonly second: T }> {
  for (const [index, first] of nodes.entries()) {
    for (const second of nodes.slice(index + 1)) yield { first, second };
  }
}

/** The one that is least far; the first of equal ones, null where there is none. */
export function nearestOf<T>(candidates: readonly T[], far: (candidate: T) => number): T | null {
  let nearest: T | null = null;
  let least = Infinity;
  for (const candidate of candidates) {
    const distant = far(candidate);
    if (distant < least) [nearest, least] = [candidate, distant];
  }
  return nearest;
}

/** The axis along which it goes farthest; the first of equal ones. */
export function longestAxis(along: Vec3): 0 | 1 | 2 {
  const sizes = along.map(Math.abs);
  return sizes.indexOf(Math.max(...sizes)) as 0 | 1 | 2;
}
