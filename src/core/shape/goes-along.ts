/**
 * What becomes of a node whose bar is moved along an axis of the car, by how it is placed: whether it goes along with the other nodes of the path by itself,
 * has to be moved, or can do neither, since it would go otherwise than they do.
 */
import type { Axis } from '../geometry/vector.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { OnMember } from '../job/places/on.ts';
import { bareId, isPrimed, primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import { carriersOf, type Carrier } from '../job/references.ts';
import type { Job } from '../job/types.ts';

/** `free`: as if the other nodes stood still. */
export type Going = 'along' | 'free' | 'stuck';

/** Of a reference, as the node that is asked about names it. */
type Asked = (to: NodeRef) => boolean;

/**
 * How the node goes where those that `isMoved` names come to a coordinate along `axis` by so much greater. What turns on all three coordinates of them
 * counts as going along only where they stand on nothing themselves: one that slides along a bar changes the other two as well.
 */
export function goingOf(job: Job, { id, at }: FrameNode, axis: Axis, isMoved: Asked): Going {
  if (!standsOnMoved(job, { list: 'nodes', id }, isMoved)) return 'free';
  const isShifted: Asked = (to) => isMoved(to) && standsOnNothing(job, to);
  switch (at.kind) {
    case 'lined-up': {
      const { node } = at[axis];
      return node !== undefined && isMoved(node) ? 'along' : 'free';
    }
    case 'between':
      return at.nodes.every(isMoved) ? 'along' : 'stuck';
    case 'ray':
      if (!isShifted(at.from)) return 'stuck';
      // The coordinate that it ends at is its own: moved by as much as the place that it begins at, it goes along.
      return at.until.axis === axis ? 'free' : 'along';
    case 'crossing':
      return isWhollyShifted(job, at.member, isShifted) && at.line.every(isShifted) ? 'along' : 'stuck';
    case 'on':
      return goingOnBar(job, at, axis, isMoved, isShifted);
    default:
      return 'free';
  }
}

function goingOnBar(job: Job, at: OnMember, axis: Axis, isMoved: Asked, isShifted: Asked): Going {
  const isUntil = at.until?.axis === axis;
  const isInLine = at.until?.node !== undefined && isMoved(at.until.node);
  if (isWhollyShifted(job, at.member, isShifted)) return !isUntil || isInLine ? 'along' : 'stuck';
  if (standsOnMoved(job, { list: 'members', id: bareId(at.member) }, isMoved)) return 'stuck';
  return isUntil && isInLine ? 'along' : 'free';
}

const standsOnNothing = ({ nodes }: Job, to: NodeRef): boolean => {
  const node = nodes.find(({ id }) => id === bareId(to));
  return node !== undefined && carriersOf('nodes', node).length === 0;
};

function isWhollyShifted({ members }: Job, bar: TubeRef, isShifted: Asked): boolean {
  const path = members.find(({ id }) => id === bareId(bar))?.path ?? [];
  return path.length > 0 && path.every((to) => isShifted(isPrimed(bar) ? primed(to) : to));
}

/** Whether it is placed from one that is moved, or from that one's mirror image; by others in between or not. */
function standsOnMoved({ nodes, members }: Job, one: Carrier, isMoved: Asked): boolean {
  const waiting = [one];
  for (const { list, id } of waiting) {
    const record = (list === 'nodes' ? nodes : members).find((each) => each.id === id);
    const carriers = record === undefined ? [] : carriersOf(list, record);
    if (carriers.some((each) => each.list === 'nodes' && (isMoved(each.id) || isMoved(primed(each.id))))) return true;
    waiting.push(
      ...carriers.filter((each) => !waiting.some((other) => other.list === each.list && other.id === each.id)),
    );
  }
  return false;
}
