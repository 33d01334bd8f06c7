/** A stick that is sawn: what of the job changes, what goes back, and what the shop's rack then holds. */
import { describe, expect, it } from 'vitest';
import { addStick, addTestPieces, setSawing, updateSpare, updateStick } from '../../../src/core/edit/stock.ts';
import { MOST_STICK_SORTS } from '../../../src/core/job/limits.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { sawStick, unsaw as unsawn } from '../../../src/core/shape/saw-stick.ts';
import { stageOf } from '../../../src/core/shape/made-stage.ts';
import { leftOffRack, rackAfter, withRack } from '../../../src/core/shop/rack.ts';
import { EMPTY_SHOP, type Shop } from '../../../src/core/shop/types.ts';
import { planSection } from '../../../src/core/stock/of-job.ts';
import { toCut } from '../../../src/core/stock/to-cut.ts';
import { heatOf } from '../../../src/core/stock/heat.ts';
import { stickNumbers } from '../../../src/core/stock/saw-order.ts';
import type { CutPlan, CutStick } from '../../../src/core/stock/types.ts';
import { offListInWords, sawnInWords } from '../../../src/core/words/stock.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { checkPlan } from '../stock/checked.ts';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import { derived, inWords } from '../frame.ts';

const bar = (id: string, long: number, more: object = {}) => ({ id, path: [`${id}0`, `${id}1`], long, ...more });

/** Straight bars, square at their ends: each is as long to cut as it is drawn. */
function frameOf(bars: readonly (object & { id: string; long: number })[], stock: object) {
  const nodes = Object.fromEntries(
    bars.flatMap(({ id, long }, i) => [
      [`${id}0`, [0, 200 * i + 100, 0]],
      [`${id}1`, [long, 200 * i + 100, 0]],
    ]),
  );
  return derived({
    nodes,
    members: bars.map(({ long: _long, ...member }) => ({ ...member, ends: [{ fit: 'square' }, { fit: 'square' }] })),
    stock,
  });
}

/** One that is not refused. */
const unsaw = (...of: Parameters<typeof unsawn>): Job => unsawn(...of) as Job;

const BARS = [bar('sill', 1900), bar('hoop', 1300, { role: 'main hoop' }), bar('strut', 700)];
const RACK = {
  kerf: 2,
  squareOff: 10,
  keepFrom: 400,
  sticks: [
    { id: 'k1', section: 'main', length: 2500, count: 2, cost: 50, batch: 'H-1', rack: true },
    { id: 'k2', section: 'main', length: 2600, cost: 60 },
  ],
  spares: [{ section: 'main', length: 500, count: 1 }],
};
const frame = frameOf(BARS, RACK);
const plan = (of: typeof frame) => planSection(toCut(of)[0]!).plan;
const part = (id: string, length: number) => ({ id, spare: 0, length, batch: null });
const [first, second] = plan(frame).sticks as [CutStick, CutStick];
const on = { on: '2026-05-02', rest: { sticks: [], proven: false } };
const sawn = sawStick(frame.job, frame, first, on);
const frameAfter = (job: Job) => frameOf(BARS, { ...RACK, ...stockOf(job) });
const stockOf = ({ stickSorts, spares, sawn: those }: Job) => ({ sticks: stickSorts, spares, sawn: those });

