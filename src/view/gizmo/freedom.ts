/**
 * How a node may be moved, by its kind: anywhere in space, or along one line. Primed nodes are moved through the node
 * they mirror, so that both sides of the car stay alike.
 */
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
} from '../../core/geometry/vector.ts';
import { nearestOnPath, placeAt } from '../../core/geometry/path.ts';
import { bareId, isPrimed, type NodeRef } from '../../core/job/reference.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Job } from '../../core/job/types.ts';
import type { Derived } from '../../core/derive.ts';
import type { Grip } from './grips.ts';
import { moveNode, setFraction, setOnDistance, setRayValue } from '../../core/edit/nodes.ts';

/** A tube's centreline to slide along, by its developed length. */
export interface Host {
  readonly placeAt: (at: number) => { readonly point: Vec3; readonly tangent: Vec3 };
  readonly length: number;
  /** Where the node is now, and which way the node's own distance counts: 1 from end A to end B, else -1. */
  readonly at: number;
  readonly sense: 1 | -1;
}

/** `place` is the node's place for value 0 displacement; everything is in the axes of the reference that is selected. */
export type Freedom =
  | {
      readonly free: 'space';
      readonly place: Vec3;
      /** Steps are counted from here: the datum, or the point that the node hangs on. */
      readonly zero: Vec3;
      readonly moved: (job: Job, place: Vec3) => Job;
    }
  | {
      readonly free: 'line';
      readonly place: Vec3;
      /** Unit: the way in which the value grows by `perMm` a mm. */
      readonly direction: Vec3;
      readonly value: number;
      readonly perMm: number;
      /** mm, or a fraction. */
      readonly inMm: boolean;
      /** What the value is, in the trade's words. */
      readonly says: string;
      /** The centreline that the node slides along, if it may bend; null for a straight line without end. */
      readonly host: Host | null;
      readonly moved: (job: Job, value: number) => Job;
    };

/** How the node may be moved; null when the job does not hold it. */
export function freedomOf(derived: Derived, reference: NodeRef): Freedom | null {
  const place = derived.nodes.get(reference);
  const node = derived.job.nodes.find((candidate) => candidate.id === bareId(reference));
  if (place === undefined || node === undefined) return null;
  const primed = isPrimed(reference);
  const bare = primed ? mirrored(place) : place;
  const freedom = freedomOfBare(derived, node, bare);
  return primed && freedom !== null ? mirrorFreedom(freedom, place) : freedom;
}

function freedomOfBare(derived: Derived, { id, at }: FrameNode, place: Vec3): Freedom | null {
  switch (at.kind) {
    case 'fixed':
      return { free: 'space', place, zero: ORIGIN, moved: (job, to) => moveNode(job, id, to) };
    case 'point':
      return { free: 'space', place, zero: subtract(place, at.offset), moved: (job, to) => moveNode(job, id, to) };
    case 'on': {
      const tube = derived.byId.get(at.member);
      if (tube === undefined) return null;
      const onAxis = nearestOnPath(tube.path, subtract(place, at.offset));
      const { tangent } = placeAt(tube.path, onAxis.at);
      const sense = at.from === 'end' ? -1 : 1;
      return {
        free: 'line',
        place,
        direction: scale(tangent, sense),
        value: at.distance,
        perMm: 1,
        inMm: true,
        says:
          at.bend === undefined
            ? at.from === 'end'
              ? 'from end B'
              : 'from end A'
            : `from the ${at.where} of bend ${at.bend}`,
        host: { placeAt: (along) => placeAt(tube.path, along), length: tube.path.length, at: onAxis.at, sense },
        moved: (job, value) => setOnDistance(job, id, value),
      };
    }
    case 'between': {
      const [from, to] = at.nodes.map((reference) => derived.nodes.get(reference));
      if (from === undefined || to === undefined) return null;
      const span = length(subtract(to, from));
      return {
        free: 'line',
        place,
        direction: normalize(subtract(to, from)),
        value: at.fraction,
        perMm: 1 / span,
        inMm: false,
        says: 'part of the way',
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
        says: { x: 'until along is', y: 'until offset is', z: 'until height is' }[at.until.axis],
        host: null,
        moved: (job, value) => setRayValue(job, id, value),
      };
    }
  }
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

const AXES = { x: X_AXIS, y: Y_AXIS, z: Z_AXIS } as const;
const bar = (key: keyof typeof AXES): Grip => ({ key, kind: 'bar', along: [AXES[key]], bothWays: false });
const plate = (key: string, u: Vec3, v: Vec3): Grip => ({ key, kind: 'plate', along: [u, v], bothWays: false });

const SPACE_GRIPS: readonly Grip[] = [
  bar('x'),
  bar('y'),
  bar('z'),
  plate('xy', X_AXIS, Y_AXIS),
  plate('yz', Y_AXIS, Z_AXIS),
  plate('xz', X_AXIS, Z_AXIS),
];

export const gripsOf = (freedom: Freedom): readonly Grip[] =>
  freedom.free === 'space' ? SPACE_GRIPS : [{ key: 'line', kind: 'bar', along: [freedom.direction], bothWays: true }];
