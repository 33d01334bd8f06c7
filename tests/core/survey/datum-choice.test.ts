import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/core/job/kinds/point.ts';
import { heightOf, namedPairs, suggestedDatum } from '../../../src/core/survey/datum-choice.ts';

const point = (name: string, x: number, y: number, z: number): Point => ({
  id: name,
  name,
  by: 'survey',
  position: [x, y, z],
});

/** Askew by some degrees: no pair is its own mirror image. */
const points = [
  point('Sill A, left', 1200, 700, 180),
  point('Sill A, right', 1270, -640, 190),
  point('Sill B, left', -100, 610, 170),
  point('Sill B, right', -30, -730, 185),
  point('Tower, left', -1000, 400, 520),
  point('Tower, right', -950, -560, 530),
];

describe('what a car would be laid by', () => {
  it('is three points that are nearly level and far apart, and the two pairs by name that are farthest apart', () => {
    const { level, height, centre, zero, station } = suggestedDatum(points);
    expect(level.every((id) => id.startsWith('Sill'))).toBe(true);
    expect(height).toBeCloseTo(heightOf(points, level), 9);
    expect(centre).toEqual([
      ['Tower, left', 'Tower, right'],
      ['Sill A, left', 'Sill A, right'],
    ]);
    expect([zero, station]).toEqual(['Tower, left', -1000]);
  });

  it('is left open where nothing is level, and nothing has a pair', () => {
    const slope = [point('a', 0, 0, 0), point('b', 900, 0, 300), point('c', 0, 700, 600)];
    expect(suggestedDatum(slope)).toMatchObject({ level: ['', '', ''], centre: [[''], ['']] });
    expect(suggestedDatum([])).toMatchObject({ level: ['', '', ''], zero: '' });
    expect(namedPairs(slope)).toEqual([]);
  });
});