describe('a stick that is sawn', () => {
  it('is the one with the hoop on it first, whatever else is longer', () => {
    expect(first.parts.map(({ id }) => id)).toEqual(['hoop', 'strut']);
    expect(second.parts.map(({ id }) => id)).toEqual(['sill', 'spare 0.0']);
  });

  it('takes one off the rack, cuts its tubes and puts what is left back', () => {
    expect(sawn.stickSorts).toEqual([
      { id: 'k1', section: 'main', length: 2500, count: 1, cost: 50, batch: 'H-1', rack: true },
      { id: 'k2', section: 'main', length: 2600, cost: 60 },
      // 2500 - 10 - (1300 + 2) - (700 + 2), at its part of 50 to the cent.
      { id: 'k3', section: 'main', length: 486, count: 1, cost: 9.72, batch: 'H-1', rack: true },
    ]);
    expect(['hoop', 'strut', 'sill'].map((id) => stageOf(sawn, id))).toEqual(['cut', 'cut', null]);
    expect(sawn.sawn).toMatchObject([{ batch: 'H-1', left: 486, kept: 'k3', on: '2026-05-02' }]);
    expect(sawn.sawn[0]!.cuts).toEqual([
      { tube: 'hoop', length: 1300 },
      { tube: 'strut', length: 700 },
    ]);
  });

  it('is out of the plan from then on, with all that was cut from it', () => {
    const derivedAfter = frameOf(BARS, { ...RACK, ...stockOf(sawn) });
    const section = toCut({ job: { ...derivedAfter.job, made: sawn.made }, tubes: derivedAfter.tubes })[0]!;
    expect(section.parts.map(({ id }) => id)).toEqual(['sill', 'spare 0.0']);
  });

  it('is not kept where too little is left, and one that was bought is on no rack', () => {
    const bought = sawStick(frame.job, frame, { stick: 'k2', parts: first.parts, left: 399 }, on);
    expect(bought.stickSorts).toEqual(frame.job.stickSorts);
    expect(bought.sawn[0]).toMatchObject({ bought: true, length: 2600 });
    expect(bought.sawn[0]).not.toHaveProperty('kept');
  });

  it('cuts its spares, and wants them again when it is put back', () => {
    const two = sawStick(frame.job, frame, second, on);
    expect(two.spares).toEqual([{ section: 'main', length: 500, count: 0 }]);
    expect(unsaw(two, frameAfter(two), two.sawn[0]!.id).spares).toEqual(frame.job.spares);
  });

  it('put back leaves the job as it was, but for what is further on', () => {
    const back = unsaw(sawn, frameAfter(sawn), 'w1');
    expect([back.stickSorts, back.sawn, back.made]).toEqual([frame.job.stickSorts, [], []]);
    const bent: Job = {
      ...sawn,
      made: sawn.made.map((each) => (each.tube === 'hoop' ? { ...each, stage: 'bent' } : each)),
    };
    expect(unsaw(bent, frameAfter(bent), 'w1').made.map(({ tube, stage }) => [tube, stage])).toEqual([
      ['hoop', 'bent'],
    ]);
  });

  it('is not put back while its left-over is gone, and its id is no other stick’s', () => {
    const used: Job = { ...sawn, stickSorts: sawn.stickSorts.filter(({ id }) => id !== 'k3') };
    expect(unsawn(used, frameAfter(used), 'w1')).toMatchObject([{ message: expect.stringContaining('left-over') }]);
    expect(addStick(used, 'main').stickSorts.at(-1)!.id).not.toBe('k3');
    const left = frameAfter(sawn);
    const both = sawStick(sawn, left, { stick: 'k3', parts: [part('spare', 400)], left: 74 }, on);
    expect(both.stickSorts.map(({ id }) => id)).toEqual(['k1', 'k2']);
    expect(both.sawn[1]).toMatchObject({ from: 'k3', length: 486 });
    expect(Array.isArray(unsawn(both, left, 'w1'))).toBe(true);
    // The other way round each comes back.
    const back = unsaw(unsaw(both, left, 'w2'), left, 'w1');
    expect(back.stickSorts).toEqual(frame.job.stickSorts);
  });

  it('wants the spare of the batch again that was cut, and no other of that length', () => {
    const of = frameOf(BARS, {
      ...RACK,
      spares: [
        { section: 'main', length: 500, count: 1, batch: 'H-1' },
        { section: 'main', length: 500, count: 1 },
      ],
    });
    const cut = sawStick(
      of.job,
      of,
      { stick: 'k2', parts: [{ id: 'spare 1.0', spare: 1, length: 500, batch: null }], left: 0 },
      on,
    );
    expect(cut.spares.map(({ count }) => count)).toEqual([1, 0]);
    expect(unsaw(cut, of, 'w1').spares).toEqual(of.job.spares);
  });

  it('that is not there changes nothing', () => {
    expect(sawStick(frame.job, frame, { ...first, stick: 'gone' }, on)).toBe(frame.job);
    expect(unsaw(frame.job, frame, 'w9')).toBe(frame.job);
  });
});

