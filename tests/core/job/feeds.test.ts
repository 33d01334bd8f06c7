import { expect, it } from 'vitest';
import { faultLine } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { sampleFile, withValue } from './sample.ts';

const parsed = (keys: readonly (string | number)[], value: unknown) =>
  parseJob(JSON.stringify(withValue(sampleFile(), keys, value)));

it.each<[(string | number)[], unknown, string]>([
  [['feeds', 0, 'tube'], 'gone', 'feeds[0].tube: no member "gone"'],
  [['feeds', 0, 'tube'], "hoop'", `feeds[0].tube: no member "hoop'": "hoop" is not mirrored`],
  [['feeds', 1, 'tube'], 'hoop', 'feeds[1].tube: "hoop" is already feeds[0]'],
  [['feeds', 0, 'from'], 'C', 'feeds[0].from: not "A" or "B" or "middle"'],
  [['feeds', 0, 'order', 1, 'bend'], 2, 'feeds[0].order[1].bend: bend 2 is there already'],
  [['feeds', 0, 'order', 0, 'bend'], 0, 'feeds[0].order[0].bend: bends count from 1'],
  [['marking', 'mark'], 'top', 'marking.mark: not "start" or "clamp" or "middle" or "tangents"'],
  [['marking', 'fine'], 1, 'marking.fine: not true or false'],
])('%j set to %j is refused', (keys, value, line) => {
  const answer = parsed(keys, value);
  expect(answer.ok ? [] : answer.faults.map(faultLine)).toEqual([line]);
});

it('what is left out of the marking is as usual', () => {
  const answer = parsed(['marking'], { fine: true });
  expect(answer.ok && answer.job.marking).toEqual({ from: 'A', mark: 'start', fine: true });
});
