/** Laws of the solved geometry: what moving, mirroring and reversing must and must not change, and rolling out the table. */
import { drawn } from '../draws.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/core/job/types.ts';
import type { SolvedTube, TubeEnd } from '../../src/core/solve/types.ts';
import {
  corners,
  derivedOrSkipped,
  fixed,
  isSound,
  jobOf,
  mirroredFrame,
  plainFrame,
  place,
  type Triple,
} from './frames.ts';

const near = (a: readonly number[], b: readonly number[], within: number): boolean =>
  a.length === b.length && a.every((value, i) => Math.abs(value - b[i]!) <= within);

/** Angles that differ by whole turns are one. */
const sameTurn = (a: number, b: number): boolean => Math.abs(Math.sin((a - b) / 2)) < 1e-7;
/** A square cut's clocking counts modulo half a turn. */
const sameHalfTurn = (a: number, b: number): boolean => Math.abs(Math.sin(a - b)) < 1e-7;

/** A grazing line keeps half the digits of the places it comes from. */
const GRAZING = 1e-4;
const sameTrim = (a: number, b: number): boolean =>
  Number.isNaN(a) || Number.isNaN(b) ? Number.isNaN(a) && Number.isNaN(b) : Math.abs(a - b) < GRAZING;

/** Profile b is a, seen with phi counted the other way when `flipped`. */
function expectSameEnd(a: TubeEnd, b: TubeEnd, flipped: boolean): void {
  expect(b.fit).toBe(a.fit);
  for (const face of ['outer', 'inner'] as const) {
    const other = (phi: number): number => (flipped ? (360 - phi) % 360 : phi);
    const differing = [...a[face].keys()].filter((phi) => !sameTrim(a[face][phi]!, b[face][other(phi)]!));
    expect(differing, `${face} of ${a.node}`).toEqual([]);
  }
  expect(b.cuts).toHaveLength(a.cuts.length);
  a.cuts.forEach((cut, i) => {
    const image = b.cuts[i]!;
    expect(image.includedAngle).toBeCloseTo(cut.includedAngle, 7);
    const turned = (flipped ? -1 : 1) * cut.clocking;
    const square = cut.offSquare < 1e-7;
    expect((square ? sameHalfTurn : sameTurn)(image.clocking, turned), `clocking of ${a.node}`).toBe(true);
    expect(image.onBend).toBe(cut.onBend);
    expect(image.reaches).toBe(cut.reaches);
    expect(Math.abs(image.axisOffset)).toBeCloseTo(Math.abs(cut.axisOffset), 6);
  });
}

function expectSameTube(a: SolvedTube, b: SolvedTube, flipped: boolean): void {
  expect(near(b.straights, a.straights, 1e-7), 'straights').toBe(true);
  expect(b.bends).toHaveLength(a.bends.length);
  a.bends.forEach((bend, i) => {
    expect(b.bends[i]!.angle).toBeCloseTo(bend.angle, 9);
    expect(sameTurn(b.bends[i]!.rotation, (flipped ? -1 : 1) * bend.rotation), 'rotation').toBe(true);
    expect(b.bends[i]!.start).toBeCloseTo(bend.start, 7);
  });
  expect(b.developedLength).toBeCloseTo(a.developedLength, 7);
  expect(b.blankLength).toBeCloseTo(a.blankLength, 3);
  expect(b.mass).toBeCloseTo(a.mass, 6);
  a.ends.forEach((end, which) => expectSameEnd(end, b.ends[which]!, flipped));
}

const image = ([x, y, z]: Triple): Triple => [x, -y, z];

