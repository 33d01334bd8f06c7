/**
 * The jobs that mutants are made of, at most eight tubes each: the sample, two shops' worth of records of every kind, and
 * random frames. Made up; nobody's car.
 */
import fc from 'fast-check';
import { derive } from '../../../src/core/derive.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { sampleFile } from '../../core/job/sample.ts';
import { mirroredFrame, plainFrame } from '../../laws/frames.ts';

const MOST_TUBES = 8;

/** pulled = net + 0.8 + 0.04 net. */
const pull = (net: number, more: object = {}) => ({
  die: 'd',
  section: 'main',
  pulled: Number((1.04 * net + 0.8).toFixed(2)),
  net,
  on: '2026-03-02',
  ...more,
});

const BENDER = {
  turns: 'right',
  bendLies: 'before',
  planeHeight: 910,
  rotationBy: 'wheel',
  room: [
    { name: 'Bench', kind: 'box', centre: [-900, 1200, 425], size: [1800, 600, 850], rotation: [0, 0, 12] },
    { name: 'Wall', kind: 'plane', point: [0, -1500, 0], normal: [0, 1, 0.02] },
  ],
};

/** Blocks that a random frame has not: driver's room, a machine, pulls, a tube half made. */
const SHOP = {
  envelopes: [
    { id: 'head', name: 'Helmet', kind: 'box', centre: [-150, 330, 1010], size: [330, 280, 330], rotation: [0, 10, 0] },
    { id: 'knees', name: 'Knees', kind: 'box', centre: [500, 0, 500], size: [400, 900, 300], gap: 50 },
    {
      id: 'driver',
      kind: 'driver',
      helmetTop: 'post',
      eye: "sill'",
      shoulders: ['post', 'sill'],
      motion: { forward: 40 },
    },
  ],
  pulls: [pull(25), pull(60, { batch: 'H-204' }), pull(88, { batch: 'H-204', tube: 'm0', bend: 1 })],
  points: [
    { id: 'sill', name: 'Sill', position: [0, 640, 310] },
    { id: 'post', name: 'Post', position: [-40, 600, 900] },
  ],
  bodyLines: [{ id: 'door', name: 'Door', points: ['sill', 'post', "post'"] }],
};

/** A hoop with a stay in its bend, a bar across, a leg that stands on the stay, a ray; benders, runs, sticks, every fit. */
const CAGE = {
  format: 'cagewright/job',
  version: 1,
  name: 'Shop frame',
  lengthUnit: 'in',
  ...SHOP,
  sections: [
    { id: 'main', name: '44.45 x 3', outerDiameter: 44.45, wall: 3.048, material: 'dom-1020', stick: 6000 },
    { id: 'light', name: '38 x 2.5', outerDiameter: 38, wall: 2.5, material: 'e235-n' },
  ],
  dies: [
    {
      id: 'd',
      name: '6 in',
      outerDiameter: 44.45,
      centrelineRadius: 152.4,
      clampOffset: 114.3,
      leastStraight: 60,
      leastGrip: 150,
      greatestAngle: 120,
      radius: 'from-pulls',
      bender: BENDER,
    },
    { id: 'e', name: '4.5 in', outerDiameter: 38, centrelineRadius: 114.3, bender: {} },
  ],
  nodes: [
    { id: 'foot', at: { kind: 'fixed', position: [0, 620, 0] } },
    { id: 'elbow', at: { kind: 'fixed', position: [-60, 560, 640] } },
    { id: 'top', at: { kind: 'fixed', position: [-80, 430, 1120] } },
    { id: 'sill', at: { kind: 'point', point: 'sill', offset: [0, -32, 0] } },
    { id: 'stay-top', at: { kind: 'on', member: 'hoop', bend: 2, where: 'middle', distance: 4 } },
    { id: 'tower', at: { kind: 'fixed', position: [-900, 450, 300] } },
    { id: 'knee', at: { kind: 'fixed', position: [-500, 470, 520] } },
    { id: 'cross', at: { kind: 'on', member: 'hoop', from: 'start', distance: 700 } },
    { id: 'mid', at: { kind: 'between', nodes: ['foot', 'top'], fraction: 0.4 } },
    { id: 'leg', at: { kind: 'ray', from: 'cross', direction: [1, 0, -0.4], until: { axis: 'x', value: 800 } } },
    { id: 'on-stay', at: { kind: 'on', member: "stay'", from: 'end', distance: 300, offset: [2, 0, 0] } },
  ],
  members: [
    {
      id: 'hoop',
      name: 'Main hoop',
      role: 'main-hoop',
      path: ['foot', 'elbow', 'top', "top'", "elbow'", "foot'"],
      section: 'main',
      die: 'd',
      batch: 'H-204',
      ends: [
        { fit: 'plate', normal: [0, 0, 1] },
        { fit: 'plate', normal: [0, 0.1, 1], allowance: 3 },
      ],
    },
    { id: 'stay', path: ['stay-top', 'knee', 'tower'], section: 'main', die: 'd', mirror: true },
    { id: 'bar', path: ['cross', "cross'"], section: 'main' },
    {
      id: 'leg',
      path: ['cross', 'leg', 'sill'],
      section: 'light',
      die: 'e',
      mirror: true,
      ends: [{ fit: 'cope', against: ['hoop', 'bar'] }, { fit: 'square' }],
    },
    { id: 'brace', path: ['on-stay', 'mid'], section: 'light' },
  ],
  bent: [
    {
      tube: 'hoop',
      order: [1, 2, 3, 4].map((bend) => ({ bend, front: bend < 3 ? 'A' : 'B' })),
      done: ['cut', 'mark', 'clamp 1'],
      bends: [{ bend: 1, pulled: 12, net: 10.8, rotation: 0.3, straight: 630, start: 640 }],
      checks: [{ check: 'chord', measured: 1240 }],
      drawn: {
        legs: [645, 500, 860, 500, 645],
        angles: [11, 73, 73, 11],
        rotations: [0, 5, 0, -5],
        starts: [630, 990],
      },
    },
    { tube: "stay'", order: [{ bend: 1, front: 'B' }] },
  ],
};

/** As plain data, `frames` of either kind of random frame, always the same for the seed. Every one of them derives. */
export function seedJobs(seed: number, frames: number): readonly object[] {
  const drawn = (kind: fc.Arbitrary<Job>): object[] =>
    fc
      .sample(kind, { seed, numRuns: 3 * frames })
      .filter((job) => {
        const derivation = derive(job);
        return derivation.ok && derivation.value.tubes.length <= MOST_TUBES;
      })
      .slice(0, frames)
      .map(({ sections, ...job }, i) => ({
        ...(JSON.parse(serialiseJob({ ...job, sections })) as object),
        sections: sections.map((section) => ({ ...section, material: 'e235-n' })),
        ...(i % 2 === 0 && SHOP),
      }));
  return [sampleFile(), CAGE, ...drawn(plainFrame), ...drawn(mirroredFrame)];
}
