/**
 * Places and centrelines, in the sequence in which they need each other. The two are one step: a node on a tube waits for that tube's
 * centreline, a tube for the nodes of its path, and so on down a frame. A twin runs through the mirror images of its member's nodes.
 *
 * What cannot be placed is a fault with its place in the file. The first stops the work: what stands on it could not be
 * placed either, and would only repeat it.
 */
import { equal, mirrored, type Vec3 } from '../geometry/vector.ts';
import { fault, quoted, type Fault, type Outcome } from '../job/fault.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Section } from '../job/kinds/section.ts';
import { primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import { thickestThrough } from '../job/thickest.ts';
import type { Job } from '../job/types.ts';
import type { PullLaw } from '../springback/pull-law.ts';
import { bendingOfMembers, radiusAt, sameRadii, type Bending } from './bending.ts';
import { solveCentreline, type Centreline, type RouteTrouble } from './centreline.ts';
import { tubesOf, type LaidTube } from './pieces.ts';
import type { Step } from './sequence.ts';
import { placeNode } from './place.ts';
import type { Solved } from './solved.ts';
import type { Bar, Frame } from './types.ts';

/** A bar as it lies between its nodes; its ends are not known yet. */
export interface LaidBar {
  readonly id: TubeRef;
  readonly member: Member;
  /** Of its member in the build order; a twin shares it. */
  readonly order: number;
  readonly section: Section;
  readonly die: Die | null;
  readonly pullLaw: PullLaw | null;
  readonly centreline: Centreline;
}

export interface Layout {
  /** Every node and the mirror image of every node. */
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  /** In build order; a twin follows its member. */
  readonly bars: readonly LaidBar[];
  /** The same as they are made: whole, or in pieces from end A. */
  readonly tubes: readonly LaidTube[];
}

/** Every node and mirror image in its place and every tube's centreline; or the first fault that stands in the way. */
export function layOut(job: Job, sequence: readonly Step[], previous: Frame | undefined): Outcome<Layout> {
  const bendingOf = bendingOfMembers(job);
  const nodes = new Map<NodeRef, Vec3>();
  const centrelines = new Map<TubeRef, Centreline>();
  const points = new Map(job.points.map((point) => [point.id, point]));
  const solved: Solved = {
    point: (id) => points.get(id)!,
    node: (reference) => nodes.get(reference)!,
    tube: (reference) => centrelines.get(reference)!,
    thickest: (id) => thickestThrough(job, id),
  };
  for (const step of sequence) {
    const trouble =
      step.kind === 'node'
        ? layNode(step.record, step.index, solved, nodes, previous)
        : layTubes(step.record, step.index, bendingOf(step.record), nodes, previous, centrelines);
    if (trouble !== null) return { ok: false, faults: [trouble] };
  }
  const sections = new Map(job.sections.map((section) => [section.id, section]));
  const dies = new Map(job.dies.map((die) => [die.id, die]));
  const bars = job.members.flatMap((member, place) =>
    barsOf(member).map((id): LaidBar => ({
      id,
      member,
      order: place,
      section: sections.get(member.section)!,
      die: member.die === undefined ? null : dies.get(member.die)!,
      pullLaw: bendingOf(member)?.law ?? null,
      centreline: centrelines.get(id)!,
    })),
  );
  const made = tubesOf(bars);
  return made.ok ? { ok: true, value: { nodes, bars, tubes: made.value } } : made;
}

const barsOf = ({ id, mirror }: Member): readonly TubeRef[] => (mirror ? [id, primed(id)] : [id]);

/** Puts the node and its mirror image in their places; answers what stands in the way. */
function layNode(
  node: FrameNode,
  index: number,
  solved: Solved,
  nodes: Map<NodeRef, Vec3>,
  previous: Frame | undefined,
): Fault | null {
  const placing = placeNode(node, solved);
  if ('trouble' in placing) return fault(`nodes[${index}].at${placing.field}`, placing.trouble);
  const image = primed(node.id);
  const position = kept(previous?.nodes.get(node.id), placing.position);
  nodes.set(node.id, position);
  nodes.set(image, kept(previous?.nodes.get(image), mirrored(position)));
  return null;
}

/** Lays the member and its twin; answers what stands in the way. */
function layTubes(
  member: Member,
  index: number,
  bending: Bending | null,
  nodes: ReadonlyMap<NodeRef, Vec3>,
  previous: Frame | undefined,
  centrelines: Map<TubeRef, Centreline>,
): Fault | null {
  if (bending !== null && bending.die.centrelineRadius <= bending.section.outerDiameter / 2) {
    const die = quoted(member.die!);
    return fault(`members[${index}].die`, `the centreline radius of ${die} is not greater than the tube's own radius`);
  }
  for (const id of barsOf(member)) {
    const route = member.path.map((node) => nodes.get(id === member.id ? node : primed(node))!);
    const before = previous?.bars.get(id);
    const same =
      before !== undefined &&
      sameRadii(before.die === null ? null : { die: before.die, law: before.pullLaw }, bending) &&
      before.route.length === route.length &&
      route.every((place, i) => place === before.route[i]);
    const centreline = same
      ? centrelineOf(before)
      : solveCentreline(route, bending === null ? null : radiusAt(bending));
    if ('why' in centreline) return routeFault(member, index, centreline);
    centrelines.set(id, centreline);
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
}: Bar): Centreline => ({
  route,
  corners,
  path,
  bends,
  straights,
  developedLength,
  sharpCornerLength,
});

function routeFault({ path }: Member, index: number, { at, why }: RouteTrouble): Fault {
  const node = quoted(path[at]!);
  const place = `members[${index}].path[${at}]`;
  switch (why) {
    case 'same-place':
      return fault(place, `${node} stands at the same place as ${quoted(path[at - 1]!)} before it`);
    case 'doubles-back':
      return fault(place, `the path doubles back at ${node}`);
    case 'no-radius':
      return fault(`members[${index}].die`, `the path bends at ${node}, so the member needs a die`);
  }
}
