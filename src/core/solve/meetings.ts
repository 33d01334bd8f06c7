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
export interface RunTube {
  readonly id: TubeRef;
  /** Place of its member in the build order; a twin shares it. */
  readonly order: number;
  /** It has a twin, or is one. */
  readonly mirrored: boolean;
  readonly path: Path;
  readonly section: Section;
}

/** All run tubes, with a tree of boxes round their pieces so that a node looks at its neighbours only. */
export interface RunTubes {
  readonly byId: ReadonlyMap<TubeRef, RunTube>;
  /** Of each box, the piece in it and whose it is. */
  readonly pieces: readonly { readonly runTube: RunTube; readonly piece: Piece }[];
  readonly boxes: readonly Box[];
  readonly tree: BoxTree;
}

/** The run tubes, found by id and by place. n log n. */
export function indexRunTubes(runTubes: readonly RunTube[]): RunTubes {
  const pieces: { runTube: RunTube; piece: Piece }[] = [];
  const boxes: Box[] = [];
  for (const runTube of runTubes) {
    for (const piece of runTube.path.pieces) pieces.push({ runTube, piece });
    boxes.push(...boxesOfPath(runTube.path));
  }
  return { byId: new Map(runTubes.map((runTube) => [runTube.id, runTube])), pieces, boxes, tree: buildBoxTree(boxes) };
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
  readonly cutters: readonly RunTube[];
  readonly butted: readonly RunTube[];
}

const ALONE: Meeting = { cutters: [], butted: [] };

/** `order` is the end's own place in the build order; `direction` points into its tube; `against` and `host` are ids of tubes. */
export function meetingOf(
  end: { readonly position: Vec3; readonly direction: Vec3; readonly order: number },
  fit: EndFit['fit'],
  against: readonly TubeRef[],
  host: TubeRef | null,
  runTubes: RunTubes,
): Meeting {
  if (fit === 'cope') return { cutters: [...new Set(against)].map((id) => runTubes.byId.get(id)!), butted: [] };
  if (fit !== 'auto') return ALONE;

  const met: Near[] = [];
  visitBoxesAt(runTubes.tree, runTubes.boxes, end.position, (index) => {
    const { runTube, piece } = runTubes.pieces[index]!;
    if (runTube.order >= end.order && runTube.id !== host) return;
    const place = nearestOnPiece(piece, end.position);
    if (place.distance > MEETING_DISTANCE) return;
    const known = met.find((each) => each.runTube === runTube);
    if (known === undefined) met.push({ runTube, place });
    else if (place.distance < known.place.distance) known.place = place;
  });
  if (host !== null && !met.some(({ runTube }) => runTube.id === host)) {
    // The host counts however far its node's offset has moved it.
    const runTube = runTubes.byId.get(host)!;
    met.push({ runTube, place: nearestOnPath(runTube.path, end.position, true) });
  }
  met.sort(
    ({ runTube: a }, { runTube: b }) =>
      Number(b.id === host) - Number(a.id === host) || a.order - b.order || (a.id < b.id ? -1 : 1),
  );
  const [cutters, butted]: [RunTube[], RunTube[]] = [[], []];
  for (const { runTube, place } of met) {
    const angle = angleBetween(end.direction, place.tangent);
    (Math.min(angle, Math.PI - angle) <= IN_LINE_ANGLE ? butted : cutters).push(runTube);
  }
  return { cutters, butted };
}

/** A run tube that passes near an end, and the place of it that comes nearest. */
interface Near {
  readonly runTube: RunTube;
  place: NearestPlace;
}
