/**
 * Which members and nodes have to be there once for each side before a mirrored member can be two: what stands on it, or on nodes that the
 * two would not share as mirror images any more, and so on down. Told by references alone.
 */
import { meanInPair, pointInPair } from '../survey/in-pair.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type MemberId, type NodeId, type NodeRef } from '../job/reference.ts';
import { carriersOf, referencesOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';
import { ownNodes } from './followed.ts';

export interface Apart {
  /** Mirrored members that become two. */
  readonly members: ReadonlySet<MemberId>;
  /** Nodes whose image is no mirror image of them any more. */
  readonly nodes: ReadonlySet<NodeId>;
  /** Those among them that are placed by a pair of points themselves. */
  readonly byPair: ReadonlySet<NodeId>;
}

/** All that goes apart with the mirrored member of this id. */
export function apartWith(job: Job, id: MemberId): Apart {
  const members = new Set<MemberId>([id]);
  const nodes = new Set<NodeId>();
  const byPair = new Set<NodeId>();
  for (let before = -1; before < members.size + nodes.size;) {
    before = members.size + nodes.size;
    for (const member of members) {
      for (const node of ownNodes(job, member)) {
        if (!isByPair(job, node)) continue;
        byPair.add(node.id);
        nodes.add(node.id);
      }
    }
    for (const node of job.nodes) {
      const isOn = carriersOf('nodes', node).some(({ list, id: to }) => (list === 'nodes' ? nodes : members).has(to));
      if (isOn) nodes.add(node.id);
    }
    for (const member of job.members) {
      if (member.mirror && (member.path.some((to) => nodes.has(bareId(to))) || namesOneOf(member, members))) {
        members.add(member.id);
      }
    }
  }
  return { members, nodes, byPair };
}

const isByPair = (job: Job, node: FrameNode): boolean =>
  referencesOf('nodes', node).some(({ list, to }) =>
    list === 'points' ? pointInPair(job, to) !== null : list === 'nodes' && meanInPair(job, to) !== null,
  );

const namesOneOf = (member: Member, ids: ReadonlySet<MemberId>): boolean =>
  referencesOf('members', member).some(({ list, to }) => list === 'members' && ids.has(bareId(to)));

/** The nodes and images that anything stands on or is placed from: a tube, or a node that is there. */
export function usedReferences(job: Job): ReadonlySet<NodeRef> {
  const nodes = new Map(job.nodes.map((node) => [node.id, node]));
  const used = new Set<NodeRef>(job.nodes.map(({ id }) => id));
  for (const { path, mirror } of job.members) {
    for (const to of path) used.add(to).add(mirror ? primed(to) : to);
  }
  // A set takes in what is added while it is gone through.
  for (const reference of used) {
    const node = nodes.get(bareId(reference))!;
    for (const { list, to } of referencesOf('nodes', node)) {
      if (list === 'nodes') used.add(isPrimed(reference) ? primed(to) : to);
    }
  }
  return used;
}

/** A node for which no image could be given a place of its own: it stands on that bar, which goes across the car. */
export interface Stuck {
  readonly bar: Member;
  readonly node: FrameNode;
}

/**
 * A node that stands on both sides of the car on one bar, where that bar would not be its own mirror image any more, or the node's place goes by
 * what is apart. Null where there is none.
 */
export function stuckOn(job: Job, { nodes }: Apart): Stuck | null {
  const used = usedReferences(job);
  for (const bar of job.members) {
    if (bar.mirror) continue;
    const isLopsided = bar.path.some((to) => isPrimed(to) && nodes.has(bareId(to)));
    const node = job.nodes.find(
      ({ id, at }) =>
        bareId(hostOf(at) ?? '') === bar.id &&
        used.has(primed(id)) &&
        (isLopsided || (at.kind === 'on' && nodes.has(id))),
    );
    if (node !== undefined) return { bar, node };
  }
  return null;
}
