/**
 * Edits of nodes. A reference with a prime names the mirror image in y = 0: moving the image moves the node itself,
 * mirrored, so that what was dragged lands where it was dragged to.
 */
import type { Vec3 } from '../geometry/vector.ts';
import { sameData } from '../job/equal.ts';
import { bareId, isPrimed, type NodeId, type NodeRef } from '../job/reference.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import { clearShift } from '../job/places/point.ts';
import { thickestThrough } from '../job/thickest.ts';
import type { Job } from '../job/types.ts';
import { placeOfPoint } from '../survey/measured-points.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, findRecord, patched, updateRecord, type Edited } from './records.ts';
import { removeUnused } from './references.ts';

export const addNode = (job: Job, name: string, at: Place): Job =>
  appendRecord(job, 'nodes', { id: nextId(job, 'nodes'), name, at });

export const renameNode = (job: Job, id: NodeId, name: string): Job => updateRecord(job, 'nodes', id, { name });

/** Where the node stands, given anew; any field of its place can be set so. It is no guess any more. */
export const setPlace = (job: Job, id: NodeId, at: Place): Job =>
  changeRecord(job, 'nodes', id, (node) => standingAt(node, at));

/** The node is right as it stands. */
export const confirmNode = (job: Job, id: NodeId): Job => changeRecord(job, 'nodes', id, withoutGuess);

/** The same node where the place is the same. */
const standingAt = (node: FrameNode, at: Place): FrameNode =>
  sameData(at, node.at) ? node : { ...withoutGuess(node), at };

function withoutGuess(node: FrameNode): FrameNode {
  if (node.guessed === undefined) return node;
  const { guessed: _, ...rest } = node;
  return rest;
}

/** Refused while members run through it or nodes are placed from it. */
export const removeNode = (job: Job, id: NodeId): Edited => removeUnused(job, 'nodes', id);

/**
 * Moves a node to a place in the car: a fixed one there, one on a point by its offset, one in line with others in those coordinates
 * that are numbers of its own. The other kinds have one way to go, which the caller measures: setOnDistance, setFraction,
 * setRayValue. They stay where they are.
 */
export function moveNode(job: Job, ref: NodeRef, position: Vec3): Job {
  const at = findRecord(job, 'nodes', bareId(ref))?.at;
  if (at?.kind === 'fixed') return moveFixedNode(job, ref, position);
  if (at?.kind === 'lined-up') return moveLinedUp(job, ref, position);
  if (at?.kind !== 'point') return job;
  const point = placeOfPoint(job, at.point);
  if (!point) return job;
  const to = onOwnSide(ref, position);
  const shift = clearShift(at.clear, thickestThrough(job, bareId(ref)));
  // A coordinate that stays keeps its offset to the last digit: there and back through the sum would lose some.
  const along = (offset: Vec3, axis: 0 | 1 | 2) =>
    point[axis] + offset[axis] + shift[axis] === to[axis] ? offset[axis] : to[axis] - shift[axis] - point[axis];
  return changePlace(job, ref, 'point', (old) => ({
    ...old,
    offset: [along(old.offset, 0), along(old.offset, 1), along(old.offset, 2)],
  }));
}

/** Puts a fixed node, or with a prime its image, at `position`. */
const moveFixedNode = (job: Job, ref: NodeRef, position: Vec3): Job =>
  changePlace(job, ref, 'fixed', (at) => ({ ...at, position: onOwnSide(ref, position) }));

/** What follows a node or a point goes on following it. */
function moveLinedUp(job: Job, ref: NodeRef, position: Vec3): Job {
  const [x, y, z] = onOwnSide(ref, position);
  const moved = (given: Coordinate, value: number): Coordinate =>
    given.value === undefined || given.value === value ? given : { ...given, value };
  return changePlace(job, ref, 'lined-up', (at) =>
    patched(at, { x: moved(at.x, x), y: moved(at.y, y), z: moved(at.z, z) }),
  );
}

/** mm along the tube, from where the node is measured: the same number for a node and its image. One that is given by a coordinate stays. */
export const setOnDistance = (job: Job, ref: NodeRef, distance: number): Job =>
  changePlace(job, ref, 'on', (at) => (at.until === undefined ? { ...at, distance } : at));

/** 0 at the first of the two nodes, 1 at the second. */
export const setFraction = (job: Job, ref: NodeRef, fraction: number): Job =>
  changePlace(job, ref, 'between', (at) => ({ ...at, fraction }));

/** The coordinate, mm, at which the ray of the node, or with a prime of its image, ends. */
export const setRayValue = (job: Job, ref: NodeRef, value: number): Job =>
  changePlace(job, ref, 'ray', (at) => {
    const own = at.until.axis === 'y' && isPrimed(ref) ? 0 - value : value;
    return { ...at, until: { ...at.until, value: own } };
  });

/** The mirror image for a primed reference. From 0 subtracted, not negated: a file has no negative zero. */
const onOwnSide = (ref: string, [x, y, z]: Vec3): Vec3 => (isPrimed(ref) ? [x, 0 - y, z] : [x, y, z]);

type PlaceOf<K extends Place['kind']> = Extract<Place, { readonly kind: K }>;

/** A node of another kind stays as it is. */
function changePlace<K extends Place['kind']>(
  job: Job,
  ref: NodeRef,
  kind: K,
  change: (at: PlaceOf<K>) => PlaceOf<K>,
): Job {
  const set = (node: FrameNode): FrameNode =>
    node.at.kind === kind ? standingAt(node, change(node.at as PlaceOf<K>)) : node;
  return changeRecord(job, 'nodes', bareId(ref), set);
}
