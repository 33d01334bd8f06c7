/**
 * The least distance from a box to the outside of a coped tube, and where; negative when one is inside the other: then the deepest
 * place of either's outside inside the other. The same as between two tubes, with a box for one of them (docs/maths/clearance.md).
 */
import { placeOnPiece, type Piece } from '../geometry/path.ts';
import { distanceToBox, nearestToBox, signedDistanceToBox, type SolidBox } from '../geometry/solid-box.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, dot, scale, type Vec3 } from '../geometry/vector.ts';
import { chainOf } from './chain.ts';
import { ballOfCut, faceProbe } from './cut-face.ts';
import { deepestOf, flatFace, TOLERANCE, type Deepest, type Face, type Span } from './deepest.ts';
import { deepestOfFaces, deepestOfRims } from './faces.ts';
import { leastOnChain } from './least-on-chain.ts';
import { wallStands, type Outside } from './outside.ts';
import { boxSolid, depthIn, tubeSolid, wayOutOf, type Solid } from './solid.ts';

/** How near a box and a tube's outside are, mm, and the place on each. */
export interface NearestToTube {
  readonly distance: number;
  readonly onTube: Vec3;
  readonly onBox: Vec3;
}

/** Signed, mm: exact but for what lies in a box or is cut into, which is known to TOLERANCE. */
export function gapToBox(tube: Outside, box: SolidBox): NearestToTube {
  let best: NearestToTube | null = null;
  const least = (): number => best?.distance ?? Infinity;
  const better = (found: NearestToTube | null): void => {
    if (found !== null && found.distance < least()) best = found;
  };
  const near = tube.pieces.map((piece) => ({ piece, ...nearestToBox(piece, box) }));
  near.sort((one, other) => one.distance - other.distance);
  const floor = near[0]!.distance - tube.radius;
  for (const { piece, along, distance } of near)
    if (distance - tube.radius < least()) better(besideWall(tube, piece, along, box));
  if (least() <= floor + ROUNDING) return best!;
  if (floor < 0) {
    better(runThrough(tube, box, Math.min(least(), -TOLERANCE)));
    if (least() < 0) return best!;
  }
  const off = (p: Vec3): number => distanceToBox(p, box);
  for (const end of tube.ends) {
    const ball = ballOfCut(end);
    if (off(ball.centre) - ball.radius >= least()) continue;
    const rim = leastOnChain(chainOf(end), { value: off, floor: off }, least());
    if (rim !== null) better(fromTube(rim.at, box));
    const face = faceProbe(end, { centre: box.centre, radius: Math.hypot(...box.half) }, []);
    if (face === null) continue;
    for (const corner of cornersOf(box)) {
      const before = face.value(corner);
      if (before < least()) better({ distance: before, onTube: corner, onBox: corner });
    }
  }
  return best!;
}

/** mm a mm: where the distance to the box changes by no more than this along a centreline, the box stands straight beside it. */
const BESIDE = 1e-6;
/** mm. The nearest place of a piece is known in its distance; along the piece it may lie off by so much, and more where the box is far. */
const FIRST_STEP = 1e-4;
/** mm: nearer to one another than this two places along a piece are one. */
const SAME = 1e-12;

/** Of the distance to the box along the piece. */
function slopeAlong(piece: Piece, along: number, box: SolidBox): number {
  const { point, tangent } = placeOnPiece(piece, along);
  return dot(signedDistanceToBox(point, box).gradient, tangent);
}

/** Where, at the nearest place of a piece, the box stands straight beside it, mm along it; null where that is an end past which it would go on nearer. */
function straightBeside(piece: Piece, nearest: number, box: SolidBox): number | null {
  const slope = slopeAlong(piece, nearest, box);
  if (Math.abs(slope) <= BESIDE) return nearest;
  const way = slope > 0 ? -1 : 1;
  let [near, far] = [nearest, nearest];
  for (let step = FIRST_STEP; ; step *= 2) {
    near = far;
    far = Math.min(Math.max(nearest + way * step, 0), piece.length);
    if (slopeAlong(piece, far, box) * way >= 0) break;
    if (far === 0 || far === piece.length) return null;
  }
  while (Math.abs(far - near) > SAME) {
    const middle = (near + far) / 2;
    const there = slopeAlong(piece, middle, box);
    if (Math.abs(there) <= BESIDE) return middle;
    if (there * way < 0) near = middle;
    else far = middle;
  }
  return far;
}

/** From the wall straight to the box; null where it is not straight beside it, or is cut away, or the axis is in the box. */
function besideWall(tube: Outside, piece: Piece, nearest: number, box: SolidBox): NearestToTube | null {
  const along = straightBeside(piece, nearest, box);
  if (along === null) return null;
  const { point, at } = placeOnPiece(piece, along);
  const { distance, gradient } = signedDistanceToBox(point, box);
  if (distance < 0) return null;
  const towards = scale(gradient, -1);
  if (!wallStands(tube, at, towards)) return null;
  const gap = distance - tube.radius;
  const onBox = addScaled(point, towards, distance);
  // A place of the box within the bar is as deep in the tube as in the bar, unless a cut is nearer.
  if (gap < 0 && depthIn(tubeSolid(tube), onBox) > gap + ROUNDING) return null;
  return { distance: gap, onTube: addScaled(point, towards, tube.radius), onBox };
}

const fromTube = (at: Vec3, box: SolidBox): NearestToTube => {
  const { distance, gradient } = signedDistanceToBox(at, box);
  return { distance, onTube: at, onBox: addScaled(at, gradient, -distance) };
};

/** The deepest place of either inside the other, if deeper than `below`; else null. */
function runThrough(tube: Outside, box: SolidBox, below: number): NearestToTube | null {
  const [ofTube, ofBox] = [tubeSolid(tube), boxSolid(box)];
  const parts = new Map<Piece, Span>(tube.pieces.map((piece) => [piece, [0, piece.length]]));
  const rims = deepestOfRims(tube, ofBox, below);
  const walls = deepestOfFaces(tube, parts, ofBox, rims?.value ?? below) ?? rims;
  const faces = deepestOf(sidesOfBox(box), ofTube, walls?.value ?? below);
  if (faces !== null) return wayOut(faces, ofTube);
  return walls === null ? null : fromTube(walls.at, box);
}

function wayOut({ value, at }: Deepest, solid: Solid): NearestToTube {
  return { distance: value, onTube: wayOutOf(solid, at, value), onBox: at };
}

const SIDES = [0, 1, 2].flatMap((axis) => [-1, 1].map((side) => ({ axis, side })));

const sidesOfBox = ({ centre, half, axes }: SolidBox): readonly Face[] =>
  SIDES.map(({ axis, side }) => {
    const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
    const middle = addScaled(centre, axes[axis]!, side * half[axis]!);
    return flatFace(middle, [axes[u]!, axes[v]!], [half[u]!, half[v]!]);
  });

const cornersOf = ({ centre, half, axes }: SolidBox): readonly Vec3[] =>
  [-1, 1].flatMap((x) =>
    [-1, 1].flatMap((y) =>
      [-1, 1].map((z) =>
        addScaled(addScaled(addScaled(centre, axes[0], x * half[0]), axes[1], y * half[1]), axes[2], z * half[2]),
      ),
    ),
  );
