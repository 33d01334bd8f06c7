/**
 * Job -> solved frame: nodes in their places, every tube with centreline, bends, ends, copes, lengths.
 *
 * In three passes: places and centrelines in the order of their references; then who meets whom; then the ends. The
 * previous frame only lends records: one whose inputs are all the same objects or values as before is handed on as it
 * is, so that an edit costs what depends on it; most tubes are known for such without asking whom they meet. deriveFrame(job, previous) equals deriveFrame(job) in value.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { equal } from '../geometry/vector.ts';
import { fault, type Fault } from '../job/fault.ts';
import { MOST_AT_AN_END } from '../job/limits.ts';
import { isPrimed, primed } from '../job/reference.ts';
import type { EndFit } from '../job/kinds/end.ts';
import type { Member } from '../job/kinds/member.ts';
import type { Job } from '../job/types.ts';
import { blankLength, copedMass } from './amount.ts';
import { bendingOfMembers, sameLaw } from './bending.ts';
import type { Centreline } from './centreline.ts';
import { endSettings, squareSense, type EndContext, type FramedTube } from './end-settings.ts';
import { solveEnds, type EndSetting } from './ends.ts';
import { layOut } from './lay-out.ts';
import { indexRuns, type Run, type Runs } from './meetings.ts';
import type { Frame, SolvedTube, TubeEnd } from './types.ts';
import { untouchedTubes } from './untouched.ts';

type Outcome = { readonly ok: true; readonly value: Frame } | { readonly ok: false; readonly faults: readonly Fault[] };

/** The solved frame; or, for a job that cannot be derived, the faults with their places in the file. */
export function deriveFrame(job: Job, previous?: Frame): Outcome {
  const bendingOf = bendingOfMembers(job);
  const laid = layOut(job, bendingOf, previous);
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
      pullLaw: bendingOf(member)?.law ?? null,
      centreline: centrelines.get(id)!,
    })),
  );
  const nodeRecords = new Map(job.nodes.map((node) => [node.id, node]));
  const untouched = previous === undefined ? [] : untouchedTubes(framed, job, nodeRecords, previous);
  const runs = indexRuns(
    framed.map(({ id, order, member, centreline, section }) => ({
      id,
      order,
      mirrored: member.mirror,
      path: centreline.path,
      section,
    })),
  );
  const mirroredMembers = new Set(job.members.filter((member) => member.mirror).map((member) => member.id));
  const context: EndContext = { nodes, nodeRecords, mirroredMembers, runs };

  // A tube that is handed on needs none: it meets what it met before.
  const settingsOf: (readonly [EndSetting, EndSetting] | null)[] = [];
  for (const [index, tube] of framed.entries()) {
    const settings = (untouched[index] ?? null) === null ? endSettings(tube, context) : null;
    const trouble = settings === null ? null : crowded(tube, settings);
    if (trouble !== null) return { ok: false, faults: [trouble] };
    settingsOf.push(settings);
  }

  const tubes = framed.map((tube, index): SolvedTube => {
    const same = untouched[index] ?? null;
    if (same !== null) return same;
    const twinOf = isPrimed(tube.id) ? tube.member.id : null;
    const name = tubeName(tube.member, twinOf !== null, tube.centreline);
    const number = index + 1;
    const settings = settingsOf[index]!;
    const before = previous?.byId.get(tube.id);
    const { centreline, section, member, die, pullLaw } = tube;
    const sameEnds = before !== undefined && endsUnchanged(before, tube, settings, runs, previous!);
    if (
      sameEnds &&
      before.member === member &&
      before.die === die &&
      before.name === name &&
      before.number === number &&
      sameLaw(before.pullLaw, pullLaw)
    )
      return before;
    const ends = sameEnds
      ? renamedEnds(before.ends, settings)
      : solveEnds(centreline, section, settings, squareSense(twinOf !== null));
    return {
      id: tube.id,
      name,
      number,
      member,
      twinOf,
      section,
      die,
      pullLaw,
      ...centreline,
      blankLength: blankLength(centreline.developedLength, ends),
      // Asked for by lists and files alone; the ends keep what is dear in it.
      get mass() {
        return copedMass(centreline.developedLength, section, ends);
      },
      ends,
    };
  });
  return { ok: true, value: { job, nodes, tubes, byId: new Map(tubes.map((tube) => [tube.id, tube])) } };
}

/** The fault of an end that meets more tubes than one place can hold, every one of them a cut of its own; null where there is none. */
function crowded({ order }: FramedTube, settings: readonly [EndSetting, EndSetting]): Fault | null {
  for (const [which, { meeting }] of settings.entries()) {
    const count = meeting.cutters.length + meeting.butted.length;
    if (count <= MOST_AT_AN_END) continue;
    return fault(
      `members[${order}].ends[${which}]`,
      `meets ${count} tubes that are built before it; more than ${MOST_AT_AN_END} cannot be fitted at one place`,
    );
  }
  return null;
}

/** Both of a mirrored pair are named by the side they are on; where they have none, the twin is called so. */
function tubeName(member: Member, isTwin: boolean, { route }: Centreline): string {
  if (!member.mirror) return member.name;
  const side = route.reduce((sum, place) => sum + place[1], 0) / route.length;
  if (Math.abs(side) <= ROUNDING) return `${member.name} (${isTwin ? 'across, twin' : 'across'})`;
  return `${member.name} (${side > 0 ? 'left' : 'right'})`;
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
  before?.path === now.path && before.section === now.section && before.member.mirror === now.mirrored;

const sameSpec = (a: EndFit, b: EndFit): boolean =>
  a === b ||
  (a.fit === b.fit &&
    a.allowance === b.allowance &&
    (a.fit !== 'plate' || (b.fit === 'plate' && equal(a.normal, b.normal))));

/** An end that took another node at the same place: only the name on it changes. */
const renamedEnds = (
  [a, b]: SolvedTube['ends'],
  [settingA, settingB]: readonly [EndSetting, EndSetting],
): readonly [TubeEnd, TubeEnd] =>
  a.node === settingA.node && b.node === settingB.node
    ? [a, b]
    : [
        { ...a, node: settingA.node },
        { ...b, node: settingB.node },
      ];
