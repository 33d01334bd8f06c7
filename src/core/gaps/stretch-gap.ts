/**
 * The least distance from a place, or from a straight stretch between two, to the outside of a coped tube, and where; negative inside: then
 * the deepest place of the stretch. The same as between two tubes, with a line of no thickness for one of them (docs/maths/trim.md).
 */
import { foot, setFoot } from '../geometry/foot.ts';
import { nearPlaces } from '../geometry/near-places.ts';
import { linePiece, nearestOnPiece, placeOnPiece, type LinePiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, distance, dot, subtract, type Vec3 } from '../geometry/vector.ts';
import { chainOf } from './chain.ts';
import { ballOfCut, faceProbe, placeOnFace, type BallOfCut } from './cut-face.ts';
import { axisLine, deepestOf } from './deepest.ts';
import { leastOnChain, type LeastOnChain, type Probe } from './least-on-chain.ts';
import { wallStands, type Outside, type OutsideEnd } from './outside.ts';
import { depthIn, tubeSolid, wayOutOf } from './solid.ts';
import { squareTo } from './tube-gap.ts';

/** From one place to another; `line` is null where both are one. */
export interface Stretch {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly line: LinePiece | null;
}

/** How near they are, mm, and the place on each. */
export interface NearestToStretch {
  readonly distance: number;
  readonly onTube: Vec3;
  readonly onStretch: Vec3;
}

/** The stretch from one place to another, or the one place. */
export const stretchBetween = (from: Vec3, to: Vec3): Stretch => ({
  from,
  to,
  line: distance(from, to) <= ROUNDING ? null : linePiece(from, to, 0),
});

/** A place on the tube's centreline and the nearest on the stretch. */
interface Near {
  readonly distance: number;
  readonly onAxis: Vec3;
  readonly tangent: Vec3;
  /** Developed length. */
  readonly at: number;
  readonly onStretch: Vec3;
}

/** mm along a centreline: a place this near to where the stretch is straight beside it is that place. */
const BESIDE = 1e-6;

/**
 * Signed, mm; null where it cannot be less than `below`. Exact but for rims, which are chains, and for stretches that run into the
 * tube at its cuts, whose depth is known to TOLERANCE. What comes back does not hang on `below`.
 */
export function gapToStretch(tube: Outside, stretch: Stretch, below: number): NearestToStretch | null {
  let best: NearestToStretch | null = null;
  let nearest: Near | null = null;
  const least = (): number => best?.distance ?? Infinity;
  const better = (found: NearestToStretch | null): void => {
    if (found !== null && found.distance < least()) best = found;
  };
  // Straights are in closed form, and spare most of the search along bends.
  for (const kind of ['line', 'arc'] as const) {
    for (const piece of tube.pieces) {
      if (piece.kind !== kind) continue;
      visitNear(piece, stretch, Math.min(below, least()) + tube.radius, (near) => {
        if (nearest === null || near.distance < nearest.distance) nearest = near;
        better(besideWall(tube, near));
      });
    }
  }
  if (nearest === null) return null;
  const floor = (nearest as Near).distance - tube.radius;
  if (least() <= floor + ROUNDING) return best;
  const inside = floor < 0 ? deepestInside(tube, stretch, nearest) : null;
  if (inside !== null) return inside;
  const off = ({ centre, radius }: BallOfCut): number => distance(nearestOn(stretch, centre), centre) - radius;
  const ends = tube.ends.map((end) => ({ end, floor: off(ballOfCut(end)) }));
  for (const { end, floor: before } of ends.toSorted((one, other) => one.floor - other.floor)) {
    if (before >= least()) break;
    better(toRim(end, stretch, least()));
    better(toFace(end, stretch, least()));
  }
  return best;
}

/** The place of the stretch nearest to p. */
const nearestOn = ({ from, line }: Stretch, p: Vec3): Vec3 => (line === null ? from : nearestOnPiece(line, p).point);

/** Every least place of a piece that is nearer than `below`. */
function visitNear(piece: Piece, { from, line }: Stretch, below: number, visit: (near: Near) => void): void {
  const give = (apart: number, along: number, onStretch: Vec3): void => {
    const { point, tangent, at } = placeOnPiece(piece, along);
    visit({ distance: apart, onAxis: point, tangent, at, onStretch });
  };
  if (line === null) {
    setFoot(piece, from);
    if (foot.apart < below) give(foot.apart, foot.at - piece.at, from);
  } else {
    nearPlaces(piece, line, below, ({ distance: apart, alongA, alongB }) =>
      give(apart, alongA, placeOnPiece(line, alongB).point),
    );
  }
}

