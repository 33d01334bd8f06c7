import { describe, expect, it } from 'vitest';
import {
  addScaled,
  distance,
  dot,
  length,
  normalize,
  rejectFrom,
  scale,
  subtract,
  type Vec3,
} from '../../../src/core/geometry/vector.ts';
import { buildTubeMesh, CUT, OUTER, type TubeMesh } from '../../../src/core/mesh/tube.ts';
import { leaveBar, tubeByHand, walkPath, wallDirection, type EndByHand } from './by-hand.ts';

const AREA = (Math.PI / 4) * (44.45 ** 2 - (44.45 - 2 * 3.048) ** 2);

const square = (trim: number, reference: Vec3): EndByHand => ({ reference, trim: () => trim });

const vertex = (mesh: TubeMesh, i: number): Vec3 => [
  mesh.positions[3 * i]!,
  mesh.positions[3 * i + 1]!,
  mesh.positions[3 * i + 2]!,
];

/** Signed volume by the divergence theorem: positive when every triangle is wound outwards. */
function volumeOf(mesh: TubeMesh): number {
  let six = 0;
  for (let i = 0; i < mesh.indices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => vertex(mesh, mesh.indices[i + k]!)) as [Vec3, Vec3, Vec3];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

/** Every edge is used once in each direction, vertices at one place counted as one. */
function openEdges(mesh: TubeMesh): number {
  const places = new Map<string, number>();
  const placeOf = (i: number): number => {
    const key = vertex(mesh, i).join(' ');
    if (!places.has(key)) places.set(key, places.size);
    return places.get(key)!;
  };
  const balance = new Map<string, number>();
  for (let i = 0; i < mesh.indices.length; i += 3) {
    for (let k = 0; k < 3; k += 1) {
      const from = placeOf(mesh.indices[i + k]!);
      const to = placeOf(mesh.indices[i + ((k + 1) % 3)]!);
      const key = from < to ? `${from}-${to}` : `${to}-${from}`;
      balance.set(key, (balance.get(key) ?? 0) + (from < to ? 1 : -1));
    }
  }
  return [...balance.values()].filter((count) => count !== 0).length;
}

const within = (share: number, value: number, expected: number): void => {
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);
};

const straight = walkPath([1, 0, 0], [{ straight: 800 }]);

/** Bent up out of the floor, then inwards in a second plane. */
const twoPlanes = walkPath(
  [0, 0, 1],
  [
    { straight: 400, turn: { angle: (65 * Math.PI) / 180, about: [0, 1, 0], radius: 152.4 } },
    {
      straight: 300,
      turn: {
        angle: (40 * Math.PI) / 180,
        about: normalize([-Math.cos((65 * Math.PI) / 180), 0, Math.sin((65 * Math.PI) / 180)]),
        radius: 152.4,
      },
    },
    { straight: 250 },
  ],
);

/** Both ends coped to round bars through the nodes, each bar with its own axis. */
function coped(path: typeof straight, axisA: Vec3, axisB: Vec3, barRadius: number) {
  const first = path.pieces[0]!;
  const last = path.pieces.at(-1)!;
  const make = (position: Vec3, direction: Vec3, axis: Vec3): EndByHand => {
    const reference = normalize(rejectFrom([0.3, 0.5, 0.8], direction));
    return {
      reference,
      trim: (phi, radius) =>
        leaveBar(
          addScaled(position, wallDirection(direction, reference, phi), radius),
          direction,
          position,
          axis,
          barRadius,
        ),
    };
  };
  return tubeByHand(path, [
    make(first.from, first.startTangent, axisA),
    make(last.to, scale(last.endTangent, -1), axisB),
  ]);
}

