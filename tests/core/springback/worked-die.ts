/** The section and the die that the pulls of these tests were made with, and the law of such pulls. */
import type { Die } from '../../../src/core/job/kinds/die.ts';
import type { Pull } from '../../../src/core/job/kinds/pull.ts';
import type { Section } from '../../../src/core/job/kinds/section.ts';
import { pullLaw } from '../../../src/core/springback/pull-law.ts';

export const radians = (angle: number): number => (angle * Math.PI) / 180;

export const section: Section = { id: 'main', name: 'main', outerDiameter: 44.45, wall: 3.048, material: 'dom-1020' };

export const die: Die = {
  id: 'd',
  name: 'd',
  outerDiameter: 44.45,
  centrelineRadius: 152.4,
  clampOffset: 0,
  leastStraight: 0,
  leastGrip: 0,
  greatestAngle: 180,
  radius: 'nominal',
};

export const pull = (pulled: number, net: number, more: Partial<Pull> = {}): Pull => ({
  die: 'd',
  section: 'main',
  pulled,
  net,
  on: '',
  ...more,
});

/** Degrees as they were read off: how far was pulled, and what it came out to. */
export type Read = readonly [pulled: number, net: number];

export const pulls = (...read: readonly Read[]): Pull[] => read.map(([pulled, net]) => pull(pulled, net));

export const law = (made: readonly Pull[], batch?: string) => pullLaw(made, die, section, batch)!;
export const lawOf = (...read: readonly Read[]) => law(pulls(...read));
