/**
 * A mirrored member made two, one for each side of the car, each on the points that were measured on its side; where a node is placed by no pair
 * of points, the right one has the mirror image of the left. All that named the image names the new member from then on. What stands on the
 * member on both sides, or shares a node with it that is apart now, is made two with it. The one on the other side is a new member, after
 * the old one in the build order; with it go the image's number, bend runs, pulls, and how it is fed.
 */
import { nextId } from '../edit/ids.ts';
import { appendRecord, withRecords } from '../edit/records.ts';
import type { Fault } from '../job/fault.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Foot } from '../job/kinds/foot.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { memberOfTube } from '../job/member-of-tube.ts';
import {
  bareId,
  isPrimed,
  primed,
  type FootId,
  type MemberId,
  type NodeId,
  type NodeRef,
  type TubeRef,
} from '../job/reference.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { meansAt, placedBy, withoutUnused } from './follow.ts';
import { withTubesCalled } from './named-tubes.ts';
import { imageOf, imageOfPlace, withReferences, type References } from './place-image.ts';
import { apartWith, stuckOn, usedReferences, type Apart } from './sides-apart.ts';
import { gussetsEachSide } from './told-gussets.ts';
import { withToldNumbers } from './told-numbers.ts';

export interface TwoMembers {
  readonly job: Job;
  /** The members that are two now, by the ids they had; in build order. */
  readonly members: readonly MemberId[];
  /** The node that stands in the place of an image, by that image. */
  readonly became: ReadonlyMap<NodeRef, NodeRef>;
}

/** The job with each side its own; refused, in words, where a bar across the car would have to be two. Null where the member has no mirror image. */
export function eachSideItsOwn(job: Job, frame: Frame, id: MemberId): TwoMembers | readonly Fault[] | null {
  if (job.members.find((member) => member.id === id)?.mirror !== true) return null;
  const apart = apartWith(job, id);
  const stuck = stuckOn(job, apart);
  if (stuck !== null) {
    const [node, bar] = [shownName(stuck.node.name), shownName(stuck.bar.name)];
    const message = `${node} stands on ${bar} on both sides, and ${bar} would not be alike on both any more: give that node and its image a place each first`;
    return [{ place: '', message }];
  }
  const used = usedReferences(job);
  const [became, newMembers, newFeet] = newIds(job, apart, used);
  const rename: References = {
    node: (to) => became.get(to) ?? to,
    point: (to) => to,
    tube: (to) => (isPrimed(to) ? (newMembers.get(bareId(to)) ?? to) : to),
  };
  const mirrored = new Set(job.members.filter(({ mirror }) => mirror).map((member) => member.id));
  const image: References = {
    node: (to) => rename.node(primed(to)),
    point: primed,
    tube: (to) => (mirrored.has(bareId(to)) ? rename.tube(primed(to)) : to),
  };

  const withNodes = nodesApart(job, frame, apart, became, rename, image);
  const members = mapKeeping(job.members, (member) => withImagesOf(member, rename)).flatMap((own, i) => {
    const member = job.members[i]!;
    const other = newMembers.get(member.id);
    return other === undefined ? [own] : bothOf(own, imageOfMember(member, other, image, newFeet), frame);
  });
  const toNew = (tube: TubeRef): TubeRef => {
    const member = isPrimed(tube) ? memberOfTube(job.members, tube) : undefined;
    const other = member && newMembers.get(member.id);
    return other === undefined ? tube : `${other}${bareId(tube).slice(member!.id.length)}`;
  };
  const whole = withTubesCalled(
    withRecords(
      withNodes,
      'members',
      mapKeeping(members, (member) => member),
    ),
    toNew,
  );
  const withFeet = [...newFeet].reduce(
    (before, [foot, other]) =>
      appendRecord(
        before,
        'feet',
        imageOfFoot(
          job.feet.find((each) => each.id === foot)!,
          other,
        ),
      ),
    whole,
  );
  const means = new Set(job.nodes.filter((node) => apart.byPair.has(node.id)).flatMap((node) => meansAt(job, node)));
  // The same steel: its number goes over to the new member.
  const olds = new Map([...newMembers].map(([old, other]) => [other, old]));
  const was = (tube: TubeRef): TubeRef => {
    const member = memberOfTube(withFeet.members, tube);
    const old = member && olds.get(member.id);
    return old === undefined ? tube : primed(`${old}${tube.slice(member!.id.length)}`);
  };
  const withGussets = gussetsEachSide(frame, withFeet, rename);
  const numbered = withToldNumbers(job, withoutUnused(withGussets, means), was);
  return { job: numbered, members: [...newMembers.keys()], became };
}

