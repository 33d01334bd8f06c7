/** The tube as marked, against the same tube laid out afresh with the die and the pulls of the day its marks were drawn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { asMarked, holdsMarks } from '../../../src/core/run/as-marked.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { corners, fixed, place, type Triple } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { drawn } from '../../draws.ts';

type Pulled = readonly (readonly [pulled: number, net: number])[];

function bar(
  path: readonly Triple[],
  pulls: Pulled,
  radius: 'nominal' | 'from-pulls' = 'from-pulls',
): SolvedTube | null {
  const section = { id: 's', outerDiameter: 40, wall: 3 };
  const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
  const die = { id: 'd', outerDiameter: 40, centrelineRadius: 100, radius };
  const ends = [{ fit: 'square', allowance: 4 }, { fit: 'square' }];
  const members = [{ id: 'bar', section: 's', die: 'd', path: Object.keys(nodes), ends }];
  const logged = pulls.map(([pulled, net]) => ({ die: 'd', section: 's', pulled, net }));
  const derivation = derive(jobOf({ nodes, sections: [section], dies: [die], members, pulls: logged }));
  return derivation.ok ? derivation.value.byId.get('bar')! : null;
}

const U: Triple[] = [
  [0, 0, 0],
  [0, 0, 500],
  [400, 0, 500],
  [400, 0, 0],
];

describe('the tube as its marks were drawn', () => {
  it('is the tube that was laid out then, whatever the pulls give now', () => {
    fc.assert(
      fc.property(corners(place, 3, 6), (path) => {
        const [then, now] = [bar(path, []), bar(path, [[30, 25]])];
        fc.pre(then !== null && now !== null && then.bends.length > 0);
        const marked = asMarked(now, drawnTube(then));
        expect(marked.developedLength).toBeCloseTo(then.developedLength, 6);
        expect(marked.blankLength).toBeCloseTo(then.blankLength, 6);
        marked.straights.forEach((straight, i) => expect(straight).toBeCloseTo(then.straights[i]!, 6));
        marked.bends.forEach((bend, i) => {
          const was = then.bends[i]!;
          for (const key of ['start', 'end', 'arc', 'setBack', 'angle', 'rotation'] as const)
            expect(bend[key], key).toBeCloseTo(was[key], 6);
          expect(Math.abs(bend.radius / was.radius - 1)).toBeLessThan(1e-6);
        });
      }),
      fixed(drawn(50, 200)),
    );
  });
  it('has the centres of those bends, and the clamp’s offset of that day', () => {
    const [then, now] = [bar(U, [])!, bar(U, [[30, 25]])!];
    const drawn = drawnTube(then);
    const marked = asMarked(now, { ...drawn, die: { ...drawn.die!, clampOffset: 77 } });
    // No more than the 5 degrees of the one pull is sure for a bend of 90.
    expect(now.bends[0]!.radius).toBeCloseTo((100 * 95) / 90, 9);
    marked.bends.forEach(({ centre }, i) =>
      centre.forEach((value, axis) => expect(value).toBeCloseTo(then.bends[i]!.centre[axis]!, 9)),
    );
    expect(marked.die!.clampOffset).toBe(77);
  });
  it('is the tube of now where nothing was kept, or what was kept can be true of no radius', () => {
    const tube = bar(U, [])!;
    const drawn = drawnTube(tube);
    const { starts: _, ...without } = drawn;
    for (const kept of [
      undefined,
      without,
      { ...drawn, starts: [1] },
      { ...drawn, legs: [500, 400] },
      { ...drawn, starts: [600, 700] },
      { ...drawn, angles: [0, 90] },
    ])
      expect(asMarked(tube, kept)).toBe(tube);
  });
});

describe('marks are held', () => {
  const held = (pulls: Pulled, radius?: 'nominal' | 'from-pulls') => holdsMarks(bar(U, pulls, radius)!);
  it('while the pulls lie within ten degrees of each other, or there is one or none', () => {
    expect(held([])).toBe(true);
    expect(held([[14.6, 12.6]])).toBe(true);
    expect(
      held([
        [14.6, 12.6],
        [24.5, 22.5],
      ]),
    ).toBe(true);
    expect(
      held([
        [14.6, 12.6],
        [24.7, 22.6],
      ]),
    ).toBe(false);
  });
  it('of a die whose radius goes by its pulls alone', () => {
    expect(held([[14.6, 12.6]], 'nominal')).toBe(false);
  });
});
