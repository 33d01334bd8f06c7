/**
 * How near two tubes that do not run into each other come at their ends: from the edge of a cut to the other's wall, edges and faces,
 * and from a bend to a flat cut that it passes before.
 */
import { distanceTo, foot, setFoot } from '../geometry/foot.ts';
import { nearestOnPiece, type Piece } from '../geometry/path.ts';
import { addScaled, distance, type Vec3 } from '../geometry/vector.ts';
import { chainOf } from './chain.ts';
import { nearestOfChains } from './chains-apart.ts';
import { ballOfCut, bulgeBefore, faceProbe, type BallOfCut } from './cut-face.ts';
import { leastOnChain, type Probe } from './least-on-chain.ts';
import { wallStands, type Outside } from './outside.ts';
import { awayFrom } from './solid.ts';
import type { NearestOutsides } from './tube-gap.ts';

/** The nearest of all that begins or ends at a cut, if nearer than `below` mm; else null. */
export function nearestAtEnds(a: Outside, b: Outside, below: number): NearestOutsides | null {
  let best: NearestOutsides | null = null;
  const least = (): number => best?.distance ?? below;
  const take = (distance: number, on: Vec3, other: Vec3, isOnA: boolean): void => {
    if (distance < least()) best = { distance, onA: isOnA ? on : other, onB: isOnA ? other : on };
  };
  for (const [tube, other, isOnA] of [
    [a, b, true],
    [b, a, false],
  ] as const) {
    for (const end of tube.ends) {
      const ball = ballOfCut(end);
      const pieces = piecesWithin(other.pieces, ball, least() + other.radius);
      if (pieces.length === 0) continue;
      const onRim = leastOnChain(chainOf(end), wallProbe(other, pieces), least());
      if (onRim !== null) take(onRim.value, onRim.at, footOn(other, onRim.at), isOnA);
      for (const piece of pieces) {
        const bulge = piece.kind === 'arc' ? bulgeBefore(end, piece, other.radius) : null;
        if (bulge !== null) take(bulge.off, bulge.onFace, bulge.at, isOnA);
      }
      for (const otherEnd of other.ends) {
        const otherBall = ballOfCut(otherEnd);
        if (distance(ball.centre, otherBall.centre) - ball.radius - otherBall.radius >= least()) continue;
        if (isOnA) {
          const rims = nearestOfChains(chainOf(end), chainOf(otherEnd), least());
          if (rims !== null) take(rims.distance, rims.onA, rims.onB, true);
        }
        const probe = faceProbe(otherEnd, ball, end.end.cutter.sleeves);
        const face = probe && leastOnChain(chainOf(end), probe, least());
        if (face !== null) take(face.value, face.at, face.at, isOnA);
      }
    }
  }
  return best;
}

/** mm along a centreline, as in tube-gap.ts. */
const BESIDE = 1e-6;

/** The pieces that come nearer than that to some place of the ball. */
function piecesWithin(pieces: readonly Piece[], { centre, radius }: BallOfCut, below: number): readonly Piece[] {
  return pieces.filter((piece) => {
    setFoot(piece, centre);
    return foot.apart - radius < below;
  });
}

/** From a place to the wall round these pieces of the tube, where it stands straight beside the place. */
function wallProbe(tube: Outside, pieces: readonly Piece[]): Probe {
  const { radius } = tube;
  const away: [number, number, number] = [0, 0, 0];
  return {
    value: (p) => {
      let least = NaN;
      for (const piece of pieces) {
        setFoot(piece, p);
        const { apart, at } = foot;
        // A place within the bar stands in the hollow of its cut: the wall is no way out of there.
        if (apart < radius || apart - radius >= least) continue;
        away[0] = p[0] - foot.x;
        away[1] = p[1] - foot.y;
        away[2] = p[2] - foot.z;
        if (Math.abs(away[0] * foot.tx + away[1] * foot.ty + away[2] * foot.tz) > BESIDE) continue;
        if (wallStands(tube, at, away)) least = apart - radius;
      }
      return least;
    },
    floor: (p) => distanceTo(pieces, p) - radius,
  };
}

/** The place of the wall nearest to p, where it stands. */
function footOn(tube: Outside, p: Vec3): Vec3 {
  let [nearest, least]: [Vec3, number] = [p, Infinity];
  for (const piece of tube.pieces) {
    const { point, at, distance: apart } = nearestOnPiece(piece, p);
    const towards = awayFrom(point, p);
    if (apart >= least || !wallStands(tube, at, towards)) continue;
    [nearest, least] = [addScaled(point, towards, tube.radius), apart];
  }
  return nearest;
}
