/**
 * Members taken out on which others stand. What stands on them is left where it is in the solved frame, or goes with them. Ends
 * that name one of them to cope to lose it, and bars that one of them cut are one there again.
 */
import { dropFeeds } from '../edit/feeds.ts';
import { tubesNamed } from '../edit/members.ts';
import { joinWhere } from '../edit/pieces.ts';
import { withRecords, type Edited } from '../edit/records.ts';
import { dependentsOf, removeAllUnused, type Going } from '../edit/references.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { bareId } from '../job/reference.ts';
import { carriersOf } from '../job/references.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';

type Ids = ReadonlySet<string>;

/** What leans on the members, and what would go with them; the members themselves are in none of it. */
export interface Leaning {
  /** Placed on one of them. */
  readonly nodes: readonly FrameNode[];
  /** Told to cope to one of them or to a mitre with one, or cut by one of them. */
  readonly named: readonly Member[];
  /** Welded to one of them; they go with it in any case. */
  readonly gussets: readonly Gusset[];
  /** Placed, however far down, by what stands on them. */
  readonly goes: { readonly nodes: readonly FrameNode[]; readonly members: readonly Member[] };
}

/** What would not be where it is, or as it is told, without the members of these ids; in the order of the job. */
export function leaningOn(job: Job, ids: Ids): Leaning {
  const goes = allPlacedFrom(job, ids);
  return {
    nodes: job.nodes.filter((node) => standsOn(node, ids)),
    named: job.members.filter((member) => !ids.has(member.id) && namesOneOf(member, ids)),
    gussets: job.gussets.filter(({ between }) => between.some(({ member }) => ids.has(bareId(member)))),
    goes: {
      nodes: job.nodes.filter(({ id }) => goes.nodes.has(id)),
      members: job.members.filter(({ id }) => goes.members.has(id) && !ids.has(id)),
    },
  };
}

/**
 * The job without the members. Nodes on them become fixed where the frame has them; all that is placed from those nodes stays too.
 * Refused while something else refers to them, a bend run say, or while a bar in pieces has one.
 */
export function removeLeaving(job: Job, frame: Frame, ids: Ids): Edited {
  const nodes = mapKeeping(job.nodes, (node): FrameNode => {
    const place = standsOn(node, ids) ? frame.nodes.get(node.id) : undefined;
    return place === undefined ? node : { ...node, at: { kind: 'fixed', position: unsigned(place) } };
  });
  return removeUnnamed(withRecords(job, 'nodes', nodes), { members: ids });
}

/** The job without the members, the nodes on them, what is placed from those, and so on down. Refused as before. */
export const removeWithLeaning = (job: Job, ids: Ids): Edited => removeUnnamed(job, allPlacedFrom(job, ids));

const allPlacedFrom = (job: Job, ids: Ids): Record<'nodes' | 'members', Ids> =>
  dependentsOf(
    job,
    [...ids].map((id) => ({ list: 'members', id })),
  );

const standsOn = (node: FrameNode, ids: Ids): boolean =>
  carriersOf('nodes', node).some(({ list, id }) => list === 'members' && ids.has(id));

const namesOneOf = ({ ends, cutBy = [] }: Member, ids: Ids): boolean =>
  [...ends.flatMap((end) => (end.fit === 'cope' ? end.against : end.fit === 'mitre' ? [end.with] : [])), ...cutBy].some(
    (tube) => ids.has(bareId(tube)),
  );

function removeUnnamed(job: Job, going: Going & { readonly members: Ids }): Edited {
  const { members: ids } = going;
  const made = [...ids].flatMap((id) => tubesNamed(job, id));
  let left: Job = dropFeeds(job, made);
  for (const { id, cutBy = [] } of job.members) {
    if (ids.has(id)) continue;
    for (const cutter of cutBy.filter((tube) => ids.has(bareId(tube)))) {
      const joined = joinWhere(left, id, cutter);
      if (isRefused(joined)) return joined;
      left = joined;
    }
  }
  const members = mapKeeping(left.members, (member): Member => {
    const [a, b] = member.ends;
    return ids.has(member.id) ? member : { ...member, ends: [without(a, ids), without(b, ids)] };
  });
  return removeAllUnused(withRecords(left, 'members', members), going);
}

/** An end that is told to cope to nothing else any more copes to what it meets. */
function without(end: EndFit, ids: Ids): EndFit {
  if (end.fit === 'mitre' && ids.has(bareId(end.with))) return { fit: 'auto', allowance: end.allowance };
  if (end.fit !== 'cope') return end;
  const against = end.against.filter((tube) => !ids.has(bareId(tube)));
  return against.length === 0 ? { fit: 'auto', allowance: end.allowance } : { ...end, against };
}

const isRefused = (edited: Edited): edited is Exclude<Edited, Job> => Array.isArray(edited);

/** Without the sign of a zero, which a file has not. */
const unsigned = ([x, y, z]: Vec3): Vec3 => [x + 0, y + 0, z + 0];
