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
import { nearestOnPath, type Path } from '../geometry/path.ts';
import { IN_LINE_ANGLE, MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { distance, interpolate, type Vec3 } from '../geometry/vector.ts';
import type { EndFit, Section, TubeRef } from '../job/types.ts';

/** A tube as others see it: its centreline and size. */
export interface Run {
  readonly id: TubeRef;
  /** Place of its member in the build order; a twin shares it. */
  readonly order: number;
  readonly path: Path;
  readonly section: Section;
}

/** All runs, with a tree of boxes round their pieces so that a node looks at its neighbours only. */
export interface Runs {
  readonly byId: ReadonlyMap<TubeRef, Run>;
  readonly owners: readonly Run[];
  readonly boxes: readonly Box[];
  readonly tree: BoxTree;
}

export function indexRuns(runs: readonly Run[]): Runs {
  const owners: Run[] = [];
  const boxes: Box[] = [];
  for (const run of runs) {
    for (const piece of run.path.pieces) {
      owners.push(run);
      boxes.push(
        piece.kind === 'line'
          ? boxRound([piece.from, piece.to], MEETING_DISTANCE)
          : // An arc of less than half a turn lies in the ball on its chord.
            boxRound([interpolate(piece.from, piece.to, 0.5)], distance(piece.from, piece.to) / 2 + MEETING_DISTANCE),
      );
    }
  }
  return { byId: new Map(runs.map((run) => [run.id, run])), owners, boxes, tree: buildBoxTree(boxes) };
}

export interface Meeting {
  readonly cutters: readonly Run[];
  readonly butted: readonly Run[];
}

const ALONE: Meeting = { cutters: [], butted: [] };

/** `order` is the end's own place in the build order; `direction` points into its tube; `against` and `host` are ids of tubes. */
export function meetingOf(
  end: { readonly position: Vec3; readonly direction: Vec3; readonly order: number },
  fit: EndFit['fit'],
  against: readonly TubeRef[],
  host: TubeRef | null,
  runs: Runs,
): Meeting {
  if (fit === 'cope') return { cutters: [...new Set(against)].map((id) => runs.byId.get(id)!), butted: [] };
  if (fit !== 'auto') return ALONE;

  const near = new Set<Run>();
  visitBoxesAt(runs.tree, runs.boxes, end.position, (index) => {
    const run = runs.owners[index]!;
    if (run.order < end.order && run.id !== host) near.add(run);
  });
  const earlier = [...near].filter((run) => nearestOnPath(run.path, end.position).distance <= MEETING_DISTANCE);
  earlier.sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  const met = host === null ? earlier : [runs.byId.get(host)!, ...earlier];
  const inLine = (run: Run) => {
    const angle = angleBetween(end.direction, nearestOnPath(run.path, end.position, true).tangent);
    return Math.min(angle, Math.PI - angle) <= IN_LINE_ANGLE;
  };
  return { cutters: met.filter((run) => !inLine(run)), butted: met.filter(inLine) };
}
