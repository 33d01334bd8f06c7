/** What it comes to that points were measured again: how far they moved, which tubes come out otherwise by it, and which are held as they were made and do not. */
import { distance } from '../geometry/vector.ts';
import type { PointId } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { changedTubes, TELLS, type TubeChange } from './changed-tubes.ts';
import { UNSEEN } from './limits.ts';

export interface MovedPoint {
  readonly point: PointId;
  /** mm. */
  readonly by: number;
}

export interface SurveyMoves {
  /** By more than a tape tells, the farthest first. */
  readonly points: readonly MovedPoint[];
  /** In build order. */
  readonly follow: readonly TubeChange[];
  /** Tubes that are made and stay as they are, though drawn they would be otherwise: by how much. */
  readonly held: readonly TubeChange[];
}

/** Points and tubes that only one of the two has are left out. */
export function surveyMoves(before: Frame, after: Frame): SurveyMoves {
  const was = new Map(before.job.points.map(({ id, position }) => [id, position]));
  const points = after.job.points
    .flatMap(({ id, position }): readonly MovedPoint[] => {
      const there = was.get(id);
      const by = there === undefined ? 0 : distance(there, position);
      return by > Math.max(TELLS, UNSEEN) ? [{ point: id, by }] : [];
    })
    .toSorted((a, b) => b.by - a.by);
  const isMade = ({ asDrawn }: SolvedTube): boolean => asDrawn !== null;
  const drawn = (tubes: readonly SolvedTube[]): readonly SolvedTube[] =>
    tubes.flatMap(({ asDrawn }) => (asDrawn === null ? [] : [asDrawn]));
  return {
    points,
    follow: changedTubes(before, { tubes: after.tubes.filter((tube) => !isMade(tube)) }),
    held: changedTubes(
      { byId: new Map(drawn(before.tubes).map((tube) => [tube.id, tube])) },
      { tubes: drawn(after.tubes) },
    ),
  };
}
