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

/** What is held, as a datum: laid by it again, the very same is held. Null where no datum is what is held. */
export function datumOf({ holds, survey }: Laying): Datum | null {
  const [a, b, c] = holds.filter(({ axis }) => axis === 'z');
  const [one, two] = holds.filter(({ axis }) => axis === 'y');
  const [zero] = holds.filter(({ axis }) => axis === 'x');
  if (!survey?.askew || holds.length !== DATUM_FIGURES || !a || !b || !c || !one || !two || !zero) return null;
  if (a.value !== b.value || b.value !== c.value || one.value !== 0 || two.value !== 0) return null;
  if ([a, b, c, zero].some(({ and }) => and !== undefined)) return null;
  const centreOf = ({ point, and }: Hold): Centre => (and === undefined ? [point] : [point, and]);
  return {
    level: [a.point, b.point, c.point],
    height: a.value,
    centre: [centreOf(one), centreOf(two)],
    zero: zero.point,
    station: zero.value,
  };
}

type Laying = Pick<Job, 'holds' | 'survey'>;

/** So many coordinates lay the axes: fewer leave the car loose in them. */
export const DATUM_FIGURES = 6;

/** How many are held of a car that stands askew, where they are too few; else null. */
export const tooFewHeld = ({ holds, survey }: Laying): number | null =>
  survey?.askew === true && holds.length < DATUM_FIGURES ? holds.length : null;

/** What is held that no datum laid: the axes laid or taken otherwise let it go. */
export const heldOtherwise = (job: Laying): readonly Hold[] => (datumOf(job) === null ? job.holds : []);

/** Of a car that stands askew what says where its axes are by these points: it goes with them. */
export const laidBy = ({ holds, survey }: Laying, points: ReadonlySet<PointId>): readonly Hold[] =>
  survey?.askew === true
    ? holds.filter(({ point, and }) => points.has(bareId(point)) || points.has(bareId(and ?? point)))
    : [];
