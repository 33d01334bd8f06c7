/**
 * Edits of members: their path, their ends, their place in the build order.
 *
 * A node that counts bends ("middle of bend 2") stays at bend 2 when a corner is put in before it: which corners bend
 * is only known once the tube is solved.
 */
import { fault } from '../job/fault.ts';
import { AUTO, type EndFit } from '../job/kinds/end.ts';
import type { Degrees } from '../geometry/angle.ts';
import type { Die } from '../job/kinds/die.ts';
import type { KeptAngle, Member } from '../job/kinds/member.ts';
import { tubesOfMember } from '../job/member-of-tube.ts';
import { isPrimed, type DieId, type MemberId, type NodeRef, type SectionId, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { dropFeeds } from './feeds.ts';
import { nextId } from './ids.ts';
import {
  appendRecord,
  changeRecord,
  findRecord,
  updateRecord,
  withRecords,
  type Edited,
  type Fields,
} from './records.ts';

/** What a new member must be given; the rest has a usual value. */
export interface NewMember {
  readonly name: string;
  readonly path: readonly NodeRef[];
  readonly section: SectionId;
  readonly role?: string;
  readonly mirror?: boolean;
}

/** The new member comes last in the build order. With corners, it gets the first die that fits its section. */
export function addMember(job: Job, { name, path, section, role = '', mirror = false }: NewMember): Job {
  const die = path.length > 2 ? dieFor(job, section) : undefined;
  return appendRecord(job, 'members', {
    id: nextId(job, 'members'),
    name,
    role,
    path,
    section,
    ...(die && { die: die.id }),
    mirror,
    ends: [AUTO, AUTO],
  });
}

/** The first die that fits the section. */
export function dieFor(job: Job, section: SectionId): Die | undefined {
  const diameter = findRecord(job, 'sections', section)?.outerDiameter;
  return job.dies.find(({ outerDiameter }) => outerDiameter === diameter);
}

/** With the first die that fits its section, where the member has none and there is one. */
export function withDie(job: Job, member: Member): Member {
  const die = member.die ?? dieFor(job, member.section)?.id;
  return die === undefined ? member : { ...member, die };
}

/** How its twin is fed goes with the twin, an angle that is kept with its corner. */
export function updateMember(job: Job, id: MemberId, fields: Fields<'members'>): Job {
  const changed = updateRecord(job, 'members', id, fields);
  const updated = fields.path === undefined ? changed : changeRecord(changed, 'members', id, keptOnPath);
  return fields.mirror === false ? dropFeeds(updated, tubesNamed(job, id).filter(isPrimed)) : updated;
}

/** The die, or with null none: a straight tube needs none. */
export function setDie(job: Job, id: MemberId, die: DieId | null): Job {
  if (die !== null) return updateMember(job, id, { die });
  return changeRecord(job, 'members', id, (member) => {
    if (member.die === undefined) return member;
    const { die: _, ...straight } = member;
    return straight;
  });
}

/** Whether its ends are cut on the car. */
export const setCutOnCar = (job: Job, id: MemberId, onCar: boolean): Job =>
  changeRecord(job, 'members', id, (member) => {
    if ((member.cutOnCar ?? false) === onCar) return member;
    const { cutOnCar: _, ...byDrawing } = member;
    return onCar ? { ...member, cutOnCar: true } : byDrawing;
  });

/** How end A (0) or end B (1) is cut. */
export const setEnd = (job: Job, id: MemberId, which: 0 | 1, fit: EndFit): Job =>
  changeRecord(job, 'members', id, (member) =>
    member.ends[which] === fit
      ? member
      : { ...member, ends: member.ends.with(which, fit) as unknown as Member['ends'] },
  );

/** What is left long at end A (0) or end B (1), mm past the tip; how it is cut stays. */
export const leaveLong = (job: Job, id: MemberId, which: 0 | 1, mm: number): Job =>
  changeRecord(job, 'members', id, (member) => {
    const end = member.ends[which];
    if (end.allowance === mm) return member;
    return { ...member, ends: member.ends.with(which, { ...end, allowance: mm }) as unknown as Member['ends'] };
  });

/** The angle of the bend at this corner, which is kept from now on; with null it is not. */
export const keepAngle = (job: Job, id: MemberId, corner: NodeRef, angle: Degrees | null): Job =>
  changeRecord(job, 'members', id, (member) => {
    const before = member.keptAngles ?? [];
    const others = before.filter((each) => each.corner !== corner);
    if (angle === null && others.length === before.length) return member;
    return withKept(member, angle === null ? others : [...others, { corner, angle }]);
  });

function withKept(member: Member, kept: readonly KeptAngle[]): Member {
  const { keptAngles: _, ...rest } = member;
  return kept.length === 0 ? rest : { ...rest, keptAngles: kept };
}

/** What is kept of corners that the path has. */
function keptOnPath(member: Member): Member {
  const corners = member.path.slice(1, -1);
  const kept = (member.keptAngles ?? []).filter(({ corner }) => corners.includes(corner));
  return kept.length === (member.keptAngles ?? []).length ? member : withKept(member, kept);
}

/** Puts a node into the path so that it stands at `index`: 0 is end A, the path's length is end B. */
export const insertPathNode = (job: Job, id: MemberId, index: number, node: NodeRef): Job =>
  changeRecord(job, 'members', id, (member) => ({ ...member, path: member.path.toSpliced(index, 0, node) }));

/** Takes a node out of the path. Refused when two are left. */
export function removePathNode(job: Job, id: MemberId, index: number): Edited {
  const place = job.members.findIndex((member) => member.id === id);
  if (place !== -1 && job.members[place]!.path.length <= 2) {
    return [fault(`members[${place}].path`, 'a member runs between two nodes at least')];
  }
  return changeRecord(job, 'members', id, (member) => keptOnPath({ ...member, path: member.path.toSpliced(index, 1) }));
}

/** Moves the member to another place in the build order, counted from 0; beyond either end means first or last. */
export function moveMember(job: Job, id: MemberId, to: number): Job {
  const from = job.members.findIndex((member) => member.id === id);
  const place = Math.min(Math.max(to, 0), job.members.length - 1);
  if (from === -1 || from === place) return job;
  return withRecords(job, 'members', job.members.toSpliced(from, 1).toSpliced(place, 0, job.members[from]!));
}

/** What the tubes are called that the member of this id is made into; none where there is no such member. */
export function tubesNamed(job: Job, id: MemberId): readonly TubeRef[] {
  const member = findRecord(job, 'members', id);
  return member === undefined ? [] : tubesOfMember(member);
}
