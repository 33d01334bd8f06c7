/**
 * A tube drawn from place to place: a member like any other, on nodes that stand on what was drawn onto. Where a node stands already it
 * is taken. Corners on the way become bends of the first die that fits.
 */
import { addMember, dieFor } from '../../edit/members.ts';
import { addNode } from '../../edit/nodes.ts';
import { distanceToPath } from '../../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../../geometry/tolerance.ts';
import { distance, mirrored, ORIGIN, type Vec3 } from '../../geometry/vector.ts';
import { hostOf, type Place } from '../../job/places.ts';
import type { Coordinate } from '../../job/places/coordinate.ts';
import { bareId, isPrimed, primed, type NodeRef, type SectionId, type TubeRef } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import { bendingOfMembers, radiusAt } from '../../solve/bending.ts';
import { solveCentreline, type Centreline } from '../../solve/centreline.ts';
import type { Frame } from '../../solve/types.ts';
import { alongBar, standsAt, type Ground } from './ground.ts';
import type { Snap } from './snaps.ts';

export interface DrawnAs {
  readonly name: string;
  readonly section: SectionId;
  /** With a twin on the other side of the car. */
  readonly mirror: boolean;
}

/** Why no tube runs through the places. */
export type DrawTrouble =
  /** Fewer than two. */
  | 'too-few'
  /** Two after one another are one. */
  | 'same-place'
  | 'doubles-back'
  /** It turns, and no die of the job bends such tube. */
  | 'no-die'
  /** The die would bend it tighter than the tube is wide. */
  | 'die-too-tight'
  /** What one of them stands on is not there any more. */
  | 'gone';

/** The section that a tube is drawn with when nobody has said: that of the member built last, else the first; null where the job has none. */
export const usualSection = ({ members, sections }: Job): SectionId | null =>
  members.at(-1)?.section ?? sections[0]?.id ?? null;

/**
 * Whether a tube through these places is meant for both sides of the car: all of it is on one side, but for what touches the centre
 * plane, and where it stands on a bar the other side has one too.
 */
export function isForBothSides(frame: Frame, drawn: readonly Snap[]): boolean {
  const sides = drawn.map(({ at: [, y] }) => (Math.abs(y) <= ROUNDING ? 0 : Math.sign(y)));
  return sides.includes(1) !== sides.includes(-1) && drawn.every((snap) => hasImage(frame, snap));
}

/** The mirror image of a place on a bar lies on that bar, which spans the car, or on its twin. */
function hasImage({ job, bars }: Frame, { ground, at }: Snap): boolean {
  const host = ground.kind === 'node' ? hostOfNode(job, ground.node) : 'tube' in ground ? ground.tube : null;
  if (host === null) return true;
  const image = mirrored(at);
  return [host, primed(host)].some((id) => {
    const bar = bars.get(id);
    return bar !== undefined && distanceToPath(bar.path, image) <= MEETING_DISTANCE;
  });
}

function hostOfNode({ nodes }: Job, node: NodeRef): TubeRef | null {
  const at = nodes.find(({ id }) => id === bareId(node))?.at;
  const host = at === undefined ? null : hostOf(at);
  return host !== null && isPrimed(node) ? primed(host) : host;
}

/** The real centreline of a tube of this section through the places, mm; or why there is none. */
export function courseOf(job: Job, section: SectionId, places: readonly Vec3[]): Centreline | DrawTrouble {
  if (places.length < 2) return 'too-few';
  const die = dieFor(job, section);
  const member = addMember(job, { name: '', path: [], section }).members.at(-1)!;
  const bending = die === undefined ? null : bendingOfMembers(job)({ ...member, die: die.id });
  const course = solveCentreline(places, bending === null ? null : radiusAt(bending));
  if ('why' in course) return course.why === 'no-radius' ? 'no-die' : course.why;
  const isTight = bending !== null && bending.die.centrelineRadius <= bending.section.outerDiameter / 2;
  return places.length > 2 && isTight ? 'die-too-tight' : course;
}

