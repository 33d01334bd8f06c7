/**
 * A flat tube struck on a floor with a chalk line: every place by how far it is along that line and how far square off it.
 *
 * The line goes through both end nodes, from A to B. Of a tube that is its own mirror image the zero is halfway, where a centre line stands square
 * to it; else the zero is end A's node. x runs towards B, y to the side on which more of the tube lies. mm. Where the nodes lie on
 * one another they give no line: then it runs along the leg of end A. Derivation: docs/maths/check-dimensions.md.
 */
import type { Radians } from '../geometry/angle.ts';
import { addScaled } from '../geometry/vector.ts';
import { beyondNode } from '../solve/amount.ts';
import type { SolvedTube } from '../solve/types.ts';
import type { FlatArc, FlatLine, FlatPlace, FlatTube } from './lay-flat.ts';

export interface StruckPlace extends FlatPlace {
  /** An end's node, where the end is sawn; of a bend its sharp corner, its tangents, the arc's centre and its middle on the centreline. */
  readonly kind: 'node' | 'sawn' | 'corner' | 'start' | 'end' | 'centre' | 'middle';
  /** 0 and 1 of ends A and B; of a bend its number, from 1 at end A. */
  readonly number: number;
}

/** An arc swung from its centre. */
export interface Swing {
  readonly number: number;
  /** mm, of the centreline, and of the tube's outside and inside there. */
  readonly radius: number;
  readonly outside: number;
  readonly inside: number;
  readonly angle: Radians;
}

export interface Struck {
  /** Bends, ends and sawn ends are their own mirror image in the centre line, to what a tape shows. */
  readonly symmetric: boolean;
  /** From node A to node B, mm. */
  readonly base: number;
  /** Ends and corners from A to B; of every bend its places. */
  readonly places: readonly StruckPlace[];
  readonly swings: readonly Swing[];
  /** Straight across the floor between ends and corners that are no neighbours; of two that are mirror images one. */
  readonly checks: readonly { readonly from: StruckPlace; readonly to: StruckPlace; readonly value: number }[];
  /** mm over the tube's outside from sawn end to sawn end, along the line and square off it. */
  readonly outside: { readonly along: number; readonly off: number };
  /** The centreline, in the same coordinates. */
  readonly pieces: readonly (FlatLine | FlatArc)[];
  /** Of a place on the tube's plane, as layFlat lays it, to the floor. */
  readonly onFloor: (place: FlatPlace) => FlatPlace;
}

/** mm. Nodes this near to one another give no line. */
const TOGETHER = 1;
/** mm. Nobody sees less on a floor: so far off its mirror image a tube still is that. */
const SEEN = 0.05;

/** Of a tube that lies flat, as layFlat lays it. Nothing here can fail: a tube that has no layout has none of these either. */
export function struck(tube: SolvedTube, flat: FlatTube): Struck {
  const corners = tube.corners.map(flat.onPlane);
  const [a, b] = [corners[0]!, corners.at(-1)!];
  const base = apart(a, b);
  const turn = base < TOGETHER ? 0 : Math.atan2(b.y - a.y, b.x - a.x);
  const fromA = turnedBack(flat, corners, turn);
  const outline = outlineOf(tube, flat).map((place) => ({ ...place, ...fromA.place(place) }));
  const symmetric = base >= TOGETHER && isMirrored(tube, outline, base);
  const shift = symmetric ? base / 2 : 0;
  const aside = <P extends FlatPlace>(place: P): P => ({ ...place, x: place.x - shift });
  const pieces = fromA.pieces.map((piece) =>
    piece.kind === 'line'
      ? { ...piece, from: aside(piece.from), to: aside(piece.to) }
      : { ...piece, centre: aside(piece.centre) },
  );
  const ends = outline.map(aside);
  const arcs = pieces.filter((piece) => piece.kind === 'arc');
  const ra = tube.section.outerDiameter / 2;
  return {
    symmetric,
    base,
    places: [...ends, ...arcs.flatMap((arc, i) => placesOf(arc, i + 1))],
    swings: arcs.map(({ radius }, i) => ({
      number: i + 1,
      radius,
      outside: radius + ra,
      inside: radius - ra,
      angle: tube.bends[i]!.angle,
    })),
    checks: checksOf(
      ends.filter(({ kind }) => kind !== 'sawn'),
      symmetric,
    ),
    outside: {
      along: flat.reach(turn) + flat.reach(turn + Math.PI),
      off: flat.reach(turn + Math.PI / 2) + flat.reach(turn - Math.PI / 2),
    },
    pieces,
    onFloor: (place) => aside(fromA.place(place)),
  };
}

