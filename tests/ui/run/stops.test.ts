/** Where one is in a bend run, and what is said of a step aloud. */
import { describe, expect, it } from 'vitest';
import { measurableAt, type RunStep } from '../../../src/core/run/run.ts';
import { dayOf } from '../../../src/exports/shared/day.ts';
import { onTo, spokenOf, stopsOf } from '../../../src/ui/run/stops.ts';

const cut: RunStep = { kind: 'cut', key: 'cut', done: true, blank: 1000, grip: [0, 0] };
const check: RunStep = { kind: 'check', key: 'check', done: false, checks: [] };
const read = (bend: number): RunStep => ({
  kind: 'read',
  key: `read ${bend}`,
  done: false,
  bend,
  target: 1,
  start: 100,
  reading: null,
  verdict: null,
});
const pull = (bend: number): RunStep => ({
  kind: 'pull',
  key: `pull ${bend}`,
  done: false,
  bend,
  target: 1,
  advice: { kind: 'law', pullTo: 88, exact: 1.53, within: null },
});

describe('where one is in a run', () => {
  it('has one stop a bend, in the order of bending', () => {
    const stops = stopsOf([cut, pull(3), read(3), pull(1), read(1), check]);
    expect(stops.map(({ label }) => label)).toEqual(['Cut', '3', '1', 'Check']);
    expect(stops[1]!.name).toBe('Bend 3');
    expect(stops[1]!.steps.map(({ key }) => key)).toEqual(['pull 3', 'read 3']);
  });

  it('says where a key leads', () => {
    expect([read(2), check, cut, undefined].map(onTo)).toEqual([
      'On to bend 2',
      'On to the check',
      'On: cut the blank',
      'On to the end',
    ]);
  });

  it('measures what lies between two bends once both are made', () => {
    expect(measurableAt(2, [1, 2])).toEqual([2]);
    expect(measurableAt(1, [3, 2, 1])).toEqual([2]);
    expect(measurableAt(2, [1, 2, 3])).toEqual([2, 3]);
    expect(measurableAt(1, [1])).toEqual([]);
  });

  it('says a first pull aloud as one', () => {
    const first = { ...pull(2), advice: { kind: 'first', pullTo: 78, why: 'slack-or-spring' } } as RunStep;
    expect(spokenOf(pull(2), 'in')).toBe('To 88 degrees.');
    const estimate = { ...pull(2), advice: { kind: 'estimate', pullTo: 78.5, exact: 1.37, short: 4.5 } } as RunStep;
    expect(spokenOf(estimate, 'in')).toBe('Start at 78.5 degrees, then let go and read.');
    expect(spokenOf(first, 'in')).toBe('To 78 degrees first, then let go and read.');
  });

  it('the day where the shop is', () => {
    expect(dayOf(new Date(2026, 2, 5, 23, 59))).toBe('2026-03-05');
  });
});