describe('mirroring', () => {
  it('gives the twin the mirrored shape, with rotations and clockings of the opposite sign', () => {
    fc.assert(
      fc.property(mirroredFrame, (job) => {
        const { tubes, byId } = derivedOrSkipped(job);
        for (const twin of tubes.filter((tube) => tube.twinOf !== null)) {
          const tube = byId.get(twin.twinOf!)!;
          tube.corners.forEach((corner, i) => expect(near(twin.corners[i]!, image(corner), 1e-9)).toBe(true));
          expectSameTube(tube, twin, true);
          tube.ends.forEach((end, i) => {
            expect(near(twin.ends[i]!.direction, image(end.direction), 1e-9)).toBe(true);
            expect(near(twin.ends[i]!.reference, image(end.reference), 1e-7)).toBe(true);
          });
        }
      }),
      fixed(drawn(10, 100)),
    );
  });

  it('does so where the cut is square and the run, a hoop across the car, goes up on one side and down on the other', () => {
    const corner = (id: string, position: Triple): object => ({ id, at: { kind: 'fixed', position } });
    const nodes = [
      corner('foot', [0, 600, 0]),
      corner('top', [0, 600, 1100]),
      { id: 'on', at: { kind: 'on', member: 'hoop', from: 'start', distance: 700 } },
      corner('back', [-800, 600, 700]),
    ];
    const hoop = { id: 'hoop', path: ['foot', 'top', "top'", "foot'"], section: 'main', die: 'd' };
    const stay = { id: 'stay', path: ['on', 'back'], section: 'main', mirror: true };
    const { byId } = derivedOrSkipped(jobOf({ nodes, members: [hoop, stay] }));
    const [left, right] = [byId.get('stay')!, byId.get("stay'")!];
    expect(left.ends[0].cuts[0]!.offSquare).toBeCloseTo(0, 12);
    expectSameTube(left, right, true);
    expect(near(right.ends[0].reference, image(left.ends[0].reference), 1e-12)).toBe(true);
  });

  it('does the same to a whole job that is laid out left for right', () => {
    fc.assert(
      fc.property(plainFrame, (job) => {
        const left = derivedOrSkipped(job);
        const right = derivedOrSkipped(movedJob(job, image, image));
        left.tubes.forEach((tube) => expectSameTube(tube, right.byId.get(tube.id)!, true));
      }),
      fixed(drawn(10, 100)),
    );
  });
});

/** The job with every place moved, and every direction turned along. */
function movedJob(job: Job, move: (p: Triple) => Triple, turn: (v: Triple) => Triple): Job {
  const nodes = job.nodes.map((node) => {
    if (node.at.kind === 'fixed') return { ...node, at: { ...node.at, position: move(node.at.position) } };
    return node.at.kind === 'on' ? { ...node, at: { ...node.at, offset: turn(node.at.offset) } } : node;
  });
  return { ...job, nodes };
}

/** A turn from three angles about the axes in turn. */
function turnBy([a, b, c]: Triple): (v: Triple) => Triple {
  const spin = ([x, y, z]: Triple, angle: number): Triple => [
    y,
    z * Math.cos(angle) - x * Math.sin(angle),
    z * Math.sin(angle) + x * Math.cos(angle),
  ];
  return (v) => spin(spin(spin(v, a), b), c);
}

