/** What feet are cut from, cover and weigh: by hand; bends against a published example; and what is refused and found. */
import { describe, expect, it } from 'vitest';
import { contactArea, coveredArea, footMass } from '../../../src/core/feet/amount.ts';
import { kFactor } from '../../../src/core/feet/bend-allowance.ts';
import { blanksOf } from '../../../src/core/feet/blanks.ts';
import { footCorners, kinkLine } from '../../../src/core/feet/corners.ts';
import { inPrism, prismsOf, type Prism } from '../../../src/core/feet/solid.ts';
import { inCar, standsOf } from '../../../src/core/feet/stand.ts';
import { distance, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { Foot } from '../../../src/core/job/kinds/foot.ts';
import { findingInWords } from '../../../src/core/words/findings.ts';
import { derivedLeg, legJob, refused, type Leg } from './feet-jobs.ts';

const foot = (fields: object): Foot => ({ id: 'f', name: 'f', ...fields }) as Foot;
const hole = (along: number, across: number, diameter = 8.5) => ({ at: [along, across] as const, diameter });

const PLATE = foot({
  kind: 'plate',
  size: [120, 100],
  thickness: 3,
  holes: [hole(45, 35), hole(-45, 35), hole(0, -35)],
});
const BOX = foot({ kind: 'box', size: [100, 150], thickness: 4, height: 80, wall: 3 });
const kinked = (angle: number, more: object = {}): Foot =>
  foot({ kind: 'plate', size: [100, 80], thickness: 2, kink: { runs: 'across', at: 20, angle, radius: 2 }, ...more });

/** mm3 of a prism: its section by the shoelace, times its length. */
function volumeOf({ section, from, to }: Prism): number {
  const ring = [...section.map(({ low }) => low), ...section.toReversed().map(({ high }) => high)];
  const twice = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + x * nextY - y * nextX;
  }, 0);
  return (twice / 2) * (to - from);
}

describe('areas and masses', () => {
  it('of a plate are its size less its holes', () => {
    const area = 12_000 - 3 * Math.PI * 4.25 ** 2;
    expect(contactArea(PLATE)).toBeCloseTo(area, 9);
    expect(footMass(PLATE)).toBeCloseTo(area * 3 * 7.85e-6, 9);
    expect(coveredArea(PLATE)).toBe(contactArea(PLATE));
  });

  it('of a box are the foot of its walls, and four walls under a plate', () => {
    // 100 x 150 outside, 94 x 144 inside.
    expect(contactArea(BOX)).toBeCloseTo(15_000 - 13_536, 9);
    expect(coveredArea(BOX)).toBe(15_000);
    expect(footMass(BOX)).toBeCloseTo((15_000 * 4 + 1464 * 80) * 7.85e-6, 9);
    expect(
      blanksOf(BOX).map(({ part, count, along, across }) => [part, count, along[1] - along[0], across[1] - across[0]]),
    ).toEqual([
      ['top', 1, 100, 150],
      ['long-wall', 2, 150, 80],
      ['short-wall', 2, 94, 80],
    ]);
    const volume = prismsOf(BOX).reduce((sum, each) => sum + volumeOf(each), 0);
    expect(volume * 7.85e-6).toBeCloseTo(footMass(BOX), 9);
    // The walls stand on the car all round, and none in another.
    const places = prismsOf(BOX).flatMap((each) =>
      each.section.flatMap(({ low, high }) =>
        [low, high].flatMap((at) => [each.from, each.to].map((aside) => inPrism(each, at, aside))),
      ),
    );
    for (const [axis, half] of [
      [0, 50],
      [1, 75],
    ] as const) {
      expect(Math.max(...places.map((at) => at[axis]))).toBe(half);
      expect(Math.min(...places.map((at) => at[axis]))).toBe(-half);
    }
  });
});

