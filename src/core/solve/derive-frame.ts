/**
 * Job -> solved frame: nodes in their places, every tube with centreline, bends, ends, copes, lengths.
 *
 * In three passes: places and centrelines in the order of their references; then who meets whom; then the ends. The
 * previous frame only lends records: one whose inputs are all the same objects or values as before is handed on as it
 * is, so that an edit costs what depends on it. deriveFrame(job, previous) equals deriveFrame(job) in value.
 */
import { nearestOnPath } from '../geometry/path.ts';
import { MEETING_DISTANCE } from '../geometry/tolerance.ts';
import { dot, equal, mirrored, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { bareId, isPrimed, primed } from '../job/reference.ts';
import type { EndFit, Fault, FrameNode, Job, Member, NodeRef, TubeRef } from '../job/types.ts';
import { blankLength, copedMass } from './amount.ts';
import { solveCentreline, type Centreline, type RouteTrouble } from './centreline.ts';
import { endDirections, solveEnds, type EndSetting, type SquareSense } from './ends.ts';
import { indexRuns, meetingOf, type Run, type Runs } from './meetings.ts';
import { solveOrder } from './order.ts';
import { placeNode, type Solved } from './place.ts';
import type { Frame, SolvedTube, TubeEnd } from './types.ts';

type Outcome = { readonly ok: true; readonly value: Frame } | { readonly ok: false; readonly faults: readonly Fault[] };

export function deriveFrame(job: Job, previous?: Frame): Outcome {
  const laid = layOut(job, previous);
  if (laid.faults.length > 0) return { ok: false, faults: laid.faults };
  const { nodes, centrelines } = laid;

  const sections = new Map(job.sections.map((section) => [section.id, section]));
  const dies = new Map(job.dies.map((die) => [die.id, die]));
  const framed = job.members.flatMap((member, order) =>
    (member.mirror ? [member.id, primed(member.id)] : [member.id]).map((id) => ({
      id,
      member,
      order,
      section: sections.get(member.section)!,
      die: member.die === undefined ? null : dies.get(member.die)!,
      centreline: centrelines.get(id)!,
    })),
  );
  const runs = indexRuns(
    framed.map(({ id, order, centreline, section }) => ({ id, order, path: centreline.path, section })),
  );
  const nodeRecords = new Map(job.nodes.map((node) => [node.id, node]));
  const mirroredMembers = new Set(job.members.filter((member) => member.mirror).map((member) => member.id));
  const context: EndContext = { nodes, nodeRecords, mirroredMembers, runs };

  const tubes = framed.map((tube, index): SolvedTube => {
    const twinOf = isPrimed(tube.id) ? tube.member.id : null;
    const name = tubeName(tube.member, tube.centreline);
    const number = index + 1;
    const settings = endSettings(tube, context);
    const before = previous?.byId.get(tube.id);
    const { centreline, section, member, die } = tube;
    const sameEnds = before !== undefined && endsUnchanged(before, tube, settings, runs, previous!);
    if (sameEnds && before.member === member && before.die === die && before.name === name && before.number === number)
      return before;
    const ends = sameEnds
      ? renamedEnds(before.ends, settings)
      : solveEnds(centreline, section, settings, squareSense(twinOf !== null, mirroredMembers));
    return {
      id: tube.id,
      name,
      number,
      member,
      twinOf,
      section,
      die,
      ...centreline,
      blankLength: blankLength(centreline.developedLength, ends),
      mass: copedMass(centreline.developedLength, section, ends),
      ends,
    };
  });
  return { ok: true, value: { job, nodes, tubes, byId: new Map(tubes.map((tube) => [tube.id, tube])) } };
}

// --- places and centrelines -----------------------------------------------------------------------------------------

interface Layout {
  readonly nodes: Map<NodeRef, Vec3>;
  readonly centrelines: Map<TubeRef, Centreline>;
  readonly faults: readonly Fault[];
}

function layOut(job: Job, previous: Frame | undefined): Layout {
  const order = solveOrder(job);
  const nodes = new Map<NodeRef, Vec3>();
  const centrelines = new Map<TubeRef, Centreline>();
  const faults = [...order.faults];
  if (faults.length > 0) return { nodes, centrelines, faults };

  const points = new Map(job.points.map((point) => [point.id, point]));
  const radii = new Map(job.dies.map((die) => [die.id, die.centrelineRadius]));
  const diameters = new Map(job.sections.map((section) => [section.id, section.outerDiameter]));
  const solved: Solved = {
    point: (id) => points.get(id)!,
    node: (reference) => nodes.get(reference)!,
    tube: (reference) => centrelines.get(reference)!,
  };
  for (const step of order.steps) {
    if (step.kind === 'node') {
      const placing = placeNode(step.record, solved);
      if ('trouble' in placing) {
        faults.push({ place: `nodes[${step.index}].at${placing.field}`, message: placing.trouble });
        break; // What stands on this node cannot be placed either: one fault, not a trail of them.
      }
      const position = kept(previous?.nodes.get(step.record.id), placing.position);
      nodes.set(step.record.id, position);
      nodes.set(primed(step.record.id), kept(previous?.nodes.get(primed(step.record.id)), mirrored(position)));
    } else {
      const { record: member, index } = step;
      const radius = member.die === undefined ? null : radii.get(member.die)!;
      if (radius !== null && radius <= diameters.get(member.section)! / 2) {
        faults.push({
          place: `members[${index}].die`,
          message: `the centreline radius of "${member.die}" is not greater than the tube's own radius`,
        });
        break;
      }
      const trouble = layTubes(member, radius, nodes, previous, centrelines);
      if (trouble !== null) {
        faults.push(routeFault(member, index, trouble));
        break;
      }
    }
  }
  return { nodes, centrelines, faults };
}

/** Lays the member and its twin; answers what stands in the way. */
function layTubes(
  member: Member,
  radius: number | null,
  nodes: ReadonlyMap<NodeRef, Vec3>,
  previous: Frame | undefined,
  centrelines: Map<TubeRef, Centreline>,
): RouteTrouble | null {
  const path = member.path;
  const laid = [
    { id: member.id, path },
    { id: primed(member.id), path: path.map(primed) },
  ].slice(0, member.mirror ? 2 : 1);
  for (const tube of laid) {
    const route = tube.path.map((node) => nodes.get(node)!);
    const before = previous?.byId.get(tube.id);
    const same =
      before !== undefined &&
      (before.die?.centrelineRadius ?? null) === radius &&
      before.route.length === route.length &&
      route.every((place, i) => place === before.route[i]);
    const centreline = same ? centrelineOf(before) : solveCentreline(route, radius);
    if ('why' in centreline) return centreline;
    centrelines.set(tube.id, centreline);
  }
  return null;
}

/** The same place keeps its record, so that what depends on it can be recognised as unchanged. */
const kept = (before: Vec3 | undefined, now: Vec3): Vec3 => (before !== undefined && equal(before, now) ? before : now);

const centrelineOf = ({
  route,
  corners,
  path,
  bends,
  straights,
  developedLength,
  sharpCornerLength,
}: SolvedTube): Centreline => ({
  route,
  corners,
  path,
  bends,
  straights,
  developedLength,
  sharpCornerLength,
});

function routeFault(member: Member, index: number, { at, why }: RouteTrouble): Fault {
  const node = member.path[at]!;
  switch (why) {
    case 'same-place':
      return {
        place: `members[${index}].path[${at}]`,
        message: `"${node}" stands at the same place as "${member.path[at - 1]!}" before it`,
      };
    case 'doubles-back':
      return { place: `members[${index}].path[${at}]`, message: `the path doubles back at "${node}"` };
    case 'no-radius':
      return { place: `members[${index}].die`, message: `the path bends at "${node}", so the member needs a die` };
  }
}

function tubeName(member: Member, { route }: Centreline): string {
  if (!member.mirror) return member.name;
  const side = route.reduce((sum, place) => sum + place[1], 0);
  return `${member.name} (${side > 0 ? 'left' : side < 0 ? 'right' : 'across'})`;
}

// --- ends -----------------------------------------------------------------------------------------------------------

interface EndContext {
  readonly nodes: ReadonlyMap<NodeRef, Vec3>;
  readonly nodeRecords: ReadonlyMap<string, FrameNode>;
  readonly mirroredMembers: ReadonlySet<string>;
  readonly runs: Runs;
}

interface FramedTube {
  readonly id: TubeRef;
  readonly member: Member;
  readonly order: number;
  readonly section: SolvedTube['section'];
  readonly centreline: Centreline;
}

function endSettings(
  tube: FramedTube,
  { nodes, nodeRecords, mirroredMembers, runs }: EndContext,
): readonly [EndSetting, EndSetting] {
  const twin = isPrimed(tube.id);
  /** A tube as the twin sees it: the other of a mirrored pair, or the one that spans the car. */
  const seen = (reference: TubeRef, flip: boolean) =>
    flip && mirroredMembers.has(bareId(reference)) ? primed(reference) : reference;
  /** The tube that the node stands on, if any. The image of a place on a tube of one side only stands on nothing. */
  const hostOf = (node: NodeRef): TubeRef | null => {
    const { at } = nodeRecords.get(bareId(node))!;
    if (at.kind !== 'on') return null;
    const host = seen(at.member, isPrimed(node));
    if (!isPrimed(node) || host !== at.member) return host;
    const place = subtract(nodes.get(node)!, mirrored(at.offset));
    return nearestOnPath(runs.byId.get(host)!.path, place).distance <= MEETING_DISTANCE ? host : null;
  };
  const directions = endDirections(tube.centreline.corners);
  const setting = (which: 0 | 1): EndSetting => {
    const named = tube.member.path.at(which === 0 ? 0 : -1)!;
    const node = twin ? primed(named) : named;
    const spec: EndFit = tube.member.ends[which];
    const position = nodes.get(node)!;
    const direction = directions[which];
    const against = spec.fit === 'cope' ? spec.against.map((reference) => seen(reference, twin)) : [];
    return {
      node,
      position,
      direction,
      spec,
      plateNormal: spec.fit === 'plate' ? (twin ? mirrored(spec.normal) : spec.normal) : null,
      meeting: meetingOf({ position, direction, order: tube.order }, spec.fit, against, hostOf(node), runs),
    };
  };
  return [setting(0), setting(1)];
}

/**
 * A square cut has two acute sides, and the run's direction of travel picks one. For a twin the choice is the mirror image
 * of its member's, also against a run that spans the car and so travels the other way on the twin's side.
 */
function squareSense(twin: boolean, mirroredMembers: ReadonlySet<string>): SquareSense {
  return (run, tangent, position) => {
    if (!twin || mirroredMembers.has(bareId(run.id))) return tangent;
    const members = mirrored(nearestOnPath(run.path, mirrored(position), true).tangent);
    return scale(tangent, dot(members, tangent) < 0 ? -1 : 1);
  };
}

/** True when the tube's shape, its end specs and every cutter are as they were when `before` was solved. */
function endsUnchanged(
  before: SolvedTube,
  tube: FramedTube,
  settings: readonly [EndSetting, EndSetting],
  runs: Runs,
  previous: Frame,
): boolean {
  if (before.path !== tube.centreline.path || before.section !== tube.section) return false;
  return settings.every((setting, which) => {
    const end = before.ends[which]!;
    const spec = before.member.ends[which]!;
    return (
      sameSpec(spec, setting.spec) &&
      end.cuts.length === setting.meeting.cutters.length &&
      end.butted.length === setting.meeting.butted.length &&
      end.butted.every((id, i) => id === setting.meeting.butted[i]!.id) &&
      end.cuts.every(
        (cut, i) =>
          cut.against === setting.meeting.cutters[i]!.id &&
          sameRun(previous.byId.get(cut.against), runs.byId.get(cut.against)!),
      )
    );
  });
}

const sameRun = (before: SolvedTube | undefined, now: Run): boolean =>
  before?.path === now.path && before.section === now.section;

const sameSpec = (a: EndFit, b: EndFit): boolean =>
  a === b ||
  (a.fit === b.fit &&
    a.allowance === b.allowance &&
    (a.fit !== 'plate' || (b.fit === 'plate' && equal(a.normal, b.normal))));

/** A renamed node keeps its place: only the name on the end changes. */
const renamedEnds = (
  [a, b]: SolvedTube['ends'],
  [settingA, settingB]: readonly [EndSetting, EndSetting],
): readonly [TubeEnd, TubeEnd] => [
  { ...a, node: settingA.node },
  { ...b, node: settingB.node },
];