describe('the rack of the shop', () => {
  const shop: Shop = {
    ...EMPTY_SHOP,
    sections: [{ ...frame.job.sections[0]!, id: 's7' }],
    sticks: [
      { section: 's7', length: 2500, count: 2, batch: 'H-1', cost: 50 },
      { section: 's7', length: 6096, count: 0 },
    ],
  };

  it('is taken over by its section, beside what is to be bought', () => {
    const { stickSorts } = withRack(frame.job, shop);
    expect(stickSorts).toEqual([
      { id: 'k1', section: 'main', length: 2500, count: 2, batch: 'H-1', cost: 50, rack: true },
      { id: 'k2', section: 'main', length: 2600, cost: 60 },
    ]);
  });

  it('has one less once a job has sawn it, and its left-over; all as before when that is taken back', () => {
    const after = rackAfter(shop, [], sawn);
    expect(after.sticks).toEqual([
      { section: 's7', length: 2500, count: 1, batch: 'H-1', cost: 50 },
      { section: 's7', length: 6096, count: 0 },
      { section: 's7', length: 486, count: 1, batch: 'H-1', cost: 9.72 },
    ]);
    expect(rackAfter(after, sawn.sawn, { ...sawn, sawn: [] })).toEqual(shop);
    const last = rackAfter(after, sawn.sawn, { ...sawn, sawn: [...sawn.sawn, { ...sawn.sawn[0]!, id: 'w2' }] });
    expect(last.sticks.map(({ length, count }) => [length, count])).toEqual([
      [6096, 0],
      [486, 2],
    ]);
  });

  it('gets nothing back that it did not give', () => {
    const typed: Job = { ...frame.job, stickSorts: frame.job.stickSorts.map(({ rack: _rack, ...stick }) => stick) };
    const cut = sawStick(typed, frame, { ...first, left: 0 }, on);
    const none: Shop = { ...shop, sticks: [] };
    const after = rackAfter(none, [], cut);
    expect([after.sticks, rackAfter(after, cut.sawn, typed).sticks]).toEqual([[], []]);
  });

  it('stays as it is where it has no such stick, or no such section', () => {
    expect(rackAfter({ ...shop, sections: [] }, [], sawn)).toEqual({ ...shop, sections: [] });
    const none = rackAfter({ ...shop, sticks: [] }, [], sawn).sticks;
    expect(none).toMatchObject([{ length: 486, count: 1 }]);
  });
});

