/**
 * In which directions a node can be moved, by the kind of its place: in space, along the axes of the car that nothing else decides, or
 * along one line, which may be a tube's centreline. What follows another node or point is not moved by hand: it would come out of
 * line. A mirror image is moved through its node, so that both sides of the car stay alike. Car axes, mm.
 */
import { moveNode, setFraction, setOnDistance, setPlace, setRayValue } from '../edit/nodes.ts';
import { nearestOnPath, placeAt, type Path } from '../geometry/path.ts';
import {
  dot,
  length,
  mirrored,
  normalize,
  ORIGIN,
  scale,
  subtract,
  X_AXIS,
  Y_AXIS,
  Z_AXIS,
  type Vec3,
} from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Place } from '../job/places.ts';
import type { OnMember } from '../job/places/on.ts';
import { bareId, isPrimed, type NodeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { untilHere } from './ways.ts';

/** A tube's centreline to slide along, by its developed length in mm. */
export interface Host {
  readonly placeAt: (at: number) => { readonly point: Vec3; readonly tangent: Vec3 };
  readonly length: number;
  /** Where the node is now, and which way the node's own distance counts: 1 from end A to end B, else -1. */
  readonly at: number;
  readonly sense: 1 | -1;
}

/** Along x, y or z. */
export type Coordinate = 0 | 1 | 2;

/** Free in space: `moved` gives the job with the node, or the image that was asked about, at `place`. */
export interface FreeInSpace {
  readonly free: 'space';
  /** Where it is. */
  readonly place: Vec3;
  /** Steps are counted from here: the datum, or the point that the node is measured from. */
  readonly zero: Vec3;
  /** The coordinates that can be moved; none where the place is decided by others altogether. */
  readonly open: readonly Coordinate[];
  /** One of them at a time. */
  readonly single?: true;
  readonly moved: (job: Job, place: Vec3) => Job;
}

/** Free along one line: one number of its place decides where on it, and `moved` sets that. */
interface FreeOnLine {
  readonly free: 'line';
  readonly place: Vec3;
  /** Unit: the way in which the value grows by `perMm` a mm. */
  readonly direction: Vec3;
  readonly value: number;
  readonly perMm: number;
  /** mm, or a fraction. */
  readonly inMm: boolean;
  /** The place as it is given, which says what the value is measured from. */
  readonly at: PlaceOnLine;
  /** The centreline that the node slides along, if it may bend; null for a straight line without end. */
  readonly host: Host | null;
  readonly moved: (job: Job, value: number) => Job;
}

/** The kinds of place that leave a node one line to go along. */
export type PlaceOnLine = Extract<Place, { readonly kind: 'on' | 'between' | 'ray' }>;

/** Either, in the axes of the reference that was asked about: for an image those of its own side of the car. */
export type Freedom = FreeInSpace | FreeOnLine;

/**
 * How the node, or with a prime its mirror image, can be moved from where it is in the frame.
 *
 * @returns null where the frame does not hold the node, or the tube or a node that it is placed from
 */
export function freedomOf(frame: Frame, reference: NodeRef): Freedom | null {
  const place = frame.nodes.get(reference);
  const node = frame.job.nodes.find((candidate) => candidate.id === bareId(reference));
  if (place === undefined || node === undefined) return null;
  const primed = isPrimed(reference);
  const bare = primed ? mirrored(place) : place;
  const freedom = freedomOfBare(frame, node, bare);
  return primed && freedom !== null ? mirrorFreedom(freedom, place) : freedom;
}

function freedomOfBare(frame: Frame, { id, at }: FrameNode, place: Vec3): Freedom | null {
  switch (at.kind) {
    case 'fixed':
      return { free: 'space', place, zero: ORIGIN, open: ALL, moved: (job, to) => moveNode(job, id, to) };
    case 'point': {
      const zero = subtract(place, at.offset);
      return { free: 'space', place, zero, open: ALL, moved: (job, to) => moveNode(job, id, to) };
    }
    case 'lined-up': {
      const open = ALL.filter((axis) => [at.x, at.y, at.z][axis]!.value !== undefined);
      return { free: 'space', place, zero: ORIGIN, open, moved: (job, to) => moveNode(job, id, to) };
    }
    case 'crossing':
      return decided(place);
    case 'on': {
      if (at.until !== undefined && at.until.value === undefined) return decided(place);
      const tube = frame.bars.get(at.member);
      if (tube === undefined) return null;
      const onAxis = nearestOnPath(tube.path, subtract(place, at.offset));
      const { tangent } = placeAt(tube.path, onAxis.at);
      const sense = at.from === 'end' ? -1 : 1;
      return {
        free: 'line',
        place,
        direction: scale(tangent, sense),
        // Of one that is given by a coordinate: from end A, as with `from` "start".
        value: at.distance ?? onAxis.at,
        perMm: 1,
        inMm: true,
        at,
        host: { placeAt: (along) => placeAt(tube.path, along), length: tube.path.length, at: onAxis.at, sense },
        moved: (job, value) =>
          at.until === undefined ? setOnDistance(job, id, value) : setPlace(job, id, untilAlong(at, tube.path, value)),
      };
    }
    case 'between': {
      const [from, to] = at.nodes.map((reference) => frame.nodes.get(reference));
      if (from === undefined || to === undefined) return null;
      const span = length(subtract(to, from));
      return {
        free: 'line',
        place,
        direction: normalize(subtract(to, from)),
        value: at.fraction,
        perMm: 1 / span,
        inMm: false,
        at,
        host: null,
        moved: (job, value) => setFraction(job, id, value),
      };
    }
    case 'ray': {
      const direction = normalize(at.direction);
      const axis = { x: X_AXIS, y: Y_AXIS, z: Z_AXIS }[at.until.axis];
      return {
        free: 'line',
        place,
        direction,
        value: at.until.value,
        perMm: dot(direction, axis),
        inMm: true,
        at,
        host: null,
        moved: (job, value) => setRayValue(job, id, value),
      };
    }
  }
}

const ALL: readonly Coordinate[] = [0, 1, 2];

const decided = (place: Vec3): Freedom => ({
  free: 'space',
  place,
  zero: ORIGIN,
  open: [],
  moved: (job) => job,
});

/** The place, given by the coordinate that the tube has so far along. */
function untilAlong(at: Extract<OnMember, { readonly nth: number }>, path: Path, along: number): Place {
  const { value, nth } = untilHere(path, at.until.axis, along);
  return { ...at, until: { axis: at.until.axis, value }, nth };
}

function mirrorFreedom(freedom: Freedom, place: Vec3): Freedom {
  if (freedom.free === 'space') {
    return {
      ...freedom,
      place,
      zero: mirrored(freedom.zero),
      moved: (job: Job, to: Vec3) => freedom.moved(job, mirrored(to)),
    };
  }
  const { host } = freedom;
  return {
    ...freedom,
    place,
    direction: mirrored(freedom.direction),
    host: host && {
      ...host,
      placeAt: (at) => {
        const { point, tangent } = host.placeAt(at);
        return { point: mirrored(point), tangent: mirrored(tangent) };
      },
    },
  };
}
