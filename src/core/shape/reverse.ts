/**
 * A member counted from its other end: end A becomes end B. The steel stays: all that counts from end A counts from the new one, so that it
 * says the same place, the same bend and the same end as before. Done twice, the job is what it was.
 */
import { AXIS_INDEX } from '../geometry/vector.ts';
import { withLegs } from '../edit/gussets.ts';
import { bendRunOf } from '../edit/pieces.ts';
import { findRecord, withRecords, type Edited } from '../edit/records.ts';
import { placesInPlane } from '../geometry/plane-places.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { TubeFeed } from '../job/kinds/feed.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { memberOfTube } from '../job/member-of-tube.ts';
import type { Place } from '../job/places.ts';
import type { OnMember } from '../job/places/on.ts';
import { bareId, isPrimed, pieceId, pieceNamed, primed, type MemberId, type TubeRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';

import type { Frame } from '../solve/types.ts';
import { drawnNodeName } from './draw/tube.ts';
import { withToldNumbers } from './told-numbers.ts';
import { unmoved } from './unmoved.ts';
import { comesTo } from './ways.ts';

/**
 * The job with end A of the member where end B was. Tubes keep their numbers; ends, feet, kept angles, nodes on it, legs of gussets, how it is fed, logged pulls and
 * what was seen of it go by the new count. Refused, in words, while one of its tubes has a bend run, and where a node on it
 * would not be where it is: the first of two places that are equally near, or of a stretch that lies level.
 */
export function reverseMember(job: Job, frame: Frame, id: MemberId): Edited {
  const member = findRecord(job, 'members', id);
  if (member === undefined || !frame.bars.has(id)) return job;
  const run = bendRunOf(job, member);
  if (run !== null) return [run];
  const ofIt = (tube: TubeRef | undefined): boolean => tube !== undefined && memberOfTube(job.members, tube) === member;
  const bendsOf = (tube: TubeRef): number => frame.byId.get(tube)?.bends.length ?? 0;

  const members = mapKeeping(job.members, (each) => (each === member ? turnedRound(member) : each));
  const nodes = mapKeeping(job.nodes, (node) => ({ ...node, at: fromOtherEnd(node.at, frame, id) }));
  const feeds = mapKeeping(job.feeds, (feed) =>
    ofIt(feed.tube) ? { ...fedFromOtherEnd(feed, bendsOf(feed.tube)), tube: otherPiece(member, feed.tube) } : feed,
  );
  const pulls = mapKeeping(job.pulls, (pull) =>
    ofIt(pull.tube)
      ? {
          ...pull,
          tube: otherPiece(member, pull.tube!),
          ...(pull.bend !== undefined && { bend: otherBend(pull.bend, bendsOf(pull.tube!)) }),
        }
      : pull,
  );
  const seen = mapKeeping(job.seen, (mark) =>
    ofIt(mark.tube)
      ? {
          ...mark,
          tube: otherPiece(member, mark.tube),
          ...(mark.end && { end: OTHER_END[mark.end] }),
          ...(mark.bend !== undefined && { bend: otherBend(mark.bend, bendsOf(mark.tube)) }),
        }
      : mark,
  );
  const lists = withRecords(withRecords(job, 'members', members), 'nodes', nodes);
  const turned = withLegs({ ...lists, feeds, pulls, seen }, (leg) =>
    bareId(leg.member) === id ? { ...leg, towards: OTHER_END[leg.towards] } : leg,
  );
  // A piece keeps its number, by its new name.
  const was = (tube: TubeRef): TubeRef => (ofIt(tube) ? otherPiece(member, tube) : tube);
  const renamed = withRecords(
    turned,
    'nodes',
    mapKeeping(turned.nodes, (node) => namedFromOtherEnd(node, member)),
  );
  return unmoved(
    frame,
    member.cutBy === undefined ? withPiecesTurned(renamed, member) : withToldNumbers(job, renamed, was),
  );
}

/** A node of the path that still goes by the name that a drawn tube gave it, by what it would be called now. */
function namedFromOtherEnd(node: FrameNode, { name, path }: Member): FrameNode {
  const last = path.length - 1;
  const at = path.findIndex((ref, i) => bareId(ref) === node.id && node.name === drawnNodeName(name, i, last));
  return at === -1 ? node : { ...node, name: drawnNodeName(name, last - at, last) };
}

/** Numbers put by, for when the bar is in pieces again: the last piece is the first one then. */
function withPiecesTurned(job: Job, { id }: Member): Job {
  const pieceOf = (tube: TubeRef): number | null => {
    const named = pieceNamed(tube);
    return named?.member === id && memberOfTube(job.members, tube) === undefined ? named.piece : null;
  };
  const numbers = Object.entries(job.numbers ?? {});
  const count = Math.max(0, ...numbers.map(([tube]) => pieceOf(tube) ?? 0));
  if (count === 0) return job;
  const turned = numbers.map(([tube, number]) => {
    const piece = pieceOf(tube);
    return [piece === null ? tube : pieceId(isPrimed(tube) ? primed(id) : id, count + 1 - piece), number] as const;
  });
  return { ...job, numbers: Object.fromEntries(turned) };
}

const OTHER_END = { A: 'B', B: 'A' } as const;

const turnedRound = (member: Member): Member => ({
  ...member,
  path: member.path.toReversed(),
  ends: [member.ends[1], member.ends[0]],
});

/** A bend that the drawing has not is one of an older drawing: it stays what it was called. */
const otherBend = (bend: number, count: number): number => (bend <= count ? count + 1 - bend : bend);

/** What the piece is called when pieces are counted from the other end; of a bar made whole the tube itself. */
function otherPiece({ id, cutBy }: Member, tube: TubeRef): TubeRef {
  if (cutBy === undefined) return tube;
  const count = cutBy.length + 1;
  return pieceId(isPrimed(tube) ? primed(id) : id, count + 1 - pieceNamed(tube)!.piece);
}

/** The place on the member, or its twin, counted from its other end; any other place as it is. */
function fromOtherEnd(at: Place, frame: Frame, id: MemberId): Place {
  if (at.kind !== 'on' || bareId(at.member) !== id) return at;
  const { path, bends } = frame.bars.get(at.member)!;
  if (at.until !== undefined) {
    const { axis } = at.until;
    const times = placesInPlane(path, AXIS_INDEX[axis], comesTo(frame, at.until, axis)).length;
    return { ...at, nth: times + 1 - at.nth };
  }
  if (at.bend === undefined) return { ...at, from: at.from === 'start' ? 'end' : 'start' };
  return { ...at, bend: otherBend(at.bend, bends.length), where: OTHER_WHERE[at.where], distance: 0 - at.distance };
}

const OTHER_WHERE: Readonly<Record<NonNullable<OnMember['where']>, 'start' | 'middle' | 'end'>> = {
  start: 'end',
  middle: 'middle',
  end: 'start',
};

/** The same end is hooked and the same end is in front, by what they are called now. */
function fedFromOtherEnd(feed: TubeFeed, bends: number): TubeFeed {
  const { from, order } = feed;
  const turned = (step: BendStep): BendStep => ({
    ...step,
    bend: otherBend(step.bend, bends),
    front: OTHER_END[step.front],
  });
  return {
    ...feed,
    ...(from !== undefined && { from: from === 'middle' ? from : OTHER_END[from] }),
    ...(order !== undefined && { order: order.map(turned) }),
  };
}
