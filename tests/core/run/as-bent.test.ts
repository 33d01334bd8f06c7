import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import type { BentBend, BendStep } from '../../../src/core/job/kinds/bent.ts';
import { asBent } from '../../../src/core/run/as-bent.ts';
import { openedBeyondMarks } from '../../../src/core/run/opened.ts';
import { checkDimensions } from '../../../src/core/run/check-dimensions.ts';
import { sawnTube } from '../../../src/core/run/sawn-tube.ts';
import { bendSlips } from '../../../src/core/marks/slips.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { corners, fixed, place, type Triple } from '../../laws/frames.ts';
import { degrees, jobOf } from '../frame.ts';
import { drawn as howMany } from '../../draws.ts';

const SECTION = { id: 's', outerDiameter: 40, wall: 3 };

function bar(path: readonly Triple[], radius: 'nominal' | 'from-pulls' = 'nominal'): SolvedTube | null {
  const nodes = Object.fromEntries(path.map((each, i) => [`n${i}`, each]));
  const die = { id: 'd', outerDiameter: 40, centrelineRadius: 100, radius };
  const ends = [
    { fit: 'square', allowance: 4 },
    { fit: 'square', allowance: 0 },
  ];
  const members = [{ id: 'bar', section: 's', die: 'd', path: Object.keys(nodes), ends }];
  const derivation = derive(jobOf({ nodes, sections: [SECTION], dies: [die], members }));
  return derivation.ok ? derivation.value.byId.get('bar')! : null;
}

const fromEnd = (tube: SolvedTube, front: 'A' | 'B'): readonly BendStep[] =>
  tube.bends.map((_, i) => ({ bend: i + 1, front }));
const U: Triple[] = [
  [0, 0, 0],
  [0, 0, 500],
  [400, 0, 500],
  [400, 0, 0],
];
/** On a machine and of a steel that give nothing back, so that the radius is the die's. */
const made = (bend: number, net: number, more: Partial<BentBend> = {}): BentBend => ({
  bend,
  pulled: net,
  net,
  ...more,
});

