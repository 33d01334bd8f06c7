/** What a bend run says of a tube before it is cut. */
import { expect, test } from 'vitest';
import { beforeMaking } from '../../../src/core/checks/before-making.ts';
import { seenOf } from '../../../src/core/checks/seen.ts';
import type { Finding } from '../../../src/core/checks/types.ts';
import { derive } from '../../../src/core/derive.ts';
import { firstFigures } from '../../../src/core/shape/starters/asked.ts';
import { startCage } from '../../../src/core/shape/starters/start-cage.ts';
import { plainly, shopJob } from '../shape/starters/cars.ts';

const derivation = derive(startCage(shopJob('mm'), plainly('roll-bar', firstFigures('mm'))));
if (!derivation.ok) throw new Error('no frame');
const frame = derivation.value;
const { job } = frame;
const stay = frame.tubes.find(({ name }) => name.startsWith('Rear stay'))!;
const hoop = frame.tubes[0]!;
const base = { severity: 'warning', source: 'practice', at: [0, 0, 0] } as const;
const found = (finding: object): Finding => ({ ...base, ...finding }) as Finding;

test('a guess that the tube goes by, though the finding names another tube', () => {
  const guesses = frame.findings.filter(({ id }) => id === 'point/guessed');
  expect(guesses.filter(({ tube }) => tube === stay.id)).toHaveLength(1);
  expect(beforeMaking(guesses, job, stay)).toHaveLength(4);
  // The hoop does not stand on the spring tower.
  expect(beforeMaking(guesses, job, hoop)).toHaveLength(3);
});

test('what names it as the other of two; nothing of other tubes, of sheet metal, of the orders of bending', () => {
  const other = found({ id: 'gap/no-room-for-torch', tube: 'x', other: stay.id });
  const own = found({ id: 'bend/short-straight', tube: stay.id, bend: 1 });
  const others = [
    found({ id: 'bend/short-straight', tube: 'x', bend: 1 }),
    found({ id: 'gusset/thin', tube: stay.id }),
    found({ id: 'foot/over-edge', tube: stay.id, end: 'B' }),
    found({ id: 'bend/order-matters', tube: stay.id }),
  ];
  expect(beforeMaking([...others, other, own], job, stay)).toEqual([other, own]);
});

test('worst first; what was seen stays out, an error never', () => {
  const [note, warning, error] = (['note', 'warning', 'error'] as const).map((severity, i) =>
    found({ id: 'bend/short-straight', tube: stay.id, bend: i + 1, severity }),
  );
  expect(beforeMaking([note!, warning!, error!], job, stay)).toEqual([error, warning, note]);
  const seen = [note!, error!].map(seenOf);
  expect(beforeMaking([note!, warning!, error!], { ...job, seen }, stay)).toEqual([error, warning]);
});
