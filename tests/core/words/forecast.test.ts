import { expect, it } from 'vitest';
import { forecastFit } from '../../../src/core/forecast/forecast.ts';
import { cureInWords, feedsInWords, jointInWords } from '../../../src/core/words/forecast.ts';
import { gapInWords } from '../../../src/core/words/gaping.ts';
import { derived } from '../frame.ts';

it('a joint, what feeds it and what would cure it are said in the shop’s words', () => {
  const frame = derived({
    points: [{ id: 'p', name: 'Left tower', position: [0, 0, 500] }],
    nodes: { a: { kind: 'point', point: 'p' }, b: [0, 0, 1500] },
    members: [
      {
        id: 'bar',
        name: 'Post',
        path: ['a', 'b'],
        ends: [
          { fit: 'plate', normal: [0, 0, 1] },
          { fit: 'plate', normal: [0, 0, 1] },
        ],
      },
    ],
  });
  const joint = forecastFit(frame).joints.find(({ end }) => end === 'B')!;
  expect(jointInWords(frame, joint)).toBe('Post, end B on its plate');
  expect(feedsInWords(frame, joint)).toBe(
    'Most from the height of Left tower (67\u00a0%), then its cut at end A (17\u00a0%), then its cut at end B (17\u00a0%).',
  );
  expect(joint.cures.map((cure) => cureInWords(frame, joint, cure, 'mm').replace(/[\d.]+ mm\.$/u, '…'))).toEqual([
    'Measure Left tower again: …',
    'Leave end B 6 mm long, and trim it on the car: it shuts.',
    'Cut Post on the car, to what stands there: …',
  ]);
  expect([0, 0.4, 2, 5].map((gap) => gapInWords(gap, 'mm'))).toEqual([
    'shuts',
    'fits, 0.4 mm',
    'gapes, 2.0 mm',
    'gapes wide, 5.0 mm',
  ]);
});
