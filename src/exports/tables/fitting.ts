/** The fitting of the cage in its car, for the fabrication file. Millimetres, car axes; null where nothing is known. */
import type { Derived } from '../../core/derive.ts';
import { doorOf } from '../../core/fitting/door.ts';
import { lowering, metOnTheWay } from '../../core/fitting/lowering.ts';
import { slitsOf, type Slit } from '../../core/fitting/through-door.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { BodyLineId, EnvelopeId, NodeRef, PointId, PointRef, TubeRef } from '../../core/job/reference.ts';

/** What of the car, by its id. */
interface OfCar {
  readonly point?: PointRef;
  readonly bodyLine?: BodyLineId;
  readonly envelope?: EnvelopeId;
}

export interface FabricationFitting {
  /** That a torch wants above a joint. */
  readonly torchRoom: number;
  /** How far the cage stands lower for that at all joints under the roof; and which decides it, counted from 0. */
  readonly lowerBy: number;
  readonly decidedBy: number | null;
  /** What the boxes of the feet give of it; null without boxes. */
  readonly boxesGive: number | null;
  /** The joints under the roof: with the least air first, then those of which nothing is known. */
  readonly joints: readonly FabricationJoint[];
  /** The ends that stand on the car: how far each goes down by its foot, and how deep it has to go into the car beyond that. */
  readonly ends: readonly {
    readonly tube: TubeRef;
    readonly end: 'A' | 'B';
    readonly gives: number;
    readonly into: number;
  }[];
  /** What tubes run into when the cage stands so low, and how deep. */
  readonly inTheWay: readonly (OfCar & { readonly tube: TubeRef; readonly deep: number })[];
  /** The longest straight way across the door; between no points where it was typed. */
  readonly door: { readonly way: number; readonly between: readonly [PointId, PointId] | null } | null;
  /** What opening bent tubes go through, laid flat. */
  readonly slits: readonly Slit[];
}

export interface FabricationJoint {
  /** Null where a bar in pieces is cut. */
  readonly node: NodeRef | null;
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  readonly at: Vec3;
  /** Height of the joint's top. */
  readonly top: number;
  /** What lies over it, how far aside seen from above, and how high over the top; air null where nothing that was measured does. */
  readonly over?: OfCar & { readonly aside: number };
  readonly air: number | null;
  /** What the torch lacks. */
  readonly short: number | null;
}

export function fabricationFitting(derived: Derived): FabricationFitting {
  const { room, joints, lowered, boxes, ends } = lowering(derived);
  const decidedBy = joints.findIndex(({ joint }) => joint === lowered.decides?.joint);
  return {
    torchRoom: room,
    lowerBy: lowered.by,
    decidedBy: decidedBy === -1 ? null : decidedBy,
    boxesGive: boxes,
    joints: joints.map(({ joint: { node, tube, end, at, top }, roof, short }) => ({
      node,
      tube,
      end,
      at,
      top,
      ...(roof !== null && { over: { [roof.trim.kind]: roof.trim.id, aside: roof.aside } }),
      air: roof?.air ?? null,
      short,
    })),
    ends: ends.map(({ tube, end, gives }) => ({ tube, end, gives, into: Math.max(0, lowered.by - gives) })),
    inTheWay: metOnTheWay(derived).map(({ tube, of, deep }) => ({ tube, [of.kind]: of.id, deep })),
    door: doorOf(derived.job),
    slits: slitsOf(derived),
  };
}
