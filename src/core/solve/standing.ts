/**
 * A tube that was bent, and that others are to follow, in its place in the frame: the shape that it came out with, laid where its two ends and
 * sharp corners come nearest to the drawn ones (least squares, equal weights). Its ends are then no longer at the nodes of its path.
 */
import { cross, normalize, subtract, X_AXIS, Y_AXIS, type Vec3 } from '../geometry/vector.ts';
import { moved, rigidFit, turned } from '../geometry/rigid-motion.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { Die } from '../job/kinds/die.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { asBuilt, asDrawnThen, type PlannedTube } from './as-built.ts';
import type { Centreline } from './centreline.ts';
import type { RollStart } from './roll-out.ts';
import { rolledCentreline } from './rolled-centreline.ts';

/** The runs of tubes that are to stand as they were bent, by tube. */
export type Built = ReadonlyMap<TubeRef, BentTube>;

/** Of a frame as it is drawn. */
export const NOTHING_BUILT: Built = new Map();

/** Of the job: the runs that say so. */
export function builtIn({ bent }: Pick<Job, 'bent'>): Built {
  const standing = bent.filter(({ stands }) => stands);
  return standing.length === 0 ? NOTHING_BUILT : new Map(standing.map((run) => [run.tube, run]));
}

/** A centreline, and the one between the nodes of its path where that is another. */
export interface Standing {
  readonly centreline: Centreline;
  readonly asDrawn: Centreline | null;
}

/**
 * The tube as it was built at the place of `drawn`, where there is a run that it is to stand by. It stands as drawn where it was bent with
 * another number of bends than are drawn now: no corner of it then belongs to one of the drawing.
 */
export function standingOr(drawn: Centreline, die: Die | null, run: BentTube | undefined): Standing {
  const planned = run === undefined ? null : plannedFor(drawn, die, run);
  if (planned === null || planned.bends.length !== drawn.bends.length) return { centreline: drawn, asDrawn: null };
  const built = asBuilt(planned, die, run!);
  const start = startOf(drawn);
  const motion = rigidFit(rolledCentreline(start, built).corners, drawn.corners);
  const laid = {
    position: moved(motion, start.position),
    direction: normalize(turned(motion, start.direction)),
    normal: normalize(turned(motion, start.normal)),
  };
  return { centreline: { route: drawn.route, ...rolledCentreline(laid, built) }, asDrawn: drawn };
}

/** As it was drawn when its run began; where that was not kept, as it is drawn now. */
const plannedFor = (drawn: Centreline, die: Die | null, { drawn: then }: BentTube): PlannedTube =>
  (then === undefined ? null : asDrawnThen(then, then.die?.centrelineRadius ?? die?.centrelineRadius ?? 0)) ?? drawn;

function startOf({ corners, bends }: Centreline): RollStart {
  const direction = normalize(subtract(corners[1]!, corners[0]!));
  return { position: corners[0]!, direction, normal: bends[0]?.normal ?? squareTo(direction) };
}

/** Of a straight tube any will do. */
const squareTo = (direction: Vec3): Vec3 => normalize(cross(direction, Math.abs(direction[0]) < 0.5 ? X_AXIS : Y_AXIS));
