/**
 * Where the car's own axes are, for a car that does not stand square to the lines it was measured from: a level plane through three points, the
 * centre line through two places, zero along the car at a point. Six coordinates are held for it, no more than it takes, so no tape is strained.
 */
import { bareId, type PointId } from '../job/reference.ts';
import type { Hold } from '../job/kinds/hold.ts';
import type { Job } from '../job/types.ts';

/** A point on the centre plane, or the middle of two on either side. */
export type Centre = readonly [PointId] | readonly [PointId, PointId];

export interface Datum {
  readonly level: readonly [PointId, PointId, PointId];
  /** mm: of the three. */
  readonly height: number;
  readonly centre: readonly [Centre, Centre];
  readonly zero: PointId;
  /** mm along the car: of that point. */
  readonly station: number;
}

/** Why points make no datum. */
export type NoDatum = 'level-twice' | 'centre-twice' | 'not-measured';

/** Null where they do. Whether three lie on one line, or the two middles in one place, shows in what then is loose. */
export function datumTrouble(job: Job, { level, centre, zero }: Datum): NoDatum | null {
  if (new Set(level).size < 3) return 'level-twice';
  if (new Set(centre.flat()).size < centre.flat().length) return 'centre-twice';
  const measured = new Set(job.points.filter(({ by }) => by === 'survey').map(({ id }) => id));
  const needed = [...level, ...centre.flat(), zero];
  return needed.every((id) => measured.has(bareId(id))) ? null : 'not-measured';
}

/** What is held, as a datum; null where it was not laid by one. */
export function datumOf({ holds, survey }: Pick<Job, 'holds' | 'survey'>): Datum | null {
  const [a, b, c] = holds.filter(({ axis }) => axis === 'z');
  const [one, two] = holds.filter(({ axis }) => axis === 'y');
  const [zero] = holds.filter(({ axis }) => axis === 'x');
  if (!survey?.askew || holds.length !== 6 || !a || !b || !c || !one || !two || !zero) return null;
  const centreOf = ({ point, and }: Hold): Centre => (and === undefined ? [point] : [point, and]);
  return {
    level: [a.point, b.point, c.point],
    height: a.value,
    centre: [centreOf(one), centreOf(two)],
    zero: zero.point,
    station: zero.value,
  };
}
