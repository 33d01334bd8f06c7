/** Jobs for the checks, with everything that a check does not speak of filled in. */
import { expect } from 'vitest';
import type { Die } from '../../src/core/job/kinds/die.ts';
import type { EndFit } from '../../src/core/job/kinds/end.ts';
import type { Member } from '../../src/core/job/kinds/member.ts';
import type { FrameNode } from '../../src/core/job/kinds/node.ts';
import type { Section } from '../../src/core/job/kinds/section.ts';
import type { Job } from '../../src/core/job/types.ts';
import { derive } from '../../src/core/derive.ts';
import type { Frame, SolvedTube } from '../../src/core/solve/types.ts';
import type { Triple } from './oracles/space.ts';

export const SQUARE: EndFit = { fit: 'square', allowance: 0 };
export const AUTO: EndFit = { fit: 'auto', allowance: 0 };
export const copedTo = (...against: string[]): EndFit => ({ fit: 'cope', against, allowance: 0 });

export const fixed = (id: string, position: Triple): FrameNode => ({ id, name: '', at: { kind: 'fixed', position } });

export const tubing = (id: string, outerDiameter: number, wall: number): Section => ({
  id,
  name: id,
  outerDiameter,
  wall,
  material: '',
});

export const dieOf = (id: string, outerDiameter: number, centrelineRadius: number): Die => ({
  id,
  name: id,
  outerDiameter,
  centrelineRadius,
  clampOffset: 0,
  leastStraight: 0,
  leastGrip: 0,
  greatestAngle: 180,
  radius: 'nominal',
});

export function member(id: string, path: readonly string[], section: string, more: Partial<Member> = {}): Member {
  return { id, name: id, role: 'other', path, section, mirror: false, ends: [SQUARE, SQUARE], ...more };
}

export function jobOf(parts: Partial<Job>): Job {
  const empty = {
    points: [],
    holds: [],
    measurements: [],
    bodyLines: [],
    sections: [],
    dies: [],
    nodes: [],
    members: [],
    envelopes: [],
    rules: [],
    stickSorts: [],
    spares: [],
    sawn: [],
    pulls: [],
    bent: [],
    made: [],
    feeds: [],
    seen: [],
    printed: [],
    scans: [],
    certificates: [],
    photos: [],
    variants: [],
    feet: [],
    gussets: [],
  };
  return { format: 'cagewright/job', version: 1, name: 'Check', lengthUnit: 'mm', ...empty, ...parts };
}

/** The solved frame; a job with faults fails the check that asked. */
export function frameOf(job: Job): Frame {
  const result = derive(job);
  if (!result.ok) expect.fail(JSON.stringify(result.faults));
  return result.value;
}

export function tubeOf(job: Job, id: string): SolvedTube {
  const tube = frameOf(job).byId.get(id);
  if (!tube) expect.fail(`no tube ${id}`);
  return tube;
}

/** A job with one tube through these corners, bent on a die of this radius. */
export function tubeThrough(corners: readonly Triple[], radius: number, outerDiameter = 45, wall = 2.5): SolvedTube {
  const ids = corners.map((_, i) => `n${i}`);
  const job = jobOf({
    sections: [tubing('s', outerDiameter, wall)],
    dies: [dieOf('d', outerDiameter, radius)],
    nodes: corners.map((corner, i) => fixed(ids[i]!, corner)),
    members: [member('t', ids, 's', { die: 'd' })],
  });
  return tubeOf(job, 't');
}
