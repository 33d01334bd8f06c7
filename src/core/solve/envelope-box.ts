/**
 * The box of an envelope. One that is put stands where it says. A driver's stands along the car, the middle of its top at the point that was
 * measured on top of the helmet, and reaches as much farther forward, back, to either side and up as the head goes.
 */
import { toRadians } from '../geometry/angle.ts';
import { boxFrame, type SolidBox } from '../geometry/solid-box.ts';
import { add, equal, mirrored, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { BoxEnvelope, DriverEnvelope, Envelope } from '../job/kinds/envelope.ts';
import type { Point } from '../job/kinds/point.ts';
import { bareId, isPrimed, type PointRef } from '../job/reference.ts';
import { remembered } from '../remembered.ts';

/** Car axes, mm. `points` stand where they were measured; the envelope's are among them, which a job that was read has seen to. */
export const envelopeBox = (points: readonly Point[], envelope: Envelope): SolidBox =>
  envelope.kind === 'box' ? put(envelope) : worn(points)(envelope);

/** Where the point, or with a prime its image, is among these, mm; null where it is none of them. */
export function placeAmong(points: readonly Point[], reference: PointRef): Vec3 | null {
  const position = points.find(({ id }) => id === bareId(reference))?.position;
  if (position === undefined) return null;
  return isPrimed(reference) ? mirrored(position) : position;
}

/** Of a helmet whose highest place is at `top`, mm. */
export function helmetBox(top: Vec3, { helmet, motion }: Pick<DriverEnvelope, 'helmet' | 'motion'>): SolidBox {
  const [length, width, height] = helmet;
  const { forward, back, side, up } = motion;
  return {
    centre: add(top, [(forward - back) / 2, 0, (up - height) / 2]),
    half: [(length + forward + back) / 2, width / 2 + side, (height + up) / 2],
    axes: [X_AXIS, Y_AXIS, Z_AXIS],
  };
}

const put = remembered(({ centre, size, rotation: [x, y, z] }: BoxEnvelope) =>
  boxFrame(centre, size, [toRadians(x), toRadians(y), toRadians(z)]),
);

const worn = remembered((points: readonly Point[]) =>
  remembered((driver: DriverEnvelope) => helmetBox(placeAmong(points, driver.helmetTop)!, driver)),
);

/** Whether two are the same in value. */
export const sameBox = (a: SolidBox, b: SolidBox): boolean =>
  a === b || [a.centre, a.half, ...a.axes].every((each, i) => equal(each, [b.centre, b.half, ...b.axes][i]!));
