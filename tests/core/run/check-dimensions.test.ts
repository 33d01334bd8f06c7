import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { placeOnPiece } from '../../../src/core/geometry/path.ts';
import { checkDimensions, type CheckDimension } from '../../../src/core/run/check-dimensions.ts';
import { checkInWords } from '../../../src/core/words/run.ts';
import { sawnTube, reachOf, type SawnTube } from '../../../src/core/run/sawn-tube.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { corners, fixed, place, type Triple } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { drawn } from '../../draws.ts';

/** 40 mm tube on a radius of 100 mm: figures that can be worked out by hand. */
const SECTION = { id: 's', outerDiameter: 40, wall: 3 };
const DIE = { id: 'd', outerDiameter: 40, centrelineRadius: 100 };

function bar(path: readonly Triple[], allowances: readonly [number, number] = [0, 0]): SolvedTube | null {
  const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
  const ends = allowances.map((allowance) => ({ fit: 'square', allowance }));
  const members = [{ id: 'bar', section: 's', die: 'd', path: Object.keys(nodes), ends }];
  const derivation = derive(jobOf({ nodes, sections: [SECTION], dies: [DIE], members }));
  return derivation.ok ? derivation.value.byId.get('bar')! : null;
}

const dimensions = (...given: Parameters<typeof bar>): Partial<Record<CheckDimension['id'], number>> =>
  Object.fromEntries(checkDimensions(sawnTube(bar(...given)!)).map(({ id, value }) => [id, value]));

/** Two legs of 500, 400 apart between centres. */
const U: Triple[] = [
  [0, 0, 0],
  [0, 0, 500],
  [400, 0, 500],
  [400, 0, 0],
];

describe('by hand', () => {
  it('a U: 440 over the legs, 520 high, both diagonals alike', () => {
    expect(dimensions(U)).toEqual({
      width: expect.closeTo(440, 9),
      height: expect.closeTo(520, 9),
      'legs-at-ends': expect.closeTo(440, 9),
      'legs-at-bends': expect.closeTo(440, 9),
      chord: expect.closeTo(400, 9),
      // The far tangent is 400 across and 400 up.
      'diagonal-a': expect.closeTo(400 * Math.SQRT2, 9),
      'diagonal-b': expect.closeTo(400 * Math.SQRT2, 9),
      'stands-off': 0,
    });
  });
  it('before any cope is cut: what is left on an end counts', () => {
    const long = dimensions(U, [50, 30]);
    expect(long['diagonal-a']).toBeCloseTo(Math.hypot(400, 450), 9);
    expect(long['diagonal-b']).toBeCloseTo(Math.hypot(400, 430), 9);
    expect(long.chord).toBeCloseTo(Math.hypot(400, 20), 9);
  });
  it('an elbow: along the leg of end A and square to it, chord 500', () => {
    const elbow = dimensions([
      [0, 0, 0],
      [0, 0, 300],
      [400, 0, 300],
    ]);
    // The leg of end A is 40 thick, half of it on each side.
    expect(elbow).toEqual({
      width: expect.closeTo(320, 9),
      height: expect.closeTo(420, 9),
      chord: expect.closeTo(500, 9),
    });
  });
  it('the second leg turned up a quarter stands off by its length, the bend counted', () => {
    const turned = dimensions([
      [0, 0, 0],
      [0, 0, 500],
      [400, 0, 500],
      [400, 250, 500],
    ]);
    expect(turned['stands-off']).toBeCloseTo(250, 9);
    expect(turned['legs-at-ends']).toBeUndefined();
  });
  it('a tube that is straight has none; an S has no legs to measure across', () => {
    expect(dimensions([U[0]!, U[1]!])).toEqual({});
    const ess = dimensions([
      [0, 0, 0],
      [500, 0, 0],
      [500, 500, 0],
      [1000, 500, 0],
    ]);
    expect(Object.keys(ess)).toEqual(['width', 'height', 'chord', 'diagonal-a', 'diagonal-b', 'stands-off']);
  });
  it('a joint to a tube takes its tip off: the chord runs from sawn end to sawn end', () => {
    const nodes: Record<string, Triple> = {
      a: [-300, 0, 0],
      b: [300, 0, 0],
      foot: [0, 0, 0],
      k: [0, 0, 300],
      e: [0, 400, 300],
    };
    const members = [
      { id: 'run', section: 's', path: ['a', 'b'] },
      {
        id: 'bar',
        section: 's',
        die: 'd',
        path: ['foot', 'k', 'e'],
        ends: [{ fit: 'cope', against: ['run'] }, { fit: 'square' }],
      },
    ];
    const derivation = derive(jobOf({ nodes, sections: [SECTION], dies: [DIE], members }));
    if (!derivation.ok) throw new Error('derives');
    const tube = derivation.value.byId.get('bar')!;
    // Of equal tubes at a right angle the tips reach back to the run's axis: nothing is taken off; the throat lies at 20.
    expect(tube.ends[0].tip).toBeCloseTo(0, 6);
    expect(checkDimensions(sawnTube(tube)).find(({ id }) => id === 'chord')!.value).toBeCloseTo(500, 6);
  });
});

