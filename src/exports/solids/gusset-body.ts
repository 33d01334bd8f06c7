/**
 * A gusset as an exact solid: planes, and cylinders and tori where a fold or a tube rounds it. A flat one is its outline pushed through the sheet. A folded one is the
 * fold's section pushed along the free edge and cut by the tubes, filled: where the flat sheet's edge stands square to its faces, the body lies on the tube.
 */
import { arcPiece, linePiece, type Piece } from '../../core/geometry/path.ts';
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import { add, addScaled, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import { inCar, type Corner } from '../../core/gusset/corner.ts';
import { piecesAlong, type Edge, type Place2 } from '../../core/gusset/edges.ts';
import { offFold, onFold, type BentGusset, type Folded } from '../../core/gusset/fold.ts';
import type { MadeGusset } from '../../core/gusset/gussets.ts';
import type { Gusset } from '../../core/job/kinds/gusset.ts';
import {
  bar,
  box,
  cutBy,
  isValid,
  pushedSolid,
  scoped,
  solidsIn,
  sweptSolid,
  volumeOf,
  type Keep,
  type Kernel,
  type Shape,
} from './kernel.ts';

/** A body that is off its sheet by this share is none. The fibre that keeps its length lies inside of the sheet's middle, and the fold is that much greater. */
const VOLUME_AGREES = 0.06;

/** Noted with `keep`; null where the kernel makes none that is valid and as large as its sheet. */
export function gussetBody(oc: Kernel, keep: Keep, made: MadeGusset, gusset: Gusset): Shape | null {
  return scoped((brief) => {
    const { shape, edges, area } = made.sheet;
    const solids =
      shape.kind === 'flat' || gusset.kind === 'flat'
        ? [flatBody(oc, brief, made.corner, edges, gusset.thickness)]
        : solidsIn(oc, brief, foldedBody(oc, brief, made.corner, shape.fold, gusset));
    const [greatest] = solids
      .map((solid) => ({ solid, volume: volumeOf(oc, brief, solid) }))
      .toSorted((a, b) => b.volume - a.volume);
    const sheet = area * gusset.thickness;
    if (greatest === undefined || Math.abs(greatest.volume - sheet) > VOLUME_AGREES * sheet) return null;
    return isValid(oc, brief, greatest.solid) ? keep(oc.TopoDS.Solid(greatest.solid)) : null;
  });
}

function flatBody(oc: Kernel, keep: Keep, corner: Corner, edges: readonly Edge[], thickness: number): Shape {
  const round = piecesAlong(edges, (place) => inCar(corner, place, -thickness / 2), corner.normal);
  return pushedSolid(oc, keep, round, scale(corner.normal, thickness));
}

/** The section pushed from beyond the one tube to beyond the other, and what the tubes and the relief take off it. */
function foldedBody(oc: Kernel, keep: Keep, corner: Corner, fold: Folded, gusset: BentGusset): Shape {
  const thick = Math.max(...corner.sides.map(({ radius }) => radius));
  const us = [
    ...fold.stations.flatMap(({ ends }) => ends),
    ...fold.faces.flatMap(({ begins }) => begins.map((place) => onFold(fold, place)[0])),
  ];
  const [first, last] = [Math.min(...us) - thick, Math.max(...us) + thick];
  const deep = onFold(fold, [0, 0])[1] + thick;
  const at = (p: number, z: number): Vec3 => inCar(corner, offFold(fold, [first, p]), z);
  const along = scale(subtract(inCar(corner, offFold(fold, [last, 0]), 0), at(0, 0)), 1 / (last - first));
  const push = scale(along, last - first);
  const section = pushedSolid(oc, keep, sectionOf(at, along, deep, gusset), push);
  return cutBy(oc, keep, section, [
    ...beyondAxes(oc, keep, corner, 2 * (last - first + deep)),
    ...filledTubes(oc, keep, corner, last - first + deep),
    ...(gusset.relief > 0 ? reliefs(oc, keep, corner, fold, gusset.thickness) : []),
  ]);
}

/** Round the fold's section: outside from the lower strip's end up and over, inside back. `along` = p x z. */
function sectionOf(
  at: (p: number, z: number) => Vec3,
  along: Vec3,
  deep: number,
  { width, radius, thickness }: BentGusset,
): readonly Piece[] {
  const [half, out] = [width / 2, radius + thickness];
  const inwards = subtract(at(1, 0), at(0, 0));
  const up = subtract(at(0, 1), at(0, 0));
  const quarter = (from: Vec3, tangent: Vec3, sense: 1 | -1, r: number): Piece =>
    arcPiece(from, tangent, scale(along, sense), r, Math.PI / 2, 0);
  return [
    quarter(at(0, half - out), up, -1, out),
    linePiece(at(out, half), at(deep, half), 0),
    linePiece(at(deep, half), at(deep, half - thickness), 0),
    linePiece(at(deep, half - thickness), at(out, half - thickness), 0),
    quarter(at(out, half - thickness), scale(inwards, -1), 1, radius),
    linePiece(at(thickness, half - out), at(thickness, out - half), 0),
    quarter(at(thickness, out - half), scale(up, -1), 1, radius),
    linePiece(at(out, thickness - half), at(deep, thickness - half), 0),
    linePiece(at(deep, thickness - half), at(deep, -half), 0),
    linePiece(at(deep, -half), at(out, -half), 0),
    quarter(at(out, -half), scale(inwards, -1), -1, out),
    linePiece(at(0, out - half), at(0, half - out), 0),
  ].filter(({ length }) => length > ROUNDING);
}

/** All that lies on the other side of either axis. */
const beyondAxes = (oc: Kernel, keep: Keep, { place, sides, normal }: Corner, reach: number): Shape[] =>
  sides.map(({ direction }, i) => {
    // Depth goes along direction x across: away from the other leg.
    const across = scale(normal, i === 0 ? 1 : -1);
    const from = addScaled(addScaled(place, direction, -reach), across, -reach);
    return box(oc, keep, from, direction, across, [2 * reach, reach, 2 * reach]);
  });

/** Both tubes, their straights prolonged; across a bend the one tube with it. */
function filledTubes(oc: Kernel, keep: Keep, { place, sides, normal, angle, bend }: Corner, reach: number): Shape[] {
  const [one, two] = sides;
  const away = scale(add(one.direction, two.direction), -1);
  if (bend === null) {
    return sides.map(({ direction, radius, height }) => {
      const from = addScaled(addScaled(place, normal, height), direction, -reach);
      return bar(oc, keep, from, direction, away, radius, 2 * reach);
    });
  }
  const begins = addScaled(place, one.direction, bend.setBack);
  const arc = arcPiece(begins, scale(one.direction, -1), scale(normal, -1), bend.radius, Math.PI - angle, 0);
  const chain = [
    linePiece(addScaled(begins, one.direction, reach), begins, 0),
    arc,
    linePiece(arc.to, addScaled(arc.to, two.direction, reach), 0),
  ].map((piece) => ({ piece, from: 0, to: piece.length }));
  return [sweptSolid(oc, keep, chain, one.radius, null, away)];
}

/** What the relief takes off each face: from its edge to beyond the corner. */
const reliefs = (oc: Kernel, keep: Keep, corner: Corner, { faces, stations }: Folded, thickness: number): Shape[] =>
  faces.map(({ corner: tip, begins: [a, b] }, i) => {
    const { z } = stations.at(i === 0 ? 0 : -1)!;
    const to = (place: Place2): Place2 => [2 * tip[0] - a[0] - b[0] + place[0], 2 * tip[1] - a[1] - b[1] + place[1]];
    const round = [a, b, to(b), to(a)].map((place) => inCar(corner, place, z - thickness));
    const outline = round.map((place, k) => linePiece(place, round[(k + 1) % round.length]!, 0));
    return pushedSolid(oc, keep, outline, scale(corner.normal, 2 * thickness));
  });
