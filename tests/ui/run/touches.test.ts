/** What a run says of a bend that runs into something: only of an order that was rehearsed step by step. */
import { describe, expect, it } from 'vitest';
import type { BendStep, BentTube } from '../../../src/core/job/kinds/bent.ts';
import type { Rehearsal, RehearsedStep } from '../../../src/core/rehearse/types.ts';
import { touchInWords } from '../../../src/ui/run/Touches.tsx';

const STEPS: readonly BendStep[] = [
  { bend: 1, front: 'A' },
  { bend: 2, front: 'A' },
];
const free = (step: BendStep): RehearsedStep => ({
  ...step,
  pullTo: 1,
  pulled: 1,
  net: 1,
  rotation: 0,
  rotationFrom: null,
  hit: null,
  cannotHold: null,
});
const touching: RehearsedStep = {
  ...free(STEPS[1]!),
  hit: {
    angle: (41.5 * Math.PI) / 180,
    solid: { part: 'room', kind: 'plane', name: 'Wall' },
    by: 'front',
    at: [0, 0, 0],
  },
};
const rehearsal: Rehearsal = {
  plain: [free(STEPS[0]!), touching],
  proposed: null,
  reason: { kind: 'never', bend: 2, trouble: touching },
  free: 0,
  all: 8,
};
const runIn = (order: readonly BendStep[]): BentTube => ({ tube: 'hoop', order, done: [], bends: [], checks: [] });

describe('what a bend of the run runs into', () => {
  it('is said at that bend with the whole degree of the machine before the touch', () => {
    expect(touchInWords(runIn(STEPS), 1, rehearsal, undefined)).toBeNull();
    expect(touchInWords(runIn(STEPS), 2, rehearsal, undefined)).toContain('swings into Wall at 41°');
  });
  it('is not guessed for an order that was not rehearsed, or not yet', () => {
    expect(touchInWords(runIn([STEPS[1]!, STEPS[0]!]), 2, rehearsal, undefined)).toBeNull();
    expect(touchInWords(runIn(STEPS), 2, undefined, undefined)).toBeNull();
  });

  it('is not known where it could not be rehearsed, and that is said', () => {
    const words = touchInWords(runIn(STEPS), 1, undefined, 'no answer came');
    expect(words).toBe(
      'This tube could not be rehearsed, which is a fault of the program: no answer came. Look round before you pull.',
    );
  });
});
