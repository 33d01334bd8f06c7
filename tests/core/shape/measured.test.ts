/** Edits that look where nodes would come to go by points where they were measured, not where they were guessed. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { guessAt } from '../../../src/core/edit/measurements.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { nodeMoves } from '../../../src/core/shape/node-moves.ts';
import { reverseMember } from '../../../src/core/shape/reverse.ts';

const parsed = parseJob(readFileSync(new URL('../../../public/demo.cagewright.json', import.meta.url), 'utf8'));
if (!parsed.ok) throw new Error('no demo');

/** The demo, each measured point guessed a centimetre off. */
const job = parsed.job.points
  .filter(({ by }) => by === 'survey')
  .reduce((done, { id, position: [x, y, z] }) => guessAt(done, id, [x + 10, y, z + 10]), parsed.job);

it('a job as it is written moves no node of its own frame, and a measured leg can be reversed', () => {
  expect(job).not.toEqual(parsed.job);
  const derivation = derive(job);
  if (!derivation.ok) throw new Error('not derived');
  expect(nodeMoves(derivation.value, job)).toEqual({ ok: true, value: [] });
  expect(reverseMember(job, derivation.value, 'leg')).toMatchObject({ format: 'cagewright/job' });
});
