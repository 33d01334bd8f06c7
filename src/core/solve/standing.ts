/**
 * A tube that was made, and that others are to follow, in its place in the frame: the shape that it came out with, laid where its two ends and
 * sharp corners come nearest to the drawn ones (least squares, equal weights), or where it was measured in the car. Its ends are then no longer at the
 * nodes of its path.
 */
import { normalize } from '../geometry/vector.ts';
import { DOUBLES_BACK } from '../geometry/tolerance.ts';
import { moved, turned } from '../geometry/rigid-motion.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { Die } from '../job/kinds/die.ts';
import { STAGES, type MadeTube } from '../job/kinds/made.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { asBuilt, asDrawnThen, asStanding, type PlannedTube } from './as-built.ts';
import type { Centreline } from './centreline.ts';
import { heldAt, type Held } from './held.ts';
import { rolledCentreline, startOf } from './rolled-centreline.ts';
import { sameFigures, seated, seatFigures, type SeatFigure } from './seat.ts';

/** What is known of a tube that is made, in part or whole: the run that it is to stand by, and how far it is made. */
export interface Built {
  readonly run?: BentTube;
  readonly made?: MadeTube;
  /** Where it was measured in the car. */
  readonly seat?: readonly SeatFigure[];
}

/** By tube. */
export type BuiltTubes = ReadonlyMap<TubeRef, Built>;

/** Of a frame as it is drawn. */
export const NOTHING_BUILT: BuiltTubes = new Map();

/** Of the job: tubes that stand as they were bent, and those that are cut. */
export function builtIn({ bent, made, points }: Pick<Job, 'bent' | 'made' | 'points'>): BuiltTubes {
  const built = new Map<TubeRef, Built>();
  for (const run of bent) {
    if (run.stands) built.set(run.tube, run.seat === undefined ? { run } : { run, seat: seatFigures(run, points) });
  }
  for (const each of made) built.set(each.tube, { ...built.get(each.tube), made: each });
  return built.size === 0 ? NOTHING_BUILT : built;
}

/** Whether both say the same of a tube. */
export const sameBuilt = (a: Built | undefined, b: Built | undefined): boolean =>
  a?.run === b?.run && a?.made === b?.made && sameFigures(a?.seat ?? NOTHING, b?.seat ?? NOTHING);

const NOTHING: readonly SeatFigure[] = [];

/** A tube's centreline where it stands. */
export interface Standing {
  readonly centreline: Centreline;
  /** Between the nodes of its path, where it stands otherwise; else null. */
  readonly asDrawn: Centreline | null;
  /** Where it is held as it was cut; else null: its ends are those of the frame as it is. */
  readonly held: Held | null;
}

/**
 * The tube at the place of `drawn`. Once notched it is as it was cut; before that as it was bent, where it is to stand so; else as it was
 * cut, where it is. It stands as drawn where it was made with another number of bends than are drawn now: no corner of it then belongs to one
 * of the drawing; and where a bend was read that turns back on itself.
 */
export function standingOr(drawn: Centreline, die: Die | null, { run, made, seat = NOTHING }: Built = {}): Standing {
  const bent = run === undefined || isNotched(made) ? null : bentLine(drawn, die, run, seat);
  if (bent !== null) return { centreline: bent, asDrawn: drawn, held: null };
  const held = made === undefined ? null : heldAt(made, drawn, seat);
  if (held !== null) return { ...held, asDrawn: drawn };
  return { centreline: drawn, asDrawn: null, held: null };
}

/** From then on its ends are as they were cut, too. */
export const isNotched = (made: MadeTube | undefined): boolean =>
  made !== undefined && STAGES.indexOf(made.stage) >= STAGES.indexOf('notched');

function bentLine(drawn: Centreline, die: Die | null, run: BentTube, seat: readonly SeatFigure[]): Centreline | null {
  const planned = plannedFor(drawn, die, run);
  if (planned.bends.length !== drawn.bends.length) return null;
  const built = asBuilt(planned, asStanding(die), run);
  // No corner stands for such a bend.
  if (built.bends.some(({ angle }) => angle > DOUBLES_BACK)) return null;
  const start = startOf(drawn);
  const motion = seated(rolledCentreline(start, built), drawn.corners, seat);
  const laid = {
    position: moved(motion, start.position),
    direction: normalize(turned(motion, start.direction)),
    normal: normalize(turned(motion, start.normal)),
  };
  return { route: drawn.route, ...rolledCentreline(laid, built) };
}

/** As it was drawn when its run began; where that was not kept, as it is drawn now. */
const plannedFor = (drawn: Centreline, die: Die | null, { drawn: then }: BentTube): PlannedTube =>
  (then === undefined ? null : asDrawnThen(then, then.die?.centrelineRadius ?? die?.centrelineRadius ?? 0)) ?? drawn;
