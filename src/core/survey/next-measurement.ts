/**
 * Which one more measurement would tell most about a point: the one along which least is known of it, against how finely it reads. To first order, with
 * what is known of either point taken as if each stood by itself (information of a reading, Pukelsheim, Optimal Design of Experiments; memory). What is
 * open by hardly anything along an axis is hardly told by it, so that counts too.
 */
import { distance, dot, normalize, ORIGIN, subtract, type Axis, type Vec3 } from '../geometry/vector.ts';
import { FIRST_SIGMA } from '../job/kinds/measurement.ts';
import type { PointId } from '../job/reference.ts';
import type { Adjusted } from './adjust.ts';
import { measuredPoints } from './measured-points.ts';
import type { Surveyed } from './network.ts';

export type NextMeasurement =
  | { readonly kind: 'coordinate'; readonly point: PointId; readonly axis: Axis }
  | { readonly kind: 'distance'; readonly point: PointId; readonly to: PointId };

/** mm. What a tape of a shop is held taut over. */
const TAPE_REACH = 5000;

/** mm. What nothing fixes may be off by anything; so much more than a car is long counts as that. */
const OPEN = 1e6;

/** Null where the point is not of those that come of measurements. */
export function nextMeasurement(surveyed: Surveyed, adjusted: Adjusted, point: PointId): NextMeasurement | null {
  const points = measuredPoints(surveyed);
  const at = new Map(points.map(({ id, position }) => [id, position]));
  const own = adjusted.points.find(({ id }) => id === point);
  if (own === undefined) return null;
  const covariance = withOpen(adjusted, point);
  const axes = (['x', 'y', 'z'] as const).map((axis, k) => ({
    next: { kind: 'coordinate', point, axis } as const,
    slope: [0, 1, 2].map((i) => (i === k ? 1 : 0)) as unknown as Vec3,
    noise: FIRST_SIGMA.coordinate ** 2,
  }));
  const tapes = points.flatMap(({ id, position }) => {
    const span = distance(position, own.position);
    if (id === point || span > TAPE_REACH || span === 0) return [];
    const slope = normalize(subtract(own.position, at.get(id)!));
    const others = varianceAlong(withOpen(adjusted, id), slope);
    return [{ next: { kind: 'distance', point, to: id } as const, slope, noise: FIRST_SIGMA.distance ** 2 + others }];
  });
  const tells = ({ slope, noise }: (typeof axes)[number] | (typeof tapes)[number]): number =>
    varianceAlong(covariance, slope) / noise;
  const [rule, tape] = [axes, tapes].map((all) =>
    all.reduce<(typeof all)[number] | null>(
      (best, one) => (best === null || tells(one) > tells(best) ? one : best),
      null,
    ),
  );
  // Of two that tell much the same, what a rule reads is the easier.
  return tape && tells(tape) > BETTER * tells(rule!) ? tape.next : rule!.next;
}

/** In deviations squared: a tape that does not tell twice as finely is not worth the trouble. */
const BETTER = 4;

type Rows = readonly [Vec3, Vec3, Vec3];

/** What is known of a point, and along what nothing fixes next to nothing; of a typed one, all. */
function withOpen({ points, loose }: Adjusted, point: PointId): Rows {
  const own = points.find(({ id }) => id === point);
  const base = own === undefined ? NOTHING : own.covariance;
  const open = loose.filter((each) => each.point === point).map(({ direction }) => direction);
  return [0, 1, 2].map((i) =>
    [0, 1, 2].map((k) => open.reduce((sum, way) => sum + OPEN ** 2 * way[i]! * way[k]!, base[i]![k]!)),
  ) as unknown as Rows;
}

const NOTHING: Rows = [ORIGIN, ORIGIN, ORIGIN];

const times = (rows: Rows, by: Vec3): Vec3 => [dot(rows[0], by), dot(rows[1], by), dot(rows[2], by)];

const varianceAlong = (rows: Rows, way: Vec3): number => dot(way, times(rows, way));