describe('a tube as triangles', () => {
  const shapes = {
    'straight, sawn square': {
      tube: tubeByHand(straight, [square(12, [0, 1, 0]), square(-5, [0, 0, 1])]),
      length: 800 - 7,
    },
    'bent in two planes, sawn square': {
      tube: tubeByHand(twoPlanes, [square(20, [1, 0, 0]), square(30, [0.2, 1, 0.4])]),
      length: twoPlanes.length - 50,
    },
    'mitred to a plane at 35 degrees': {
      // A plane through the node takes as much from one side as it leaves on the other.
      tube: tubeByHand(straight, [
        { reference: [0, 1, 0], trim: (phi, radius) => -radius * Math.cos(phi) * Math.tan((35 * Math.PI) / 180) },
        square(0, [0, 1, 0]),
      ]),
      length: 800,
    },
  };

  for (const [name, { tube, length: expected }] of Object.entries(shapes)) {
    it(`${name}: closed, and holds the steel of its developed length less its trims to 0.5 %`, () => {
      const mesh = buildTubeMesh(tube);
      expect(openEdges(mesh)).toBe(0);
      within(0.005, volumeOf(mesh), AREA * expected);
    });
  }

  it('coped at both ends: closed, and holds the steel outside both bars to 0.5 %', () => {
    const tube = coped(straight, normalize([0.5, 1, 0]), [0, 0, 1], 22.225);
    const mesh = buildTubeMesh(tube);
    expect(openEdges(mesh)).toBe(0);
    // Midpoint sums over the ring between bore and outside: the steel left on each line is 800 less both first contacts.
    let volume = 0;
    const rings = 40;
    const lines = 720;
    const [a, b] = tube.ends;
    for (let i = 0; i < rings; i += 1) {
      const radius = 22.225 - 3.048 + (3.048 * (i + 0.5)) / rings;
      for (let k = 0; k < lines; k += 1) {
        const phi = (2 * Math.PI * (k + 0.5)) / lines;
        const trims = [
          leaveBar(
            addScaled(a.position, wallDirection(a.direction, a.reference, phi), radius),
            a.direction,
            a.position,
            normalize([0.5, 1, 0]),
            22.225,
          ),
          leaveBar(
            addScaled(b.position, wallDirection(b.direction, b.reference, phi), radius),
            b.direction,
            b.position,
            [0, 0, 1],
            22.225,
          ),
        ];
        volume += (800 - trims[0]! - trims[1]!) * radius * ((2 * Math.PI) / lines) * (3.048 / rings);
      }
    }
    within(0.005, volumeOf(mesh), volume);
  });

  for (const barRadius of [22.225, 25.4]) {
    it(`both rims lie on the bars they were coped to, at the far end of two bends too (bar radius ${barRadius})`, () => {
      const axisA = normalize([1, 0.4, 0.3]);
      const axisB = normalize([0.2, 0.1, 1]);
      const tube = coped(twoPlanes, axisA, axisB, barRadius);
      const mesh = buildTubeMesh(tube);
      let counted = 0;
      for (let i = 0; i < mesh.faces.length; i += 1) {
        if (mesh.faces[i] !== CUT) continue;
        const at = vertex(mesh, i);
        const nearA = distance(at, tube.ends[0].position) < distance(at, tube.ends[1].position);
        const [end, axis] = nearA ? [tube.ends[0], axisA] : [tube.ends[1], axisB];
        expect(Math.abs(length(rejectFrom(subtract(at, end.position), axis)) - barRadius)).toBeLessThan(0.01);
        counted += 1;
      }
      expect(counted).toBeGreaterThan(200);
    });
  }

  it('keeps the tips of an equal-tube cope: the rim reaches the least and greatest trim', () => {
    const tube = coped(straight, [0, 0.6, 0.8], [0, 0, 1], 22.225);
    const mesh = buildTubeMesh(tube);
    const rim = Array.from(mesh.faces.keys()).filter((i) => mesh.faces[i] === CUT && vertex(mesh, i)[0] < 400);
    const along = rim.map((i) => vertex(mesh, i)[0]);
    expect(Math.min(...along)).toBeCloseTo(tube.ends[0].tip!, 3);
    expect(Math.max(...along)).toBeCloseTo(tube.ends[0].throat!, 3);
  });

  it('draws lines that reach no run to the tip', () => {
    const tube = tubeByHand(straight, [
      { reference: [0, 1, 0], trim: (phi) => (Math.cos(phi) > 0.5 ? Number.NaN : 15 + Math.cos(phi)) },
      square(0, [0, 1, 0]),
    ]);
    const mesh = buildTubeMesh(tube);
    expect(openEdges(mesh)).toBe(0);
    expect(mesh.positions.some(Number.isNaN)).toBe(false);
    const least = Math.min(...Array.from(mesh.faces.keys(), (i) => vertex(mesh, i)[0]));
    expect(least).toBeCloseTo(tube.ends[0].tip!, 3);
  });

  it('outer normals point away from the bore', () => {
    const mesh = buildTubeMesh(tubeByHand(straight, [square(0, [0, 1, 0]), square(0, [0, 1, 0])]));
    for (let i = 0; i < mesh.faces.length; i += 1) {
      const normal: Vec3 = [mesh.normals[3 * i]!, mesh.normals[3 * i + 1]!, mesh.normals[3 * i + 2]!];
      expect(length(normal)).toBeCloseTo(1, 5);
      if (mesh.faces[i] === OUTER) expect(dot(normal, vertex(mesh, i))).toBeCloseTo(22.225, 3);
    }
  });

  it('stays light: under 6 000 triangles for a tube of two bends', () => {
    expect(buildTubeMesh(coped(twoPlanes, [1, 0, 0], [0, 0, 1], 22.225)).indices.length / 3).toBeLessThan(6000);
  });
});
