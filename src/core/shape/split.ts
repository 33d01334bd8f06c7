/**
 * A member made two at a place of its straights: end A's part keeps its id, name and numbers, end B's is a new member right after it in the build order. Unlike a
 * bar in pieces they are two records, each with its own section, ends and place from then on. The steel stays; all that names the member names the part that
 * it means. The place itself is given on the line between its neighbours of the path, so that the two stay in line while these do.
 */
import { dropFeeds } from '../edit/feeds.ts';
import { withLegs } from '../edit/gussets.ts';
import { nextId } from '../edit/ids.ts';
import { bendRunOf } from '../edit/pieces.ts';
import { appendRecord, findRecord, withRecords, type Edited } from '../edit/records.ts';
import { nearestToPath } from '../geometry/nearest-paths.ts';
import { nearestOnPath, placeAt, type Path } from '../geometry/path.ts';
import { MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import { distance } from '../geometry/vector.ts';
import { fault, type Fault } from '../job/fault.ts';
import { AUTO, type EndFit } from '../job/kinds/end.ts';
import type { Gusset, GussetLeg } from '../job/kinds/gusset.ts';
import type { Member } from '../job/kinds/member.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { tubesOfMember } from '../job/member-of-tube.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type MemberId, type NodeRef, type TubeRef } from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { tubesOfBar } from '../solve/bar-tubes.ts';
import { partOf } from '../solve/part-of.ts';
import type { Bar, Bend, Frame } from '../solve/types.ts';
import { withKeptOf, withSameTubes, withTubes, type Naming } from './named-tubes.ts';
import { onStraight } from './on-straight.ts';
import { alongHost, retold, type Stretch } from './retold.ts';
import { unmoved } from './unmoved.ts';

/**
 * The job with the member parted `along` mm from end A's node along its centreline; a bar in pieces where it is cut, to within a mm, so that its tubes stay what they are. Refused, in
 * words, off its straights, at another place of a bar in pieces, while the tube has a bend run, where a mirrored bar names both parts, and where a node on it would not stay. How one tube
 * was fed goes when it is two.
 */
export function splitMember(job: Job, frame: Frame, id: MemberId, along: number): Edited {
  const [member, bar] = [findRecord(job, 'members', id), frame.bars.get(id)];
  if (member === undefined || bar === undefined) return job;
  const cut = member.cutBy === undefined ? null : cutNear(frame, id, along);
  if (member.cutBy !== undefined && cut === null) {
    return [fault('', `${shownName(member.name)} is made in pieces: it can be split where it is cut`)];
  }
  const run = cut === null ? bendRunOf(job, member) : null;
  if (run !== null) return [run];
  const spot = onStraight(bar, cut?.at ?? along);
  if (!('leg' in spot)) return [spot];
  const other = nextId(job, 'members');
  const node = spot.at === null ? member.path[spot.leg]! : nextId(job, 'nodes');
  const name = shownName(`${member.name}, split`);
  const placed = spot.at === null ? job : appendRecord(job, 'nodes', { id: node, name, at: spot.at });

  const isBefore = ({ end }: Bend): boolean => end <= (cut?.at ?? along) + ROUNDING;
  const bends = bar.bends.filter(isBefore).length;
  const parting: Parting = { frame, bar, along: cut?.at ?? along, id, other, bends };
  const across = toldAcross(job, parting);
  if (across !== null) return [across];
  const [first, second] = stretchesOf(parting);
  const nodes = mapKeeping(placed.nodes, (each) => {
    const at = bareId(hostOf(each.at) ?? '') === id ? alongHost(frame, each) : null;
    if (at === null) return each;
    return { ...each, at: retold(frame, each.at, at, at <= parting.along + ROUNDING ? first : second) };
  });
  const renamed = withTubes(placed, (to, by, naming) => (isIn(parting, to, by, naming) ? part(to, other) : to));
  const parts = partsOf(
    renamed.members.find((each) => each.id === id)!,
    spot.leg,
    node,
    parting,
    cut,
  );
  const members = renamed.members.flatMap((each) => (each.id === id ? parts : [each]));
  const split = withLegs(withRecords(withRecords(renamed, 'nodes', nodes), 'members', members), (leg, gusset) =>
    bareId(leg.member) === id && runsInOther(parting, leg, gusset) ? { ...leg, member: part(leg.member, other) } : leg,
  );
  return unmoved(frame, cut === null ? withHalvesTold(split, member, parting) : samePieces(job, split, member, parts));
}

