import { expect, it } from 'vitest';
import { forecastFit } from '../../../src/core/forecast/forecast.ts';
import {
  byHandInWords,
  cureInWords,
  curesInOrder,
  doneInWords,
  feedsInWords,
  jointInWords,
  onCarInWords,
  shareInWords,
  takenInWords,
} from '../../../src/core/words/forecast.ts';
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
    'Measure Left tower again: 95 of 100 then stay under …',
    'Leave end B 6 mm long, and trim it on the car: 95 of 100 then shut.',
    'Cut Post on the car, to what stands there: 95 of 100 then stay under …',
  ]);
  expect(joint.cures.map((cure) => byHandInWords(frame, cure))).toEqual([
    'Measure it a second time in the car, and enter the mean in Survey.',
    null,
    null,
  ]);
  expect([0, 2].map(shareInWords)).toEqual(['in 95 of 100', '95 of 100 gape less']);
  expect([null, 0, 1].map((now) => takenInWords('leave end B long', 2, now, 'mm'))).toEqual([
    'Done: leave end B long. It was 2.0 mm; what it is now is being worked out.',
    'Done: leave end B long. It was 2.0 mm; now it shuts.',
    'Done: leave end B long. It was 2.0 mm; now it is 1.0 mm.',
  ]);
  expect([0, 0.4, 2, 5].map((gap) => gapInWords(gap, 'mm'))).toEqual([
    'shuts',
    'fits, 0.4 mm',
    'gapes, 2.0 mm',
    'gapes wide, 5.0 mm',
  ]);
});

it('what leaves least stands first; what is said with the same figure stands as it came, and that is said', () => {
  const long = { kind: 'long', by: 6, gap: 1.32 } as const;
  const onCar = { kind: 'on-car', first: [], gap: 1.31 } as const;
  const measure = { kind: 'measure', point: 'p', gap: 2 } as const;
  const asBuilt = { kind: 'as-built', bar: 'bar', gap: 0.4 } as const;
  expect(curesInOrder([measure, long, onCar], 'mm')).toEqual({
    cures: [long, onCar, measure],
    alike: 'The first 2 come to the same: the least work stands first.',
  });
  expect(curesInOrder([measure, long, asBuilt], 'mm')).toEqual({ cures: [asBuilt, long, measure], alike: null });
  expect(curesInOrder([], 'mm')).toEqual({ cures: [], alike: null });
});

it('a cure of a mirrored bar is one of both sides', () => {
  const frame = derived({
    nodes: { a: [0, 400, 0], b: [0, 500, 900] },
    members: [
      {
        id: 'leg',
        name: 'Leg',
        path: ['a', 'b'],
        mirror: true,
        ends: [{ fit: 'plate', normal: [0, 0, 1] }, { fit: 'square' }],
      },
    ],
  });
  for (const tube of ['leg', "leg'"]) {
    expect(doneInWords(frame, tube, 'A', { kind: 'on-car', first: [], gap: 1 }, 'mm')).toBe(
      'cut Leg (left) and Leg (right) on the car, to what stands there',
    );
    expect(doneInWords(frame, tube, 'A', { kind: 'long', by: 6, gap: 1 }, 'mm')).toBe(
      'leave end A 6 mm long on both sides, and trim it on the car',
    );
    expect(onCarInWords(frame.byId.get(tube)!.member.mirror).back).toBe('Cut both by the drawing');
  }
});