describe('a list that is full', () => {
  const sorts = Array.from({ length: MOST_STICK_SORTS }, (_, i) => ({
    id: `x${i}`,
    section: frame.job.sections[0]!.id,
    length: 1000 + i,
    count: 2,
  }));
  const full: Job = { ...frame.job, stickSorts: [...frame.job.stickSorts, ...sorts].slice(0, MOST_STICK_SORTS) };

  it('takes no left-over: the stick is sawn all the same, and it is said', () => {
    const cut = sawStick(full, frame, { ...first, left: 486 }, on);
    expect(cut.sawn).toHaveLength(1);
    expect(cut.sawn[0]).not.toHaveProperty('kept');
    expect(cut.stickSorts).toHaveLength(MOST_STICK_SORTS);
    expect(parseJob(serialiseJob(cut)).ok).toBe(true);
    expect(offListInWords(486, cut)).toMatch(/is not on the list of sticks: that is full with 200 kinds/u);
    expect(sawnInWords(1, ['Bar'], 486, cut)).toContain('not on the list');
    const roomy = sawStick(frame.job, frame, { ...first, left: 486 }, on);
    expect([offListInWords(486, roomy), offListInWords(20, sawStick(full, frame, { ...first, left: 20 }, on))]).toEqual(
      [null, null],
    );
  });

  it('of the shop takes the stick off all the same, and names what it has no room for', () => {
    const section = { ...frame.job.sections[0]!, id: 's7' };
    const one = { section: 's7', length: 2500, count: 2, batch: 'H-1', cost: 50 };
    const sticks = [one, ...sorts.slice(1).map(({ length }) => ({ section: 's7', length, count: 1 }))];
    const shop: Shop = { ...EMPTY_SHOP, sections: [section], sticks };
    const after = rackAfter(shop, [], sawn);
    expect(after.sticks).toEqual([{ ...one, count: 1 }, ...sticks.slice(1)]);
    expect(leftOffRack(shop, [], sawn)).toMatchObject([{ length: 486 }]);
    expect(leftOffRack({ ...shop, sticks: [one] }, [], sawn)).toEqual([]);
  });
});

describe('what has no stick', () => {
  const found = (bars: typeof BARS, sticks: object[]) => {
    const of = frameOf(bars, { ...RACK, spares: [], sticks });
    return [planSection(toCut(of)[0]!).wanting, of] as const;
  };

  it('is found with what to get: a longer one, so many more, or of that batch', () => {
    const short = [{ id: 'k1', section: 'main', length: 1500, count: 1 }];
    expect(found(BARS, short)[0].map(({ why, count, length, batch }) => [why, count, length, batch])).toEqual([
      ['too-long', 1, 1910, null],
      ['too-few', 1, 1500, null],
    ]);
    const ofBatch = [bar('a', 1400, { batch: 'H-9' }), bar('b', 1000, { batch: 'H-9' })];
    expect(found(ofBatch, short)[0]).toMatchObject([{ why: 'batch', count: 2, length: 1500, batch: 'H-9' }]);
  });

  it('is said of the tube, in words', () => {
    const of = frameOf(BARS, { ...RACK, sticks: [{ id: 'k1', section: 'main', length: 1500, count: 1 }] });
    expect(stockWords(of)).toEqual([
      'sill: 1900.0 mm to cut, and no stick of main in this job is that long. Get one of 1910.0 mm or more.',
      'strut: 700.0 mm to cut, and too little of main is there. Get 1 more stick of 1500.0 mm for it and 1 other part.',
    ]);
  });
});

const stockWords = (of: typeof frame) =>
  inWords(of, withSlowFindings(of).findings).flatMap(({ id, message }) => (id === 'stock/no-stick' ? [message] : []));

describe('edits of what there is to cut from', () => {
  it('nothing in a field takes it out, and what is so already changes nothing', () => {
    const { job } = frame;
    expect(updateStick(job, 'k1', { count: null, batch: '' }).stickSorts[0]).toEqual({
      id: 'k1',
      section: 'main',
      length: 2500,
      cost: 50,
    });
    expect(updateStick(job, 'k1', { count: 3 }).stickSorts[0]).toHaveProperty('rack');
    expect(updateStick(job, 'k1', { count: 2 })).toBe(job);
    expect(updateStick(job, 'k2', { count: null })).toBe(job);
    expect(updateSpare(job, 0, { batch: null })).toBe(job);
    expect(updateSpare(job, 0, { count: 3 }).spares).toEqual([{ section: 'main', length: 500, count: 3 }]);
    expect(setSawing(job, { kerf: 2 })).toBe(job);
    expect(setSawing({ ...job, stock: {} }, { kerf: 2.5, keepFrom: 300 }).stock).toEqual({});
  });

  it('a piece to test with comes of every batch that is bent, once', () => {
    const bent = { ...frame.job.members[0]!, batch: 'H-1', die: 'd' };
    const straight = { ...bent, id: 'straight', batch: 'H-2' };
    const { die: _, ...noDie } = straight;
    const job: Job = { ...frame.job, spares: [], members: [bent, { ...bent, id: 'twice' }, noDie] };
    const tested = addTestPieces(job);
    expect(tested.spares).toEqual([{ section: 'main', batch: 'H-1', length: 609.6, count: 1 }]);
    expect(addTestPieces(tested)).toBe(tested);
  });
});

