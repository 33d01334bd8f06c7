/** What a job keeps of itself by name, gone back to and held against what it has become. */
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../../src/core/compare/figures.ts';
import { figuresOfVariant } from '../../../src/core/compare/work.ts';
import { backToVariant, keepVariant, nameVariant, removeVariant } from '../../../src/core/edit/variants.ts';
import { sawStick } from '../../../src/core/shape/saw-stick.ts';
import { removeSeveral } from '../../../src/core/edit/several.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import { planSection } from '../../../src/core/stock/of-job.ts';
import { toCut } from '../../../src/core/stock/to-cut.ts';
import { compareRows } from '../../../src/core/words/compare.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';

const text = demoText();
const derived = derivedFrom(text);
const parsed = parseJob(text) as { readonly job: Job };
const kept = keepVariant(parsed.job, 'As bid', '2026-05-04');
const without = removeSeveral(kept, 'members', ['tunnel']) as Job;

describe('a variant', () => {
  it('is the job as it stood, without those that it had kept', () => {
    expect(kept.variants).toHaveLength(1);
    expect(kept.variants[0]).toMatchObject({ id: 'variant1', name: 'As bid', on: '2026-05-04' });
    expect(parseJob(keepVariant(kept, 'Twice', '').variants[1]!.text)).toMatchObject({
      ok: true,
      job: { variants: [] },
    });
  });

  it('is gone back to whole; what is kept stays kept', () => {
    const back = backToVariant(without, 'variant1') as Job;
    expect(serialiseJob({ ...back, variants: [] })).toBe(serialiseJob(parsed.job));
    expect(back.variants).toBe(without.variants);
    expect(backToVariant(without, 'gone')).toBe(without);
  });

  it('leaves what was done in the shop since: steel does not come whole again', () => {
    const frame = derivedFrom(serialiseJob(kept));
    const { plan } = planSection(toCut(frame)[0]!);
    const sawn = sawStick(kept, frame, plan.sticks[0]!, { on: '2026-05-05', rest: { sticks: [], proven: true } });
    const back = backToVariant(sawn, 'variant1') as Job;
    expect([back.sawn, back.made, back.stickSorts, back.spares]).toEqual([
      sawn.sawn,
      sawn.made,
      sawn.stickSorts,
      sawn.spares,
    ]);
    expect(parseJob(serialiseJob(back)).ok).toBe(true);
    const numbered = backToVariant({ ...sawn, lastNumber: 44 }, 'variant1') as Job;
    expect(numbered.lastNumber).toBe(44);
  });

  it('that is no job is refused with its place, and has no figures', () => {
    const spoilt: Job = { ...kept, variants: [{ ...kept.variants[0]!, text: '{ "format": "cagewright/job" }' }] };
    const refused = backToVariant(spoilt, 'variant1') as readonly { readonly message: string }[];
    expect(refused.map(({ message }) => message)[0]).toMatch(/version/u);
    expect(figuresOfVariant(spoilt.variants[0]!).ok).toBe(false);
  });

  it('travels in the file, is renamed and deleted', () => {
    const again = parseJob(serialiseJob(nameVariant(kept, 'variant1', 'Bid')));
    expect(again).toMatchObject({ ok: true, job: { variants: [{ name: 'Bid' }] } });
    expect(removeVariant(kept, 'variant1').variants).toEqual([]);
  });
});

describe('side by side', () => {
  it('what was kept comes to what the job came to then', () => {
    const plans = toCut(derived).map((section) => ({ ...section, ...planSection(section) }));
    const own = figuresOf(derived, plans, withSlowFindings(derived).findings);
    expect(figuresOfVariant(kept.variants[0]!)).toEqual({ ok: true, figures: own });
    // Counted by hand in the file that the demo is.
    expect(own).toMatchObject({ tubes: 30, sticks: { count: 6, bought: 1, without: 0 }, notMet: 4 });
  });

  it('a tube less shows in every figure that it has a part in, and in no other', () => {
    const after = keepVariant(without, 'Without tunnel brace', '');
    const [one, other] = after.variants.map((variant) => figuresOfVariant(variant));
    if (!one?.ok || !other?.ok) throw new Error('no figures');
    const rows = compareRows([one.figures, other.figures], { unit: 'in' });
    const differing = rows.filter(({ differ }) => differ).map(({ title }) => title);
    expect(differing).toEqual(
      expect.arrayContaining(['Tubes', 'Welded joints', 'Tube to cut, all together', 'Mass of the tubes']),
    );
    expect(differing).not.toContain('Bends');
    expect(rows.find(({ title }) => title === 'Tubes')!.texts).toEqual(['30', '29']);
    expect(compareRows([one.figures, null], { unit: 'in' }).every(({ differ }) => !differ)).toBe(true);
  });

  it('prints each price in the money of its own version', () => {
    const rates = (currency: string) => ({ currency, hourly: 60, minutes: { cope: 10 } });
    const [one, other] = ['EUR', 'crowns'].map((currency) =>
      figuresOf(derivedFrom(JSON.stringify({ ...JSON.parse(text), quote: { rates: rates(currency) } })), [], []),
    );
    const { texts, differ } = compareRows([one!, other!], { unit: 'mm' }).find(({ title }) => /price/iu.test(title))!;
    expect(texts[0]).toMatch(/^\d+\.\d\d EUR/u);
    expect(texts[1]).toMatch(/^\d+\.\d\d crowns/u);
    expect(differ).toBe(true);
  });

  it('counts a stick that was sawn once with its left-over, and as bought only what is still to buy', () => {
    const stick = { section: 'main', length: 6096, cost: 97, cuts: [], left: 3000 };
    const sawn = [
      { ...stick, id: 'w1', from: 'gone', kept: 'w1-left', bought: true },
      { ...stick, id: 'w2', from: 'w1-left', length: 3000, left: 10 },
      { ...stick, id: 'w3', from: 'other', length: 3000, left: 10, bought: true },
    ];
    const sticks = [{ id: 'buy', section: 'main', length: 6096, cost: 97 }];
    const after = derivedFrom(JSON.stringify({ ...JSON.parse(text), stock: { sticks, sawn } }));
    const plans = toCut(after).map((section) => ({ ...section, ...planSection(section) }));
    const planned = plans.reduce((sum, { plan }) => sum + plan.sticks.length, 0);
    expect(planned).toBeGreaterThan(0);
    expect(figuresOf(after, plans, []).sticks).toMatchObject({ count: planned + 2, bought: planned });
  });

  it('says from where the centre of mass is measured', () => {
    const titles = compareRows([null, null], { unit: 'mm' }).flatMap(({ title }) =>
      title.startsWith('Centre of mass') ? [title] : [],
    );
    expect(titles).toHaveLength(3);
    for (const title of titles) expect(title).toMatch(/of the car’s zero$|from the car’s zero$|of the centre plane$/u);
  });
});
