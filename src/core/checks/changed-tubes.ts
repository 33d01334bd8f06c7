/** Which tubes come out otherwise in one frame than in another: by how much their blanks, ends and bends differ. What no tape or file tells is no change. */
import { toRadians, wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

export interface TubeChange {
  readonly tube: TubeRef;
  /** How much longer its blank is, mm. */
  readonly blank: number;
  /** By how much the cut at end A and at end B differs where it differs most, once laid tip on tip, mm. */
  readonly ends: readonly [number, number];
  /** By how much a bend or the turn before it differs, at the most; null where it has another number of bends. */
  readonly bends: Radians | null;
}

/** mm, and radians: 0.05 degrees. Less is no change. */
export const TELLS = 0.05;
const TELLS_ANGLE: Radians = toRadians(0.05);

/** In build order; tubes that only one of both has are left out. */
export const changedTubes = (before: Pick<Frame, 'byId'>, after: Pick<Frame, 'tubes'>): readonly TubeChange[] =>
  after.tubes.flatMap((tube) => {
    const was = before.byId.get(tube.id);
    if (was === undefined || was === tube) return [];
    const change = changeOf(was, tube);
    return isNone(change) ? [] : [change];
  });

const isNone = ({ blank, ends, bends }: TubeChange): boolean =>
  Math.abs(blank) <= TELLS && ends.every((by) => by <= TELLS) && bends !== null && bends <= TELLS_ANGLE;

const changeOf = (was: SolvedTube, now: SolvedTube): TubeChange => ({
  tube: now.id,
  blank: now.blankLength - was.blankLength,
  ends: [endChange(was.ends[0], now.ends[0]), endChange(was.ends[1], now.ends[1])],
  bends: was.bends.length === now.bends.length ? bendChange(was, now) : null,
});

/** What is laid tip on tip is the wrap: it is wrong paper where this is not nothing. */
function endChange(was: TubeEnd, now: TubeEnd): number {
  let most = 0;
  now.outer.forEach((trim, phi) => {
    const before = was.outer[phi]!;
    if (Number.isNaN(trim) !== Number.isNaN(before)) most = Infinity;
    const by = Math.abs(trim - (now.tip ?? 0) - (before - (was.tip ?? 0)));
    if (by > most) most = by;
  });
  return most;
}

const bendChange = (was: SolvedTube, now: SolvedTube): Radians =>
  Math.max(
    0,
    ...now.bends.flatMap(({ angle, rotation }, i) => [
      Math.abs(angle - was.bends[i]!.angle),
      Math.abs(wrapHalfTurn(rotation - was.bends[i]!.rotation)),
    ]),
  );