/**
 * The job with the tube last in the build order and its new nodes last in their list; or why it cannot be drawn.
 *
 * @param frame derived from the job
 */
export function drawnTube(job: Job, frame: Frame, grounds: readonly Ground[], as: DrawnAs): Job | DrawTrouble {
  const places = grounds.map((ground) => standsAt(frame, ground));
  if (!places.every((place) => place !== null)) return 'gone';
  const course = courseOf(job, as.section, places);
  if (typeof course === 'string') return course;
  const nodes = [...frame.nodes].map(([reference, at]) => ({ reference, at }));
  const end = places.length - 1;
  let grown = job;
  const path = places.map((at, i): NodeRef => {
    const there = nodeAt(nodes, at);
    if (there !== null) return there;
    grown = addNode(grown, drawnNodeName(as.name, i, end), placeOn(grounds[i]!, at, frame, nodes));
    const { id } = grown.nodes.at(-1)!;
    nodes.push({ reference: id, at }, { reference: primed(id), at: mirrored(at) });
    return id;
  });
  return addMember(grown, { ...as, path });
}

/** What a node of a drawn tube is called: the place `i` of its path, 0 at end A and `last` at end B. */
export const drawnNodeName = (tube: string, i: number, last: number): string =>
  `${tube}, ${i === 0 ? 'end A' : i === last ? 'end B' : `corner ${i}`}`;

/** Those of the frame, and those made for the places before. */
type Standing = readonly { readonly reference: NodeRef; readonly at: Vec3 }[];

/** The node, or the mirror image of one, that stands there: the same place but for what arithmetic leaves over. */
function nodeAt(nodes: Standing, place: Vec3): NodeRef | null {
  return nodes.find(({ at }) => distance(at, place) <= ROUNDING)?.reference ?? null;
}

/** How a node is given that stands on it, where no node stands. */
function placeOn(ground: Ground, at: Vec3, frame: Frame, nodes: Standing): Place {
  const offset = ORIGIN;
  switch (ground.kind) {
    case 'node':
      throw new Error('a node stands on itself');
    case 'point':
      return { kind: 'point', point: ground.point, offset };
    // The mirror image of the node that was made for the other place stands there already, as a rule.
    case 'image':
      return { kind: 'fixed', position: at };
    case 'space': {
      // On the centre plane the offset is a number: plumb over a point of it, the tube stays there when the point is measured anew.
      const ownerOf = (axis: number): Ground | null => (axis === 1 && at[1] === 0 ? null : (ground.by?.[axis] ?? null));
      const [x, y, z] = at.map((value, axis) => follows(ownerOf(axis), value, frame, nodes));
      const isFixed = [x, y, z].every((each) => each!.value !== undefined);
      return isFixed ? { kind: 'fixed', position: at } : { kind: 'lined-up', x: x!, y: y!, z: z! };
    }
    case 'bend':
      return { kind: 'on', member: ground.tube, bend: ground.bend, where: ground.where, distance: 0, offset };
    case 'centre':
      return { kind: 'on', member: ground.tube, until: { axis: 'y', value: 0 }, nth: ground.nth, offset };
    case 'level': {
      const height = follows(ground.with, at[2], frame, nodes);
      return { kind: 'on', member: ground.tube, until: { axis: 'z', ...height }, nth: ground.nth, offset };
    }
    case 'middle':
    case 'along': {
      const distance = alongBar(frame.bars.get(ground.tube)!, ground)!;
      return { kind: 'on', member: ground.tube, from: 'start', distance, offset };
    }
  }
}

/** A coordinate that is the owner's, where that is a node, a point, or a place for which there is a node by now; else the number. */
function follows(owner: Ground | null, value: number, frame: Frame, nodes: Standing): Coordinate {
  if (owner === null) return { value };
  if (owner.kind === 'point') return { point: owner.point, plus: 0 };
  const at = standsAt(frame, owner);
  const node = owner.kind === 'node' ? owner.node : at && nodeAt(nodes, at);
  return node === null ? { value } : { node, plus: 0 };
}
