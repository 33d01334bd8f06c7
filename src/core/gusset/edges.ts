/** A closed outline on a plane: straight edges, arcs and curves as many short chords, one after the other, counter-clockwise; mm, radians. */
import { arcPiece, linePiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { cross, distance, scale, subtract, type Vec3 } from '../geometry/vector.ts';

export type Place2 = readonly [x: number, y: number];

export type Edge =
  | { readonly kind: 'line'; readonly from: Place2; readonly to: Place2 }
  /** From one angle about the centre to the other: counter-clockwise where that is the greater. */
  | {
      readonly kind: 'arc';
      readonly centre: Place2;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
    };

/**
 * mm2, within the edges: half the integral of x dy - y dx (Green); of an arc
 * r (r (b - a) + cx (sin b - sin a) - cy (cos b - cos a)) / 2.
 */
export const areaWithin = (edges: readonly Edge[]): number => edges.reduce((sum, edge) => sum + swept(edge), 0);

function swept(edge: Edge): number {
  if (edge.kind === 'line') return (edge.from[0] * edge.to[1] - edge.from[1] * edge.to[0]) / 2;
  const { centre, radius, from, to } = edge;
  const [x, y] = centre;
  const turned = radius * (to - from) + x * (Math.sin(to) - Math.sin(from)) - y * (Math.cos(to) - Math.cos(from));
  return (radius * turned) / 2;
}

/** The place on an arc at that angle. */
export const onArc = ([x, y]: Place2, radius: number, angle: number): Place2 => [
  x + radius * Math.cos(angle),
  y + radius * Math.sin(angle),
];

/** Straight edges from place to place. */
export const linesThrough = (places: readonly Place2[]): readonly Edge[] =>
  places.slice(1).map((to, i) => ({ kind: 'line', from: places[i]!, to }));

/** Where the edge begins. */
export const startOf = (edge: Edge): Place2 =>
  edge.kind === 'line' ? edge.from : onArc(edge.centre, edge.radius, edge.from);
/** Where it ends. */
export const endOf = (edge: Edge): Place2 =>
  edge.kind === 'line' ? edge.to : onArc(edge.centre, edge.radius, edge.to);

/** Chords of an arc that turn by so much, radians: 2 degrees, seen by nobody at the size of a gusset. */
const CHORD = Math.PI / 90;

/** The places round the outline, each once; an arc as chords of 2 degrees or less. */
export const placesRound = (edges: readonly Edge[]): readonly Place2[] =>
  edges.flatMap((edge) => {
    if (edge.kind === 'line') return [edge.from];
    const steps = Math.max(1, Math.ceil(Math.abs(edge.to - edge.from) / CHORD));
    return Array.from({ length: steps }, (_, i) =>
      onArc(edge.centre, edge.radius, edge.from + ((edge.to - edge.from) * i) / steps),
    );
  });

/** Least and greatest along both axes, exact on arcs. */
export function extentOf(
  edges: readonly Edge[],
): readonly [x: readonly [number, number], y: readonly [number, number]] {
  const places = edges.flatMap((edge) => {
    if (edge.kind === 'line') return [edge.from];
    const [low, high] = [Math.min(edge.from, edge.to), Math.max(edge.from, edge.to)];
    const quarters: Place2[] = [startOf(edge)];
    for (let k = Math.ceil(low / (Math.PI / 2)); k * (Math.PI / 2) <= high; k++) {
      quarters.push(onArc(edge.centre, edge.radius, k * (Math.PI / 2)));
    }
    return quarters;
  });
  const span = (axis: 0 | 1): readonly [number, number] => {
    const along = places.map((place) => place[axis]);
    return [Math.min(...along), Math.max(...along)];
  };
  return [span(0), span(1)];
}

/** The edges in space, one after the other, those without length left out: `at` lays the outline's plane there, `normal` is unit and along its x cross y. */
export const piecesAlong = (edges: readonly Edge[], at: (place: Place2) => Vec3, normal: Vec3): readonly Piece[] =>
  edges.flatMap((edge): Piece[] => {
    const [from, to] = [at(startOf(edge)), at(endOf(edge))];
    if (distance(from, to) <= ROUNDING) return [];
    if (edge.kind === 'line') return [linePiece(from, to, 0)];
    const about = scale(normal, Math.sign(edge.to - edge.from));
    const tangent = cross(about, scale(subtract(from, at(edge.centre)), 1 / edge.radius));
    return [arcPiece(from, tangent, about, edge.radius, Math.abs(edge.to - edge.from), 0)];
  });

/** Whether the place lies within the outline, whose arcs count as chords of 2 degrees. */
export function isWithin(edges: readonly Edge[], [x, y]: Place2): boolean {
  const round = placesRound(edges);
  return round.reduce((inside, [ax, ay], i) => {
    const [bx, by] = round[(i + 1) % round.length]!;
    const crosses = ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax);
    return crosses ? !inside : inside;
  }, false);
}
