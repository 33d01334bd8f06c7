/** Bars without slack: caught by both ends between what stands already (common practice: the last bar between two fixed ones). */
import { expect, test } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { caughtBars } from '../../../src/core/checks/caught.ts';
import { moveMember, setEnd } from '../../../src/core/edit/members.ts';
import { firstFigures } from '../../../src/core/shape/starters/asked.ts';
import { startCage } from '../../../src/core/shape/starters/start-cage.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { plainly, shopJob } from '../shape/starters/cars.ts';

function caught(job: Job): Record<string, unknown> {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return Object.fromEntries([...caughtBars(derivation.value)].map(([id, { between }]) => [id, between]));
}

const rollBar = startCage(shopJob('mm'), plainly('roll-bar', firstFigures('mm')));

test('a bar on feet has slack, one between two legs of a hoop or two stays has none', () => {
  const found = caught(rollBar);
  expect(Object.keys(found)).toEqual(['diagonal', 'harness', 'tower-bar', 'rear-diagonal', 'rear-brace']);
  expect(found['harness']).toEqual([['hoop'], ['hoop']]);
  expect(found['tower-bar']).toEqual([['stay'], ["stay'"]]);
});

test('what is fitted before one of the two has slack, and so has an end that is cut square', () => {
  const first = moveMember(rollBar, 'harness', 0);
  expect(Object.keys(caught(first))).not.toContain('harness');
  const square = setEnd(rollBar, 'tower-bar', 1, { fit: 'square', allowance: 0 });
  expect(Object.keys(caught(square))).not.toContain('tower-bar');
});