/** A tube that is two now: what is kept of it is of the part where it was; how it was fed goes. */
function withHalvesTold(split: Job, member: Member, { id, other, bends }: Parting): Job {
  const told = withKeptOf(split, (of) => {
    if (bareId(of.tube) !== id) return of;
    const { bend } = of;
    const isOther = bend === undefined ? of.end === 'B' : bend > bends;
    if (!isOther) return of;
    return { ...of, tube: part(of.tube, other), ...(bend !== undefined && { bend: bend - bends }) };
  });
  return dropFeeds(told, tubesOfMember(member));
}

/** The pieces are the same tubes, called by their own members now: all that is kept of them stays, their numbers too. */
function samePieces(before: Job, split: Job, member: Member, parts: readonly Member[]): Job {
  const own = { ...member, mirror: false };
  const are = parts.flatMap((each) => tubesOfMember({ ...each, mirror: false }));
  return withSameTubes(before, split, new Map(tubesOfMember(own).map((tube, i) => [tube, are[i]!])));
}

/** Where a bar in pieces is cut. */
interface CutThere {
  readonly at: number;
  readonly by: TubeRef;
  /** Before it, from end A. */
  readonly cutters: readonly TubeRef[];
}

/** The cut at which the two pieces meet there; null where none do. */
function cutNear({ byId }: Frame, id: MemberId, along: number): CutThere | null {
  const cuts = tubesOfBar(byId, id).flatMap(({ piece, ends: [{ spec }] }) =>
    piece !== null && piece.number > 1 && spec.fit === 'cope' ? [{ at: piece.from, by: spec.against[0]! }] : [],
  );
  const index = cuts.findIndex(({ at }) => Math.abs(at - along) <= MEETING_DISTANCE);
  return index === -1 ? null : { ...cuts[index]!, cutters: cuts.slice(0, index).map(({ by }) => by) };
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

/** The two members. */
function partsOf(
  member: Member,
  leg: number,
  node: NodeRef,
  parting: Parting,
  cut: CutThere | null,
): readonly [Member, Member] {
  const { keptAngles = [], cutBy = [], ...rest } = member;
  const there: Member['ends'] = cut === null ? endsThere(parting) : [copedTo(cut.by), copedTo(cut.by)];
  const part = (path: readonly NodeRef[], ends: Member['ends'], cutters: readonly TubeRef[]): Member => {
    const kept = keptAngles.filter(({ corner }) => path.slice(1, -1).includes(corner));
    return {
      ...rest,
      path,
      ends,
      ...(cutters.length > 0 && { cutBy: cutters }),
      ...(kept.length > 0 && { keptAngles: kept }),
    };
  };
  const isOwn = member.path[leg] === node;
  const before = cutBy.filter((by) => cut?.cutters.includes(by));
  const after = cutBy.filter((by) => by !== cut?.by && !before.includes(by));
  return [
    part([...member.path.slice(0, isOwn ? leg : leg + 1), node], [member.ends[0], there[0]], before),
    {
      ...part([node, ...member.path.slice(leg + 1)], [there[1], member.ends[1]], after),
      id: parting.other,
      name: shownName(`${member.name}, part 2`),
    },
  ];
}

const copedTo = (tube: TubeRef): EndFit => ({ fit: 'cope', against: [tube], allowance: 0 });

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

/** Whether the leg of a gusset runs along the other part: at the very place of the split by the end that it runs towards. */
function runsInOther({ frame, along }: Parting, { member, towards }: GussetLeg, { node }: Gusset): boolean {
  const { at } = nearestOnPath(frame.bars.get(member)!.path, frame.nodes.get(node)!);
  return towards === 'B' ? at >= along - ROUNDING : at > along + ROUNDING;
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
