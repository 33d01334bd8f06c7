/**
 * Two members that end at one node made one that runs on through it: straight on, or round a corner that the die bends. The one that is asked keeps its id, name,
 * direction and place in the build order; the other goes, and all that named it names the one. Where they were one in line, a node that only parted
 * them goes too: what was split is as it was.
 */
import { isSameBatch } from '../job/batch.ts';
import { dropFeeds } from '../edit/feeds.ts';
import { withLegs } from '../edit/gussets.ts';
import { bendRunOf, type EndOfMember } from '../edit/pieces.ts';
import { withDie } from '../edit/members.ts';
import { changeRecord, findRecord, takeOut, withRecords, type Edited } from '../edit/records.ts';
import { withoutUnreferred } from '../edit/references.ts';
import { angleBetween } from '../geometry/angle.ts';
import { distanceToPath, type Path } from '../geometry/path.ts';
import { MEETING_DISTANCE, STRAIGHT_THROUGH } from '../geometry/tolerance.ts';
import { mirrored, scale } from '../geometry/vector.ts';
import { fault, type Fault } from '../job/fault.ts';
import type { Member } from '../job/kinds/member.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { tubesOfMember } from '../job/member-of-tube.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type MemberId, type NodeRef, type TubeRef } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { bendingOfMembers, radiusAt } from '../solve/bending.ts';
import { solveCentreline, type Centreline } from '../solve/centreline.ts';
import { nodeName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { copedBetween } from './coped-between.ts';
import { withKeptOf, withSameTubes, withTubes } from './named-tubes.ts';
import { alongHost, retold, type Stretch } from './retold.ts';
import { reverseMember } from './reverse.ts';
import { unmoved } from './unmoved.ts';

/** An end of another member at the node of an end of this one. */
export interface Joint {
  readonly own: 0 | 1;
  readonly other: EndOfMember;
}

/** Where the member could be joined, by end and then by build order: whether it can be is for joinMembers. */
export function jointsOf(job: Job, id: MemberId): readonly Joint[] {
  const member = findRecord(job, 'members', id);
  if (member === undefined) return [];
  return BOTH.flatMap((own) =>
    job.members.flatMap((each) =>
      each === member
        ? []
        : BOTH.flatMap((which) =>
            nodeAt(each, which) === nodeAt(member, own) ? [{ own, other: { member: each.id, which } }] : [],
          ),
    ),
  );
}

const BOTH = [0, 1] as const;

const nodeAt = ({ path }: Member, which: 0 | 1): NodeRef => path.at(which === 0 ? 0 : -1)!;

/**
 * The job with the two as one. Refused, in words, where they are not of one section, die, batch and side; while one has a bend run or is in pieces; where another tube
 * is coped to, or mitred with, the joint in a way that would be lost; where the build order would lose a cope; where a third tube that ends on them would stand off the bend; and where a node on them would not stay. How the two were fed goes.
 */
export function joinMembers(job: Job, frame: Frame, id: MemberId, { own, other }: Joint): Edited {
  const [a, b] = [findRecord(job, 'members', id), findRecord(job, 'members', other.member)];
  if (a === undefined || b === undefined || a === b) return job;
  if (nodeAt(a, own) !== nodeAt(b, other.which)) return job;
  const through = runsThrough(frame, a, own, b, other.which);
  const runs = through === null ? (bendRunOf(job, a) ?? bendRunOf(job, b) ?? inPieces(a, b)) : null;
  const trouble =
    runs ??
    unlike(a, b) ??
    lostThere(job, frame, a, own, b, other.which, through) ??
    copedBetween(frame, b.id, a.id, [other.which === 0 ? 1 : 0]);
  if (trouble !== null) return [trouble];
  // The other is turned so that it runs on in this one's direction.
  const turned = own === other.which ? reverseMember(job, frame, b.id) : job;
  if (Array.isArray(turned)) return turned;
  return joined(turned as Job, frame, {
    a,
    b: findRecord(turned as Job, 'members', b.id)!,
    own,
    isTurned: turned !== job,
    through,
  });
}

/** Why they cannot be one tube; null where they can. */
function unlike(a: Member, b: Member): Fault | null {
  const [one, two] = [shownName(a.name), shownName(b.name)];
  const differ = (what: string): Fault => fault('', `${one} and ${two} are not of one ${what}`);
  if (a.section !== b.section) return differ('section');
  if (a.die !== undefined && b.die !== undefined && a.die !== b.die) return differ('die');
  if (!isSameBatch(a.batch, b.batch)) return differ('batch');
  return a.mirror === b.mirror ? null : fault('', `only one of ${one} and ${two} has a mirror image`);
}

function inPieces(a: Member, b: Member): Fault | null {
  const bar = [a, b].find(({ cutBy }) => cutBy !== undefined);
  return bar === undefined ? null : fault('', `${shownName(bar.name)} is made in pieces: let it be one tube first`);
}

/** The one bar that both are coped to there, in line with each other: joined, they are a bar in pieces that it cuts. Null where none is. */
function runsThrough({ bars }: Frame, a: Member, own: 0 | 1, b: Member, which: 0 | 1): TubeRef | null {
  const [one, two] = [bars.get(a.id)?.ends[own], bars.get(b.id)?.ends[which]];
  const against = one?.cuts[0]?.against;
  if (one === undefined || two === undefined || against === undefined || against === a.id || against === b.id)
    return null;
  const isOnly = one.cuts.length === 1 && two.cuts.length === 1 && two.cuts[0]!.against === against;
  // A cut within a bar in pieces has no allowance.
  if (one.allowance !== 0 || two.allowance !== 0) return null;
  return isOnly && angleBetween(one.direction, scale(two.direction, -1)) <= STRAIGHT_THROUGH ? against : null;
}

/** What of the joint would be lost: a foot, a cope to a third tube, a third tube's mitre, a bar that both cut. */
function lostThere(
  job: Job,
  frame: Frame,
  a: Member,
  own: 0 | 1,
  b: Member,
  which: 0 | 1,
  through: TubeRef | null,
): Fault | null {
  const ids: readonly string[] = [a.id, b.id];
  const node = nodeAt(a, own);
  for (const [member, end] of [
    [a, own],
    [b, which],
  ] as const) {
    const name = shownName(member.name);
    const { fit } = member.ends[end];
    if (fit === 'plate' || fit === 'foot')
      return fault('', `${name} stands on a ${fit} there: give that end another cut first`);
    const cut = frame.bars
      .get(member.id)
      ?.ends[end].cuts.find(({ against }) => against !== through && !ids.includes(against));
    if (cut !== undefined) {
      return fault('', `${name} is coped to ${tubeName(frame, cut.against)} there, and would run through it`);
    }
  }
  for (const each of job.members) {
    if (each === a || each === b) continue;
    const isMitred = each.ends.some(
      (end, at) =>
        end.fit === 'mitre' && ids.includes(bareId(end.with)) && bareId(nodeAt(each, at as 0 | 1)) === bareId(node),
    );
    if (isMitred)
      return fault('', `${shownName(each.name)} is mitred with one of them there: give its end another cut first`);
    const cutters = (each.cutBy ?? []).map(bareId);
    if (ids.every((id) => cutters.includes(id))) return fault('', `${shownName(each.name)} is cut by both of them`);
  }
  const back = [a, b].find(({ id, ends }) =>
    ends.some((end, at) => at !== (id === a.id ? own : which) && namesOf(end).some((to) => ids.includes(to))),
  );
  return back === undefined ? null : fault('', `the other end of ${shownName(back.name)} is coped to one of them`);
}

const namesOf = (end: Member['ends'][number]): readonly TubeRef[] =>
  end.fit === 'cope' ? end.against : end.fit === 'mitre' ? [end.with] : [];

interface Joining {
  readonly a: Member;
  /** Turned, so that it runs in the direction of the other. */
  readonly b: Member;
  readonly own: 0 | 1;
  readonly isTurned: boolean;
  /** What cuts the one where they meet. */
  readonly through: TubeRef | null;
}

function joined(job: Job, frame: Frame, { a, b, own, isTurned, through }: Joining): Edited {
  const [first, second] = own === 1 ? [a, b] : [b, a];
  const straight = oneOf(a, first, second);
  const whole = centrelineOf(job, frame, straight) === null ? withDie(job, straight) : straight;
  const [bars, line] = [
    [frame.bars.get(first.id)!, frame.bars.get(second.id)!] as const,
    centrelineOf(job, frame, whole),
  ];
  if (line === null) {
    const there = nodeName(job, nodeAt(second, 0));
    return [fault('', `no tube runs round ${there} so: it would double back there, or needs a die`)];
  }
  const off = offTheBend(frame, a, b, line);
  if (off !== null) return [off];
  const total = line(false);
  const bends = total.bends.length - bars[1].bends.length;
  const common = { tube: a.id, count: total.bends.length, path: (isImage: boolean): Path => line(isImage).path };
  const inFirst: Stretch = { ...common, fromA: 0, fromB: total.developedLength - bars[0].developedLength, bends: 0 };
  const inSecond: Stretch = { ...common, fromA: total.developedLength - bars[1].developedLength, fromB: 0, bends };

  const before = new Map(frame.job.nodes.map((node) => [node.id, node]));
  const nodes = mapKeeping(job.nodes, (node) => {
    const host = bareId(hostOf(node.at) ?? '');
    if (host !== a.id && host !== b.id) return node;
    const at = alongHost(frame, before.get(node.id)!);
    if (at === null) return node;
    const along = host === b.id && isTurned ? frame.bars.get(b.id)!.developedLength - at : at;
    return { ...node, at: retold(frame, node.at, along, host === first.id ? inFirst : inSecond) };
  });
  const toOne = (to: TubeRef): TubeRef => (bareId(to) === b.id ? (isPrimed(to) ? primed(a.id) : a.id) : to);
  const renamed = withLegs(withTubes(job, toOne), (leg) => ({ ...leg, member: toOne(leg.member) }));
  const cutters = [...(first.cutBy ?? []), ...(through === null ? [] : [through]), ...(second.cutBy ?? [])];
  const one = { ...withEndsOf(whole, renamed, first, second), ...(cutters.length > 0 && { cutBy: cutters }) };
  const members = mapKeeping(renamed.members, (each) => (each.id === a.id ? one : each));
  const lists = withRecords(withRecords(renamed, 'nodes', nodes), 'members', members);
  const alone = takeOut(lists, 'members', new Set([b.id]));
  const told =
    through === null
      ? withBothTold(alone, a, first, second, bends)
      : withSameTubes(job, alone, called(one, first, second));
  const isInLine = total.bends.length === bars[0].bends.length + bars[1].bends.length;
  return unmoved(frame, isInLine ? withoutParting(told, a.id, nodeAt(second, 0)) : told);
}

/** A third tube that ends on the centreline of one of the two, where the one that runs on round a bend does not come by. */
function offTheBend({ bars }: Frame, a: Member, b: Member, line: (isImage: boolean) => Centreline): Fault | null {
  for (const { member, ends } of bars.values()) {
    if (member.id === a.id || member.id === b.id) continue;
    for (const { cuts, position } of ends) {
      for (const { against } of cuts) {
        const to = [a, b].find(({ id }) => id === bareId(against));
        if (to === undefined || distanceToPath(bars.get(against)!.path, position) > MEETING_DISTANCE) continue;
        if (distanceToPath(line(isPrimed(against)).path, position) <= MEETING_DISTANCE) continue;
        return fault('', `${shownName(member.name)} ends on ${shownName(to.name)}, and would stand off the bend`);
      }
    }
  }
  return null;
}

/** Two tubes that are one now: what is kept of them is of it, the second's bends counted from `bends` on; how they were fed goes. */
function withBothTold(alone: Job, a: Member, first: Member, second: Member, bends: number): Job {
  const told = withKeptOf(alone, (of) => {
    const { tube, end, bend } = of;
    const from = bareId(tube);
    if (from !== first.id && from !== second.id) return of;
    // The ends that met are none any more.
    if (bend === undefined && end === (from === first.id ? 'B' : 'A')) return null;
    const shift = from === second.id ? bends : 0;
    return { ...of, tube: isPrimed(tube) ? primed(a.id) : a.id, ...(bend !== undefined && { bend: bend + shift }) };
  });
  return dropFeeds(told, [...tubesOfMember(first), ...tubesOfMember(second)]);
}

/** What the tubes of the two are called as pieces of the one. */
function called(one: Member, first: Member, second: Member): ReadonlyMap<TubeRef, TubeRef> {
  const were = [first, second].flatMap((each) => tubesOfMember({ ...each, mirror: false }));
  const are = tubesOfMember({ ...one, mirror: false });
  return new Map(were.map((tube, i) => [tube, are[i]!]));
}

/** The one, its ends as the two had them. */
function oneOf(a: Member, first: Member, second: Member): Member {
  const { keptAngles: _, ...rest } = a;
  const kept = [...(first.keptAngles ?? []), ...(second.keptAngles ?? [])];
  const path = [...first.path, ...second.path.slice(1)];
  const die = first.die ?? second.die;
  return { ...rest, path, ...(kept.length > 0 && { keptAngles: kept }), ...(die !== undefined && { die }) };
}

/** With the far ends of the two as they are by the names of now. */
function withEndsOf(whole: Member, { members }: Job, first: Member, second: Member): Member {
  const [a, b] = [first, second].map(({ id }) => members.find((each) => each.id === id)!) as [Member, Member];
  return { ...whole, ends: [a.ends[0], b.ends[1]] };
}

/** The centreline of the one, or of its mirror image; null where no tube can be bent so. */
function centrelineOf(job: Job, { nodes }: Frame, whole: Member): ((isImage: boolean) => Centreline) | null {
  const bending = bendingOfMembers(job)(whole);
  const route = whole.path.map((to) => nodes.get(to)!);
  const solved = (isImage: boolean) =>
    solveCentreline(isImage ? route.map(mirrored) : route, bending === null ? null : radiusAt(bending));
  return 'why' in solved(false) ? null : (isImage) => solved(isImage) as Centreline;
}

/** Without the node where the two met, if it is given on the line between its neighbours and nothing else goes by it. */
function withoutParting(job: Job, id: MemberId, node: NodeRef): Job {
  const member = findRecord(job, 'members', id)!;
  const index = member.path.indexOf(node);
  const at = findRecord(job, 'nodes', bareId(node))?.at;
  const beside = [member.path[index - 1], member.path[index + 1]];
  if (isPrimed(node) || at?.kind !== 'between' || !at.nodes.every((to) => beside.includes(to))) return job;
  const path = member.path.toSpliced(index, 1);
  const shorter = changeRecord(job, 'members', id, (each) => ({ ...each, path }));
  const without = withoutUnreferred(shorter, 'nodes', node);
  return without === shorter ? job : without;
}
