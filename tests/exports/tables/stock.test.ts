/** The plan of the demo's tubes as the fabrication file holds it, added up from the file alone. */
import papaparse from 'papaparse';
import { expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { stockCsv } from '../../../src/exports/tables/csv.ts';
import { plansOf } from '../../../src/core/stock/of-job.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { typedDemoText } from '../../command-line.ts';

const STOCK = {
  kerf: 3,
  squareOff: 12,
  sticks: [
    { id: 'main-20', section: 'main', length: 6096 },
    { id: 'main-rest', section: 'main', length: 2450, count: 1, cost: 0 },
    { id: 'light-24', section: 'light', length: 7315.2 },
  ],
  spares: [{ section: 'main', length: 400, count: 2 }],
};

it('holds every tube and spare once, on a stick of its section, and says what is left', async () => {
  const read = parseJob(JSON.stringify({ ...JSON.parse(typedDemoText()), stock: STOCK }));
  const derivation = read.ok ? derive(read.job) : read;
  if (!derivation.ok) throw new Error('the demo does not derive');
  const plans = await plansOf(derivation.value);
  const csv = stockCsv(derivation.value, plans).text;
  const rows = papaparse.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;
  const { tubes, stock } = fabrication(derivation.value, { plans });
  const { plan, cost, leastCost, unplaced } = stock!;
  const cut = plan.flatMap(({ cuts }) => cuts);
  expect(rows.map((row) => [row['stick'], row['tube'], Number(row['length_mm'])])).toEqual(
    plan.flatMap(({ stick, cuts }) => cuts.map((each) => [stick, 'tube' in each ? each.tube : '', each.length])),
  );
  expect(cut.flatMap((each) => ('tube' in each ? [each.tube] : [])).toSorted()).toEqual(
    tubes.map(({ id }) => id).toSorted(),
  );
  expect(cut.filter((each) => 'spare' in each)).toEqual([
    { spare: 0, length: 400 },
    { spare: 0, length: 400 },
  ]);
  expect(unplaced).toEqual([]);
  const byId = new Map(tubes.map((tube) => [tube.id, tube]));
  for (const { stick, cuts, left } of plan) {
    const { length, section } = STOCK.sticks.find(({ id }) => id === stick)!;
    for (const each of cuts) {
      if ('spare' in each) continue;
      expect([each.tube, byId.get(each.tube)!.section]).toEqual([each.tube, section]);
      expect(each.length).toBe(byId.get(each.tube)!.cutLength);
    }
    const used = cuts.reduce((sum, each) => sum + each.length + STOCK.kerf, STOCK.squareOff);
    expect(left).toBeCloseTo(Math.max(0, length - used), 6);
    expect(used - STOCK.kerf).toBeLessThanOrEqual(length);
  }
  expect(cost).toBe(leastCost);
  expect(cost).toBe(
    plan.reduce((sum, { stick }) => sum + (stick === 'main-rest' ? 0 : stick === 'main-20' ? 6096 : 7315.2), 0),
  );
});
