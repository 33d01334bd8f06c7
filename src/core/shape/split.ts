/**
 * A member made two at a place of its straights: end A's part keeps its id, name and numbers, end B's is a new member right after it in the build order. Unlike a
 * bar in pieces they are two records, each with its own section, ends and place from then on. The steel stays; all that names the member names the part that
 * it means. The place itself is given on the line between its neighbours of the path, so that the two stay in line while these do.
 */
import { dropFeeds } from '../edit/feeds.ts';
import { nextId } from '../edit/ids.ts';
import { bendRunOf } from '../edit/pieces.ts';
import { appendRecord, findRecord, withRecords, type Edited } from '../edit/records.ts';
import { nearestToPath } from '../geometry/nearest-paths.ts';
import { nearestOnPath, placeAt, type Path } from '../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import { distance } from '../geometry/vector.ts';
import { fault, type Fault } from '../job/fault.ts';
import { AUTO, type EndFit } from '../job/kinds/end.ts';
import type { Member } from '../job/kinds/member.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { tubesOfMember } from '../job/member-of-tube.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type MemberId, type NodeRef, type TubeRef } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { partOf } from '../solve/part-of.ts';
import type { Bar, Frame } from '../solve/types.ts';
import { withKeptOf, withTubes, type Naming } from './named-tubes.ts';
import { onStraight } from './on-straight.ts';
import { alongHost, retold, type Stretch } from './retold.ts';
import { unmoved } from './unmoved.ts';

/**
 * The job with the member parted `along` mm from end A's node along its centreline. Refused, in words, off its straights, while one of its tubes has a bend run,
 * where it is in pieces, where a mirrored bar is told to cope to both parts, and where a node on it would not stay. How it was fed goes.
 */
export function splitMember(job: Job, frame: Frame, id: MemberId, along: number): Edited {
  const [member, bar] = [findRecord(job, 'members', id), frame.bars.get(id)];
  if (member === undefined || bar === undefined) return job;
  const run = bendRunOf(job, member);
  if (run !== null) return [run];
  if (member.cutBy !== undefined) {
    return [fault('', `${shownName(member.name)} is made in pieces: let it be one tube first, or leave it so`)];
  }
  const spot = onStraight(bar, along);
  if (!('leg' in spot)) return [spot];
  const other = nextId(job, 'members');
  const node = spot.at === null ? member.path[spot.leg]! : nextId(job, 'nodes');
  const name = shownName(`${member.name}, split`);
  const placed = spot.at === null ? job : appendRecord(job, 'nodes', { id: node, name, at: spot.at });

  const parting: Parting = {
    frame,
    bar,
    along,
    id,
    other,
    bends: bar.bends.filter(({ end }) => end <= along + ROUNDING).length,
  };
  const across = toldAcross(job, parting);
  if (across !== null) return [across];
  const [first, second] = stretchesOf(parting);
  const nodes = mapKeeping(placed.nodes, (each) => {
    const at = bareId(hostOf(each.at) ?? '') === id ? alongHost(frame, each) : null;
    if (at === null) return each;
    return { ...each, at: retold(frame, each.at, at, at <= along + ROUNDING ? first : second) };
  });
  const renamed = withTubes(placed, (to, by, naming) => (isIn(parting, to, by, naming) ? part(to, other) : to));
  const kept = withKeptOf(renamed, (of) => {
    if (bareId(of.tube) !== id) return of;
    const { bend } = of;
    const isOther = bend === undefined ? of.end === 'B' : bend > parting.bends;
    if (!isOther) return of;
    return { ...of, tube: part(of.tube, other), ...(bend !== undefined && { bend: bend - parting.bends }) };
  });
  const parts = partsOf(
    kept.members.find((each) => each.id === id)!,
    spot.leg,
    node,
    other,
    endsThere(parting),
  );
  const members = kept.members.flatMap((each) => (each.id === id ? parts : [each]));
  const split = withRecords(withRecords(kept, 'nodes', nodes), 'members', members);
  return unmoved(frame, dropFeeds(split, tubesOfMember(member)));
}

interface Parting {
  readonly frame: Frame;
  readonly bar: Bar;
  readonly along: number;
  readonly id: MemberId;
  /** The new member. */
  readonly other: MemberId;
  /** How many bends end A's part has. */
  readonly bends: number;
}

/** The same, or the same image, of the other part. */
const part = (tube: TubeRef, other: MemberId): TubeRef => (isPrimed(tube) ? primed(other) : other);

