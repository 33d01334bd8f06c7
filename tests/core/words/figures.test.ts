import { expect, it } from 'vitest';
import { fineInWords, halfAxes, wholeInWords } from '../../../src/core/words/figures.ts';

it('the ellipsoid of a diagonal covariance has the roots along the axes; what is held has none', () => {
  expect(
    halfAxes({
      covariance: [
        [4, 0, 0],
        [0, 0, 0],
        [0, 0, 9],
      ],
    }),
  ).toEqual([
    { length: 3, way: 'in height' },
    { length: 2, way: 'along the car' },
  ]);
});

it('one that leans says how far it is off the axis: 3 along (cos 30, 0, sin 30), 1 square to it, worked out by hand', () => {
  const [c, s] = [Math.sqrt(3) / 2, 0.5];
  const axes = halfAxes({
    covariance: [
      [9 * c * c + s * s, 0, 8 * c * s],
      [0, 4, 0],
      [8 * c * s, 0, 9 * s * s + c * c],
    ],
  });
  expect(axes.map(({ way }) => way)).toEqual(['along the car, 30° off', 'to the side', 'in height, 30° off']);
  expect(axes.map(({ length }) => length)).toEqual([3, 2, 1].map((length) => expect.closeTo(length, 9)));
});

it('the whole is said with what it means', () => {
  const whole = { points: [], residuals: [], suspects: [], loose: [], s0: 0.93, redundancy: 5 };
  expect(wholeInWords(whole).join(' ')).toMatch(/^5 readings more .* s0 = 0\.93.*as good as they claim/u);
  expect(wholeInWords({ ...whole, s0: 4 }).join(' ')).toMatch(/a slip/u);
  expect(wholeInWords({ ...whole, s0: 0, redundancy: 0 })).toEqual([expect.stringMatching(/nothing is checked/u)]);
  expect([fineInWords(2.345, 'mm'), fineInWords(25.4, 'in')]).toEqual(['2.35', '1.000']);
});
