/** What it comes to when a tube leads: against the two frames, compared by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { grouped } from '../../../src/core/checks/grouped.ts';
import { errorsBrought, leadChanges } from '../../../src/core/checks/lead-changes.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { setStands } from '../../../src/core/edit/bent.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { tubeChangeInWords } from '../../../src/core/words/changes.ts';

/** The demo with its hoop bent, each bend that many degrees off, and each turn. */
function hoopBent(off: readonly number[], turns: readonly number[]): readonly [drawn: Derived, built: Derived] {
  const text = JSON.parse(readFileSync(new URL('../../../public/demo.cagewright.json', import.meta.url), 'utf8'));
  const nets = [13, 76, 76, 13];
  const bends = nets.map((net, i) => ({
    bend: i + 1,
    pulled: net + 4,
    net: net + off[i]!,
    ...(i > 0 && { rotation: turns[i]! }),
  }));
  text.bent = [
    { tube: 'hoop', order: [1, 2, 3, 4].map((bend) => ({ bend, front: 'A' })), done: [], bends, checks: [] },
  ];
  const parsed = parseJob(JSON.stringify(text));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const [drawn, built] = [derive(parsed.job), derive(setStands(parsed.job, 'hoop', true))];
  if (!drawn.ok || !built.ok) throw new Error('not derived');
  return [drawn.value, built.value];
}

describe('what it comes to when a tube leads', () => {
  const [drawn, built] = hoopBent([1, -1, 0.5, 0], [0, 1, 0, -0.5]);
  const { pairs, less } = leadChanges(drawn, built, 'hoop');

  it('the greatest change first, a tube with its mirror image, what no tape reads only counted', () => {
    const size = pairs.map((pair) =>
      Math.max(...pair.flatMap(({ blank, ends }) => [Math.abs(blank), ...ends.filter(Number.isFinite)])),
    );
    expect(size).toEqual(size.toSorted((a, b) => b - a));
    expect(pairs.map((pair) => pair.map(({ tube }) => tube).toSorted())).toContainEqual(['leg', "leg'"]);
    expect(less).toBeGreaterThan(0);
    expect(pairs.flat().map(({ tube }) => tube)).not.toContain('hoop');
    const same = built.tubes.filter((tube) => drawn.byId.get(tube.id) === tube).length;
    expect(pairs.flat().length + less).toBeLessThanOrEqual(built.tubes.length - 1 - same);
  });

  it('the tubes that could then not be made: each crossing of two tubes of one size once', () => {
    expect(drawn.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const brought = errorsBrought(drawn.findings, built.findings);
    expect(brought.map(({ id, tube, end }) => [id, tube, end])).toEqual([
      ['piece/strip-holds', 'roof-brace.1', 'B'],
      ['piece/strip-holds', 'roof-brace.2', 'A'],
    ]);
    expect(grouped(brought, built)).toHaveLength(1);
    expect(errorsBrought(built.findings, built.findings)).toEqual([]);
  });

  it('lengths as the rest of the screen shows them', () => {
    const change = { tube: 'stay', blank: -3.175, ends: [1.5, 0.3], bends: 0.001 } as const;
    expect(tubeChangeInWords(change, 'in')).toBe('blank 1/8 in shorter and end A cut otherwise by up to 1/16 in');
    expect(tubeChangeInWords(change, 'mm')).toBe('blank 3.2 mm shorter and end A cut otherwise by up to 1.5 mm');
  });
});