/** What the new nodes, members and feet are called: by the image, by the member, by the foot. */
function newIds(
  job: Job,
  apart: Apart,
  used: ReadonlySet<NodeRef>,
): readonly [ReadonlyMap<NodeRef, NodeId>, ReadonlyMap<MemberId, MemberId>, ReadonlyMap<FootId, FootId>] {
  const fresh = (list: 'nodes' | 'members' | 'feet', ids: readonly string[]): ReadonlyMap<string, string> => {
    let taken = job;
    return new Map(
      ids.map((id) => {
        const next = nextId(taken, list);
        taken = { ...taken, [list]: [...taken[list], { id: next }] };
        return [id, next];
      }),
    );
  };
  const members = job.members.filter(({ id }) => apart.members.has(id));
  const standing = new Set(
    members.flatMap(({ ends }) => ends.flatMap((end) => (end.fit === 'foot' ? [end.foot] : []))),
  );
  return [
    fresh(
      'nodes',
      job.nodes.flatMap(({ id }) => (apart.nodes.has(id) && used.has(primed(id)) ? [primed(id)] : [])),
    ),
    fresh(
      'members',
      members.map(({ id }) => id),
    ),
    fresh(
      'feet',
      job.feet.flatMap((foot) => (standing.has(foot.id) && !isEven(foot) ? [foot.id] : [])),
    ),
  ];
}

/** Each node that is placed by a pair on the points of its own side, and the new nodes after all others. */
function nodesApart(
  job: Job,
  frame: Frame,
  { byPair }: Apart,
  became: ReadonlyMap<NodeRef, NodeId>,
  rename: References,
  image: References,
): Job {
  const none = new Map();
  const nodes = mapKeeping(job.nodes, (node) => {
    const at = byPair.has(node.id) ? placedBy(job, node.at, 'own', none) : node.at;
    return { ...node, at: withReferences(at, rename) };
  });
  const added = [...became].map(([reference, id]): FrameNode => {
    const { name, at } = job.nodes.find((node) => node.id === bareId(reference))!;
    const there = imageOfPlace(at, { ...image, node: primed });
    const own = byPair.has(bareId(reference)) ? placedBy(job, there, 'own', none) : there;
    const side = (frame.nodes.get(reference)?.[1] ?? 0) > 0 ? 'left' : 'right';
    return { id, name: shownName(`${name}, ${side}`), at: withReferences(own, rename) };
  });
  return withRecords(job, 'nodes', added.length === 0 ? nodes : [...nodes, ...added]);
}

/** The member with what it names exchanged; its tubes and nodes else as they are. */
export const withImagesOf = (member: Member, { node, tube }: References): Member => ({
  ...member,
  path: member.path.map(node),
  ends: [endBy(member.ends[0], tube), endBy(member.ends[1], tube)],
  ...(member.cutBy && { cutBy: member.cutBy.map(tube) }),
  ...(member.keptAngles && { keptAngles: member.keptAngles.map((kept) => ({ ...kept, corner: node(kept.corner) })) }),
});

function imageOfMember(member: Member, id: MemberId, image: References, feet: ReadonlyMap<FootId, FootId>): Member {
  const { ends, ...rest } = withImagesOf(member, image);
  const turned = (end: EndFit): EndFit => {
    if (end.fit === 'plate') return { ...end, normal: imageOf(end.normal) };
    if (end.fit !== 'foot') return end;
    return { ...end, foot: feet.get(end.foot) ?? end.foot, normal: imageOf(end.normal) };
  };
  return { ...rest, id, ends: [turned(ends[0]), turned(ends[1])] };
}

function endBy(end: EndFit, tube: References['tube']): EndFit {
  if (end.fit === 'cope') return { ...end, against: end.against.map(tube) };
  return end.fit === 'mitre' ? { ...end, with: tube(end.with) } : end;
}

/** The two, called by the side that each is on in the frame. */
function bothOf(own: Member, other: Member, { bars }: Frame): readonly Member[] {
  const route = bars.get(own.id)?.route ?? [];
  const isRight = route.reduce((sum, place) => sum + place[1], 0) < 0;
  const called = (isOnRight: boolean): string => shownName(`${own.name}, ${isOnRight ? 'right' : 'left'}`);
  return [
    { ...own, name: called(isRight), mirror: false },
    { ...other, name: called(!isRight), mirror: false },
  ];
}

/** Whether its mirror image is the same piece laid the same way: along stays, across is turned round. */
export const isEven = ({ holes = [], ...foot }: Foot): boolean =>
  (foot.kind === 'box' || foot.kink === undefined || foot.kink.runs === 'across') &&
  holes.every(({ at, diameter }) =>
    holes.some((other) => other.at[0] === at[0] && other.at[1] === 0 - at[1] && other.diameter === diameter),
  );

/** The foot that is its mirror image, under that id: laid the same way, what is across is turned round. */
export function imageOfFoot(foot: Foot, id: FootId): Foot {
  const { holes } = foot;
  const turned = {
    ...foot,
    id,
    name: shownName(`${foot.name}, mirrored`),
    ...(holes && { holes: holes.map((hole) => ({ ...hole, at: [hole.at[0], 0 - hole.at[1]] as const })) }),
  };
  if (turned.kind === 'box' || turned.kink?.runs !== 'along') return turned;
  return { ...turned, kink: { ...turned.kink, at: 0 - turned.kink.at } };
}
