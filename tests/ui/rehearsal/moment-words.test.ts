/** What is said of a moment at the machine, of an order laid by hand. */
import { describe, expect, it } from 'vitest';
import type { Hit, RehearsedStep } from '../../../src/core/rehearse/types.ts';
import { barredInWords } from '../../../src/core/words/rehearsal.ts';
import { momentAloud, momentInShort, troubleAt } from '../../../src/ui/rehearsal/moment-words.ts';
import { layStages } from '../../../src/view/rehearsal/rehearsed.ts';
import { layTimeline, momentAt } from '../../../src/view/rehearsal/timeline.ts';
import { bentTube, orderOf } from '../../view/rehearsal/bent.ts';

const hit: Hit = { angle: (20 * Math.PI) / 180, solid: { part: 'floor' }, by: 'front', at: [0, 0, 0] };

const tube = bentTube();
const free = orderOf(tube, [
  [3, 'B', null],
  [4, 'B', 3],
  [2, 'A', 3],
  [1, 'A', 2],
]);
const steps: readonly RehearsedStep[] = free.map((step, i) => (i === 1 ? { ...step, hit } : step));
const stages = layStages(tube, steps);
const line = layTimeline(steps);

describe('a moment of a rehearsal', () => {
  const aloud = (place: number): string => momentAloud(stages, momentAt(line, steps, place));

  it('names the touch from where it happens until the bend is let go', () => {
    const { set, bend, release } = line.spans[1]!;
    expect(aloud(set)).toMatch(/^Step 2 of 4, bend 4\. Turn the tube /);
    expect(aloud(bend + 19)).toMatch(/^Step 2 of 4, bend 4: pull to [\d.]+°\.$/);
    expect(aloud(bend + 20)).toBe('Step 2 of 4, bend 4: swings into the floor at 20°.');
    expect(aloud(release)).toBe('Step 2 of 4, bend 4: swings into the floor at 20°.');
    expect(aloud(release + 4)).toMatch(/let go, [\d.]+° stands\.$/);
    expect(troubleAt(stages, momentAt(line, steps, bend + 5))).toBeNull();
    expect(momentInShort(stages, momentAt(line, steps, bend + 20))).toMatch(/^20\.0° of [\d.]+°$/);
  });

  it('says of a bend that the machine cannot hold why', () => {
    const cannotHold = { kind: 'too-near', bend: 4, side: 'behind' } as const;
    const barred = steps.map((step) => ({ ...step, hit: null, cannotHold }));
    const held = layStages(tube, barred);
    const words = 'is too near bend 4 behind it for the follower to bear it';
    expect(barredInWords(held[0]!.step)).toBe(words);
    expect(momentAloud(held, momentAt(layTimeline(barred), barred, 10))).toBe(`Step 1 of 4, bend 3: ${words}.`);
  });
});