const apart = (one: FlatPlace, other: FlatPlace): number => Math.hypot(other.x - one.x, other.y - one.y);

/** End A's node, its sawn end, the corners, the sawn end and the node of B. A sawn end that is at its node is left out. */
function outlineOf(tube: SolvedTube, flat: FlatTube): StruckPlace[] {
  const node = (which: 0 | 1): StruckPlace => ({
    kind: 'node',
    number: which,
    ...flat.onPlane(tube.corners.at(-which)!),
  });
  const sawn = (which: 0 | 1): StruckPlace[] => {
    const end = tube.ends[which];
    const beyond = beyondNode(end);
    if (Math.abs(beyond) < SEEN) return [];
    return [{ kind: 'sawn', number: which, ...flat.onPlane(addScaled(end.position, end.direction, -beyond)) }];
  };
  const corners = tube.corners.slice(1, -1).map((place, i): StruckPlace => ({
    kind: 'corner',
    number: i + 1,
    ...flat.onPlane(place),
  }));
  return [node(0), ...sawn(0), ...corners, ...sawn(1), node(1)];
}

/** The plane turned so that the line lies along x, its origin at end A's node, more of the corners above than below. */
function turnedBack(flat: FlatTube, corners: readonly FlatPlace[], turn: Radians) {
  const a = corners[0]!;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const off = ({ x, y }: FlatPlace): number => (y - a.y) * c - (x - a.x) * s;
  // A flat tube can be turned over.
  const over = corners.reduce((sum, corner) => sum + off(corner), 0) < 0;
  const place = (at: FlatPlace): FlatPlace => ({
    x: (at.x - a.x) * c + (at.y - a.y) * s,
    y: over ? -off(at) : off(at),
  });
  const pieces = flat.pieces.map((piece): FlatLine | FlatArc => {
    if (piece.kind === 'line') return { ...piece, from: place(piece.from), to: place(piece.to) };
    const [low, high] = [piece.low - turn, piece.high - turn];
    const centre = place(piece.centre);
    return over ? { ...piece, centre, low: -high, high: -low, left: !piece.left } : { ...piece, centre, low, high };
  });
  return { place, pieces };
}

function isMirrored({ bends }: SolvedTube, outline: readonly StruckPlace[], base: number): boolean {
  const back = outline.toReversed();
  const places = outline.every(({ kind, x, y }, i) => {
    const image = back[i]!;
    return kind === image.kind && Math.abs(base - x - image.x) < SEEN && Math.abs(y - image.y) < SEEN;
  });
  return places && bends.every(({ radius }, i) => Math.abs(radius - bends.at(-1 - i)!.radius) < SEEN);
}

function placesOf(arc: FlatArc, number: number): StruckPlace[] {
  const { centre, radius, low, high, left } = arc;
  const at = (kind: StruckPlace['kind'], angle: Radians): StruckPlace => ({
    kind,
    number,
    x: centre.x + radius * Math.cos(angle),
    y: centre.y + radius * Math.sin(angle),
  });
  return [
    at('start', left ? low : high),
    at('end', left ? high : low),
    { kind: 'centre', number, ...centre },
    at('middle', (low + high) / 2),
  ];
}

/** Of two diagonals that are each other's mirror image the one nearer end A. */
function checksOf(outline: readonly StruckPlace[], symmetric: boolean): Struck['checks'] {
  const last = outline.length - 1;
  return outline.flatMap((from, i) =>
    outline.flatMap((to, k) => {
      if (k < i + 2 || (symmetric && i + k > last)) return [];
      return [{ from, to, value: apart(from, to) }];
    }),
  );
}
