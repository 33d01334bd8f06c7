/**
 * A member on both sides of the car made to follow the points of the left, of the right, or the mean of both: each of its nodes that is placed
 * by a point of a pair is placed by the other one, or by the middle of the two, with the offset it had. What stands on a tube goes with
 * that tube, and a point without a pair is left.
 */
import { addNode } from '../edit/nodes.ts';
import { changeRecord, type Edited } from '../edit/records.ts';
import { withoutUnreferred } from '../edit/references.ts';
import { meanInPair, meansIn, pointInPair, type InPair } from '../survey/in-pair.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Place } from '../job/places.ts';
import type { Coordinate } from '../job/places/coordinate.ts';
import type { PointPair } from '../survey/point-pairs.ts';
import { bareId, primed, type MemberId, type NodeId, type NodeRef, type PointRef } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { ownNodes, type Followed } from './followed.ts';

/**
 * The job with the member following that side. The same job where it does; refused, in words, where none of its nodes is placed by a point that
 * has a pair, and for the mean where one stands clear of its trim by a gap.
 */
export function follow(job: Job, id: MemberId, side: Followed): Edited {
  const nodes = ownNodes(job, id).filter((node) => pairsAt(job, node).length > 0);
  if (nodes.length === 0) return refused('none of its own nodes is placed by a point that has a pair');
  const clear = nodes.find(({ at }) => at.kind === 'point' && at.clear !== undefined);
  if (side === 'mean' && clear !== undefined) {
    return refused(
      `${shownName(clear.name)} stands clear of its point by a gap, which only one point can give: place it by an offset first`,
    );
  }
  let changed = job;
  const means = new Map<PointPair, NodeId>();
  // A mean that lies between two of them cannot place them.
  const isChanged = (id: NodeId): boolean => nodes.some((node) => node.id === id);
  if (side === 'mean') {
    for (const pair of new Set(nodes.flatMap((node) => pairsAt(job, node)))) {
      const known = [...meansIn(changed)].find(
        ([id, each]) => each === pair && !endsOf(changed, id).some(isChanged),
      )?.[0];
      if (known === undefined) changed = withMean(changed, pair);
      means.set(pair, known ?? changed.nodes.at(-1)!.id);
    }
  }
  const left = new Set(nodes.flatMap((node) => meansAt(job, node)));
  for (const node of nodes) {
    changed = changeRecord(changed, 'nodes', node.id, (record) => ({
      ...record,
      at: placedBy(job, record.at, side, means),
    }));
  }
  return side === 'mean' ? changed : withoutUnused(changed, left);
}

const refused = (message: string): Edited => [{ place: '', message }];

const pairsAt = (job: Job, node: FrameNode): readonly PointPair[] =>
  referencesOf('nodes', node).flatMap(({ list, to }) => {
    const found = list === 'points' ? pointInPair(job, to) : list === 'nodes' ? meanInPair(job, to) : null;
    return found === null ? [] : [found.pair];
  });

/** The means that the node is placed by. */
export const meansAt = (job: Job, node: FrameNode): readonly NodeId[] =>
  referencesOf('nodes', node).flatMap(({ list, to }) =>
    list === 'nodes' && meanInPair(job, to) !== null ? [bareId(to)] : [],
  );

/** The middle of the pair, on the left, comes last of the nodes; the two that it lies between before it. */
function withMean(job: Job, { left, right }: PointPair): Job {
  const onPoint = (point: PointRef): Place => ({ kind: 'point', point, offset: [0, 0, 0] });
  const withLeft = addNode(job, left.name, onPoint(left.id));
  const withBoth = addNode(withLeft, shownName(`${right.name}, mirrored`), onPoint(primed(right.id)));
  const nodes: readonly [NodeRef, NodeRef] = [withLeft.nodes.at(-1)!.id, withBoth.nodes.at(-1)!.id];
  return addNode(withBoth, shownName(`Mean of ${left.name} and ${right.name}`), {
    kind: 'between',
    nodes,
    fraction: 0.5,
  });
}

/** Without those of these means that nothing goes by any more, and what they lie between. */
export function withoutUnused(job: Job, means: Iterable<NodeId>): Job {
  let rest = job;
  for (const mean of means) {
    for (const id of [mean, ...endsOf(rest, mean)]) {
      rest = withoutUnreferred(rest, 'nodes', id);
    }
  }
  return rest;
}

/** The two nodes that it lies between. */
function endsOf(job: Job, mean: NodeId): readonly NodeId[] {
  const at = job.nodes.find(({ id }) => id === mean)?.at;
  return at?.kind === 'between' ? at.nodes.map(bareId) : [];
}

/** What places a node or one of its coordinates: a point, or the mean of a pair. */
type By = { readonly point: PointRef } | { readonly node: NodeRef };

/**
 * The place with every point of a pair, and every mean of one, exchanged for what that side goes by, with 'own' the point that was measured where
 * the place is; `means` has the node for each pair where
 * that is the mean. Exchanging back gives the place again. A place on a point becomes one in line with the mean, by its offsets.
 */
export function placedBy(job: Job, at: Place, side: Followed | 'own', means: ReadonlyMap<PointPair, NodeId>): Place {
  const other = ({ pair, isOnRight }: InPair): By => {
    if (side === 'mean') return { node: onSide(means.get(pair)!, isOnRight) };
    const isLeft = side === 'own' ? !isOnRight : side === 'left';
    return { point: isLeft ? onSide(pair.left.id, isOnRight) : onSide(pair.right.id, !isOnRight) };
  };
  const coordinate = <C extends Coordinate>(given: C): C => {
    const found = inPair(job, given);
    if (found === null) return given;
    const { node: _, point: __, ...rest } = given;
    return { ...rest, ...other(found) } as unknown as C;
  };
  switch (at.kind) {
    case 'point': {
      const found = pointInPair(job, at.point);
      if (found === null) return at;
      const by = other(found);
      if ('point' in by) return { ...at, point: by.point };
      const [x, y, z] = at.offset;
      return { kind: 'lined-up', x: { ...by, plus: x }, y: { ...by, plus: y }, z: { ...by, plus: z } };
    }
    case 'lined-up': {
      const { x, y, z } = at;
      const isByMean = x.node !== undefined && x.node === y.node && x.node === z.node;
      const found = isByMean ? meanInPair(job, x.node) : null;
      const by = found === null ? null : other(found);
      if (by !== null && 'point' in by) return { kind: 'point', point: by.point, offset: [x.plus!, y.plus!, z.plus!] };
      return { ...at, x: coordinate(x), y: coordinate(y), z: coordinate(z) };
    }
    case 'on':
      return at.until === undefined ? at : { ...at, until: coordinate(at.until) };
    default:
      return at;
  }
}

const inPair = (job: Job, given: Coordinate): InPair | null =>
  given.point !== undefined
    ? pointInPair(job, given.point)
    : given.node !== undefined
      ? meanInPair(job, given.node)
      : null;

const onSide = (id: string, isImage: boolean): string => (isImage ? primed(id) : id);
