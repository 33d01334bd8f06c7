/** Solved tubes made by hand, with only what the shop's drawings read: the drawings are tested apart from the solver. */
import type { Bend, Cut, SolvedTube, TubeEnd } from '../../../src/core/solve/types.ts';

const level = (trim: number): Float64Array => new Float64Array(360).fill(trim);

const SECTION = { id: 's', name: 'S', outerDiameter: 44.45, wall: 3.048, material: '' };

export const endWith = (given: Partial<TubeEnd>): TubeEnd => ({
  node: 'n',
  position: [0, 0, 0],
  spec: { fit: 'auto', allowance: 0 },
  fit: 'square',
  direction: [1, 0, 0],
  reference: [0, 0, 1],
  cuts: [],
  butted: [],
  plateNormal: null,
  foot: null,
  unmitred: null,
  cutter: {
    bundle: { origin: [0, 0, 0], direction: [1, 0, 0], reference: [0, 0, 1] },
    section: SECTION,
    plateNormal: null,
    rise: 0,
    sleeves: [],
  },
  outer: level(0),
  inner: level(0),
  tip: 0,
  throat: 0,
  lows: [{ phi: 0, s: 0 }],
  high: { phi: 0, s: 0 },
  passedBy: false,
  meanTrim: 0,
  allowance: 0,
  ...given,
});

export const cutAt = (degrees: number): Cut => ({
  against: 'run',
  includedAngle: (degrees * Math.PI) / 180,
  offSquare: ((90 - degrees) * Math.PI) / 180,
  clocking: 0,
  axisOffset: 0,
  sawDiameter: 44.45,
  sawDepth: 90,
  onBend: false,
  landing: [0, 0, 0],
  landingAt: 0,
  reaches: true,
});

const tube = (given: Partial<SolvedTube>): SolvedTube => ({
  id: 't',
  name: 'Tube',
  number: 1,
  bar: 't',
  piece: null,
  member: {
    id: 't',
    name: 'Tube',
    role: '',
    path: ['a', 'b'],
    section: 's',
    mirror: false,
    ends: [
      { fit: 'auto', allowance: 0 },
      { fit: 'auto', allowance: 0 },
    ],
  },
  twinOf: null,
  asDrawn: null,
  held: null,
  pullLaw: null,
  section: SECTION,
  die: {
    id: 'd',
    name: 'D',
    outerDiameter: 44.45,
    centrelineRadius: 152.4,
    clampOffset: 120,
    leastStraight: 60,
    leastGrip: 150,
    greatestAngle: 120,
    radius: 'nominal',
  },
  route: [],
  corners: [],
  path: { pieces: [], length: 1000 },
  bends: [],
  straights: [1000],
  developedLength: 1000,
  sharpCornerLength: 1000,
  blankLength: 1000,
  mass: 3,
  ends: [endWith({}), endWith({})],
  ...given,
});

export const straightTube = ({ cutsA, cutsB }: { cutsA: number; cutsB: number }): SolvedTube =>
  tube({
    ends: [
      endWith({ cuts: Array.from({ length: cutsA }, () => cutAt(60)) }),
      endWith({ cuts: Array.from({ length: cutsB }, () => cutAt(60)) }),
    ],
  });

const bendFrom = (start: number, end: number): Bend => ({
  corner: [0, 0, 0],
  angle: Math.PI / 3,
  rotation: 0,
  radius: 152.4,
  setBack: 88,
  arc: end - start,
  start,
  end,
  centre: [0, 0, 0],
  normal: [0, 0, 1],
});

export const bentTube = (count: number, given: Partial<SolvedTube> = {}): SolvedTube =>
  tube({
    bends: Array.from({ length: count }, (_, index) => bendFrom(200 + 200 * index, 300 + 200 * index)),
    ...given,
  });
