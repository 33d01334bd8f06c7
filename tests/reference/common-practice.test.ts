/** Figures that shops go by (common practice), held against the program. They stand in no other file: examples and fixtures use numbers of their own. */
import { describe, expect, it } from 'vitest';
import { effectiveRadius } from '../../src/core/springback/opened-radius.ts';
import { pulledFor } from '../../src/core/springback/pull-law.ts';
import { degrees } from '../core/frame.ts';
import { lawOf, radians } from '../core/springback/worked-die.ts';
import { tubeThrough } from './jobs.ts';

const INCH = 25.4;
const turning = (angle: number): [number, number, number][] => [
  [0, 0, 0],
  [0, 0, 1000],
  [1000 * Math.sin(radians(angle)), 0, 1000 + 1000 * Math.cos(radians(angle))],
];
describe('common practice', () => {
  it('65 gave 61 and 28 gave 25.5, so a net 65 is pulled to 69', () => {
    const two = lawOf([65, 61], [28, 25.5]);
    expect(degrees(pulledFor(two, radians(65)))).toBeCloseTo(69, 0);
  });
  it('92 for 90 opens 6.00 in to 6.13', () => {
    expect(effectiveRadius(lawOf([92, 90]), 6 * INCH, radians(90)) / INCH).toBeCloseTo(6.13, 2);
  });
  it('at CLR 4.5 in 65 degrees take 5.07 in and 25 just under 2 in, which rounds down by half a percent', () => {
    const arc = (angle: number) => tubeThrough(turning(angle), 4.5 * INCH).bends[0]!.arc / INCH;
    expect(arc(65) / 5.07).toBeCloseTo(1.007, 3);
    expect(arc(25)).toBeGreaterThan(1.95);
    expect(arc(25)).toBeLessThan(2);
  });
});
