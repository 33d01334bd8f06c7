/** What goes by a guess: found of each point until it is moved or confirmed. */
import { expect, test } from 'vitest';
import { confirmNode, setPlace } from '../../../src/core/edit/nodes.ts';
import { confirmPoint, movePoint, setStandIn } from '../../../src/core/edit/points.ts';
import { derive } from '../../../src/core/derive.ts';
import { findingInWords } from '../../../src/core/words/findings.ts';
import { firstFigures } from '../../../src/core/shape/starters/asked.ts';
import { startCage } from '../../../src/core/shape/starters/start-cage.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { plainly, shopJob } from '../shape/starters/cars.ts';

function guesses(job: Job, kind = 'point/guessed'): readonly string[] {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error('no frame');
  return derivation.value.findings
    .filter(({ id }) => id === kind)
    .map((finding) => findingInWords(finding, derivation.value));
}

test('one warning a point, with the tubes that go by it through whatever they stand on', () => {
  const job = startCage(shopJob('mm'), plainly('roll-bar', firstFigures('mm')));
  expect(guesses(job)).toEqual([
    // Hoop, stays, diagonal, harness bar in two, tower bar, rear X in three: all ten, but only stays and what is between them by the tower.
    expect.stringMatching(/^Main hoop and 9 other tubes go by Floor at the hoop, left, which is a guess/u),
    expect.stringMatching(/^Main hoop and 9 other tubes go by B-pillar at the belt line, left/u),
    expect.stringMatching(/^Main hoop and 9 other tubes go by Roof rail at the B-pillar, left/u),
    expect.stringMatching(/^Rear stay \(left\) and 5 other tubes go by Rear spring tower, left/u),
  ]);
  expect(guesses(confirmPoint(job, 'tower'))).toHaveLength(3);
  expect(guesses(movePoint(job, 'tower', [-810, 470, 530]))).toHaveLength(3);
});

test('what goes by a stand-in is a note, until the real one is in', () => {
  const job = setStandIn(startCage(shopJob('mm'), plainly('roll-bar', firstFigures('mm'))), 'tower', true);
  expect(guesses(job, 'point/stand-in')).toEqual([
    expect.stringMatching(
      /^Rear stay \(left\) and 5 other tubes go by Rear spring tower, left, which was measured on a stand-in/u,
    ),
  ]);
  const derivation = derive(job);
  expect(derivation.ok && derivation.value.findings.filter(({ id }) => id === 'point/stand-in')).toMatchObject([
    { severity: 'note', point: 'tower' },
  ]);
  expect(guesses(setStandIn(job, 'tower', false), 'point/stand-in')).toEqual([]);
  expect(setStandIn(setStandIn(job, 'tower', false), 'tower', false).points.some((point) => 'standIn' in point)).toBe(
    false,
  );
});

test('the gap and the height of the harness bar stay guesses in the job: a warning for each node that stands by one, until it is placed or confirmed', () => {
  const figures = firstFigures('mm');
  const job = startCage(shopJob('mm'), plainly('roll-bar', figures));
  const by = (each: Job) => each.nodes.filter(({ guessed }) => guessed).map(({ id }) => id);
  expect(by(job)).toEqual(['hoop-corner', 'hoop-shoulder', 'harness-end']);
  expect(guesses(job, 'node/guessed')).toEqual([
    expect.stringMatching(/^Main hoop and 9 other tubes go by Main hoop, roof corner, whose place is a guess/u),
    expect.stringMatching(/^Main hoop and 9 other tubes go by Main hoop, shoulder/u),
    expect.stringMatching(/^Harness bar, piece 1 of 2 and another tube go by Harness bar at the hoop/u),
  ]);
  expect(by(confirmNode(job, 'hoop-corner'))).toEqual(['hoop-shoulder', 'harness-end']);
  const harness = job.nodes.find(({ id }) => id === 'harness-end')!;
  expect(setPlace(job, 'harness-end', harness.at)).toBe(job);
  expect(by(setPlace(job, 'harness-end', { kind: 'fixed', position: [0, 600, 600] }))).not.toContain('harness-end');
  const said = {
    ...figures,
    gap: { ...figures.gap, guessed: false },
    harnessHeight: { ...figures.harnessHeight, guessed: false },
  };
  expect(by(startCage(shopJob('mm'), plainly('roll-bar', said)))).toEqual([]);
});

test('nothing goes by it, nothing is found', () => {
  const lone = { id: 'p', name: 'Lone', position: [0, 0, 0], guessed: true } as const;
  expect(guesses({ ...shopJob('mm'), points: [lone] })).toEqual([]);
});
