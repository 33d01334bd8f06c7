/**
 * A tube as it was bent: what was measured on it, the rest as it was planned. Straights, rotations, angles and radii, from end A.
 *
 * Marks are absolute: a bend starts at its mark, on the side of the end that was in front, and one that came out further takes its
 * arc from the straight behind it. A bend that is made keeps the mark that it was made at. A straight that was measured goes
 * before the marks. The tube keeps the length that it was cut to. Of the radius two things are asked: what the machine laid down, the die's
 * radius x pulled / net, by which a bend run judges; and what the tube stands with in the frame, which is that only where the die goes by its pulls.
 */
import { toRadians, type Radians } from '../geometry/angle.ts';
import { readByHand } from '../job/read-by-hand.ts';
import type { BentBend, BentTube, DrawnTube } from '../job/kinds/bent.ts';
import type { Die } from '../job/kinds/die.ts';
import { openedRadius } from '../springback/opened-radius.ts';
import type { RolledBend } from './roll-out.ts';

/** A bend as it was to be: mm along the tube from end A's node. */
export interface PlannedBend {
  readonly angle: Radians;
  readonly rotation: Radians;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
}

/** From end A's node to end B's, mm, and the bends from end A. */
export interface PlannedTube {
  readonly bends: readonly PlannedBend[];
  readonly developedLength: number;
}

/** How a tube lies on its blank, mm from end A's node as it was cut. */
export interface OnBlank {
  /** Of each bend from end A the tangent nearer the end in front: where it starts on the machine. */
  readonly starts: readonly number[];
  /** From end A's node to end B's. */
  readonly length: number;
}

/** The tube as it came off the bender, from end A. */
export interface BuiltTube {
  readonly bends: readonly RolledBend[];
  /** From the last bend to end B's node, mm. */
  readonly tail: number;
}

/** As the tube is laid out. A bend that the order leaves out counts as fed with end A in front. */
export function onBlank({ bends, developedLength }: PlannedTube, order: BentTube['order']): OnBlank {
  const fronts = new Map(order.map(({ bend, front }) => [bend, front]));
  return {
    starts: bends.map(({ start, end }, i) => (fronts.get(i + 1) === 'B' ? end : start)),
    length: developedLength,
  };
}

/** The radius of a bend that was planned with one, mm, by what was read of it. */
export type RadiusMade = (planned: number, reading: BentBend | undefined) => number;

/**
 * What a bend that was read was made with, whatever its marks follow: the die's radius x pulled / net, as long as that can be true. Of one
 * that was fitted to a tape's figures what was read by hand counts, if anything was. `die` is what it was bent on; null for a straight tube.
 */
export const laidDown =
  (die: Pick<Die, 'centrelineRadius'> | null): RadiusMade =>
  (planned, reading) => {
    const read = reading && readByHand(reading);
    return read == null || die === null ? planned : openedRadius(die.centrelineRadius, read.pulled, read.net);
  };

/** What a bend stands with in the frame: the planned radius; of a die that goes by its pulls the one laid down. */
export const asStanding = (die: Pick<Die, 'centrelineRadius' | 'radius'> | null): RadiusMade =>
  die?.radius === 'from-pulls' ? laidDown(die) : (planned) => planned;

/** A reading of a bend that the tube has not is passed over. */
export function asBuilt(
  planned: PlannedTube,
  radiusOf: RadiusMade,
  { order, bends: made }: Pick<BentTube, 'order' | 'bends'>,
  { starts, length }: OnBlank = onBlank(planned, order),
): BuiltTube {
  const readings = new Map(made.map((each) => [each.bend, each]));
  const fronts = new Map(order.map(({ bend, front }) => [bend, front]));
  let behind = 0;
  const bends = planned.bends.map((plan, i): RolledBend => {
    const reading = readings.get(i + 1);
    const angle = reading === undefined ? plan.angle : toRadians(reading.net);
    const radius = radiusOf(plan.radius, reading);
    const begun = reading?.start ?? starts[i]!;
    const byMark = fronts.get(i + 1) === 'B' ? begun - radius * angle : begun;
    const straight = reading?.straight ?? byMark - behind;
    behind += straight + radius * angle;
    const rotation = i > 0 && reading?.rotation !== undefined ? toRadians(reading.rotation) : plan.rotation;
    return { straight, rotation, angle, radius };
  });
  return { bends, tail: length - behind };
}

/**
 * The tube as it was drawn when its run began. From end A each corner's leg leaves the set-back, R tan(angle/2), over from where the bend
 * starts, which says the radius of that day; where the starts were not kept, the radius is the die's. Null where what was kept can be true of
 * no tube.
 */
export function asDrawnThen({ legs, angles, rotations, starts }: DrawnTube, dieRadius: number): PlannedTube | null {
  if (legs.length !== angles.length + 1 || rotations.length !== angles.length) return null;
  if (starts !== undefined && starts.length !== angles.length) return null;
  let [end, setBack] = [0, 0];
  const bends = angles.map((degrees, i): PlannedBend => {
    const angle = toRadians(degrees);
    const half = Math.tan(angle / 2);
    const room = legs[i]! - setBack;
    const radius = starts === undefined ? dieRadius : (room - (starts[i]! - end)) / half;
    const start = starts?.[i] ?? end + room - radius * half;
    setBack = radius * half;
    end = start + radius * angle;
    return { angle, rotation: toRadians(rotations[i]!), radius, start, end };
  });
  const possible = bends.every(
    ({ angle, radius }) => angle > 0 && angle < Math.PI && radius > 0 && Number.isFinite(radius),
  );
  return possible ? { bends, developedLength: end + (legs.at(-1)! - setBack) } : null;
}