function stretchesOf({ frame, bar, along, id, other, bends }: Parting): readonly [Stretch, Stretch] {
  const { length } = bar.path;
  const pathOf =
    (from: number, to: number) =>
    (isImage: boolean): Path =>
      partOf(isImage ? frame.bars.get(primed(id))! : bar, from, to).path;
  return [
    { tube: id, fromA: 0, fromB: along - length, bends: 0, count: bends, path: pathOf(0, along) },
    {
      tube: other,
      fromA: -along,
      fromB: 0,
      bends: -bends,
      count: bar.bends.length - bends,
      path: pathOf(along, length),
    },
  ];
}

/** The two members, `there` their ends where they were one. */
function partsOf(
  member: Member,
  leg: number,
  node: NodeRef,
  other: MemberId,
  there: Member['ends'],
): readonly [Member, Member] {
  const { keptAngles = [], ...rest } = member;
  const part = (path: readonly NodeRef[], ends: Member['ends']): Member => {
    const kept = keptAngles.filter(({ corner }) => path.slice(1, -1).includes(corner));
    return { ...rest, path, ends, ...(kept.length > 0 && { keptAngles: kept }) };
  };
  const isOwn = member.path[leg] === node;
  return [
    part([...member.path.slice(0, isOwn ? leg : leg + 1), node], [member.ends[0], there[0]]),
    {
      ...part([node, ...member.path.slice(leg + 1)], [there[1], member.ends[1]]),
      id: other,
      name: shownName(`${member.name}, part 2`),
    },
  ];
}

/**
 * How the two end at each other: end B of the first cut square, and the second butted to it; both coped to what runs through there and was built before. A tube that was
 * built before and ends there is coped to the two, not they to it.
 */
function endsThere({ frame, bar, along }: Parting): Member['ends'] {
  const place = placeAt(bar.path, along).point;
  const bars = [...frame.bars.values()];
  const earlier = bars.slice(0, bars.indexOf(bar));
  const isEnd = ({ ends }: Bar): boolean => ends.some(({ position }) => distance(position, place) <= MEETING_DISTANCE);
  if (earlier.some(isEnd)) return [SQUARE, SQUARE];
  const isMet = earlier.some(({ path }) => nearestOnPath(path, place).distance <= MEETING_DISTANCE);
  return [isMet ? AUTO : SQUARE, AUTO];
}

const SQUARE: EndFit = { fit: 'square', allowance: 0 };

/** Whether what a member names is the other part of the tube: by where it lands on it, or is cut by it. */
function isIn(parting: Parting, to: TubeRef, by: Member, naming: Naming): boolean {
  if (bareId(to) !== parting.id) return false;
  const place = placeOf(parting.frame, to, by.id, naming);
  return place !== null && place > parting.along + ROUNDING;
}

/** mm along the tube `to` from end A, of where that end of the bar `by` lands, or where the bar is cut. */
function placeOf({ bars }: Frame, to: TubeRef, by: TubeRef, naming: Naming): number | null {
  const [bar, host] = [bars.get(by), bars.get(to)];
  if (bar === undefined || host === undefined) return null;
  if (naming !== 'cut') {
    const { cuts, position } = bar.ends[naming];
    return cuts.find(({ against }) => against === to)?.landingAt ?? nearestOnPath(host.path, position).at;
  }
  return nearestToPath(host.path, bar.path).at;
}

/** A mirrored bar that is told to cope to the member, which spans the car: its image would be coped to the same part as it is. */
function toldAcross(job: Job, parting: Parting): Fault | null {
  const { frame, bar, along, id } = parting;
  if (bar.member.mirror) return null;
  for (const by of job.members) {
    if (!by.mirror) continue;
    for (const naming of namingsOf(by, id)) {
      const places = [by.id, primed(by.id)].map((each) => placeOf(frame, id, each, naming) ?? 0);
      if (places.every((at) => at > along + ROUNDING) || places.every((at) => at <= along + ROUNDING)) continue;
      const [own, host] = [shownName(by.name), shownName(bar.member.name)];
      const message = `${own} names ${host} on both sides of the car, and would name one part of it on both: let it cope to what it meets`;
      return fault('', message);
    }
  }
  return null;
}

/** Where the member names that tube. */
function namingsOf({ ends, cutBy = [] }: Member, tube: TubeRef): readonly Naming[] {
  const at = ends.flatMap((end, which): Naming[] => {
    const named = end.fit === 'cope' ? end.against : end.fit === 'mitre' ? [end.with] : [];
    return named.includes(tube) ? [which as 0 | 1] : [];
  });
  return cutBy.includes(tube) ? [...at, 'cut'] : at;
}
