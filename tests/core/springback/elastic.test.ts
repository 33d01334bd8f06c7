import { describe, expect, it } from 'vitest';
import { elasticRecovery } from '../../../src/core/springback/elastic.ts';
import { bendMarks } from '../../../src/core/marks/marks.ts';
import { degrees, derived, tube } from '../frame.ts';

const steel = (strength: number) => ({ id: 's', name: 's', yield: strength, source: 'test' });
const section = (outerDiameter: number, wall: number) => ({ id: 's', name: 's', outerDiameter, wall, material: 's' });

describe('elastic recovery of 90 degrees', () => {
  // Computed with an elastic core integrated, E 205 GPa, ideal plastic: an independent method. The fully plastic moment
  // taken here neglects the core, so it agrees to the fourth figure.
  it.each([
    [45, 2.5, 350, 135, 1.24],
    [44.45, 3.048, 414, 152.4, 1.698],
    [38.1, 2.413, 414, 114.3, 1.478],
  ])('%s x %s, yield %s, radius %s: %s degrees', (outerDiameter, wall, strength, radius, expected) => {
    expect(90 * elasticRecovery(section(outerDiameter, wall), radius, steel(strength))).toBeCloseTo(expected, 2);
  });
});

it('a wall that does not show beside its diameter springs as a thin ring does: shape factor 4 / pi (textbook plasticity)', () => {
  const share = (4 / Math.PI) * ((350 * 135) / (205_000 * 22.5));
  expect(elasticRecovery(section(45, 1e-15), 135, steel(350))).toBeCloseTo(share, 12);
});

describe('marks', () => {
  const ell = (material: string) =>
    tube(
      derived({
        nodes: { a: [0, 0, 0], b: [600, 0, 0], c: [600, 700, 0] },
        sections: [{ id: 'main', outerDiameter: 44.45, wall: 3.048, material }],
        dies: [{ id: 'd', outerDiameter: 44.45, centrelineRadius: 152.4, clampOffset: 114.3 }],
        members: [{ id: 'ell', path: ['a', 'b', 'c'] }],
      }),
      'ell',
    );
  it('clamp mark is the start of bend less the clamp offset', () => {
    expect(bendMarks(ell('dom-1020'))[0]!.clampMark).toBeCloseTo(600 - 152.4 - 114.3, 9);
  });
  it('machine angle is beyond the net angle and named an estimate', () => {
    const [mark] = bendMarks(ell('dom-1020'));
    expect(degrees(mark!.machineAngle!)).toBeCloseTo(90 + 1.698, 2);
    expect(mark!.machineAngleFrom).toBe('estimate');
  });
  it('of an unknown steel there is no machine angle', () => {
    expect(bendMarks(ell('grandfather stock'))[0]).toMatchObject({ machineAngle: null, machineAngleFrom: null });
  });
});
