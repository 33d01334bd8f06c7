/**
 * The deepest place of a wall or a flat face inside a solid. The face is cut into cells; a cell is dropped when the floor under
 * the solid's signed distance there lies above the best found. About a cell's middle the distance goes down by its slope and, where
 * the wall or the solid is round, by a square, so that cells close in quickly and the answer is known to TOLERANCE, not sampled.
 */
import type { Piece } from '../geometry/path.ts';
import { cross, normalize, X_AXIS, Y_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { Radians } from '../geometry/angle.ts';
import { depth, type Solid } from './solid.ts';

/** A place, and how deep: negative inside. */
export interface Deepest {
  readonly value: number;
  readonly at: Vec3;
}

/** mm. The depth found is at most this much less than the greatest. */
export const TOLERANCE = 0.04;

/** The middle of a cell, and half its sides. */
interface Cell {
  readonly u: number;
  readonly v: number;
  readonly du: number;
  readonly dv: number;
}

/** A face, cut into cells: u and v in units of its own. What is asked of a cell is asked at once after `look`. */
export interface Face {
  readonly cells: readonly Cell[];
  /** mm a unit of u, and of v, at most. */
  readonly scale: readonly [number, number];
  /** Sets `spot` to the cell's middle. */
  readonly look: (cell: Cell) => void;
  /** Whether the face is there; beyond its own edges it is not. */
  readonly stands: (cell: Cell) => boolean;
  /** Whether nothing of the cell is there. */
  readonly isGone: (cell: Cell) => boolean;
  /** Sets `loss` to what the distance in `depth` loses between the middle and the cell's edge. */
  readonly setLoss: (cell: Cell) => void;
}

/** The cell's middle, and two unit vectors there, along u and along v: scratch. On a wall, the direction out of it stands between them. */
const spot: [number, number, number] = [0, 0, 0];
const alongU: [number, number, number] = [0, 0, 0];
const alongV: [number, number, number] = [0, 0, 0];
const outward: [number, number, number] = [0, 0, 0];

const slopeAlong = (way: Vec3): number => Math.abs(depth.x * way[0] + depth.y * way[1] + depth.z * way[2]);

/** What a cell loses at most, mm, and whether most of that along u: scratch. */
const loss = { most: 0, isAlongU: false };

/** Half a cell's sides, mm, and what is lost along each of them; no distance changes by more than the way. */
function setLossOf(along: number, across: number, lostAlong: number, lostAcross: number): void {
  const half = Math.sqrt(along * along + across * across);
  const lost = lostAlong + lostAcross;
  loss.most = Math.min(half, lost);
  loss.isAlongU = lost < half ? lostAlong > lostAcross : along > across;
}

/** From and to, mm along a piece from its start. */
export type Span = readonly [number, number];

/** Which part of a wall is there: at a place, and nowhere within half a length and half an angle of it. */
export interface Standing {
  readonly stands: (at: number, towards: Vec3) => boolean;
  readonly isGone: (at: number, towards: Vec3, half: number, angle: Radians) => boolean;
}

/** The wall of that radius round a piece of centreline, from and to so many mm along it. */
export function wallFace(piece: Piece, radius: number, [from, to]: Span, { stands, isGone }: Standing): Face {
  const t0 = piece.startTangent;
  const aside = normalize(cross(t0, Math.abs(t0[0]) < 0.6 ? X_AXIS : Y_AXIS));
  const side = cross(t0, aside);
  const curve = piece.kind === 'arc' ? 1 / piece.radius : 0;
  const stretch = 1 + radius * curve;
  return {
    cells: [0, 1, 2, 3].map((quarter) => ({
      u: (from + to) / 2,
      v: ((quarter + 0.5) * Math.PI) / 2,
      du: (to - from) / 2,
      dv: Math.PI / 4,
    })),
    scale: [stretch, radius],
    look: ({ u, v }) => {
      const c = Math.cos(v);
      const s = Math.sin(v);
      for (let axis = 0; axis < 3; axis++) outward[axis] = c * aside[axis]! + s * side[axis]!;
      setAlong(piece, u);
      for (let axis = 0; axis < 3; axis++) spot[axis]! += radius * outward[axis]!;
      setAround();
    },
    stands: ({ u }) => u >= from && u <= to && stands(piece.at + u, outward),
    isGone: ({ u, du, dv }) => !stands(piece.at + u, outward) && isGone(piece.at + u, outward, du, dv),
    setLoss: ({ du, dv }) => {
      const along = du * stretch;
      const round = radius * dv;
      setLossOf(
        along,
        round,
        slopeAlong(alongU) * along + ((curve + depth.bend) * along * along) / 2,
        slopeAlong(alongV) * radius * Math.sin(dv) + radius * (1 - Math.cos(dv)) + (depth.bend * round * round) / 2,
      );
    },
  };
}

/** Sets `spot` and `alongU` to the place and the tangent so far along a piece, and turns `outward` with it from its start. */
function setAlong(piece: Piece, along: number): void {
  const { from, startTangent: t } = piece;
  if (piece.kind === 'line') {
    for (let axis = 0; axis < 3; axis++) {
      spot[axis] = from[axis]! + along * t[axis]!;
      alongU[axis] = t[axis]!;
    }
    return;
  }
  const { centre, radius, normal } = piece;
  const turned = along / radius;
  const c = Math.cos(turned);
  const s = Math.sin(turned);
  let [outOfBend, square] = [0, 0];
  for (let axis = 0; axis < 3; axis++) {
    outOfBend += (outward[axis]! * (from[axis]! - centre[axis]!)) / radius;
    square += outward[axis]! * normal[axis]!;
  }
  for (let axis = 0; axis < 3; axis++) {
    const spoke = (from[axis]! - centre[axis]!) / radius;
    const turnedSpoke = c * spoke + s * t[axis]!;
    spot[axis] = centre[axis]! + radius * turnedSpoke;
    alongU[axis] = c * t[axis]! - s * spoke;
    outward[axis] = outOfBend * turnedSpoke + square * normal[axis]!;
  }
}

function setAround(): void {
  alongV[0] = alongU[1] * outward[2] - alongU[2] * outward[1];
  alongV[1] = alongU[2] * outward[0] - alongU[0] * outward[2];
  alongV[2] = alongU[0] * outward[1] - alongU[1] * outward[0];
}

/** The centreline's own piece, from and to so many mm along it. */
export function axisLine(piece: Piece, [from, to]: Span): Face {
  const curve = piece.kind === 'arc' ? 1 / piece.radius : 0;
  return {
    cells: [{ u: (from + to) / 2, v: 0, du: (to - from) / 2, dv: 0 }],
    scale: [1, 1],
    look: ({ u }) => setAlong(piece, u),
    stands: ({ u }) => u >= from && u <= to,
    isGone: () => false,
    setLoss: ({ du }) => setLossOf(du, 0, slopeAlong(alongU) * du + ((curve + depth.bend) * du * du) / 2, 0),
  };
}

/** A flat patch about `middle`: half as long as given along two unit vectors square to one another; of it what is `off` by 0 mm or less. */
export function flatFace(
  middle: Vec3,
  sides: readonly [Vec3, Vec3],
  half: readonly [number, number],
  off: (p: Vec3) => number = () => 0,
): Face {
  return {
    cells: [{ u: 0, v: 0, du: half[0], dv: half[1] }],
    scale: [1, 1],
    look: ({ u, v }) => {
      for (let axis = 0; axis < 3; axis++) spot[axis] = middle[axis]! + u * sides[0][axis]! + v * sides[1][axis]!;
    },
    stands: ({ u, v }) => Math.abs(u) <= half[0] && Math.abs(v) <= half[1] && off(spot) <= 0,
    isGone: ({ du, dv }) => off(spot) > Math.hypot(du, dv),
    setLoss: ({ du, dv }) =>
      setLossOf(
        du,
        dv,
        slopeAlong(sides[0]) * du + (depth.bend * du * du) / 2,
        slopeAlong(sides[1]) * dv + (depth.bend * dv * dv) / 2,
      ),
  };
}

/** mm. What a cell so small holds was seen beside it. */
const SMALLEST = 0.002;

/** The deepest place of the faces inside the solid, if deeper than `below` (negative, mm); else null. All cells of a size are looked at before any of the next. */
export function deepestOf(faces: readonly Face[], { setDepth, most }: Solid, below: number): Deepest | null {
  let best: Deepest | null = null;
  let least = below;
  let open = faces.flatMap((face) => face.cells.map((cell) => ({ face, cell })));
  let start: { readonly face: Face; readonly cell: Cell } | null = null;
  while (open.length > 0 && least > TOLERANCE - most) {
    const seen: { readonly face: Face; readonly cell: Cell; readonly floor: number; readonly isAlongU: boolean }[] = [];
    for (const each of open) {
      const { face, cell } = each;
      face.look(cell);
      setDepth(spot);
      const { value } = depth;
      face.setLoss(cell);
      const floor = value - loss.most;
      // Halved is what loses more; where no face is that is deeper, the longer side, until one is or none.
      let { isAlongU } = loss;
      if (value < least) {
        if (face.stands(cell)) {
          best = { value, at: [...spot] };
          least = value;
          start = each;
        } else isAlongU = isLongAlongU(face, cell);
      }
      if (floor < least - TOLERANCE && !face.isGone(cell)) seen.push({ face, cell, floor, isAlongU });
    }
    open = seen.flatMap(({ face, cell, floor, isAlongU }) =>
      floor >= least - TOLERANCE ? [] : halves(face, cell, isAlongU).map((half) => ({ face, cell: half })),
    );
  }
  return start === null ? best : settled(start.face, start.cell, setDepth, best!);
}

/** mm. Nearer than this the search for the deepest place does not close in. */
const SETTLED = 1e-6;

/** On from a place to the deepest about it, by steps along u and v that are halved where none leads deeper. */
function settled(face: Face, cell: Cell, setDepth: Solid['setDepth'], from: Deepest): Deepest {
  let best = from;
  let { u, v } = cell;
  const [perU, perV] = face.scale;
  for (let step = 2 * TOLERANCE; step > SETTLED;) {
    let isBetter = false;
    for (const [du, dv] of STEPS) {
      const next: Cell = { u: u + (du * step) / perU, v: v + (dv * step) / perV, du: 0, dv: 0 };
      face.look(next);
      if (!face.stands(next)) continue;
      setDepth(spot);
      if (depth.value >= best.value) continue;
      best = { value: depth.value, at: [...spot] };
      ({ u, v } = next);
      isBetter = true;
    }
    if (!isBetter) step /= 2;
  }
  return best;
}

const STEPS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

const isLongAlongU = ({ scale: [perU, perV] }: Face, { du, dv }: Cell): boolean => du * perU > dv * perV;

function halves({ scale: [perU, perV] }: Face, { u, v, du, dv }: Cell, isAlongU: boolean): readonly Cell[] {
  if (du * perU < SMALLEST && dv * perV < SMALLEST) return [];
  return [-0.5, 0.5].map((side) =>
    isAlongU ? { u: u + side * du, v, du: du / 2, dv } : { u, v: v + side * dv, du, dv: dv / 2 },
  );
}
