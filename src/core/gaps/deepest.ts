/**
 * The deepest place of a wall or a flat face inside a solid. The face is cut into cells; a cell is dropped when the floor under
 * the solid's signed distance there lies above the best found. About a cell's middle the distance goes down by its slope and, where
 * the wall or the solid is round, by a square, so that cells close in quickly and the answer is known to TOLERANCE, not sampled.
 */
import { placeOnPiece, type Piece } from '../geometry/path.ts';
import {
  add,
  addScaled,
  cross,
  dot,
  normalize,
  rotateAbout,
  scale,
  X_AXIS,
  Y_AXIS,
  type Vec3,
} from '../geometry/vector.ts';
import type { Radians } from '../geometry/angle.ts';
import type { Solid } from './solid.ts';

/** A place, and how deep: negative inside. */
export interface Deepest {
  readonly value: number;
  readonly at: Vec3;
}

/** mm. The depth found is at most this much less than the greatest. */
export const TOLERANCE = 0.04;

/** A face, cut into cells: u and v in units of its own. */
export interface Face {
  readonly cells: readonly Cell[];
  /** mm a unit of u, and of v, at most. */
  readonly scale: readonly [number, number];
  readonly look: (cell: Cell) => Look;
}

/** The middle of a cell, and half its sides. */
interface Cell {
  readonly u: number;
  readonly v: number;
  readonly du: number;
  readonly dv: number;
}

interface Look {
  /** The place at the cell's middle, and whether the face is there. */
  readonly at: Vec3;
  readonly stands: boolean;
  /** Of a cell whose middle is not there: whether nothing of it is. */
  readonly isGone: () => boolean;
  /** What a distance of that gradient, that bends down so much, loses at most between the middle and the cell's edge, mm. */
  readonly loss: (gradient: Vec3, bend: number) => number;
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
    look: ({ u, v, du, dv }) => {
      const { point, tangent } = placeOnPiece(piece, u);
      const spoke = add(scale(aside, Math.cos(v)), scale(side, Math.sin(v)));
      const towards = piece.kind === 'arc' ? rotateAbout(spoke, piece.normal, u / piece.radius) : spoke;
      const around = cross(tangent, towards);
      const along = du * stretch;
      const half = Math.hypot(along, radius * dv);
      const round = radius * (1 - Math.cos(dv)) + (curve * along * along) / 2;
      const about = radius * Math.sin(dv);
      return {
        at: addScaled(point, towards, radius),
        stands: stands(piece.at + u, towards),
        isGone: () => isGone(piece.at + u, towards, du, dv),
        loss: (g, bend) =>
          Math.min(
            half,
            Math.abs(dot(g, tangent)) * along + Math.abs(dot(g, around)) * about + round + (bend * half * half) / 2,
          ),
      };
    },
  };
}

/** The centreline's own piece, from and to so many mm along it. */
export function axisLine(piece: Piece, [from, to]: Span): Face {
  const curve = piece.kind === 'arc' ? 1 / piece.radius : 0;
  return {
    cells: [{ u: (from + to) / 2, v: 0, du: (to - from) / 2, dv: 0 }],
    scale: [1, 1],
    look: ({ u, du }) => {
      const { point, tangent } = placeOnPiece(piece, u);
      return {
        at: point,
        stands: true,
        isGone: () => false,
        loss: (g, bend) => Math.min(du, Math.abs(dot(g, tangent)) * du + ((curve + bend) * du * du) / 2),
      };
    },
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
    look: ({ u, v, du, dv }) => {
      const at = addScaled(addScaled(middle, sides[0], u), sides[1], v);
      const reach = Math.hypot(du, dv);
      return {
        at,
        stands: off(at) <= 0,
        isGone: () => off(at) > reach,
        loss: (g, bend) =>
          Math.min(
            reach,
            Math.abs(dot(g, sides[0])) * du + Math.abs(dot(g, sides[1])) * dv + (bend * reach * reach) / 2,
          ),
      };
    },
  };
}

/** mm. What a cell so small holds was seen beside it. */
const SMALLEST = 0.002;

/** The deepest place of the faces inside the solid, if deeper than `below` (negative, mm); else null. All cells of a size are looked at before any of the next. */
export function deepestOf(faces: readonly Face[], { depthAt, most }: Solid, below: number): Deepest | null {
  let best: Deepest | null = null;
  let least = below;
  let open = faces.flatMap((face) => face.cells.map((cell) => ({ face, cell })));
  let start: { readonly face: Face; readonly cell: Cell } | null = null;
  while (open.length > 0 && least > TOLERANCE - most) {
    const seen: { face: Face; cell: Cell; floor: number; isOut: () => boolean }[] = [];
    for (const { face, cell } of open) {
      const { at, stands, isGone, loss } = face.look(cell);
      const { value, gradient, bend } = depthAt(at);
      if (stands && value < least) [best, least, start] = [{ value, at }, value, { face, cell }];
      seen.push({ face, cell, floor: value - loss(gradient, bend), isOut: () => !stands && isGone() });
    }
    open = seen.flatMap(({ face, cell, floor, isOut }) =>
      floor >= least - TOLERANCE || isOut() ? [] : halves(face, cell).map((half) => ({ face, cell: half })),
    );
  }
  return start === null ? best : settled(start.face, start.cell, depthAt, best!);
}

/** mm. Nearer than this the search for the deepest place does not close in. */
const SETTLED = 1e-6;

/** On from a place to the deepest about it, by steps along u and v that are halved where none leads deeper. */
function settled({ look, scale: [perU, perV] }: Face, cell: Cell, depthAt: Solid['depthAt'], from: Deepest): Deepest {
  let best = from;
  let { u, v } = cell;
  for (let step = 2 * TOLERANCE; step > SETTLED;) {
    let isBetter = false;
    for (const [du, dv] of STEPS) {
      const [nextU, nextV] = [u + (du * step) / perU, v + (dv * step) / perV];
      const { at, stands } = look({ u: nextU, v: nextV, du: 0, dv: 0 });
      const value = stands ? depthAt(at).value : Infinity;
      if (value >= best.value) continue;
      [best, u, v, isBetter] = [{ value, at }, nextU, nextV, true];
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

function halves({ scale: [perU, perV] }: Face, { u, v, du, dv }: Cell): readonly Cell[] {
  if (du * perU < SMALLEST && dv * perV < SMALLEST) return [];
  const isLong = du * perU > dv * perV;
  return [-0.5, 0.5].map((side) =>
    isLong ? { u: u + side * du, v, du: du / 2, dv } : { u, v: v + side * dv, du, dv: dv / 2 },
  );
}
