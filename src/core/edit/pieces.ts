/**
 * Edits of bars in pieces: where a bar is cut by one that runs through, and which of two does. A bar's pieces are other tubes than it
 * was: how those were fed goes, and one with a bend run is not cut or joined, since that is of the tube as it was.
 */
import { fault, quoted, type Fault } from '../job/fault.ts';
import type { Member } from '../job/kinds/member.ts';
import { memberOfTube, tubesOfMember } from '../job/member-of-tube.ts';
import { bareId, isPrimed, primed, type MemberId, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { dropFeeds } from './feeds.ts';
import { withLegs } from './gussets.ts';
import { changeRecord, findRecord, type Edited } from './records.ts';
import { removeUnused, withoutUnreferred } from './references.ts';

/** The member cut where that bar runs through it; its twin by the bar's image. Refused while one of its tubes has a bend run. */
export const cutWhere = (job: Job, id: MemberId, by: TubeRef): Edited =>
  withCutters(job, id, (cutters) => (cutters.includes(by) ? cutters : [...cutters, by]));

/** The member not cut by that bar any more. Refused as before. */
export const joinWhere = (job: Job, id: MemberId, by: TubeRef): Edited =>
  withCutters(job, id, (cutters) => (cutters.includes(by) ? cutters.filter((each) => each !== by) : cutters));

/** The member, which that bar cut, runs through, and the bar is cut by it, on both sides of the car where both are. Refused as before. */
export function swapThrough(job: Job, id: MemberId, by: TubeRef): Edited {
  const [member, other] = [findRecord(job, 'members', id), findRecord(job, 'members', bareId(by))];
  if (member === undefined || other === undefined) return job;
  const pairs = crossings(member, other, by);
  let swapped: Edited = job;
  for (const [cutter, back] of pairs) {
    if (isRefused(swapped)) return swapped;
    swapped = joinWhere(swapped, id, cutter);
    if (isRefused(swapped)) return swapped;
    swapped = cutWhere(swapped, other.id, back);
  }
  return swapped;
}

/** Which end of which member. */
export interface EndOfMember {
  readonly member: MemberId;
  readonly which: 0 | 1;
}

/**
 * Two straight members that end at one bar drawn as one, cut there: the first runs on to the far end of the second, which goes, with the node
 * between them where nothing else stands on it. The same job where either bends, or they are of different tube or sides. Refused while others name the second.
 */
export function asOneBar(job: Job, first: EndOfMember, second: EndOfMember, through: TubeRef): Edited {
  const [a, b] = [findRecord(job, 'members', first.member), findRecord(job, 'members', second.member)];
  if (a === undefined || b === undefined || a === b || !isAlike(a, b)) return job;
  const far = [b.path[1 - second.which]!, b.ends[1 - second.which]!] as const;
  const path = first.which === 1 ? [a.path[0]!, far[0]] : [far[0], a.path[1]!];
  const ends: Member['ends'] = first.which === 1 ? [a.ends[0], far[1]] : [far[1], a.ends[1]];
  const told = withLegs(dropFeeds(job, tubesOfMember(b)), (leg) => {
    if (bareId(leg.member) !== b.id) return leg;
    const isAway = (leg.towards === 'A') === (second.which === 1);
    const member = isPrimed(leg.member) ? primed(a.id) : a.id;
    return { ...leg, member, towards: isAway === (first.which === 1) ? 'B' : 'A' };
  });
  const without = removeUnused(told, 'members', b.id);
  if (isRefused(without)) return without;
  const joined = cutWhere(
    changeRecord(without, 'members', a.id, (member) => ({ ...member, path, ends })),
    a.id,
    through,
  );
  if (isRefused(joined)) return joined;
  return [a.path[first.which]!, b.path[second.which]!].reduce(
    (left, node) => withoutUnreferred(left, 'nodes', bareId(node)),
    joined,
  );
}

const isAlike = (a: Member, b: Member): boolean =>
  a.path.length === 2 &&
  b.path.length === 2 &&
  a.section === b.section &&
  a.mirror === b.mirror &&
  a.cutBy === undefined &&
  b.cutBy === undefined;

/**
 * What cuts the member there, each with what cuts the other bar at the same crossing when it is the other way round. Where the member
 * alone spans the car it crosses both of the pair, and where the other does, that crosses both of the member's.
 */
function crossings(member: Member, other: Member, by: TubeRef): readonly (readonly [TubeRef, TubeRef])[] {
  if (member.mirror && other.mirror) return [[by, isPrimed(by) ? primed(member.id) : member.id]];
  if (member.mirror) {
    return [
      [by, member.id],
      [by, primed(member.id)],
    ];
  }
  if (!other.mirror) return [[by, member.id]];
  return [by, primed(by)].filter((each) => member.cutBy?.includes(each)).map((each) => [each, member.id]);
}

const isRefused = (edited: Edited): edited is Exclude<Edited, Job> => Array.isArray(edited);

function withCutters(job: Job, id: MemberId, change: (cutters: readonly TubeRef[]) => readonly TubeRef[]): Edited {
  const member = findRecord(job, 'members', id);
  if (member === undefined) return job;
  const before = member.cutBy ?? [];
  const cutters = change(before);
  if (cutters === before) return job;
  const run = bendRunOf(job, member);
  if (run !== null) return [run];
  const isOf = ({ tube }: { readonly tube: TubeRef }) => memberOfTube(job.members, tube) === member;
  const feeds = job.feeds.filter((feed) => !isOf(feed));
  const fed = feeds.length === job.feeds.length ? job : { ...job, feeds };
  return changeRecord(fed, 'members', id, (record) => {
    const { cutBy: _, ...whole } = record;
    return cutters.length === 0 ? whole : { ...whole, cutBy: cutters };
  });
}

/** What stands in the way of making the member's tubes other tubes: that one of them has a bend run, or is cut. Null where none is. */
export function bendRunOf(job: Job, member: Member): Fault | null {
  const isOf = ({ tube }: { readonly tube: TubeRef }) => memberOfTube(job.members, tube) === member;
  const [run, cut] = [job.bent.findIndex(isOf), job.made.findIndex(isOf)];
  if (run !== -1) {
    const tube = quoted(job.bent[run]!.tube);
    return fault(`bent[${run}].tube`, `${tube} has a bend run as it is: take that out first, in the Shop`);
  }
  if (cut === -1) return null;
  return fault(
    `made[${cut}].tube`,
    `${quoted(job.made[cut]!.tube)} is cut as it is: set it back to drawn first, in the Shop`,
  );
}