describe('a plate over a kink', () => {
  it('unfolds to the published example: sides of 50 outside, 2 thick, bent 90 degrees round 2, take 96.16', () => {
    // pgsrl.eu, calculator of bend allowance, DIN 6935: allowance 4.16, deduction 3.84.
    const [{ along, bend }] = blanksOf(kinked(-90)) as [ReturnType<typeof blanksOf>[number]];
    expect(along[1] - along[0]).toBeCloseTo(96.16, 2);
    expect(bend!.lines[2] - bend!.lines[0]).toBeCloseTo(4.16, 2);
    // 70 to the outside corner on this side, 4 of them taken by the bend.
    expect(bend!.lines[0]).toBeCloseTo(16, 9);
  });

  it('takes the fibre that DIN 6935 says', () => {
    expect(kFactor(2, 2)).toBeCloseTo(0.325, 12);
    expect(kFactor(20, 2)).toBe(0.5);
    expect(kFactor(0.2, 3)).toBeCloseTo(0.0309, 3);
    expect(kFactor(0.1, 3)).toBe(0);
  });

  it.each([30, -30, 75, -110])('bent by %d degrees ends where two planes through the line say', (angle) => {
    for (const kink of [
      { runs: 'across', at: 20, angle, radius: 2 },
      { runs: 'across', at: -20, angle, radius: 2 },
      { runs: 'along', at: 15, angle, radius: 3 },
      { runs: 'along', at: -15, angle, radius: 3 },
    ]) {
      const [stand] = derivedLeg({ foot: kinked(angle, { kink, id: 'foot' }) }).tubes.flatMap(standsOf);
      const corners = footCorners(stand!);
      const line = kinkLine(stand!)!;
      const [prism] = prismsOf(stand!.foot) as [Prism];
      // The section's four outer ends, pushed to both sides, are the plate's corners on the car.
      const ends = [prism.section[0]!, prism.section.at(-1)!].flatMap(({ low }) =>
        [prism.from, prism.to].map((aside) => inCar(stand!, inPrism(prism, low, aside))),
      );
      for (const end of ends) expect(Math.min(...corners.map((corner) => distance(corner, end)))).toBeLessThan(1e-9);
      // Beyond the line lies what is left of the half size, under the angle.
      const far = corners.filter((corner) => Math.abs(corner[2] - 80) > 1e-6);
      expect(far).toHaveLength(2);
      const left = (kink.runs === 'across' ? 50 : 40) - Math.abs(kink.at);
      for (const corner of far) {
        expect(Math.min(...line.map((end) => distance(end, corner)))).toBeCloseTo(left, 9);
        expect(80 - corner[2]).toBeCloseTo(left * Math.sin((angle * Math.PI) / 180), 9);
      }
      // Thick all along: the section is the thickness times the fibre in its middle (Pappus).
      const radius = kink.radius + (angle < 0 ? 2 : 0);
      const flats = 2 * (kink.runs === 'across' ? 50 : 40) - 2 * radius * Math.tan((Math.abs(angle) * Math.PI) / 360);
      const long = flats + (kink.radius + 1) * ((Math.abs(angle) * Math.PI) / 180);
      expect(volumeOf(prism) / (prism.to - prism.from) / 2 / long).toBeCloseTo(1, 3);
    }
  });

  it('touches with its two flats, and is cut with the holes beyond moved', () => {
    const plate = kinked(30, { size: [200, 80], holes: [hole(-60, 0), hole(60, 10)] });
    const setBack = 2 * Math.tan(Math.PI / 12);
    expect(contactArea(plate)).toBeCloseTo((200 - 2 * setBack) * 80 - 2 * Math.PI * 4.25 ** 2, 9);
    const allowance = (Math.PI / 6) * (2 + 0.325 * 2);
    const [blank] = blanksOf(plate);
    expect(blank!.holes.map(({ at }) => at)).toEqual([
      [-60, 0],
      [expect.closeTo(60 + allowance - 2 * setBack, 9), 10],
    ]);
    expect(footMass(plate)).toBeCloseTo(
      ((200 - 2 * setBack + allowance) * 80 - 2 * Math.PI * 4.25 ** 2) * 2 * 7.85e-6,
      9,
    );
  });

  it('is refused where the bend has no room, with its place', () => {
    const at = (fields: object) => refused(legJob({ foot: kinked(30, fields) }));
    const kink = (fields: object) => ({ kink: { runs: 'across', at: 20, angle: 30, radius: 2, ...fields } });
    const noRoom = 'feet[0].kink: does not lie between the middle of the plate and its edge';
    expect(at(kink({ at: 0 }))).toEqual([noRoom]);
    expect(at(kink({ at: -49.9 }))).toEqual([noRoom]);
    expect(at(kink({ angle: 130 }))).toEqual(['feet[0].kink.angle: beyond 120 degrees']);
    expect(at(kink({ radius: 0.1 }))).toEqual([
      'feet[0].kink.radius: is less than a tenth of the thickness: no press bends it so sharply',
    ]);
    expect(at(kink({ runs: 'up' }))[0]).toMatch(/^feet\[0\]\.kink\.runs: /u);
    expect(at({ holes: [hole(0, 30), hole(24, 0)] })).toEqual(['feet[0].holes[1]: lies in the bend']);
    expect(at({})).toEqual([]);
  });
});

describe('what is found of a foot', () => {
  const found = (leg: Leg) => {
    const derived = derivedLeg(leg);
    return derived.findings
      .filter(({ id }) => id.startsWith('foot/'))
      .map((finding) => [finding.id, findingInWords(finding, derived)]);
  };
  const upright = { top: [0, 610, 900] as Vec3 };

  it('is nothing of a foot that takes its tube', () => {
    expect(found({ foot: PLATE, ...upright })).toEqual([]);
  });

  it('is a tube past its edge, with the size that would take it', () => {
    expect(found({ foot: { ...PLATE, size: [40, 100], holes: [] }, ...upright })).toEqual([
      [
        'foot/over-edge',
        'leg, end B stands 2.2 mm past the edge of its foot. One of 44.5 mm by 100.0 mm, along and across, would just take it.',
      ],
    ]);
    // 45 degrees forward on a box of 63: the axis meets it 63 ahead, and the ellipse reaches 22.225 x sqrt 2 = 31.4 on.
    const [[id, words] = []] = found({
      foot: { kind: 'box', size: [100, 100], thickness: 3, height: 60 },
      top: [500, 610, 580],
    });
    expect(id).toBe('foot/over-edge');
    expect(words).toContain('stands 44.4 mm past');
    expect(words).toContain('One of 188.9 mm by 100.0 mm');
  });

  it('is a tube in the bend, or over a hole', () => {
    const kink = { runs: 'across', at: 20, angle: 40, radius: 3 } as const;
    // Flat as far as 20 - 3 tan 20 = 18.908; the tube reaches 22.225.
    expect(found({ foot: { kind: 'plate', size: [120, 100], thickness: 3, kink }, ...upright })).toEqual([
      ['foot/in-bend', expect.stringContaining('runs 3.3 mm into the bend')],
    ]);
    const holes = [hole(45, 35), hole(24, 0, 10)];
    expect(found({ foot: { ...PLATE, holes }, ...upright })).toEqual([
      ['foot/over-hole', expect.stringContaining('stands over hole 2 of its foot, 3.2 mm past')],
    ]);
  });
});
