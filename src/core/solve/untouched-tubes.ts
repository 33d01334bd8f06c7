/**
 * Which tubes an edit cannot have touched: those are handed on without asking again whom they meet, so that an edit costs what
 * hangs on it. A tube stays as it is when it is the same tube in the same place, made of the same, and nothing that its ends
 * are cut by, stand on or come near has moved.
 */
import { buildBoxTree, visitBoxesAt, type Box } from '../geometry/box-tree.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { bareId, primed, type NodeId, type NodeRef, type TubeRef } from '../job/reference.ts';
import { numbersOf } from '../job/numbers.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { hostOf } from '../job/places.ts';
import type { Job } from '../job/types.ts';
import { sameLaw } from './bending.ts';
import type { LaidBar, Layout } from './lay-out.ts';
import { boxesOfPath } from './meetings.ts';
import type { Frame, SolvedTube } from './types.ts';

/**
 * Of each tube laid out, in the same order: the tube of before where it stays as it is, else null. `nodes` are the job's, by
 * id. After an edit that adds, takes away or reorders, every tube is looked at anew.
 */
export function untouchedTubes(
  drawn: Layout,
  layout: Layout,
  job: Job,
  nodes: ReadonlyMap<NodeId, FrameNode>,
  previous: Frame,
): readonly (SolvedTube | null)[] {
  const laid = layout.tubes;
  const sameBuild =
    laid.length === previous.tubes.length &&
    laid.every(({ id }, i) => id === previous.tubes[i]!.id) &&
    job.nodes.length === previous.job.nodes.length &&
    job.nodes.every(({ id }, i) => id === previous.job.nodes[i]!.id);
  if (!sameBuild) return laid.map(() => null);

  const moved = new Set<TubeRef>();
  const boxes: Box[] = [];
  const compare = (now: readonly LaidBar[], then: readonly LaidBar[]): void =>
    now.forEach(({ id, centreline: { path }, section }, i) => {
      const before = then[i]!;
      if (before.centreline.path === path && before.section === section) return;
      moved.add(id);
      boxes.push(...boxesOfPath(before.centreline.path), ...boxesOfPath(path));
    });
  compare(drawn.bars, previous.drawn.bars);
  // Who meets whom is decided in the frame as drawn, what cuts as the tubes are built.
  if (layout !== drawn || previous.layout !== previous.drawn) compare(layout.bars, previous.layout.bars);
  const tree = buildBoxTree(boxes);
  const comesNear = (place: Vec3): boolean => {
    let near = false;
    visitBoxesAt(tree, boxes, place, () => (near = true));
    return near;
  };

  const changed = new Set(job.nodes.filter((node, i) => node !== previous.job.nodes[i]).map(({ id }) => id));
  /** It is given as before, and the tube that it stands on, on either side of the car, has not moved. */
  const standsStill = (reference: NodeRef): boolean => {
    const id = bareId(reference);
    const host = hostOf(nodes.get(id)!.at);
    return !changed.has(id) && (host === null || !(moved.has(host) || moved.has(primed(host))));
  };

  const feet = new Set(job.feet);
  const numbers = numbersOf(job);
  return laid.map((tube, i) => {
    const before = previous.tubes[i]!;
    const same =
      !moved.has(tube.bar.id) &&
      before.path === tube.centreline.path &&
      before.held === (tube.held?.made ?? null) &&
      (before.asDrawn?.path ?? null) === (tube.asDrawn?.path ?? null) &&
      before.member === tube.member &&
      before.die === tube.die &&
      before.number === numbers.get(tube.id) &&
      sameLaw(before.pullLaw, tube.pullLaw) &&
      before.ends.every(
        ({ node, position, cuts, butted, foot }) =>
          (node === null || (standsStill(node) && !comesNear(drawn.nodes.get(node)!))) &&
          (foot === null || feet.has(foot)) &&
          !cuts.some(({ against }) => moved.has(against)) &&
          !butted.some((id) => moved.has(id)) &&
          !comesNear(position),
      );
    return same ? before : null;
  });
}