/** The greatest of p.w over many points of the surface. */
function sampledReach({ pieces, outerDiameter }: SawnTube, w: Triple): number {
  let most = -Infinity;
  for (const piece of pieces) {
    const steps = piece.kind === 'line' ? 1 : 400;
    for (let i = 0; i <= steps; i++) {
      const { point, tangent } = placeOnPiece(piece, (piece.length * i) / steps);
      const axis: Triple = Math.abs(tangent[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
      const across = (a: Triple, b: Triple): Triple => [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
      ];
      const one = across(tangent, axis);
      const size = Math.hypot(...one);
      const e1: Triple = [one[0] / size, one[1] / size, one[2] / size];
      const e2 = across(tangent, e1);
      for (let k = 0; k < 360; k++) {
        const [c, s] = [Math.cos((k * Math.PI) / 180), Math.sin((k * Math.PI) / 180)];
        const at = [0, 1, 2].map((j) => point[j]! + (outerDiameter / 2) * (c * e1[j]! + s * e2[j]!));
        most = Math.max(most, at[0]! * w[0] + at[1]! * w[1] + at[2]! * w[2]);
      }
    }
  }
  return most;
}

describe('how far a tube reaches', () => {
  it('is never less than any point of its surface, and no more than the sampling leaves out', () => {
    fc.assert(
      fc.property(
        corners(place, 3, 5),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        (path, up, round) => {
          const tube = bar(path);
          fc.pre(tube !== null);
          const flat = Math.sqrt(1 - up * up);
          const w: Triple = [flat * Math.cos(round), flat * Math.sin(round), up];
          const form = sawnTube(tube);
          const [exact, sampled] = [reachOf(form.pieces, 20, w), sampledReach(form, w)];
          expect(exact).toBeGreaterThanOrEqual(sampled - 1e-9);
          // Half a degree of 20 mm and a 400th of half a turn of 120 mm, each squared over twice its radius.
          expect(exact - sampled).toBeLessThan(0.005);
        },
      ),
      fixed(drawn(6, 20)),
    );
  });
  it('along the axis of a straight end the sawn face counts, square to it the outside', () => {
    const { pieces } = sawnTube(bar([U[0]!, U[1]!])!);
    expect(reachOf(pieces, 20, [0, 0, 1])).toBeCloseTo(500, 9);
    expect(reachOf(pieces, 20, [1, 0, 0])).toBeCloseTo(20, 9);
    expect(reachOf(pieces, 20, [Math.SQRT1_2, 0, Math.SQRT1_2])).toBeCloseTo(520 * Math.SQRT1_2, 9);
  });
});

describe('what a literal reader measures', () => {
  /** A leg, its foot turned out of the plane of bend 1. */
  const LEG: Triple[] = [
    [0, 0, 0],
    [0, 0, 500],
    [400, 0, 800],
    [700, 300, 300],
  ];
  const named = (path: readonly Triple[]) =>
    checkDimensions(sawnTube(bar(path)!)).map((check) => [check.id, checkInWords(check)]);

  it('lays a tube that is not in one plane on its first bend, in words, and reads that there', () => {
    const form = sawnTube(bar(LEG)!);
    const names = Object.fromEntries(named(LEG));
    for (const id of ['width', 'height', 'stands-off']) expect(names[id]).toMatch(/^Flat(?: on|,) bend 1/u);
    // Bend 1 lies in the plane y = 0: on the bench y is up, and plumbed down it goes.
    const { width } = Object.fromEntries(checkDimensions(form).map(({ id, value }) => [id, value]));
    const over = (w: Triple): number => sampledReach(form, w) + sampledReach(form, [-w[0], -w[1], -w[2]]);
    const plumbed = Math.hypot(700, 300);
    expect(width! - over([700 / plumbed, 0, 300 / plumbed])).toBeLessThan(0.01);
    expect(width! - over([700 / plumbed, 0, 300 / plumbed])).toBeGreaterThan(-1e-9);
    // A tape held along the real ends would reject a good leg.
    const real = Math.hypot(700, 300, 300);
    expect(Math.abs(width! - over([700 / real, 300 / real, 300 / real]))).toBeGreaterThan(10);
  });
  it('says nothing of a bench where the tube lies flat: then both tapes read the same', () => {
    const names = Object.fromEntries(named(U));
    expect([names['width'], names['height']]).toEqual([
      'Overall width, along both ends',
      'Overall height, square to that',
    ]);
    expect(names['stands-off']).toBe('Flat on bend 1: stands off the bench by');
  });
  it('says which place stands highest: end B, or one between', () => {
    expect(Object.fromEntries(named(LEG))['stands-off']).toContain('height of end B');
    const back: Triple[] = [...LEG.slice(0, 3), [700, 400, 300], [900, 0, 300]];
    expect(Object.fromEntries(named(back))['stands-off']).toContain('greatest height');
  });
  it('tells a tube from its mirror image by the side to which bend 1 turns when that place stands up', () => {
    const mirrored = (path: readonly Triple[]) => path.map(([x, y, z]): Triple => [x, -y, z]);
    const sideOf = (path: readonly Triple[]) =>
      /bend 1 to the (left|right) from A/u.exec(Object.fromEntries(named(path))['stands-off'])?.[1];
    // Up along z, then towards +x, which is on the left of whoever looks along +z with +y overhead; end B stands at +y.
    expect(sideOf(LEG)).toBe('left');
    expect(sideOf(mirrored(LEG))).toBe('right');
    const back: Triple[] = [...LEG.slice(0, 3), [700, 400, 300], [900, 0, 300]];
    expect(sideOf(back)).toBe('left');
    expect(sideOf(mirrored(back))).toBe('right');
  });
  it('names both points of every diagonal', () => {
    for (const [id, name] of named(U)) if (id!.startsWith('diagonal')) expect(name).toMatch(/centre to centre$/u);
  });
});