/** Straight to the wall; null where that is not straight beside it, or is cut away, or is in the bar. */
function besideWall(tube: Outside, { distance: apart, onAxis, tangent, at, onStretch }: Near): NearestToStretch | null {
  const towards = subtract(onStretch, onAxis);
  if (apart < tube.radius || Math.abs(dot(towards, tangent)) > BESIDE) return null;
  if (!wallStands(tube, at, towards)) return null;
  return { distance: apart - tube.radius, onTube: addScaled(onAxis, towards, tube.radius / apart), onStretch };
}

/** The deepest place in the tube; null where the stretch does not come into it. */
function deepestInside(tube: Outside, { line }: Stretch, near: Near): NearestToStretch | null {
  const solid = tubeSolid(tube);
  const value = depthIn(solid, near.onStretch);
  // Nothing of it is nearer to the axis: as deep as that it is nowhere deeper.
  if (line === null || value <= near.distance - tube.radius + ROUNDING) {
    return value < 0 ? wayOut(tube, line, near, value) : null;
  }
  const deepest = deepestOf([axisLine(line, [0, line.length])], solid, Math.min(value, 0));
  if (deepest === null) return value < 0 ? wayOut(tube, line, near, value) : null;
  const { at } = deepest;
  return { distance: deepest.value, onTube: wayOutOf(solid, at, deepest.value), onStretch: at };
}

/** mm from the axis: from a place this near to it every way out is as long. */
const ON_AXIS = 1e-6;

function wayOut(tube: Outside, line: LinePiece | null, near: Near, value: number): NearestToStretch {
  const { distance: apart, tangent, onStretch } = near;
  const onTube =
    apart > ON_AXIS
      ? wayOutOf(tubeSolid(tube), onStretch, value)
      : addScaled(onStretch, squareTo(tangent, line?.startTangent ?? tangent), -value);
  return { distance: value, onTube, onStretch };
}

function toRim(end: OutsideEnd, stretch: Stretch, below: number): NearestToStretch | null {
  const off = (p: Vec3): number => distance(p, nearestOn(stretch, p));
  const rim = leastOnChain(chainOf(end), { value: off, floor: off }, below);
  return rim && { distance: rim.value, onTube: rim.at, onStretch: nearestOn(stretch, rim.at) };
}

/** mm: how finely a stretch is looked along before the face of a cut. What it comes to there between its ends bends no more than a bend of tube does. */
const STEP = 8;

/** Straight before the face of a cut: of a stretch, looked along as far as it comes that near to the cut. */
function toFace(end: OutsideEnd, stretch: Stretch, below: number): NearestToStretch | null {
  const { centre, radius } = ballOfCut(end);
  const middle = nearestOn(stretch, centre);
  const half = Math.sqrt(Math.max(0, (radius + below) ** 2 - distance(middle, centre) ** 2));
  const probe = faceProbe(end, { centre: middle, radius: half }, []);
  const face = probe && leastAlong(stretch, middle, half, probe, below);
  return face && { distance: face.value, onTube: placeOnFace(end, face.at, face.value), onStretch: face.at };
}

/** Of the stretch within `half` mm of a place on it, in steps that are counted from where it begins; from the least on, in ever smaller ones. */
function leastAlong(
  { from, line }: Stretch,
  middle: Vec3,
  half: number,
  { value, floor }: Probe,
  below: number,
): LeastOnChain | null {
  let [least, along] = [below, -1];
  const placeAt = (at: number): Vec3 => (line === null ? from : addScaled(from, line.startTangent, at));
  const look = (at: number): void => {
    const p = placeAt(at);
    const here = floor(p) < least ? value(p) : NaN;
    if (here < least) [least, along] = [here, at];
  };
  const length = line?.length ?? 0;
  const at = distance(from, middle);
  const last = Math.ceil(Math.min(length, at + half) / STEP);
  for (let k = Math.max(0, Math.floor((at - half) / STEP)); k <= last; k++) look(Math.min(k * STEP, length));
  if (along < 0) return null;
  for (let step = STEP / 2; step > CLOSE; step /= 2) {
    const middleNow = along;
    for (const next of [middleNow - step, middleNow + step]) if (next >= 0 && next <= length) look(next);
  }
  return { value: least, at: placeAt(along) };
}

/** mm along a stretch: so near the least before a face is closed in on. */
const CLOSE = 1e-6;
