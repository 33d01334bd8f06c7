/** The demo with its right-hand points moved: to the exact mirror image of the left ones, or off it by so much. */
import { readFileSync } from 'node:fs';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { pairsOfPoints } from '../../../src/core/survey/point-pairs.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { layOut } from '../../../src/core/solve/lay-out.ts';
import { sequenceOf } from '../../../src/core/solve/sequence.ts';
import type { Edited } from '../../../src/core/edit/records.ts';
import type { Job } from '../../../src/core/job/types.ts';

export type Triple = readonly [number, number, number];

export const DEMO: Job = read(readFileSync('tests/fixtures/demo-second-round.cagewright.json', 'utf8'));

/** Through the door for files, as text. */
export function read(text: string): Job {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(parsed.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return parsed.job;
}

export const again = (job: Job): Job => read(serialiseJob(job));

export function solved(job: Job): Derived {
  const outcome = derive(job);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return outcome.value;
}

/** Where its nodes and their images are: what a full derivation has, without the cuts. */
export function placesIn(job: Job): ReadonlyMap<string, Triple> {
  const sequence = sequenceOf(job);
  const layout = sequence.ok ? layOut(job, sequence.value) : sequence;
  if (!layout.ok) throw new Error(layout.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return layout.value.nodes;
}

export function made(edited: Edited): Job {
  if (Array.isArray(edited)) throw new Error(edited.map(({ message }) => message).join('; '));
  return edited as Job;
}

/** Forward, outward and up from the mirror image of the left point of each pair, in turn. */
export function carOff(job: Job, off: readonly Triple[]): Job {
  const { pairs } = pairsOfPoints(job.points);
  const right = new Map(pairs.map(({ left, right: { id } }, i) => [id, { left, by: off[i % off.length]! }] as const));
  const points = job.points.map((point) => {
    const found = right.get(point.id);
    if (found === undefined) return point;
    const [x, y, z] = found.left.position;
    const [forward, outward, up] = found.by;
    return { ...point, position: [x + forward, -(y + outward), z + up] as const };
  });
  return { ...job, points };
}

export const pointAt = (job: Job, id: string): Triple => job.points.find((point) => point.id === id)!.position;
