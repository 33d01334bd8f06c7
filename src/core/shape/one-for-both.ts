/**
 * Two members, one on each side of the car, made one that is mirrored: the way back from each side its own. The one that is asked stays as it is, and its mirror image takes the
 * place of the other, which goes; all that named the other names the image. What stands on the two alike, or ends at nodes that are
 * one again, is made one with them. Numbers, bend runs and how a tube is fed stay with the steel.
 */
import { isSameBatch } from '../job/batch.ts';
import { findRecord, takeOut, withRecords } from '../edit/records.ts';
import { withoutUnreferred } from '../edit/references.ts';
import { distanceToPath } from '../geometry/path.ts';
import { MEETING_DISTANCE, PAIR_NEAR, ROUNDING } from '../geometry/tolerance.ts';
import { distance, mirrored, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import { fault, type Fault } from '../job/fault.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Foot } from '../job/kinds/foot.ts';
import type { Member } from '../job/kinds/member.ts';
import { sameData } from '../job/equal.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import { memberOfTube } from '../job/member-of-tube.ts';
import { hostOf } from '../job/places.ts';
import { bareId, isPrimed, primed, type MemberId, type NodeId, type NodeRef, type TubeRef } from '../job/reference.ts';
import { carriersOf, referencesOf } from '../job/references.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import type { Frame } from '../solve/types.ts';
import { copedBetween } from './coped-between.ts';
import { imageOfFoot, isEven, withImagesOf } from './each-side.ts';
import { withTubesCalled } from './named-tubes.ts';
import { imageOf, withReferences, type References } from './place-image.ts';
import { gussetsForBoth } from './told-gussets.ts';
import { withToldNumbers } from './told-numbers.ts';

export interface OneMember {
  readonly job: Job;
  /** The members that go, by those whose image takes their place; the one that was asked first. */
  readonly pairs: ReadonlyMap<MemberId, MemberId>;
  /** What stands in the place of a node that goes, by that node. */
  readonly became: ReadonlyMap<NodeRef, NodeRef>;
}

/** The job with the two as one; refused, in words, where their ends are cut otherwise, or the image would lose what the other stands on or is coped to. Null where no member stands on the other side as this one does, to within 30 mm a node. */
export function oneForBothSides(job: Job, frame: Frame, id: MemberId): OneMember | readonly Fault[] | null {
  const member = findRecord(job, 'members', id);
  const partner = member && partnerOf(job, frame, member);
  if (member === undefined || partner === undefined) return null;
  const trouble = unlikeEnds(job, member, partner);
  if (trouble !== null) return [trouble];
  const pairs = pairsWith(job, frame, member, partner);
  const old: ReadonlyMap<string, MemberId> = new Map([...pairs].map(([kept, other]) => [other, kept]));
  const lost = lostWith(job, frame, pairs, old);
  if (lost !== null) return [lost];
  const toImage = (tube: TubeRef): TubeRef => {
    const other = isPrimed(tube) ? undefined : (memberOfTube(job.members, tube)?.id ?? tube);
    const kept = other === undefined ? undefined : old.get(other);
    return kept === undefined ? tube : primed(`${kept}${tube.slice(other!.length)}`);
  };
  const became = imagesFor(job, frame, pairs);
  const rename: References = {
    node: (to) => {
      const image = became.get(bareId(to));
      return image === undefined ? to : isPrimed(to) ? primed(image) : image;
    },
    point: (to) => to,
    tube: (to) => (old.has(to) ? primed(old.get(to)!) : to),
  };

  const nodes = mapKeeping(job.nodes, (node) => ({ ...node, at: withReferences(node.at, rename) }));
  const members = mapKeeping(job.members, (each) => {
    const renamed = withImagesOf(each, rename);
    const other = pairs.get(each.id);
    if (other === undefined) return renamed;
    return { ...renamed, name: commonName(each.name, findRecord(job, 'members', other)!.name), mirror: true };
  });
  const told = withRecords(withRecords(job, 'nodes', nodes), 'members', members);
  const kept = withTubesCalled(told, toImage);
  const withGussets = gussetsForBoth(frame, kept, rename, new Set(old.keys()));
  const gone = takeOut(takeOut(withGussets, 'members', new Set(old.keys())), 'nodes', new Set(became.keys()));
  const clean = withoutLeft(job, gone, frame, pairs, became);
  const was = (tube: TubeRef): TubeRef => {
    const other = isPrimed(tube) ? pairs.get(memberOfTube(clean.members, tube)?.id ?? '') : undefined;
    return other === undefined ? tube : `${other}${bareId(tube).slice(memberOfTube(clean.members, tube)!.id.length)}`;
  };
  return { job: withToldNumbers(job, clean, was), pairs, became };
}

/** The member on the other side that comes nearest to being this one's mirror image. */
function partnerOf(job: Job, frame: Frame, member: Member): Member | undefined {
  if (member.mirror) return undefined;
  return job.members
    .map((other) => ({ other, off: offImage(frame, member, other) }))
    .filter(({ off }) => off <= PAIR_NEAR)
    .toSorted((a, b) => a.off - b.off)[0]?.other;
}

/** mm between a node of the one and the mirror image of the other's, at most; endless where they are no pair. */
function offImage({ bars }: Frame, a: Member, b: Member): number {
  const [one, two] = [bars.get(a.id), bars.get(b.id)];
  if (a === b || b.mirror || one === undefined || two === undefined || a.path.length !== b.path.length) return Infinity;
  const isAlike =
    a.section === b.section && a.die === b.die && isSameBatch(a.batch, b.batch) && a.cutBy?.length === b.cutBy?.length;
  return isAlike ? Math.max(...one.route.map((place, i) => distance(mirrored(place), two.route[i]!))) : Infinity;
}

function unlikeEnds({ feet }: Job, a: Member, b: Member): Fault | null {
  const which = a.ends.findIndex((end, i) => !isImageOf(feet, end, b.ends[i]!));
  if (which === -1) return null;
  const [one, two] = [shownName(a.name), shownName(b.name)];
  return fault('', `end ${which === 0 ? 'A' : 'B'} of ${one} and that of ${two} are not cut alike`);
}

/** Whether the one is cut as the mirror image of the other; not by which tubes, which lostWith asks. */
function isImageOf(feet: Job['feet'], own: EndFit, other: EndFit): boolean {
  if (own.fit !== other.fit || own.allowance !== other.allowance) return false;
  const isSquareTo = (a: Vec3, b: Vec3): boolean => distance(normalize(imageOf(a)), normalize(b)) <= ROUNDING;
  if (own.fit === 'plate') return other.fit === 'plate' && isSquareTo(own.normal, other.normal);
  if (own.fit !== 'foot') return true;
  if (other.fit !== 'foot' || !isSquareTo(own.normal, other.normal)) return false;
  const [foot, image] = [own, other].map((end) => feet.find(({ id }) => id === end.foot)!) as [Foot, Foot];
  return foot === image ? isEven(foot) : sameData({ ...imageOfFoot(foot, image.id), name: image.name }, image);
}

/**
 * What would be lost with the members that go: a tube that one of them names and the image of the one that stays does not; what it stands on, where that has no
 * image; a cope by the build order.
 */
function lostWith(
  job: Job,
  frame: Frame,
  pairs: ReadonlyMap<MemberId, MemberId>,
  old: ReadonlyMap<string, MemberId>,
): Fault | null {
  const member = (id: MemberId): Member => findRecord(job, 'members', id)!;
  const image = (tube: TubeRef): TubeRef =>
    member(bareId(tube))?.mirror ? primed(tube) : (pairs.get(bareId(tube)) ?? old.get(tube) ?? tube);
  for (const [kept, other] of pairs) {
    const [one, two] = [member(kept), member(other)];
    const [a, b] = [shownName(one.name), shownName(two.name)];
    const isNamed = namesOf(one).every((tubes, i) => {
      const others = new Set(namesOf(two)[i]);
      return tubes.length === others.size && tubes.every((tube) => others.has(image(tube)));
    });
    if (!isNamed) return fault('', `${b} is not coped to the mirror images of what ${a} is coped to`);
    const alone = one.path.map((to) => hostWithoutImage(job, frame, bareId(to), image)).find((host) => host !== null);
    if (alone) return fault('', `${a} stands on ${shownName(member(alone).name)}, which is on one side alone`);
    const between = copedBetween(frame, other, kept, [0, 1], new Set([...pairs.keys(), ...old.keys()]));
    if (between !== null) return between;
  }
  return null;
}

/** The tubes that a member names: at end A, at end B, and where it is cut. */
const namesOf = ({ ends, cutBy = [] }: Member): readonly (readonly TubeRef[])[] => [
  ...ends.map((end) => (end.fit === 'cope' ? end.against : end.fit === 'mitre' ? [end.with] : [])),
  cutBy,
];

/** What the node stands on, where its mirror image would stand on nothing. */
function hostWithoutImage(
  job: Job,
  { bars, nodes }: Frame,
  id: NodeId,
  image: (tube: TubeRef) => TubeRef,
): MemberId | null {
  const { at } = findRecord(job, 'nodes', id)!;
  const host = hostOf(at);
  if (host === null || image(host) !== host) return null;
  const place = at.kind === 'on' ? subtract(nodes.get(id)!, at.offset) : nodes.get(id)!;
  return distanceToPath(bars.get(host)!.path, mirrored(place)) > MEETING_DISTANCE ? bareId(host) : null;
}

/** The two, and every other two that stand on them alike, and so on down. */
function pairsWith(job: Job, frame: Frame, member: Member, partner: Member): ReadonlyMap<MemberId, MemberId> {
  const pairs = new Map([[member.id, partner.id]]);
  const taken = new Set([member.id, partner.id]);
  for (let before = 0; before < pairs.size;) {
    before = pairs.size;
    for (const each of job.members) {
      if (taken.has(each.id) || !standsOn(job, each, new Set(pairs.keys()))) continue;
      const other = partnerOf(job, frame, each);
      if (other === undefined || taken.has(other.id) || unlikeEnds(job, each, other) !== null) continue;
      if (!standsOn(job, other, new Set(pairs.values()))) continue;
      pairs.set(each.id, other.id);
      taken.add(each.id).add(other.id);
    }
  }
  return pairs;
}

/** Whether it names one of them, or a node of its path is on one or of the path of one. */
function standsOn(job: Job, member: Member, ids: ReadonlySet<MemberId>): boolean {
  if (referencesOf('members', member).some(({ list, to }) => list === 'members' && ids.has(bareId(to)))) return true;
  const shared = new Set(job.members.filter(({ id }) => ids.has(id)).flatMap((each) => each.path.map(bareId)));
  return member.path.map(bareId).some((node) => {
    const host = bareId(hostOf(findRecord(job, 'nodes', node)!.at) ?? '');
    return shared.has(node) || ids.has(host);
  });
}

/** Of the nodes that go, the reference that stands there from then on: of paths by their place in the path, of others on the tubes by the nearest. */
function imagesFor(job: Job, frame: Frame, pairs: ReadonlyMap<MemberId, MemberId>): ReadonlyMap<NodeId, NodeRef> {
  const became = new Map<NodeId, NodeRef>();
  const staying = new Set<NodeId>();
  for (const [kept, other] of pairs) {
    const path = findRecord(job, 'members', kept)!.path;
    path.forEach((to) => staying.add(bareId(to)));
    findRecord(job, 'members', other)!.path.forEach((to, i) => {
      const image = primed(path[i]!);
      if (bareId(to) !== bareId(image) && !became.has(bareId(to)))
        became.set(bareId(to), isPrimed(to) ? primed(image) : image);
    });
  }
  const place = (to: NodeRef): Vec3 => frame.nodes.get(to)!;
  for (const [kept, other] of pairs) {
    const on = (id: MemberId) => job.nodes.filter(({ at }) => hostOf(at) === id);
    for (const { id } of on(other)) {
      if (became.has(id)) continue;
      const off = (node: NodeId): number => distance(mirrored(place(node)), place(id));
      const nearest = on(kept).toSorted((a, b) => off(a.id) - off(b.id))[0];
      if (nearest !== undefined && off(nearest.id) <= PAIR_NEAR) became.set(id, primed(nearest.id));
    }
  }
  for (const id of staying) became.delete(id);
  return became;
}

const SIDE = /, (left|right)$/u;

/** What both are called but for the side; where they are called otherwise, as the first. */
const commonName = (one: string, two: string): string =>
  one.replace(SIDE, '') === two.replace(SIDE, '') ? one.replace(SIDE, '') : one;

/** Without what only the members and nodes that are gone went by, where its image is there: nodes that carried nodes, and feet. */
function withoutLeft(
  before: Job,
  after: Job,
  frame: Frame,
  pairs: ReadonlyMap<MemberId, MemberId>,
  became: ReadonlyMap<NodeId, NodeRef>,
): Job {
  let left = after;
  const drop = (list: 'nodes' | 'feet', id: string): void => {
    left = withoutUnreferred(left, list, id);
  };
  const carriers = (id: NodeId): readonly NodeId[] => {
    const node = findRecord(before, 'nodes', id);
    return node === undefined
      ? []
      : carriersOf('nodes', node).flatMap(({ list, id: to }) => (list === 'nodes' ? [to] : []));
  };
  const waiting = [...became.keys()].flatMap(carriers);
  for (const id of waiting) {
    const here = mirrored(frame.nodes.get(id)!);
    const hasImage = left.nodes.some((node) => node.id !== id && distance(frame.nodes.get(node.id)!, here) <= ROUNDING);
    if (hasImage) drop('nodes', id);
    if (hasImage && findRecord(left, 'nodes', id) === undefined) waiting.push(...carriers(id));
  }
  for (const [kept, other] of pairs) {
    const [one, two] = [kept, other].map((id) => findRecord(before, 'members', id)!.ends) as [
      Member['ends'],
      Member['ends'],
    ];
    two.forEach((end, i) => {
      const own = one[i]!;
      if (end.fit !== 'foot' || own.fit !== 'foot' || end.foot === own.foot) return;
      const [foot, image] = [findRecord(before, 'feet', end.foot)!, findRecord(before, 'feet', own.foot)!];
      if (sameData({ ...imageOfFoot(image, foot.id), name: foot.name }, foot)) drop('feet', foot.id);
    });
  }
  return left;
}
