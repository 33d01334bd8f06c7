/**
 * Where the scribed line stands at a bent tube's ends, against a line of the material that is carried along the bent tube: it stays
 * parallel to itself along straights and is turned with the tube along bends.
 */
import { scribedInWords } from '../../../src/core/words/turns.ts';
import { describe, expect, it } from 'vitest';
import { FIRST_BENDER } from '../../../src/core/job/kinds/bender.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import { plainOrder } from '../../../src/core/solve/bend-order.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { isScribed, scribedLineAt } from '../../../src/core/run/scribed-line.ts';
import { around, inner, outer, size, square, sum, times, type Triple } from '../../reference/oracles/space.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { bendable } from '../rehearse/tubes.ts';

const DEGREES = 180 / Math.PI;

/** What stands along the axis stays, what stands square to it goes round. */
function turned(axis: Triple, line: Triple, degrees: number): Triple {
  const across = square(line, axis);
  return sum(times(inner(line, axis), axis), size(across) < 1e-12 ? across : around(axis, across, degrees));
}

/** Degrees from the end's inside line, clockwise as one looks at the cut end, towards the tube. */
function carriedTo(tube: SolvedTube, [first]: readonly BendStep[], turns: 'left' | 'right', which: 0 | 1): number {
  const { bend, front } = first!;
  // Towards the end in front the tube turns about its bend's normal, or the other way round; to the left that is upwards.
  const about = times(front === 'B' ? 1 : -1, tube.bends[bend - 1]!.normal);
  let line: Triple = times(turns === 'left' ? 1 : -1, about);
  const rest = which === 1 ? tube.bends.slice(bend - 1) : tube.bends.slice(0, bend).toReversed();
  for (const { normal, angle } of rest) line = turned(normal, line, (which === 1 ? 1 : -1) * angle * DEGREES);
  const { direction, reference } = tube.ends[which];
  expect(Math.abs(inner(line, direction))).toBeLessThan(1e-9);
  return Math.atan2(inner(outer(reference, line), direction), inner(reference, line)) * DEGREES;
}

/** Every order of so many bends, either end in front of each. */
function* everyOrder(bends: readonly number[]): Generator<BendStep[]> {
  if (bends.length === 0) yield [];
  for (const bend of bends)
    for (const rest of everyOrder(bends.filter((other) => other !== bend)))
      for (const front of ['A', 'B'] as const) yield [{ bend, front }, ...rest];
}

describe('the scribed line at the ends', () => {
  it('is where it is carried to, on random tubes, in every order and on either bender', () => {
    const draw = drawFrom(11);
    for (let i = 0; i < 24; i++) {
      const count = 2 + (i % 3);
      const bends = Array.from({ length: count }, () => ({
        rotation: draw.between(-180, 180),
        angle: draw.between(8, 110),
      }));
      const straights = Array.from({ length: count + 1 }, () => draw.between(300, 700));
      const numbers = bends.map((_, k) => k + 1);
      for (const turns of ['left', 'right'] as const) {
        const tube = bendable({ bends, straights }, { ...FIRST_BENDER, turns });
        const offered = (['A', 'B', 'middle'] as const).flatMap((from) =>
          (['beyond', 'before'] as const).map((lies) => plainOrder(count, from, lies)),
        );
        for (const order of [...offered, ...(count === 4 ? [] : everyOrder(numbers))]) {
          for (const which of [0, 1] as const) {
            const off = scribedLineAt(tube, order, which)! * DEGREES - carriedTo(tube, order, turns, which);
            expect(Math.abs(((off + 540) % 360) - 180), `${turns} ${JSON.stringify(order)}`).toBeLessThan(1e-6);
          }
        }
      }
    }
  });

  // By hand: on top of a bend to the left the line is a quarter turn clockwise of the inside, seen from behind towards end A in front,
  // which is how one looks at end B; the second bend's inside is 20 degrees anticlockwise of that, so the line 110 clockwise of it.
  it('in words, as the sheet has it after the inside line', () => {
    const bends = [
      { rotation: 0, angle: 39 },
      { rotation: 20, angle: 50 },
    ];
    const tube = bendable({ bends, straights: [500, 400, 600] }, { ...FIRST_BENDER, turns: 'left' });
    const order = [1, 2].map((bend): BendStep => ({ bend, front: 'A' }));
    const round = (degrees: number) => ((degrees * Math.PI * tube.section.outerDiameter) / 360).toFixed(1);
    expect(scribedInWords(tube, order, 0, 'mm')).toBe(
      `The scribed line stands 90.0° anticlockwise of it, ${round(90)} mm round.`,
    );
    expect(scribedInWords(tube, order, 1, 'mm')).toBe(
      `The scribed line stands 110.0° clockwise of it, ${round(110)} mm round.`,
    );
  });
  it('is left out where no line is scribed: nothing is turned, or there is no order', () => {
    const bends = [0, 0].map((rotation) => ({ rotation, angle: 40 }));
    const tube = bendable({ bends, straights: [500, 400, 600] });
    const order = [1, 2].map((bend): BendStep => ({ bend, front: 'A' }));
    expect(isScribed(tube, order)).toBe(false);
    expect(scribedInWords(tube, order, 0, 'mm')).toBeNull();
    expect(scribedLineAt(tube, [], 0)).toBeNull();
  });
});
