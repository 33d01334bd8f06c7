/**
 * Which tubes an end is cut by, and which it is butted to.
 *
 * An automatic end is coped to every tube that is already there when it is fitted: the host its node stands on, wherever
 * that is in the build order, and every tube of an earlier member whose real centreline passes within MEETING_DISTANCE of
 * the node (an earlier tube that ends at the node does). A tube in line with the end is butted. The host comes first, the
 * others in build order. A member and its own twin are fitted at the same time: neither cuts the other unless the file
 * says so with an explicit cope.
 */
import { angleBetween } from '../geometry/angle.ts';
import { boxRound, buildBoxTree, visitBoxesAt, type Box, type BoxTree } from '../geometry/box-tree.ts';
import { nearestOnPath, nearestOnPiece, type NearestPlace, type Path, type Piece } from '../geometry/path.ts';
import { IN_LINE_ANGLE, MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, interpolate, type Vec3 } from '../geometry/vector.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Section } from '../job/kinds/section.ts';
import type { TubeRef } from '../job/reference.ts';

/** A tube as others see it: its centreline and size. */
export interface Neighbour {
  readonly id: TubeRef;
  /** Place of its member in the build order; a twin shares it. */
  readonly order: number;
  /** It has a twin, or is one. */
  readonly mirrored: boolean;
  readonly path: Path;
  readonly section: Section;
}

/** All tubes, with a tree of boxes round their pieces so that a node looks at those near it only. */
export interface Neighbours {
  readonly byId: ReadonlyMap<TubeRef, Neighbour>;
  /** Of each box, the piece in it and whose it is. */
  readonly pieces: readonly { readonly neighbour: Neighbour; readonly piece: Piece }[];
  readonly boxes: readonly Box[];
  readonly tree: BoxTree;
}

/** The tubes, found by id and by place. n log n. */
export function indexNeighbours(neighbours: readonly Neighbour[]): Neighbours {
  const pieces: { neighbour: Neighbour; piece: Piece }[] = [];
  const boxes: Box[] = [];
  for (const neighbour of neighbours) {
    for (const piece of neighbour.path.pieces) pieces.push({ neighbour, piece });
    boxes.push(...boxesOfPath(neighbour.path));
  }
  return {
    byId: new Map(neighbours.map((neighbour) => [neighbour.id, neighbour])),
    pieces,
    boxes,
    tree: buildBoxTree(boxes),
  };
}

/** A box round each piece of a centreline, in which all lie that it passes within the meeting distance. */
export const boxesOfPath = ({ pieces }: Path): readonly Box[] =>
  pieces.map((piece) =>
    piece.kind === 'line'
      ? boxRound([piece.from, piece.to], MEETING_DISTANCE)
      : // An arc of less than half a turn lies in the ball on its chord.
        boxRound([interpolate(piece.from, piece.to, 0.5)], distance(piece.from, piece.to) / 2 + MEETING_DISTANCE),
  );

export interface Meeting {
  readonly cutters: readonly Neighbour[];
  readonly butted: readonly Neighbour[];
}

const ALONE: Meeting = { cutters: [], butted: [] };

/** `order` is the end's own place in the build order; `direction` points into its tube; `against` and `host` are ids of tubes. */
export function meetingOf(
  end: { readonly position: Vec3; readonly direction: Vec3; readonly order: number },
  fit: EndFit['fit'],
  against: readonly TubeRef[],
  host: TubeRef | null,
  neighbours: Neighbours,
): Meeting {
  if (fit === 'cope') return { cutters: [...new Set(against)].map((id) => neighbours.byId.get(id)!), butted: [] };
  if (fit !== 'auto') return ALONE;

  const met: Near[] = [];
  visitBoxesAt(neighbours.tree, neighbours.boxes, end.position, (index) => {
    const { neighbour, piece } = neighbours.pieces[index]!;
    if (neighbour.order >= end.order && neighbour.id !== host) return;
    const place = nearestOnPiece(piece, end.position);
    if (place.distance > MEETING_DISTANCE) return;
    const known = met.find((each) => each.neighbour === neighbour);
    if (known === undefined) met.push({ neighbour, place });
    else if (place.distance < known.place.distance) known.place = place;
  });
  if (host !== null && !met.some(({ neighbour }) => neighbour.id === host)) {
    // The host counts however far its node's offset has moved it.
    const neighbour = neighbours.byId.get(host)!;
    met.push({ neighbour, place: nearestOnPath(neighbour.path, end.position, true) });
  }
  met.sort(
    ({ neighbour: a }, { neighbour: b }) =>
      Number(b.id === host) - Number(a.id === host) || a.order - b.order || (a.id < b.id ? -1 : 1),
  );
  const [cutters, butted]: [Neighbour[], Neighbour[]] = [[], []];
  for (const { neighbour, place } of met) {
    const angle = angleBetween(end.direction, place.tangent);
    (Math.min(angle, Math.PI - angle) <= IN_LINE_ANGLE ? butted : cutters).push(neighbour);
  }
  return { cutters, butted };
}

/** A tube that passes near an end, and the place of it that comes nearest. */
interface Near {
  readonly neighbour: Neighbour;
  place: NearestPlace;
}
