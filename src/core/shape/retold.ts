/**
 * Places on a tube that becomes part of another tube, or is parted: the same place of the steel, told of the tube that has it now, in the way in which it
 * was told.
 */
import { AXIS_INDEX } from '../geometry/vector.ts';
import { nearestOnPath, type Path } from '../geometry/path.ts';
import { placesInPlane } from '../geometry/plane-places.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { hostOf, type Place } from '../job/places.ts';
import { isPrimed, primed, type MemberId, type TubeRef } from '../job/reference.ts';

import type { Frame } from '../solve/types.ts';
import { comesTo, nearestNth } from './ways.ts';

/** What a tube is to the one that its steel belongs to afterwards. */
export interface Stretch {
  readonly tube: MemberId;
  /** Added to what is counted from end A and from end B, mm; 0 where the end is the same. */
  readonly fromA: number;
  readonly fromB: number;
  /** Added to the number of a bend. */
  readonly bends: number;
  /** How many bends the tube has afterwards. */
  readonly count: number;
  /** Its centreline afterwards, or its mirror image's. */
  readonly path: (isImage: boolean) => Path;
}

/** mm from end A of the node's host, as the frame has it; null where the node stands on none. */
export function alongHost(frame: Frame, node: FrameNode): number | null {
  const { at } = node;
  const host = hostOf(at);
  const bar = host === null ? undefined : frame.bars.get(host);
  const place = frame.nodes.get(node.id);
  if (bar === undefined || place === undefined) return null;
  if (at.kind !== 'on') return nearestOnPath(bar.path, place).at;
  if (at.until !== undefined) {
    const { axis } = at.until;
    return placesInPlane(bar.path, AXIS_INDEX[axis], comesTo(frame, at.until, axis))[at.nth - 1]?.at ?? null;
  }
  if (at.bend === undefined) return at.from === 'start' ? at.distance : bar.developedLength - at.distance;
  const bend = bar.bends[at.bend - 1];
  if (bend === undefined) return null;
  return { start: bend.start, middle: (bend.start + bend.end) / 2, end: bend.end }[at.where] + at.distance;
}

/** The place, `along` mm from end A of the tube that it is on, on the tube of the stretch. One that counts from a bend which that has not counts from end A. */
export function retold(frame: Frame, at: Place, along: number, to: Stretch): Place {
  const host = hostOf(at);
  if (host === null) return at;
  const tube: TubeRef = isPrimed(host) ? primed(to.tube) : to.tube;
  if (at.kind !== 'on') return { ...at, member: tube } as Place;
  const { kind, offset } = at;
  if (at.until !== undefined) {
    const { axis } = at.until;
    const nth = nearestNth(to.path(isPrimed(host)), axis, comesTo(frame, at.until, axis), along + to.fromA);
    return { ...at, member: tube, nth: nth ?? at.nth };
  }
  if (at.bend === undefined) {
    return { ...at, member: tube, distance: shifted(at.distance, at.from === 'start' ? to.fromA : to.fromB) };
  }
  const bend = at.bend + to.bends;
  if (bend >= 1 && bend <= to.count) return { ...at, member: tube, bend };
  return { kind, member: tube, from: 'start', distance: shifted(along, to.fromA), offset };
}

/** A length that was typed lies on one of so many steps of a mm: 1/128 in is 0.1984375. */
const STEPS = 1e9;

/** mm. What sums of doubles leave over along a tube, with room to spare. */
const LEFT_OVER = 1e-11;

/** What was typed comes back to the last digit when a tube is parted and made one again. */
function shifted(mm: number, by: number): number {
  if (by === 0) return mm;
  const typed = Math.round((mm + by) * STEPS) / STEPS;
  return (Math.abs(typed - (mm + by)) < LEFT_OVER ? typed : mm + by) + 0;
}
