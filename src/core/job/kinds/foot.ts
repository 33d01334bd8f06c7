/** Feet: what the cage stands on the car with. A member's end names one and says how it is turned; several ends may name the same. */
import * as v from 'valibot';
import { fault, figure, type Fault } from '../fault.ts';
import { MOST_HOLES } from '../limits.ts';
import type { FootId } from '../reference.ts';
import { atMost } from './faults.ts';
import { across, coordinate, named, size } from './fields.ts';
import { kinkFaults, kinkPart, liesInBend, type Kink } from './kink.ts';
import type { Kind } from './kind.ts';

/** A plate, or a box of the height of its walls with that plate on top; the tube is cut to the plate's upper face. */
export type Foot = {
  readonly id: FootId;
  readonly name: string;
  /** Of the plate: along the car's x as it is laid onto the plate, then across; of a box over all. */
  readonly size: readonly [along: number, across: number];
  /** Of the plate, and of a box's walls where these have none of their own. */
  readonly thickness: number;
  /** For bolts: centre from the plate's middle, along and across (beyond a kink laid over its line), and diameter. */
  readonly holes?: readonly Hole[];
} & (
  | {
      readonly kind: 'plate';
      /** Bent over a kink of the car; the size is then that of the face on the car, laid over the sharp line. */
      readonly kink?: Kink;
    }
  | {
      readonly kind: 'box';
      readonly height: number;
      /** Thickness of the walls. */
      readonly wall?: number;
    }
);

export interface Hole {
  readonly at: readonly [along: number, across: number];
  readonly diameter: number;
}

/** From the place on the car to the face that the tube stands on, along the foot's normal, mm. */
export const heightOf = (foot: Foot): number => foot.thickness + (foot.kind === 'box' ? foot.height : 0);

const common = {
  ...named,
  size: v.strictTuple([size, size]),
  thickness: across,
  holes: v.exactOptional(v.array(v.looseObject({ at: v.strictTuple([coordinate, coordinate]), diameter: across }))),
};

export const footKind: Kind<Foot> = {
  word: 'foot',
  letter: 'f',
  shape: v.variant('kind', [
    v.looseObject({ ...common, kind: v.literal('plate'), kink: v.exactOptional(kinkPart.shape) }),
    v.looseObject({ ...common, kind: v.literal('box'), height: size, wall: v.exactOptional(across) }),
  ]),
  keys: ['id name kind size thickness height wall kink holes', 'at diameter', kinkPart.keys],
  beyondShape(foot, at) {
    const holes = foot.holes ?? [];
    return [
      ...atMost(MOST_HOLES, holes, `${at}.holes`),
      ...holes.flatMap((hole, i) =>
        hole.at.some((from, axis) => Math.abs(from) + hole.diameter / 2 > foot.size[axis]! / 2)
          ? [fault(`${at}.holes[${i}]`, 'does not lie within the plate')]
          : [],
      ),
      ...holesInBend(foot, at),
      ...(foot.kind === 'plate' && foot.kink !== undefined ? kinkFaults(foot, foot.kink, `${at}.kink`) : []),
      ...(foot.kind === 'box' && 2 * (foot.wall ?? foot.thickness) >= Math.min(...foot.size)
        ? [fault(`${at}.wall`, `${figure(foot.wall ?? foot.thickness)} leaves nothing between the walls`)]
        : []),
    ];
  },
};

function holesInBend(foot: Foot, at: string): Fault[] {
  if (foot.kind !== 'plate' || foot.kink === undefined) return [];
  const { kink, holes = [] } = foot;
  return holes.flatMap((hole, i) =>
    liesInBend(foot, kink, hole.at, hole.diameter) ? [fault(`${at}.holes[${i}]`, 'lies in the bend')] : [],
  );
}