describe('the tube as it was bent', () => {
  it('with nothing measured is the tube that was drawn, its check dimensions too', () => {
    fc.assert(
      fc.property(corners(place, 3, 6), fc.constantFrom('A' as const, 'B' as const), (path, front) => {
        const tube = bar(path);
        fc.pre(tube !== null && tube.straights.every((straight) => straight > 0));
        const bent = asBent(tube, { order: fromEnd(tube, front), bends: [] });
        expect(bent.endMoves).toBeLessThan(1e-6);
        const drawn = checkDimensions(sawnTube(tube));
        expect(bent.checks.map(({ id }) => id)).toEqual(drawn.map(({ id }) => id));
        bent.checks.forEach(({ value }, i) => expect(value).toBeCloseTo(drawn[i]!.value, 5));
      }),
      fixed(howMany(80, 300)),
    );
  });
  it('keeps the planned radius where a reading cannot be true, so that a figure written wrong is no radius of miles', () => {
    const tube = bar(U, 'from-pulls')!;
    const radii = (net: number, pulled: number) =>
      asBent(tube, { order: fromEnd(tube, 'A'), bends: [{ bend: 1, net, pulled }] }).bends.map(({ radius }) => radius);
    expect(radii(90, 92)[0]).toBeCloseTo((100 * 92) / 90, 9);
    expect(radii(9, 92)).toEqual([100, 100]);
    expect(radii(92, 90)).toEqual([100, 100]);
    expect(radii(5e-324, 90)).toEqual([100, 100]);
  });
  it('with what was planned read back comes to the same place', () => {
    const tube = bar(U)!;
    const bends = tube.bends.map(({ angle, rotation }, i) =>
      made(i + 1, degrees(angle), { rotation: degrees(rotation), straight: tube.straights[i]! }),
    );
    expect(asBent(tube, { order: fromEnd(tube, 'A'), bends }).endMoves).toBeLessThan(1e-9);
  });
  it('the second bend of a U at 91: its leg turns in about the far tangent', () => {
    const tube = bar(U)!;
    const bent = asBent(tube, { order: fromEnd(tube, 'A'), bends: [made(2, 91)] });
    // The bend starts at (300, 500), its centre is (300, 400). A degree more of arc is 100 pi/180 = 1.74533 mm and comes
    // off the leg of 400. Far tangent: (300 + 100 cos 1, 400 - 100 sin 1) = (399.98477, 398.25476); the leg runs along
    // (-sin 1, -cos 1) for 398.25467 mm.
    const [c, s] = [Math.cos(Math.PI / 180), Math.sin(Math.PI / 180)];
    const leg = 400 - (100 * Math.PI) / 180;
    expect(bent.endB[0]).toBeCloseTo(300 + 100 * c - leg * s, 9);
    expect(bent.endB[1]).toBeCloseTo(0, 9);
    expect(bent.endB[2]).toBeCloseTo(400 - 100 * s - leg * c, 9);
    expect(bent.endMoves).toBeCloseTo(6.9658, 3);
    const at = (id: string) => bent.checks.find((check) => check.id === id)!.value;
    expect(at('legs-at-ends')).toBeLessThan(440 - 6);
    expect(at('chord')).toBeLessThan(400);
  });
  it('a degree more at one bend, of rotation or 2 mm of mark: what the slips say to first order', () => {
    fc.assert(
      fc.property(corners(place, 3, 6), fc.nat(10), (path, pick) => {
        const tube = bar(path);
        fc.pre(tube !== null && tube.bends.length > 0 && tube.straights.every((straight) => straight > 5));
        const index = pick % tube.bends.length;
        const { angle, rotation } = tube.bends[index]!;
        fc.pre(angle < 2.9);
        const slip = bendSlips(tube, 2)[index]!;
        const order = fromEnd(tube, 'A');
        const share = 1e-4;
        const moved = (more: Partial<BentBend>) =>
          asBent(tube, { order, bends: [made(index + 1, degrees(angle), more)] }).endMoves / share;
        const size = tube.developedLength * share;
        expect(Math.abs(moved({ net: degrees(angle) + share }) - slip.angle.distance)).toBeLessThan(size);
        if (slip.rotation !== null)
          expect(Math.abs(moved({ rotation: degrees(rotation) + share }) - slip.rotation.distance)).toBeLessThan(size);
        // The mark of the last bend: those after it lie where they were marked.
        if (index === tube.bends.length - 1)
          expect(Math.abs(moved({ straight: tube.straights[index]! + 2 * share }) - slip.mark.distance)).toBeLessThan(
            size,
          );
      }),
      fixed(howMany(60, 200)),
    );
  });
  it('a bend lies where it was made, not at the mark of today; the tube has the length that it was cut to', () => {
    const tube = bar(U)!;
    const arc = (91 * Math.PI * 100) / 180;
    const at = (front: 'A' | 'B', start: number) =>
      asBent(tube, { order: fromEnd(tube, front), bends: [made(1, 91, { start })] });
    expect(at('A', 397).bends[0]!.straight).toBeCloseTo(397, 9);
    // With end B in front it starts at its far tangent.
    expect(at('B', 560).bends[0]!.straight).toBeCloseTo(560 - arc, 9);
    // The next bend is where its own mark is.
    expect(at('A', 397).bends[1]!.straight).toBeCloseTo(tube.bends[1]!.start - 397 - arc, 9);
    // A straight that was measured goes before.
    const measured = asBent(tube, { order: fromEnd(tube, 'A'), bends: [made(1, 91, { start: 397, straight: 399 })] });
    expect(measured.bends[0]!.straight).toBe(399);
    const long = { starts: tube.bends.map(({ start }) => start), length: tube.developedLength + 7 };
    expect(asBent(tube, { order: fromEnd(tube, 'A'), bends: [] }, long).tail).toBeCloseTo(407, 9);
  });
  it('with end B in front the arc is taken from the straight before the bend', () => {
    const tube = bar(U)!;
    const [a, b] = (['A', 'B'] as const).map((front) =>
      asBent(tube, { order: fromEnd(tube, front), bends: [made(2, 91)] }),
    );
    const arc = (100 * Math.PI) / 180;
    expect(a!.bends[1]!.straight).toBeCloseTo(200, 9);
    expect(a!.tail).toBeCloseTo(400 - arc, 9);
    expect(b!.bends[1]!.straight).toBeCloseTo(200 - arc, 9);
    expect(b!.tail).toBeCloseTo(400, 9);
  });
  it('keeps the tube’s length, whatever was measured', () => {
    const tube = bar(U)!;
    const bends = [made(1, 88, { straight: 402 }), made(2, 93, { straight: 197, rotation: 2 })];
    const bent = asBent(tube, { order: fromEnd(tube, 'A'), bends });
    const all = bent.bends.reduce((sum, { straight, angle, radius }) => sum + straight + angle * radius, bent.tail);
    expect(all).toBeCloseTo(tube.developedLength, 9);
    expect(bent.checks.find(({ id }) => id === 'stands-off')!.value).toBeGreaterThan(10);
  });
  it('94.4 pulled for 90 lays down 104.89 on a die of 100, whatever radius its marks follow', () => {
    const bends = [{ bend: 1, pulled: 94.4, net: 90 }];
    const radiusOf = (tube: SolvedTube) => asBent(tube, { order: fromEnd(tube, 'A'), bends }).bends[0]!.radius;
    expect(radiusOf(bar(U, 'from-pulls')!)).toBeCloseTo(104.8889, 4);
    expect(radiusOf(bar(U)!)).toBeCloseTo(104.8889, 4);
  });
  it('a U whose marks follow the die and whose bends opened: its far end by hand, and what the frame takes it for', () => {
    const tube = bar(U)!;
    const bends = [1, 2].map((bend) => ({ bend, pulled: 94.4, net: 90 }));
    const run = { order: fromEnd(tube, 'A'), bends };
    const bent = asBent(tube, run);
    // Each bend begins at its mark and is wider by 4.8889: so much further across twice, less the arc that bend 1 takes more; end B's leg
    // is the arc of bend 2 shorter.
    const more = (100 * 94.4) / 90 - 100;
    const late = (more * Math.PI) / 2;
    expect(bent.endB).toEqual([
      expect.closeTo(400 + 2 * more - late, 9),
      expect.closeTo(0, 9),
      expect.closeTo(late, 9),
    ]);
    expect(bent.endMoves).toBeCloseTo(Math.hypot(2 * more - late, late), 9);
    const opened = openedBeyondMarks(tube, run)!;
    expect(opened.endMoves).toBeCloseTo(bent.endMoves, 9);
    const [real, drawn] = [bent.checks, checkDimensions(sawnTube(tube))].map(
      (checks) => checks.find(({ id }) => id === 'width')!.value,
    );
    expect(opened.wider).toBeCloseTo(real! - drawn!, 6);
    expect(opened.wider).toBeGreaterThan(2 * more - late);
  });
  it('says nothing where marks go by the pulls, where nothing was read, and where no tape shows it', () => {
    const [own, pulls] = [bar(U)!, bar(U, 'from-pulls')!];
    const order = fromEnd(own, 'A');
    const read = (pulled: number) => [{ bend: 2, pulled, net: 90 }];
    expect(openedBeyondMarks(own, { order, bends: read(93) })).not.toBeNull();
    expect(openedBeyondMarks(pulls, { order, bends: read(93) })).toBeNull();
    expect(openedBeyondMarks(own, { order, bends: [] })).toBeNull();
    expect(openedBeyondMarks(own, { order, bends: read(90.1) })).toBeNull();
  });
});
