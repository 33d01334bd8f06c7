/**
 * Places and centrelines, in the order in which they need each other: a node on a tube waits for that tube, a tube for
 * the nodes of its path. A twin runs through the mirror images of its member's nodes.
 *
 * What cannot be placed is a fault with its place in the file. The first stops the work: what stands on it could not be
 * placed either, and would only repeat it.
 */
import { equal, mirrored, type Vec3 } from '../geometry/vector.ts';
import { quoted, type Fault } from '../job/fault.ts';
import { primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import type { Member } from '../job/kinds/member.ts';
import type { Job } from '../job/types.ts';
import { radiusAt, sameRadii, type Bending } from './bending.ts';
import { solveCentreline, type Centreline, type RouteTrouble } from './centreline.ts';
import { solveOrder } from './order.ts';
import { placeNode, type Solved } from './place.ts';
import type { Frame, SolvedTube } from './types.ts';

export interface Layout {
  readonly nodes: Map<NodeRef, Vec3>;
  readonly centrelines: Map<TubeRef, Centreline>;
  readonly faults: readonly Fault[];
}

/** Every node and mirror image in its place and every centreline; or the faults that stand in the way, and then no more. */
export function layOut(job: Job, bendingOf: (member: Member) => Bending | null, previous: Frame | undefined): Layout {
  const order = solveOrder(job);
  const nodes = new Map<NodeRef, Vec3>();
  const centrelines = new Map<TubeRef, Centreline>();
  const faults = [...order.faults];
  if (faults.length > 0) return { nodes, centrelines, faults };

  const points = new Map(job.points.map((point) => [point.id, point]));
  const solved: Solved = {
    point: (id) => points.get(id)!,
    node: (reference) => nodes.get(reference)!,
    tube: (reference) => centrelines.get(reference)!,
  };
  for (const step of order.steps) {
    if (step.kind === 'node') {
      const placing = placeNode(step.record, solved);
      if ('trouble' in placing) {
        faults.push({ place: `nodes[${step.index}].at${placing.field}`, message: placing.trouble });
        break; // What stands on this node cannot be placed either: one fault, not a trail of them.
      }
      const position = kept(previous?.nodes.get(step.record.id), placing.position);
      nodes.set(step.record.id, position);
      nodes.set(primed(step.record.id), kept(previous?.nodes.get(primed(step.record.id)), mirrored(position)));
    } else {
      const { record: member, index } = step;
      const bending = bendingOf(member);
      if (bending !== null && bending.die.centrelineRadius <= bending.section.outerDiameter / 2) {
        faults.push({
          place: `members[${index}].die`,
          message: `the centreline radius of ${quoted(member.die!)} is not greater than the tube's own radius`,
        });
        break;
      }
      const trouble = layTubes(member, bending, nodes, previous, centrelines);
      if (trouble !== null) {
        faults.push(routeFault(member, index, trouble));
        break;
      }
    }
  }
  return { nodes, centrelines, faults };
}

/** Lays the member and its twin; answers what stands in the way. */
function layTubes(
  member: Member,
  bending: Bending | null,
  nodes: ReadonlyMap<NodeRef, Vec3>,
  previous: Frame | undefined,
  centrelines: Map<TubeRef, Centreline>,
): RouteTrouble | null {
  const path = member.path;
  const laid = [
    { id: member.id, path },
    { id: primed(member.id), path: path.map(primed) },
  ].slice(0, member.mirror ? 2 : 1);
  for (const tube of laid) {
    const route = tube.path.map((node) => nodes.get(node)!);
    const before = previous?.byId.get(tube.id);
    const same =
      before !== undefined &&
      sameRadii(before.die === null ? null : { die: before.die, law: before.pullLaw }, bending) &&
      before.route.length === route.length &&
      route.every((place, i) => place === before.route[i]);
    const centreline = same
      ? centrelineOf(before)
      : solveCentreline(route, bending === null ? null : radiusAt(bending));
    if ('why' in centreline) return centreline;
    centrelines.set(tube.id, centreline);
  }
  return null;
}

/** The same place keeps its record, so that what depends on it can be recognised as unchanged. */
const kept = (before: Vec3 | undefined, now: Vec3): Vec3 => (before !== undefined && equal(before, now) ? before : now);

const centrelineOf = ({
  route,
  corners,
  path,
  bends,
  straights,
  developedLength,
  sharpCornerLength,
}: SolvedTube): Centreline => ({
  route,
  corners,
  path,
  bends,
  straights,
  developedLength,
  sharpCornerLength,
});

function routeFault(member: Member, index: number, { at, why }: RouteTrouble): Fault {
  const node = member.path[at]!;
  switch (why) {
    case 'same-place':
      return {
        place: `members[${index}].path[${at}]`,
        message: `${quoted(node)} stands at the same place as ${quoted(member.path[at - 1]!)} before it`,
      };
    case 'doubles-back':
      return { place: `members[${index}].path[${at}]`, message: `the path doubles back at ${quoted(node)}` };
    case 'no-radius':
      return {
        place: `members[${index}].die`,
        message: `the path bends at ${quoted(node)}, so the member needs a die`,
      };
  }
}
