import { describe, expect, it } from 'vitest';
import type { Die } from '../../../src/core/job/kinds/die.ts';
import type { Section } from '../../../src/core/job/kinds/section.ts';
import { dieSize, resizedDie, resizedSection, sectionInWords, sectionSize } from '../../../src/core/job/sizes.ts';

const section = (name: string): Section => ({ id: 's', name, outerDiameter: 44.45, wall: 3.048, material: '' });
const die = (name: string): Die => ({
  id: 'd',
  name,
  outerDiameter: 44.45,
  centrelineRadius: 152.4,
  clampOffset: 0,
  leastStraight: 0,
  leastGrip: 0,
  greatestAngle: 180,
  radius: 'nominal',
});

describe('a size as a shop says it', () => {
  it('is outside by wall, a wall under an inch without its zero (common practice)', () => {
    expect(sectionSize(section(''), 'in')).toBe('1 3/4 x .120');
    expect(sectionSize({ outerDiameter: 45, wall: 2.5 }, 'mm')).toMatch(/^45(\.0)? x 2\.50 mm$/u);
    expect(dieSize({ centrelineRadius: 152.4 }, 'in')).toBe('6 in CLR');
  });

  it('stands beside a name that does not say it', () => {
    expect(sectionInWords(section('Hoop tube'), 'in')).toBe('Hoop tube · 1 3/4 x .120');
    expect(sectionInWords(section('1 3/4 x .120'), 'in')).toBe('1 3/4 x .120');
  });
});

describe('a name', () => {
  it('goes with the size until another is typed', () => {
    expect(resizedSection(section('1 3/4 x .120'), { outerDiameter: 38.1 }, 'in').name).toBe('1 1/2 x .120');
    expect(resizedSection(section('Hoop tube'), { outerDiameter: 38.1 }, 'in').name).toBeUndefined();
    expect(resizedDie(die('6 in CLR'), 177.8, 'in').name).toBe('7 in CLR');
    expect(resizedDie(die('The old one'), 177.8, 'in').name).toBeUndefined();
  });
});
