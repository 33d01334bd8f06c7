/**
 * Where a place on a branch's end comes to lie on the run tube that it is fitted to: along it from its tip A, and
 * about its axis. So a line can be struck on the run tube before the branch is held against it.
 *
 * About the run tube's axis is right-hand about its feed, A to B: clockwise as one looks from A towards B. It is counted from
 * the inside of the run tube's nearest bend; on a straight one from the line scribed along it, its reference.
 */
import { signedAngle, type Radians } from '../geometry/angle.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, normalize, rejectFrom, rotateAbout, subtract, type Vec3 } from '../geometry/vector.ts';
import { landedOn } from '../solve/bar-tubes.ts';
import type { Bend, Cut, Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

export interface Landing {
  readonly runTube: SolvedTube;
  /** mm along the run tube's developed length from its finished tip A, what is left long there off; negative beyond it. */
  readonly fromTipA: number;
  /** (-pi, pi]. */
  readonly turn: Radians;
  /** The bend that `turn` counts from, 1 = first from end A; null on a straight run tube. */
  readonly bend: number | null;
  /** mm from that bend's nearer tangent; negative inside the bend. 0 on a straight run tube. */
  readonly fromTangent: number;
  /** Whether that tangent is the start or the end of the bend, as it is fed from A. */
  readonly tangent: 'start' | 'end';
}

/** Of the run tubes that this end is cut to, the one whose surface the place lies on; null at an end that is cut to none. */
export function landingOf(frame: Frame, tube: SolvedTube, which: 0 | 1, place: Vec3): Landing | null {
  const met = tube.ends[which].cuts.map((cut) => {
    const runTube = landedOn(frame.byId, cut);
    const nearest = nearestOnPath(runTube.path, place, true);
    return { runTube, off: Math.abs(nearest.distance - runTube.section.outerDiameter / 2) };
  });
  if (met.length === 0) return null;
  const { runTube } = met.reduce((best, each) => (each.off < best.off - ROUNDING ? each : best));
  return landingOn(runTube, place);
}

/** Where the middle of a joint comes to lie: the place of the run tube nearest the end's node, on the side that the branch comes from. */
export function middleOf(frame: Frame, end: TubeEnd, cut: Cut): Landing {
  const runTube = landedOn(frame.byId, cut);
  const { tangent } = nearestOnPath(runTube.path, cut.landing, true);
  return landingOn(runTube, addScaled(cut.landing, normalize(rejectFrom(end.direction, tangent)), 1));
}

function landingOn(runTube: SolvedTube, place: Vec3): Landing {
  const nearest = nearestOnPath(runTube.path, place, true);
  const outwards = normalize(rejectFrom(subtract(place, nearest.point), nearest.tangent));
  const fromTipA = nearest.at - (runTube.ends[0].tip ?? 0);
  const near = nearestBend(runTube, nearest.at);
  if (near === null) {
    const turn = signedAngle(runTube.ends[0].reference, outwards, nearest.tangent);
    return { runTube, fromTipA, turn, bend: null, fromTangent: 0, tangent: 'start' };
  }
  const turn = signedAngle(insideOf(near.bend, nearest.at), outwards, nearest.tangent);
  return { runTube, fromTipA, turn, bend: near.index + 1, fromTangent: near.fromTangent, tangent: near.tangent };
}

function nearestBend(runTube: SolvedTube, at: number) {
  const measured = runTube.bends.map((bend, index) => {
    const [before, beyond] = [bend.start - at, at - bend.end];
    const tangent = before > beyond ? ('start' as const) : ('end' as const);
    return { bend, index, fromTangent: Math.max(before, beyond), tangent };
  });
  return measured.length === 0
    ? null
    : measured.reduce((best, each) => (each.fromTangent < best.fromTangent ? each : best));
}

/** From the centreline towards the inside of the bend, at a place within it or on the straights beside it. */
function insideOf(bend: Bend, at: number): Vec3 {
  const along = Math.min(Math.max(at - bend.start, 0), bend.arc);
  // From the corner both tangents look alike: the inside at the start, turned with the tube.
  const towards = normalize(subtract(bend.centre, bend.corner));
  return rotateAbout(towards, bend.normal, along / bend.radius - bend.angle / 2);
}
