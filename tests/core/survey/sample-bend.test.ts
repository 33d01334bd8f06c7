/** Roof and pillar laid out beforehand, the scrap held into their corner anyhow, and gaps taken by straight-line geometry. */
import { describe, expect, it } from 'vitest';
import { fitSampleBend, type FittedBend, type GapRead, type SampleBend } from '../../../src/core/survey/sample-bend.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';

const DEGREE = Math.PI / 180;
type Flat = readonly [number, number];

/**
 * The scrap lies in its own axes; roof and pillar are lines at such an angle through a corner. Gaps by going from the tube's outside square to the
 * leg until the line.
 */
function held(seed: number) {
  const draw = drawFrom(seed);
  const [radius, diameter] = [draw.between(120, 200), draw.between(38, 51)];
  const angle = draw.between(35, 80) * DEGREE;
  const [roofSlope, pillarSlope] = [draw.between(-5, 5) * DEGREE, draw.between(-5, 5) * DEGREE];
  const reach = radius * Math.tan(angle / 2);
  const corner: Flat = [reach + draw.between(20, 60), draw.between(60, 110)];
  const roof: Flat = [Math.cos(roofSlope), Math.sin(roofSlope)];
  const pillar: Flat = [Math.cos(angle + pillarSlope), -Math.sin(angle + pillarSlope)];
  const start: Flat = [radius * Math.sin(angle), -radius * (1 - Math.cos(angle))];
  const gapTo = (line: Flat, place: Flat, out: Flat): number => {
    const across = out[0] * line[1] - out[1] * line[0];
    const [dx, dy] = [corner[0] - place[0], corner[1] - place[1]];
    return (dx * line[1] - dy * line[0]) / across - diameter / 2;
  };
  const gaps: GapRead[] = [
    ...[60, 310].map((along): GapRead => ({ leg: 'roof', along, gap: gapTo(roof, [-along, 0], [0, 1]) })),
    ...[40, 260].map((along): GapRead => ({
      leg: 'pillar',
      along,
      gap: gapTo(
        pillar,
        [start[0] + along * Math.cos(angle), start[1] - along * Math.sin(angle)],
        [Math.sin(angle), Math.cos(angle)],
      ),
    })),
  ];
  const sample: SampleBend = {
    radius,
    outerDiameter: diameter,
    angle,
    gaps,
    rail: draw.between(10, 40),
    air: draw.between(3, 25),
  };
  return { sample, corner, roof, pillar, turn: angle + pillarSlope + roofSlope };
}

const fitted = (sample: SampleBend): FittedBend => {
  const found = fitSampleBend(sample);
  if (typeof found === 'string') throw new Error(found);
  return found;
};

const offLine = ([x, y]: Flat, through: Flat, way: Flat): number =>
  (x - through[0]) * way[1] - (y - through[1]) * way[0];

describe('a sample bend', () => {
  it('tells roof, pillar and the bend between them, however it is held', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { sample, corner, turn, roof, pillar } = held(seed);
      const found = fitted(sample);
      expect(found.angle).toBeCloseTo(turn, 10);
      expect(Math.hypot(found.corner[0] - corner[0], found.corner[1] - corner[1])).toBeLessThan(1e-8);
      // Tangent to both with the air that is wanted: its middle of turning is as far from either line as its outside and the air.
      const far = sample.radius + sample.outerDiameter / 2 + sample.air;
      expect(Math.abs(offLine(found.centre, corner, roof))).toBeCloseTo(far, 8);
      expect(Math.abs(offLine(found.centre, corner, pillar))).toBeCloseTo(far, 8);
      // The foot of the square from there to the roof lies so far from the corner.
      const foot = (found.centre[0] - corner[0]) * roof[0] + (found.centre[1] - corner[1]) * roof[1];
      expect(-foot).toBeCloseTo(found.fromCorner, 8);
    }
  });

  it('leaves the rail the air that it has when the scrap itself is what is wanted', () => {
    // Legs along both sides at one gap: the new bend is the scrap moved nowhere.
    const gaps: GapRead[] = [60, 300].flatMap((along): GapRead[] => [
      { leg: 'roof', along, gap: 12 },
      { leg: 'pillar', along, gap: 12 },
    ]);
    const found = fitted({ radius: 152.4, outerDiameter: 44.45, angle: 62 * DEGREE, gaps, rail: 31, air: 12 });
    expect(found.angle / DEGREE).toBeCloseTo(62, 10);
    expect(found.railAir).toBeCloseTo(31, 9);
    expect(found.centre[0]).toBeCloseTo(0, 9);
    expect(found.centre[1]).toBeCloseTo(-152.4, 9);
  });

  it('takes a leg that was read once to lie along its side, and says no deviation then', () => {
    const { sample } = held(4);
    const found = fitted({ ...sample, gaps: sample.gaps.filter(({ leg, along }) => leg === 'roof' || along < 50) });
    expect([found.off.pillar, found.deviation]).toEqual([-0, null]);
  });

  it('errs as its deviation says', () => {
    const { sample, turn } = held(9);
    let sum = 0;
    const tries = 400;
    for (let seed = 1; seed <= tries; seed++) {
      const draw = drawFrom(seed);
      const noise = (): number =>
        Array.from({ length: 12 }, () => draw.between(-0.5, 0.5)).reduce((a, b) => a + b, 0) * 0.7;
      const found = fitted({ ...sample, gaps: sample.gaps.map((each) => ({ ...each, gap: each.gap + noise() })) });
      sum += ((found.angle - turn) / found.deviation!) ** 2;
    }
    expect(sum / tries).toBeGreaterThan(0.85);
    expect(sum / tries).toBeLessThan(1.15);
  });

  it.each<[string, Partial<SampleBend>, string]>([
    ['nothing read on the pillar', { gaps: [{ leg: 'roof', along: 50, gap: 3 }] }, 'no-gap'],
    [
      'both gaps of a leg in one place',
      {
        gaps: [50, 52]
          .map((along): GapRead => ({ leg: 'roof', along, gap: 3 }))
          .concat({ leg: 'pillar', along: 9, gap: 1 }),
      },
      'same-place',
    ],
    [
      'sides that hardly turn',
      {
        angle: 0.01,
        gaps: [
          { leg: 'roof', along: 50, gap: 3 },
          { leg: 'pillar', along: 9, gap: 1 },
        ],
      },
      'no-corner',
    ],
  ])('%s makes no bend', (_, change, why) => {
    expect(fitSampleBend({ ...held(1).sample, ...change })).toBe(why);
  });
});
