/** Small jobs for tests: a job text's worth of records with the defaults filled in by the program's own door. */
import { parseJob } from '../../src/core/job/parse.ts';
import { derive, type Derived } from '../../src/core/derive.ts';
import type { Fault } from '../../src/core/job/fault.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { SolvedTube } from '../../src/core/solve/types.ts';
import { findingInWords, sourceInWords } from '../../src/core/words/findings.ts';

const SECTION = { id: 'main', outerDiameter: 44.45, wall: 3.048, material: 'dom-1020' };
const DIE = {
  id: 'd',
  name: 'the die',
  outerDiameter: 44.45,
  centrelineRadius: 152.4,
  leastStraight: 60,
  leastGrip: 150,
};

/** A job from the given records; one section 'main' and one die 'd' unless given. Coordinates stand in for fixed nodes. */
export function jobOf(records: { nodes?: Record<string, unknown>; members?: object[]; [key: string]: unknown }): Job {
  const { nodes = {}, members = [], ...rest } = records;
  const parsed = parseJob(
    JSON.stringify({
      format: 'cagewright/job',
      version: 1,
      sections: [SECTION],
      dies: [DIE],
      ...rest,
      nodes: Object.entries(nodes).map(([id, at]) => ({
        id,
        at: Array.isArray(at) ? { kind: 'fixed', position: at } : at,
      })),
      members: members.map((member) => ({ section: 'main', die: 'd', ...member })),
    }),
  );
  if (!parsed.ok) throw new Error(parsed.faults.map((fault) => `${fault.place}: ${fault.message}`).join('\n'));
  return parsed.job;
}

export function derived(records: Parameters<typeof jobOf>[0]): Derived {
  const derivation = derive(jobOf(records));
  if (!derivation.ok) throw new Error(derivation.faults.map((fault) => `${fault.place}: ${fault.message}`).join('\n'));
  return derivation.value;
}

export function faultsOf(records: Parameters<typeof jobOf>[0]): readonly Fault[] {
  const derivation = derive(jobOf(records));
  return derivation.ok ? [] : derivation.faults;
}

export function tube(frame: Derived, id: string): SolvedTube {
  const found = frame.byId.get(id);
  if (found === undefined) throw new Error(`no tube "${id}"`);
  return found;
}

export const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** The findings as a person reads them. */
export const inWords = (frame: Derived, findings = frame.findings) =>
  findings.map((finding) => ({
    ...finding,
    message: findingInWords(finding, frame),
    source: sourceInWords(finding, frame),
  }));
