/**
 * How long deriving takes, and how that stands to mesh booleans and exact solids. Prints the target beside each figure;
 * a miss is printed too and is no failure. `npm run bench`.
 */
import { readFileSync } from 'node:fs';
import { derive, type Derived } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import type { FrameNode, Job } from '../../src/core/job/types.ts';
import { startKernel } from '../reference/oracles/kernel.ts';
import { startMesh } from '../reference/oracles/mesh.ts';
import { medianOf, medianTime, timeOf } from './clock.ts';
import { BEND, STRAIGHT, timeKernel, timeMesh, timeOurs } from './curves.ts';
import { latticeOf } from './lattice.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);

const figure = (value: number): string =>
  value >= 100 ? Math.round(value).toLocaleString('en') : value.toPrecision(3);
const verdict = (reached: boolean): string => (reached ? 'reached' : 'NOT reached');

const atMost = (name: string, ms: number, target: number): void =>
  say(`${name.padEnd(58)} ${figure(ms).padStart(9)} ms   target <= ${target} ms: ${verdict(ms <= target)}`);
const atLeast = (name: string, ratio: number, target: number): void =>
  say(
    `${name.padEnd(58)} ${figure(ratio).padStart(9)} x    target >= ${target.toLocaleString('en')} x: ${verdict(ratio >= target)}`,
  );

export async function main(): Promise<number> {
  timeDemo();
  await timeCurves();
  timeLattices();
  return 0;
}

function derived(job: Job, previous?: Derived): Derived {
  const result = derive(job, previous);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

function timeDemo(): void {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const job = parsed.job;
  const start = derived(job);
  say(`Demo: ${start.tubes.length} tubes, ${job.nodes.length} nodes. Checks and clearances included.`);
  atMost(
    'derived from nothing, median of 200',
    medianTime(200, 50, () => derive(job)),
    5,
  );

  // Each node in turn is moved by steps, as a pointer would drag it; what was derived last is handed on.
  const medians = job.nodes.map((_, at) => {
    let previous = start;
    const times = Array.from({ length: 30 }, (__, step) => {
      const moved = { ...job, nodes: job.nodes.map((node, i) => (i === at ? nudged(node, 0.1 * (step + 1)) : node)) };
      const ms = timeOf(() => {
        previous = derived(moved, previous);
      });
      return ms;
    });
    return { node: job.nodes[at]!.id, ms: medianOf(times.slice(5)) };
  });
  const slowest = medians.reduce((a, b) => (b.ms > a.ms ? b : a));
  atMost('one dragged node, median over all nodes', medianOf(medians.map((each) => each.ms)), 1);
  atMost(`one dragged node, the slowest of them (${slowest.node})`, slowest.ms, 1);
}

function nudged(node: FrameNode, by: number): FrameNode {
  const { at } = node;
  switch (at.kind) {
    case 'fixed':
      return { ...node, at: { ...at, position: [at.position[0] + by, at.position[1], at.position[2]] } };
    case 'point':
      return { ...node, at: { ...at, offset: [at.offset[0] + by, at.offset[1], at.offset[2]] } };
    case 'on':
      return { ...node, at: { ...at, distance: at.distance + by } };
    case 'between':
      return { ...node, at: { ...at, fraction: at.fraction + by / 1000 } };
    case 'ray':
      return { ...node, at: { ...at, until: { ...at.until, value: at.until.value + by } } };
  }
}

async function timeCurves(): Promise<void> {
  say('');
  say('One cope curve of 360 ordinates, OD 38.1 on OD 44.45 at 60 degrees.');
  say(
    'Mesh: the boolean alone, 360 sides, meshes made beforehand, nothing read. Exact: the boolean and reading 360 ordinates.',
  );
  const [mesh, kernel] = [await startMesh(), await startKernel()];
  const targets = [
    { curve: STRAIGHT, mesh: 300, kernel: 3000 },
    { curve: BEND, mesh: 30, kernel: 300 },
  ];
  for (const { curve, mesh: meshTarget, kernel: kernelTarget } of targets) {
    const ours = timeOurs(curve);
    const meshMs = timeMesh(mesh, curve);
    const exact = timeKernel(kernel, curve, ours.trim);
    say(
      `${curve.name}: here ${figure(ours.ms * 1000)} us, mesh ${figure(meshMs)} ms, exact ${figure(exact.ms)} ms (curves agree to ${exact.worst.toPrecision(1)} mm)`,
    );
    atLeast(`${curve.name}: times faster than the mesh boolean`, meshMs / ours.ms, meshTarget);
    atLeast(`${curve.name}: times faster than exact solids`, exact.ms / ours.ms, kernelTarget);
  }
}

function timeLattices(): void {
  say('');
  say('Lattices, every end coped to all it meets; derived from nothing.');
  const sizes = [20, 200, 2000];
  const times = sizes.map((tubes) => {
    const job = latticeOf(tubes);
    return medianTime(tubes > 1000 ? 5 : 15, 3, () => derive(job));
  });
  sizes.forEach((tubes, i) => say(`${`${tubes} tubes`.padEnd(58)} ${figure(times[i]!).padStart(9)} ms`));
  // n log n from 200 to 2 000 multiplies by 14.3: an exponent of 1.16.
  const allowed = Math.log10((2000 * Math.log(2000)) / (200 * Math.log(200)));
  for (const [i, j] of [
    [0, 1],
    [1, 2],
  ] as const) {
    const exponent = Math.log(times[j]! / times[i]!) / Math.log(sizes[j]! / sizes[i]!);
    say(
      `${`exponent from ${sizes[i]} to ${sizes[j]} tubes`.padEnd(58)} ${exponent.toFixed(2).padStart(9)}      target <= ${allowed.toFixed(2)} (n log n): ${verdict(exponent <= allowed)}`,
    );
  }
  atMost('2 000 tubes', times[2]!, 300);
}
