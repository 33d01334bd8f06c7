/**
 * Which measured points a member goes by: those that its nodes are placed by, and those that carry them through other nodes and through the
 * tubes that they stand on. A primed reference to a right-hand point follows the right side as a plain one does.
 */
import type { FrameNode } from '../job/kinds/node.ts';
import type { Point } from '../job/kinds/point.ts';
import { meansIn, nodesById } from '../survey/in-pair.ts';
import { measuredPoints } from '../survey/measured-points.ts';
import { pairsOfPoints, type PointPair } from '../survey/point-pairs.ts';
import { unpaired } from '../survey/unpaired.ts';
import { bareId, type MemberId, type NodeId, type NodeRef, type PointId, type PointRef } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';
import { remembered } from '../remembered.ts';

export type Followed = 'left' | 'right' | 'mean';

/** What one node, `node`, is placed by: a point on one side of the car, or the mean of a pair. */
export interface Guide {
  readonly node: NodeId;
  readonly side: Followed;
  /** Of a mean the left one. */
  readonly point: Point;
  readonly pair: PointPair | null;
}

export interface Following {
  /** What all of them follow; 'mixed' where they differ, 'none' where no measured point off the centre plane carries the member. */
  readonly side: Followed | 'mixed' | 'none';
  /** Of its own nodes, and of nodes that these are placed from. */
  readonly own: readonly Guide[];
  /** Of what its nodes stand on, by the member under them. */
  readonly through: ReadonlyMap<MemberId, readonly Guide[]>;
}

/** What the member follows; nothing where there is no such member. */
export function followedBy(job: Job, id: MemberId): Following {
  const path = job.members.find((member) => member.id === id)?.path ?? [];
  const throughMeans = path.flatMap((to) => byMean(job, bareId(to), to) ?? []);
  const own = [...guidesOf(job, ownNodes(job, id)), ...throughMeans];
  const through = new Map<MemberId, readonly Guide[]>();
  for (const host of hostsOf(ownNodes(job, id))) {
    const under = guidesOf(job, nodesUnder(job, host));
    if (under.length > 0) through.set(host, under);
  }
  const sides = new Set([...own, ...[...through.values()].flat()].map(({ side }) => side));
  const side = sides.size === 0 ? 'none' : sides.size > 1 ? 'mixed' : [...sides][0]!;
  return { side, own, through };
}

/** By which side of each pair the frame goes, and the members whose own nodes say so; by the id of the pair's left point. Nothing of a pair that nothing goes by. */
export function pairsFollowed(job: Job): ReadonlyMap<PointId, PairFollowed> {
  const found = new Map<PointId, { sides: Set<Followed>; members: MemberId[] }>();
  for (const { id } of job.members) {
    const guides = followedBy(job, id).own.filter(({ pair }) => pair !== null);
    for (const { pair, side } of guides) {
      const entry = found.get(pair!.left.id) ?? { sides: new Set(), members: [] };
      found.set(pair!.left.id, entry);
      entry.sides.add(side);
      if (entry.members.at(-1) !== id) entry.members.push(id);
    }
  }
  return found;
}

export interface PairFollowed {
  readonly sides: ReadonlySet<Followed>;
  /** In the job's order. */
  readonly members: readonly MemberId[];
}

/** The nodes of the member's path and those that they are placed from, without a tube between; none twice. A mean is taken as one. */
export function ownNodes(job: Job, id: MemberId): readonly FrameNode[] {
  const nodes = nodesById(job.nodes);
  const means = meansIn(job);
  const path = job.members.find((member) => member.id === id)?.path ?? [];
  const found = new Set<FrameNode>();
  const waiting = path.map(bareId);
  for (const next of waiting) {
    const node = nodes.get(next);
    if (node === undefined || found.has(node) || means.has(next)) continue;
    found.add(node);
    waiting.push(...referencesOf('nodes', node).flatMap(({ list, to }) => (list === 'nodes' ? [bareId(to)] : [])));
  }
  return [...found];
}

const hostsOf = (nodes: readonly FrameNode[]): ReadonlySet<MemberId> =>
  new Set(
    nodes
      .flatMap((node) => referencesOf('nodes', node).filter(({ list }) => list === 'members'))
      .map(({ to }) => bareId(to)),
  );

/** All nodes that carry a member, however many tubes stand between. */
function nodesUnder(job: Job, id: MemberId): readonly FrameNode[] {
  const members = new Set([id]);
  const nodes = new Set<FrameNode>();
  for (const member of members) {
    const own = ownNodes(job, member);
    own.forEach((node) => nodes.add(node));
    hostsOf(own).forEach((host) => members.add(host));
  }
  return [...nodes];
}

const guidesOf = (job: Job, nodes: readonly FrameNode[]): readonly Guide[] =>
  nodes.flatMap((node) => {
    const seen = new Set<string>();
    return referencesOf('nodes', node).flatMap(({ list, to }) => {
      const guide = list === 'points' ? byPoint(job, node.id, to) : list === 'nodes' ? byMean(job, node.id, to) : null;
      const key = `${guide?.side} ${guide?.point.id}`;
      if (guide === null || seen.has(key)) return [];
      seen.add(key);
      return [guide];
    });
  });

function byPoint(job: Job, node: NodeId, to: PointRef): Guide | null {
  const points = measuredPoints(job);
  const point = pointsById(points).get(bareId(to))!;
  const pair = pairsOfPoints(points).of.get(point.id) ?? null;
  if (pair === null && unpaired(points).some((each) => each.point === point && each.why === 'centre')) return null;
  return { node, side: point.position[1] > 0 ? 'left' : 'right', point, pair };
}

function byMean(job: Job, node: NodeId, to: NodeRef): Guide | null {
  const pair = meansIn(job).get(bareId(to));
  return pair === undefined ? null : { node, side: 'mean', point: pair.left, pair };
}

const pointsById = remembered(
  (points: readonly Point[]): ReadonlyMap<PointId, Point> => new Map(points.map((point) => [point.id, point])),
);
