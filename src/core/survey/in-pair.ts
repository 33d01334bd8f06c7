/**
 * Nodes that go by pairs of points: by one of the two, or by their mean. The mean of a pair is a node halfway between one on the left point and
 * one on the mirror image of the right, neither of them off its point: what is placed by that node goes by the mean.
 */
import { remembered } from '../remembered.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Point } from '../job/kinds/point.ts';
import { measuredPoints } from './measured-points.ts';
import { pairsOfPoints, type PointPair } from './point-pairs.ts';
import { bareId, isPrimed, primed, type NodeId, type NodeRef, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

/** A reference by which a node is placed, as a place of a pair: which one, and whether on the side of its right point. */
export interface InPair {
  readonly pair: PointPair;
  readonly isOnRight: boolean;
}

/** Of a reference to a point; null where it has no pair. */
export function pointInPair(job: Job, to: PointRef): InPair | null {
  const pair = pairsOfPoints(measuredPoints(job)).of.get(bareId(to));
  return pair === undefined ? null : { pair, isOnRight: (pair.right.id === bareId(to)) !== isPrimed(to) };
}

/** Of a reference to a node that is the mean of a pair; null where it is none. */
export function meanInPair(job: Job, to: NodeRef): InPair | null {
  const pair = meansIn(job).get(bareId(to));
  return pair === undefined ? null : { pair, isOnRight: isPrimed(to) };
}

/** The nodes that are the mean of a pair, on the left side of the car. */
export const meansIn = (
  job: Pick<Job, 'nodes' | 'points' | 'holds' | 'measurements'>,
): ReadonlyMap<NodeId, PointPair> => meansAmong(job.nodes)(measuredPoints(job));

const meansAmong = remembered((nodes: readonly FrameNode[]) =>
  remembered((points: readonly Point[]): ReadonlyMap<NodeId, PointPair> => {
    const byId = nodesById(nodes);
    const { of } = pairsOfPoints(points);
    return new Map(
      nodes.flatMap(({ id, at }) => {
        if (at.kind !== 'between' || at.fraction !== 0.5) return [];
        const [a, b] = at.nodes.map((reference) => bareOn(byId.get(bareId(reference)), isPrimed(reference)));
        const pair = a === undefined || b === undefined ? undefined : of.get(bareId(a));
        if (pair === undefined) return [];
        const isMean = new Set([a, b, pair.left.id, primed(pair.right.id)]).size === 2;
        return isMean && a !== b ? [[id, pair] as const] : [];
      }),
    );
  }),
);

/** The point that the node stands on, neither off it nor clear of it. */
function bareOn(node: FrameNode | undefined, isImage: boolean): PointRef | undefined {
  if (node?.at.kind !== 'point' || node.at.clear !== undefined || node.at.offset.some((by) => by !== 0))
    return undefined;
  return isImage ? primed(node.at.point) : node.at.point;
}

/** The nodes by their ids. */
export const nodesById = remembered(
  (nodes: readonly FrameNode[]): ReadonlyMap<NodeId, FrameNode> => new Map(nodes.map((node) => [node.id, node])),
);