describe('a plan that is being sawn', () => {
  const stillToSaw = (of: CutPlan, numbers: readonly number[], without: number) => ({
    sticks: of.sticks.flatMap((stick, i) => (i === without ? [] : [{ ...stick, number: numbers[i]! }])),
    proven: true,
  });
  const named = ({ sticks }: CutPlan) => sticks.map(({ stick, parts }) => [stick, parts.map(({ id }) => id)]);

  it('goes on as it was printed, stick by stick, with its numbers, to the last', () => {
    let now = derivedFrom(demoText());
    const whole = toCut(now).map(planSection);
    const numbers = stickNumbers(
      toCut(now).map((section, i) => ({ ...section, ...whole[i]! })),
      now.job,
    );
    expect(numbers.flat()).toEqual([1, 2, 3, 4, 5, 6]);
    const light = whole[1]!.plan;
    // The last one first: nobody has to go by the numbers.
    for (const [at, left] of [
      [2, [4, 5]],
      [0, [5]],
    ] as const) {
      const section = toCut(now)[1]!;
      const { plan: before } = planSection(section);
      const own = before.sticks.map(({ number }, i) => number ?? numbers[1]![i]!);
      const job = sawStick(now.job, now, before.sticks[at]!, { on: '', rest: stillToSaw(before, own, at) });
      now = derivedFrom(serialiseJob(job));
      const { plan } = planSection(toCut(now)[1]!);
      expect(plan.sticks.map(({ number }) => number)).toEqual(left);
      expect(named(plan)).toEqual(named({ ...before, sticks: before.sticks.filter((_, i) => i !== at) }));
      expect(plan.leastCost).toBe(plan.cost);
      checkPlan(plan, toCut(now)[1]!.parts, toCut(now)[1]!.sticks, toCut(now)[1]!.sawing);
      expect(
        stickNumbers(
          toCut(now).map((each) => ({ ...each, ...planSection(each) })),
          now.job,
        )[0],
      ).toEqual([1, 2, 3]);
    }
    expect(light.sticks).toHaveLength(3);
  });

  it('is dropped as soon as it is of something else', () => {
    const begun = [{ stick: 'k1', number: 2, cuts: [{ tube: 'sill' }, { spare: 0 }] }];
    const of = (stock: object) => frameOf(BARS.slice(0, 1), { ...RACK, begun, ...stock });
    const numberOf = (stock: object) => planSection(toCut(of(stock))[0]!).plan.sticks[0]!.number;
    expect(numberOf({})).toBe(2);
    expect(numberOf({ spares: [] })).toBeUndefined();
    expect(numberOf({ spares: [{ section: 'main', length: 500, count: 2 }] })).toBeUndefined();
    expect(numberOf({ kerf: 20, squareOff: 100 })).toBeUndefined();
    expect(numberOf({ sticks: RACK.sticks.slice(1) })).toBeUndefined();
    expect(numberOf({ begun: [{ ...begun[0], cuts: [{ tube: 'gone' }] }] })).toBeUndefined();
  });
});

describe('the heat of a tube', () => {
  it('is that of the stick that it was sawn from, then what its member says', () => {
    expect(heatOf(sawn, { id: 'hoop', member: { batch: 'H-7' } })).toBe('H-1');
    expect(heatOf(sawn, { id: 'sill', member: { batch: 'H-7' } })).toBe('H-7');
    expect(heatOf(sawn, { id: 'sill', member: {} })).toBeUndefined();
  });
});
