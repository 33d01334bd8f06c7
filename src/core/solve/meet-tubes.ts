/**
 * Who meets whom: of every tube laid out, which tubes each of its ends meets, before anything is cut. A tube that an edit cannot
 * have touched meets what it met, and is handed on whole (untouched.ts).
 */
import { fault, type Fault, type Outcome } from '../job/fault.ts';
import { MOST_AT_AN_END } from '../job/limits.ts';
import type { Job } from '../job/types.ts';
import { endSettings, type EndContext } from './end-settings.ts';
import type { EndSetting } from './ends.ts';
import type { LaidTube, Layout } from './lay-out.ts';
import { indexRunTubes, type RunTubes } from './meetings.ts';
import type { Frame, SolvedTube } from './types.ts';
import { untouchedTubes } from './untouched.ts';

/** Of a tube laid out: the tube of before, handed on; or what its ends A and B are set to. */
export type Met =
  | { readonly same: SolvedTube }
  | { readonly same: null; readonly settings: readonly [EndSetting, EndSetting] };

export interface Meetings {
  readonly runTubes: RunTubes;
  /** Of every tube, in the order in which they are laid out. */
  readonly met: readonly Met[];
}

/** What every tube meets; or the fault of an end that meets more tubes than one place can hold. n log n. */
export function meetTubes(job: Job, { nodes, tubes }: Layout, previous: Frame | undefined): Outcome<Meetings> {
  const nodeRecords = new Map(job.nodes.map((node) => [node.id, node]));
  const untouched = previous === undefined ? [] : untouchedTubes(tubes, job, nodeRecords, previous);
  const runTubes = indexRunTubes(
    tubes.map(({ id, order, member, centreline, section }) => ({
      id,
      order,
      mirrored: member.mirror,
      path: centreline.path,
      section,
    })),
  );
  const mirroredMembers = new Set(job.members.filter((member) => member.mirror).map((member) => member.id));
  const context: EndContext = { nodes, nodeRecords, mirroredMembers, runTubes };
  const met: Met[] = [];
  for (const [index, tube] of tubes.entries()) {
    const same = untouched[index] ?? null;
    const each: Met = same === null ? { same, settings: endSettings(tube, context) } : { same };
    const trouble = each.same === null ? crowded(tube, each.settings) : null;
    if (trouble !== null) return { ok: false, faults: [trouble] };
    met.push(each);
  }
  return { ok: true, value: { runTubes, met } };
}

/** The fault of an end that meets more tubes than one place can hold, every one of them a cut of its own; null where there is none. */
function crowded({ order }: LaidTube, settings: readonly [EndSetting, EndSetting]): Fault | null {
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
