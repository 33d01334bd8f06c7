/** Small jobs for the exports' tests, derived. */
import { expect } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import { FIRST_MARKING } from '../../src/core/job/kinds/marking.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import type { Marking } from '../../src/core/job/kinds/marking.ts';
import { demoText } from '../command-line.ts';

/** Derives a job file's text; a job with faults fails the test. */
export function derivedFrom(text: string): Derived {
  const parsed = parseJob(text);
  if (!parsed.ok) return expect.fail(JSON.stringify(parsed.faults));
  const derivation = derive(parsed.job);
  return derivation.ok ? derivation.value : expect.fail(JSON.stringify(derivation.faults));
}

let demo: Derived | undefined;

/** The demo job. What is derived is never changed, so that all who ask have the same. */
export const derivedDemo = (): Derived => (demo ??= derivedFrom(demoText()));

/** The same frame in a job whose tubes are marked otherwise. */
export const markedAs = (derived: Derived, marking: Partial<Marking>): Derived => ({
  ...derived,
  job: { ...derived.job, marking: { ...FIRST_MARKING, ...marking } },
});

const HEAD = { format: 'cagewright/job', version: 1, lengthUnit: 'mm', points: [], dies: [], envelopes: [] };

const fixed = (id: string, position: readonly number[]) => ({ id, at: { kind: 'fixed', position } });

/**
 * One tube of 45 x 2.5 bent three times on CLR 135, ends square: a bend case known from outside. `change` alters the job's
 * plain data before it is read.
 */
export function bentTube(change: Record<string, unknown> = {}, member: Record<string, unknown> = {}): Derived {
  const corners = [
    [0, 0, 0],
    [300, 0, 0],
    [300, 400, 0],
    [300, 400, 500],
    [700, 600, 500],
  ];
  const nodes = corners.map((position, i) => fixed(`n${i}`, position));
  const square = [{ fit: 'square' }, { fit: 'square' }];
  const path = nodes.map(({ id }) => id);
  return derivedFrom(
    JSON.stringify({
      ...HEAD,
      name: 'Three bends',
      sections: [{ id: 'tube', name: '45 x 2.5', outerDiameter: 45, wall: 2.5 }],
      dies: [{ id: 'die', name: '3 D', outerDiameter: 45, centrelineRadius: 135, clampOffset: 100 }],
      nodes,
      members: [{ id: 'bar', name: 'Bar', role: 'bar', path, section: 'tube', die: 'die', ends: square, ...member }],
      ...change,
    }),
  );
}

/** A branch of 38.1 coped at 60 degrees to a run of 44.45, axes crossing; its other end on a plate. */
export function branchAt60(): Derived {
  const up = [500 * Math.cos(Math.PI / 3), 0, 500 * Math.sin(Math.PI / 3)];
  return derivedFrom(
    JSON.stringify({
      ...HEAD,
      name: 'One joint',
      sections: [
        { id: 'run', name: '1 3/4', outerDiameter: 44.45, wall: 3.048 },
        { id: 'branch', name: '1 1/2', outerDiameter: 38.1, wall: 2.413 },
      ],
      nodes: [fixed('back', [-400, 0, 0]), fixed('fore', [400, 0, 0]), fixed('joint', [0, 0, 0]), fixed('top', up)],
      members: [
        {
          id: 'run',
          name: 'Run',
          role: 'run',
          path: ['back', 'fore'],
          section: 'run',
          ends: [{ fit: 'square' }, { fit: 'square' }],
        },
        {
          id: 'branch',
          name: 'Branch',
          role: 'branch',
          path: ['joint', 'top'],
          section: 'branch',
          ends: [{ fit: 'auto' }, { fit: 'plate', normal: [0, 0, 1] }],
        },
      ],
    }),
  );
}
