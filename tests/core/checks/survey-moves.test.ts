/** What it comes to that a point was measured again: the tower of the demo, on which the stays stand and nothing in front of the hoop. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { surveyMoves } from '../../../src/core/checks/survey-moves.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { typePlace } from '../../../src/core/edit/measurements.ts';
import { movePoint } from '../../../src/core/edit/points.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { setStage } from '../../../src/core/shape/made-stage.ts';
import { surveyMovesInWords } from '../../../src/core/words/survey-moves.ts';

const frameOf = (job: Job): Derived => {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(derivation.faults.map(({ message }) => message).join('; '));
  return derivation.value;
};

const parsed = parseJob(
  readFileSync(new URL('../../../tests/fixtures/demo-typed.cagewright.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('no demo');
const job = typePlace(parsed.job, 'tower-l');
const before = frameOf(job);
const [x, y, z] = job.points.find(({ id }) => id === 'tower-l')!.position;

/** 3 forward, 4 up: 5 mm. */
const moved = (of: Job): Job => movePoint(of, 'tower-l', [x + 3, y, z + 4]);

describe('a point that was measured again', () => {
  it('tells how far it moved and which tubes follow, and nothing where nothing did', () => {
    const moves = surveyMoves(before, frameOf(moved(job)));
    expect(moves.points).toEqual([{ point: 'tower-l', by: expect.closeTo(5, 9) }]);
    const tubes = moves.follow.map(({ tube }) => tube);
    expect(tubes).toContain('stay');
    expect(tubes).not.toContain('hoop');
    expect(tubes).not.toContain('dash');
    expect(moves.held).toEqual([]);
    expect(surveyMoves(before, frameOf(job))).toEqual({ points: [], follow: [], held: [] });
  });

  it('what is cut already stays, and is told by how much it is drawn otherwise', () => {
    const cut = setStage(job, before, 'stay', 'cut');
    const moves = surveyMoves(frameOf(cut), frameOf(moved(cut)));
    expect(moves.follow.map(({ tube }) => tube)).not.toContain('stay');
    const [held] = moves.held.filter(({ tube }) => tube === 'stay');
    expect(Math.abs(held!.blank)).toBeGreaterThan(1);
  });
});

it('one sentence says it all', () => {
  const change = { tube: 'stay', blank: 1, ends: [0, 0], bends: 0 } as const;
  const named = { ...job, lengthUnit: 'mm' as const };
  const name = job.points.find(({ id }) => id === 'tower-l')!.name;
  const one = { points: [{ point: 'tower-l', by: 4.2 }], follow: [change, change], held: [change] };
  expect(surveyMovesInWords(named, one, 1)).toBe(
    `${name} moved 4.2 mm. 2 tubes follow, 1 stays as it was made. Paper of 1 tube is waste.`,
  );
  const two = { points: [...one.points, { point: 'tower-l', by: 1 }], follow: [], held: [] };
  expect(surveyMovesInWords(named, two, 0)).toBe(`2 points moved, ${name} the farthest: 4.2 mm. No tube follows.`);
  // Paper may be waste though no tube is told to have moved.
  expect(surveyMovesInWords(named, two, 2)).toContain('No tube follows. Paper of 2 tubes is waste.');
  expect(surveyMovesInWords(named, { points: [], follow: [], held: [] }, 0)).toBe('');
});
