/**
 * Places and centrelines, in the sequence in which they need each other. The two are one step: a node on a tube waits for that tube's
 * centreline, a tube for the nodes of its path, and so on down a frame. A twin runs through the mirror images of its member's nodes.
 *
 * A frame is laid out as it is drawn, or with the tubes that stand as they were built in the place of the drawn ones: then all that is
 * placed by these follows.
 *
 * What cannot be placed is a fault with its place in the file. The first stops the work: what stands on it could not be
 * placed either, and would only repeat it.
 */
import { equal, mirrored, type Vec3 } from '../geometry/vector.ts';
import { fault, quoted, type Fault, type Outcome } from '../job/fault.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Member } from '../job/kinds/member.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import type { Section } from '../job/kinds/section.ts';
import { bareId, primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import { thickestThrough } from '../job/thickest.ts';
import type { Job } from '../job/types.ts';
import type { PullLaw } from '../springback/pull-law.ts';
import { bendingOfMembers, radiusAt, sameRadii, type Bending } from './bending.ts';
import { solveCentreline, type RouteTrouble } from './centreline.ts';
import { heldSection } from './held.ts';
import { tubesOf, type LaidTube } from './pieces.ts';
import type { Step } from './sequence.ts';
import { placeImage } from './place-image.ts';
import { placeNode } from './place.ts';
import type { Solved } from './solved.ts';
import { builtIn, NOTHING_BUILT, sameBuilt, standingOr, type BuiltTubes, type Standing } from './standing.ts';

/** A bar as it lies between its nodes; its ends are not known yet. */
export interface LaidBar extends Standing {
  readonly id: TubeRef;
  readonly member: Member;
  /** Of its member in the build order; a twin shares it. */
  readonly order: number;
  readonly section: Section;
  readonly die: Die | null;
  readonly pullLaw: PullLaw | null;
}

export interface Layout {
  /** What was to stand as built; empty of a frame as it is drawn. */
  readonly built: BuiltTubes;
  /** Every node and the mirror image of every node. */
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  /** In build order; a twin follows its member. */
  readonly bars: readonly LaidBar[];
  /** The same as they are made: whole, or in pieces from end A. */
  readonly tubes: readonly LaidTube[];
}

/** Every node and mirror image in its place and every tube's centreline; or the first fault that stands in the way. Without `asBuilt` as drawn. */
export function layOut(
  job: Job,
  sequence: readonly Step[],
  previous?: Layout,
  asBuilt?: { readonly built: BuiltTubes; readonly drawn: Layout },
): Outcome<Layout> {
  const bendingOf = bendingOfMembers(job);
  const nodes = new Map<NodeRef, Vec3>();
  const laid = new Map<TubeRef, Standing>();
  const points = new Map(job.points.map((point) => [point.id, point]));
  const pairs = new Set(job.members.filter(({ mirror }) => mirror).map(({ id }) => id));
  const laying: Laying = {
    solved: {
      point: (id) => points.get(id)!,
      node: (reference) => nodes.get(reference)!,
      tube: (reference) => laid.get(reference)!.centreline,
      thickest: (id) => thickestThrough(job, id),
    },
    nodes,
    laid,
    built: asBuilt?.built ?? NOTHING_BUILT,
    drawn: asBuilt?.drawn ?? null,
    isMirrored: (tube) => pairs.has(bareId(tube)),
    previous,
    barsBefore: new Map(previous?.bars.map((bar) => [bar.id, bar])),
  };
  for (const { kind, record, index } of sequence) {
    const trouble =
      kind === 'node' ? layNode(record, index, laying) : layTubes(record, index, bendingOf(record), laying);
    if (trouble !== null) return { ok: false, faults: [trouble] };
  }
  const sections = new Map(job.sections.map((section) => [section.id, section]));
  const dies = new Map(job.dies.map((die) => [die.id, die]));
  const bars = job.members.flatMap((member, place) =>
    barsOf(member).map((id): LaidBar => ({
      id,
      member,
      order: place,
      section: sectionOf(laid.get(id)!, sections.get(member.section)!),
      die: member.die === undefined ? null : dies.get(member.die)!,
      pullLaw: bendingOf(member)?.law ?? null,
      ...standingOf(laid.get(id)!),
    })),
  );
  const made = tubesOf(bars, laying.built);
  return made.ok ? { ok: true, value: { built: laying.built, nodes, bars, tubes: made.value } } : made;
}

/** The frame with the tubes that are to stand as built in their places: the drawn one itself where none is. */
export function layOutAsBuilt(
  job: Job,
  sequence: readonly Step[],
  drawn: Layout,
  previous: Layout | undefined,
): Outcome<Layout> {
  const built = builtIn(job);
  return built.size === 0 ? { ok: true, value: drawn } : layOut(job, sequence, previous, { built, drawn });
}

const barsOf = ({ id, mirror }: Member): readonly TubeRef[] => (mirror ? [id, primed(id)] : [id]);

/** One that is cut is of what it was cut of. */
const sectionOf = ({ held }: Standing, section: Section): Section =>
  held === null ? section : heldSection(held.made.held, section);

const standingOf = ({ centreline, asDrawn, held }: Standing): Standing => ({ centreline, asDrawn, held });

/** What has been laid so far, and what it is laid by. */
interface Laying {
  readonly solved: Solved;
  readonly nodes: Map<NodeRef, Vec3>;
  readonly laid: Map<TubeRef, Standing>;
  readonly built: BuiltTubes;
  /** The frame as drawn, while it is laid out as built. */
  readonly drawn: Layout | null;
  readonly isMirrored: (tube: TubeRef) => boolean;
  readonly previous: Layout | undefined;
  readonly barsBefore: ReadonlyMap<TubeRef, LaidBar>;
}

/** Puts the node and its mirror image in their places; answers what stands in the way. */
function layNode(node: FrameNode, index: number, { solved, nodes, drawn, isMirrored, previous }: Laying): Fault | null {
  const place = `nodes[${index}].at`;
  const placing = placeNode(node, solved);
  if ('trouble' in placing) return fault(`${place}${placing.field}`, placing.trouble);
  const position = kept(previous?.nodes.get(node.id), placing.position);
  nodes.set(node.id, position);
  const image = primed(node.id);
  const imaging =
    drawn === null ? { position: mirrored(position) } : placeImage(node, position, { solved, drawn, isMirrored });
  if ('trouble' in imaging)
    return fault(`${place}${imaging.field}`, `on the other side of the car: ${imaging.trouble}`);
  nodes.set(image, kept(previous?.nodes.get(image), imaging.position));
  return null;
}

/** Lays the member and its twin; answers what stands in the way. */
function layTubes(
  member: Member,
  index: number,
  bending: Bending | null,
  { nodes, laid, built, previous, barsBefore }: Laying,
): Fault | null {
  if (bending !== null && bending.die.centrelineRadius <= bending.section.outerDiameter / 2) {
    const die = quoted(member.die!);
    return fault(`members[${index}].die`, `the centreline radius of ${die} is not greater than the tube's own radius`);
  }
  for (const id of barsOf(member)) {
    const route = member.path.map((node) => nodes.get(id === member.id ? node : primed(node))!);
    const before = barsBefore.get(id);
    const drawnBefore = before?.asDrawn ?? before?.centreline;
    const same =
      before !== undefined &&
      drawnBefore !== undefined &&
      sameRadii(before.die === null ? null : { die: before.die, law: before.pullLaw }, bending) &&
      drawnBefore.route.length === route.length &&
      route.every((place, i) => place === drawnBefore.route[i]);
    const drawn = same ? drawnBefore : solveCentreline(route, bending === null ? null : radiusAt(bending));
    if ('why' in drawn) return routeFault(member, index, drawn);
    const known = built.get(id);
    if (same && sameBuilt(known, previous!.built.get(id))) laid.set(id, before);
    else laid.set(id, standingOr(drawn, bending?.die ?? null, known));
  }
  return null;
}

/** The same place keeps its record, so that what depends on it can be recognised as unchanged. */
const kept = (before: Vec3 | undefined, now: Vec3): Vec3 => (before !== undefined && equal(before, now) ? before : now);

function routeFault({ path }: Member, index: number, { at, why }: RouteTrouble): Fault {
  const node = quoted(path[at]!);
  const place = `members[${index}].path[${at}]`;
  switch (why) {
    case 'same-place':
      return fault(place, `${node} stands at the same place as ${quoted(path[at - 1]!)} before it`);
    case 'doubles-back':
      return fault(place, `the path doubles back at ${node}`);
    case 'no-radius':
      return fault(`members[${index}].die`, `the path bends at ${node}, so the member needs a die`);
  }
}
