/**
 * How far the helmet lies under the straight line from the top of the main hoop to the top of the front structure, or to the foot of a rear stay, mm, seen from
 * the side: of all places of the helmet's box the least, square to the line; negative where it pokes through. The line goes on straight past both.
 *
 * A hoop's top and a header's is the highest place of its wall. A ring of the roof, a leg or a side hoop runs on from the main hoop: its top is where a straight edge from the main
 * hoop's top would lie on it. A stay's foot is the place where its centreline ends. docs/maths/head-room.md.
 */
import { placeOnPiece, type Piece } from '../../geometry/path.ts';
import { farthestAlong } from '../../geometry/path-reach.ts';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { addScaled, subtract, Z_AXIS, type Vec3 } from '../../geometry/vector.ts';
import type { DriverEnvelope } from '../../job/kinds/envelope.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import { helmetBox, placeAmong } from '../../solve/envelope-box.ts';
import { NO_MOTION } from '../../job/kinds/envelope.ts';
import type { Bar } from '../../solve/types.ts';
import { FRONT, meantBy } from '../implied.ts';
import type { Questions } from '../questions.ts';
import { isRole } from '../../job/role.ts';
import type { Outcome } from '../types.ts';
import { endsOf } from './tilt.ts';

/** Of each driver under each such line. */
export function underLine(
  check: CheckOf<'head-room'>,
  ask: Questions,
  drivers: readonly DriverEnvelope[],
): readonly Outcome[] {
  const { roles, onto } = meantBy(check);
  const isStay = check.of === 'line-stay';
  const hoops = ask.bars(roles, check.only);
  if (hoops.length === 0) return [nothing(roles)];
  const others = isStay || check.onto !== undefined ? ask.bars(onto) : frontOf(ask);
  const points = ask.points();
  if (others.length === 0) return [nothing(onto)];
  const lines = hoops.flatMap((hoop) => {
    const from = topOf(hoop);
    return others.map((other) => {
      const to = isStay ? endsOf(other)[1].position : frontTop(other, from);
      return { from, to, concerns: ask.tubes([hoop, other]).map(({ id }) => id) };
    });
  });
  return drivers.flatMap((driver) =>
    lines.map(({ from, to, concerns }): Outcome => {
      // A line that stands upright has no under, and one that runs the other way is none of these.
      if (to === null || (isStay ? from[0] - to[0] : to[0] - from[0]) <= ROUNDING)
        return { ...nothing(onto), concerns, at: from };
      const { centre, half } = helmetBox(placeAmong(points, driver.helmetTop)!, { ...driver, motion: NO_MOTION });
      const corners = [-1, 1].flatMap((x) =>
        [-1, 1].map((z): Vec3 => [centre[0] + x * half[0], centre[1], centre[2] + z * half[2]]),
      );
      const up = upFrom(from, to);
      const under = (corner: Vec3): number => up[0] * (from[0] - corner[0]) + up[2] * (from[2] - corner[2]);
      const nearest = corners.reduce((a, b) => (under(b) < under(a) ? b : a));
      const value = under(nearest);
      return { value, concerns, envelope: driver.id, at: nearest, to: addScaled(nearest, up, value) };
    }),
  );
}

const nothing = (roles: readonly string[]): Outcome => ({
  unknown: { id: 'nothing-there', roles },
  concerns: [],
  at: null,
});

/** The bars of the first role of the front that there is. */
const frontOf = (ask: Questions): readonly Bar[] => {
  for (const role of FRONT) {
    const bars = ask.bars([role]);
    if (bars.length > 0) return bars;
  }
  return [];
};

const topOf = (bar: Bar): Vec3 =>
  addScaled(farthestAlong(bar.path, Z_AXIS).point, Z_AXIS, bar.section.outerDiameter / 2);

/** Null where nothing of it lies ahead of the hoop. */
function frontTop(bar: Bar, hoopTop: Vec3): Vec3 | null {
  if (!RUN_ON.some((role) => isRole(bar.member, role))) return topOf(bar);
  const radius = bar.section.outerDiameter / 2;
  const from = addScaled(hoopTop, Z_AXIS, -radius);
  const rise = (place: Vec3): number => Math.atan2(place[2] - from[2], place[0] - from[0]);
  const ahead = bar.path.pieces
    .flatMap((piece) => [0, ...level(piece, from), piece.length].map((along) => placeOnPiece(piece, along).point))
    .filter((place) => place[0] - from[0] > ROUNDING);
  if (ahead.length === 0) return null;
  return addScaled(
    ahead.reduce((a, b) => (rise(b) > rise(a) ? b : a)),
    Z_AXIS,
    radius,
  );
}

/** They run on from the main hoop. */
const RUN_ON = ['roof-ring', 'front-leg', 'side-hoop'] as const;

/**
 * Where an arc, seen from the side, runs straight towards the place or away from it, mm from its start. With c its centre less the place and a and b its spoke
 * and tangent at the start, a cos t + b sin t from the centre: (c x b) cos t - (c x a) sin t + a x b = 0.
 */
function level(piece: Piece, from: Vec3): readonly number[] {
  if (piece.kind === 'line') return [];
  const { centre, radius, startTangent, angle } = piece;
  const cross = (one: Vec3, other: Vec3): number => one[0] * other[2] - one[2] * other[0];
  const off = subtract(centre, from);
  const a = subtract(piece.from, centre);
  const b: Vec3 = [startTangent[0] * radius, startTangent[1] * radius, startTangent[2] * radius];
  const [cosine, sine, rest] = [cross(off, b), -cross(off, a), cross(a, b)];
  const size = Math.hypot(cosine, sine);
  if (size <= Math.abs(rest)) return [];
  const [turn, away] = [Math.atan2(sine, cosine), Math.acos(-rest / size)];
  return [turn - away, turn + away]
    .flatMap((each) => [each - 2 * Math.PI, each, each + 2 * Math.PI])
    .filter((each) => each > 0 && each < angle)
    .map((each) => each * radius);
}

/** Of unit length, square to the line, seen from the side. */
function upFrom(from: Vec3, to: Vec3): Vec3 {
  const [x, z] = [to[0] - from[0], to[2] - from[2]];
  const sense = Math.sign(x) / Math.hypot(x, z);
  return [-z * sense, 0, x * sense];
}
