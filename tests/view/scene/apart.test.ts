/** A joint drawn apart: each tube goes back along itself, out of what it was cut to, the later the farther. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { length, normalize, subtract } from '../../../src/core/geometry/vector.ts';
import { drawnApart } from '../../../src/view/scene/apart.ts';
import { read, solved } from '../../core/shape/sides.ts';

const frame = solved(read(readFileSync('public/demo.cagewright.json', 'utf8')));

it('at the top of the stay: the hoop stays, the stay goes back along itself, the diagonal farther', () => {
  const { shifts, order } = drawnApart(frame, 'stay-top');
  expect([...shifts.keys()]).toEqual(['stay', 'diagonal']);
  const [stay, diagonal] = [shifts.get('stay')!, shifts.get('diagonal')!];
  const away = (id: string, from: 0 | 1): readonly number[] => {
    const { corners } = frame.byId.get(id)!;
    const [near, far] = from === 0 ? [corners[0]!, corners[1]!] : [corners.at(-1)!, corners.at(-2)!];
    return normalize(subtract(far, near));
  };
  normalize(stay).forEach((value, axis) => expect(value).toBeCloseTo(away('stay', 0)[axis]!, 12));
  normalize(diagonal).forEach((value, axis) => expect(value).toBeCloseTo(away('diagonal', 1)[axis]!, 12));
  expect(length(diagonal)).toBeGreaterThan(length(stay));
  expect(length(stay)).toBeGreaterThan(frame.byId.get('hoop')!.section.outerDiameter);
  expect(order.map(({ nth }) => nth)).toEqual([1, 2, 3]);
  expect(order[0]!.at).toEqual(frame.nodes.get('stay-top'));
});

it('nothing goes apart at a node that is gone', () => expect(drawnApart(frame, 'none').order).toEqual([]));