describe('moving and turning a whole job', () => {
  it('changes no length, angle, rotation, clocking or profile', () => {
    const angle = fc.integer({ min: -300, max: 300 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(plainFrame, fc.tuple(angle, angle, angle), place, (job, angles, shift) => {
        const turn = turnBy(angles);
        const move = (p: Triple): Triple => {
          const [x, y, z] = turn(p);
          return [x + shift[0], y + shift[1], z + shift[2]];
        };
        const before = derivedOrSkipped(job);
        const after = derivedOrSkipped(movedJob(job, move, turn));
        before.tubes.forEach((tube) => expectSameTube(tube, after.byId.get(tube.id)!, false));
      }),
      fixed(drawn(10, 100)),
    );
  });
});

describe('one tube', () => {
  const paths = corners(place, 2, 6);
  const tubeThrough = (path: readonly Triple[]): SolvedTube => {
    const nodes = path.map((position, i) => ({ id: `n${i}`, at: { kind: 'fixed', position } }));
    const member = {
      id: 't',
      path: nodes.map((node) => node.id),
      section: 'main',
      die: 'd',
      ends: [{ fit: 'square' }, { fit: 'square' }],
    };
    return derivedOrSkipped(jobOf({ nodes, members: [member] })).tubes[0]!;
  };

  it('reversed has its table reversed, its rotations with the signs they had', () => {
    fc.assert(
      fc.property(paths, (path) => {
        const there = tubeThrough(path);
        const back = tubeThrough(path.toReversed());
        expect(near(back.straights, there.straights.toReversed(), 1e-8)).toBe(true);
        expect(
          near(
            back.bends.map((bend) => bend.angle),
            there.bends.map((bend) => bend.angle).toReversed(),
            1e-9,
          ),
        ).toBe(true);
        // A rotation stands between two bends: seen from the other end, feed and both planes turn round, and it stays.
        const between = there.bends
          .slice(1)
          .map((bend) => bend.rotation)
          .toReversed();
        const seenBack = back.bends.slice(1).map((bend) => bend.rotation);
        expect(seenBack.every((rotation, i) => sameTurn(rotation, between[i]!))).toBe(true);
        expect(back.bends[0]?.rotation ?? 0).toBe(0);
        expect(back.developedLength).toBeCloseTo(there.developedLength, 8);
      }),
      fixed(drawn(20, 200)),
    );
  });

  it('is as long as its straights and arcs together, bend by bend', () => {
    fc.assert(
      fc.property(paths, (path) => {
        const tube = tubeThrough(path);
        expect(tube.straights).toHaveLength(tube.bends.length + 1);
        let laid = 0;
        tube.bends.forEach((bend, i) => {
          laid += tube.straights[i]!;
          expect(bend.start).toBeCloseTo(laid, 8);
          laid += bend.radius * bend.angle;
          expect(bend.end).toBeCloseTo(laid, 8);
        });
        expect(tube.developedLength).toBeCloseTo(laid + tube.straights.at(-1)!, 8);
        expect(tube.developedLength).toBeLessThanOrEqual(tube.sharpCornerLength + 1e-9);
      }),
      fixed(drawn(20, 200)),
    );
  });

  it('rolled out from its table of lengths, rotations and angles lands on its corners', () => {
    fc.assert(
      fc.property(paths, (path) => {
        const tube = tubeThrough(path);
        const rolled = rollOut(tube);
        expect(rolled).toHaveLength(tube.corners.length);
        rolled.forEach((corner, i) => expect(near(corner, tube.corners[i]!, 1e-6), `corner ${i}`).toBe(true));
        if (isSound(tube)) expect(tube.path.length).toBeCloseTo(tube.developedLength, 8);
      }),
      fixed(drawn(20, 200)),
    );
  });
});

/**
 * A bender in small: it feeds, turns the tube about its axis and bends it, knowing only the table, where the tube begins,
 * and to which side the first bend lies. Answers the start, where the tangents of each bend cross, and the end.
 */
function rollOut(tube: SolvedTube): Triple[] {
  const plus = (a: Triple, k: number, b: Triple): Triple => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
  const crossed = (a: Triple, b: Triple): Triple => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  const [start, next, after] = tube.corners as readonly [Triple, Triple, Triple | undefined];
  const unit = (a: Triple): Triple => plus([0, 0, 0], 1 / Math.hypot(...a), a);
  let at = start;
  let feed = unit(plus(next, -1, start));
  let side: Triple = [0, 0, 0];
  if (after) {
    const leaving = plus(after, -1, next);
    side = unit(plus(leaving, -(leaving[0] * feed[0] + leaving[1] * feed[1] + leaving[2] * feed[2]), feed));
  }
  const passed = [start];
  tube.bends.forEach(({ angle, rotation, radius }, i) => {
    at = plus(at, tube.straights[i]!, feed);
    side = plus(plus([0, 0, 0], Math.cos(rotation), side), Math.sin(rotation), crossed(feed, side));
    passed.push(plus(at, (radius * (1 - Math.cos(angle))) / Math.sin(angle), feed));
    at = plus(plus(at, radius * Math.sin(angle), feed), radius * (1 - Math.cos(angle)), side);
    const turned = plus(plus([0, 0, 0], Math.cos(angle), feed), Math.sin(angle), side);
    side = plus(plus([0, 0, 0], Math.cos(angle), side), -Math.sin(angle), feed);
    feed = turned;
  });
  return [...passed, plus(at, tube.straights.at(-1)!, feed)];
}
