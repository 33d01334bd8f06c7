/** Batches as a person reads them off the steel: typed now so, now so. */
import { describe, expect, it } from 'vitest';
import { batchesOnce, batchKey, isSameBatch } from '../../../src/core/job/batch.ts';
import { certificatesOf } from '../../../src/core/job/kinds/certificate.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { addTestPieces } from '../../../src/core/edit/stock.ts';
import { sawStick, unsaw } from '../../../src/core/shape/saw-stick.ts';
import { rackAfter } from '../../../src/core/shop/rack.ts';
import { EMPTY_SHOP } from '../../../src/core/shop/types.ts';
import { pullLaw } from '../../../src/core/springback/pull-law.ts';
import { heatOf } from '../../../src/core/stock/heat.ts';
import { planSection } from '../../../src/core/stock/of-job.ts';
import { toCut } from '../../../src/core/stock/to-cut.ts';
import { fewTubes } from '../../few-tubes.ts';

const WAYS = ['H-204', 'h-204 ', ' H-204', 'h-204\u00a0'];

it('letter case and blanks make no other batch; blanks alone are none', () => {
  for (const way of WAYS) expect(isSameBatch(way, 'H-204')).toBe(true);
  expect(isSameBatch('H 204  b', 'h 204 B')).toBe(true);
  expect(isSameBatch('H-204', 'H-2041')).toBe(false);
  expect(isSameBatch('H 204', 'H204')).toBe(false);
  expect(isSameBatch(undefined, '')).toBe(true);
  expect(isSameBatch(undefined, 'H-204')).toBe(false);
  expect([batchKey('  '), batchKey(undefined), batchKey(null)]).toEqual([null, null, null]);
  expect(batchesOnce([{}, { batch: 'h-204 ' }, { batch: 'H-204' }, { batch: ' ' }, { batch: 'K1' }])).toEqual([
    'h-204 ',
    'K1',
  ]);
});

describe('in a job whose batches are typed now so, now so', () => {
  const parsed = parseJob(fewTubes());
  if (!parsed.ok) throw new Error('the job cannot be read');
  const section = parsed.job.members[0]!.section;
  const job: Job = {
    ...parsed.job,
    members: parsed.job.members.map((member, i) => ({ ...member, section, batch: WAYS[i % WAYS.length]! })),
    stickSorts: [{ id: 'k1', section, length: 6096, count: 20, batch: 'H-204' }],
    spares: [{ section, length: 300, count: 2, batch: 'h-204' }],
    stock: {},
    sawn: [],
    made: [],
    certificates: [{ batch: 'h-204', certificate: 'EN 10204' }],
  };
  const derivation = derive(job);
  if (!derivation.ok) throw new Error('it cannot be derived');
  const frame = derivation.value;
  const cut = toCut(frame).find((each) => each.section === section)!;

  it('the plan finds the sticks, and what is typed stays in the file', () => {
    const { plan, wanting } = planSection(cut);
    expect(plan.unplaced).toEqual([]);
    expect(wanting).toEqual([]);
    const again = parseJob(serialiseJob(job));
    expect(again.ok && again.job.members.map(({ batch }) => batch)).toEqual(job.members.map(({ batch }) => batch));
  });

  it('the certificate is of every tube, and a test piece is there already', () => {
    for (const tube of frame.tubes) {
      const batch = heatOf(job, tube)!;
      expect(certificatesOf(job.certificates, { batch, section: tube.section.id })).toHaveLength(1);
    }
    expect(addTestPieces(job)).toBe(job);
  });

  it('a stick that was sawn goes back to those that it is of, and its spare to its record', () => {
    const stick = planSection(cut).plan.sticks.find(({ parts }) => parts.some(({ spare }) => spare !== null))!;
    const sawn = sawStick(job, frame, stick, { on: '', rest: { sticks: [], proven: false } });
    const typed = {
      ...sawn,
      sawn: sawn.sawn.map((each) => ({ ...each, batch: ' H-204 ' })),
    };
    const back = unsaw(typed, frame, sawn.sawn[0]!.id);
    if (!('stickSorts' in back)) throw new Error('refused');
    expect(back.stickSorts).toEqual(job.stickSorts);
    expect(back.spares).toEqual(job.spares);
  });

  it('the rack of the shop is of the same sticks, and pulls of that batch are its own', () => {
    const [one] = job.sections.filter(({ id }) => id === section);
    const shop = { ...EMPTY_SHOP, sections: [one!], sticks: [{ section, length: 6096, count: 3, batch: 'h-204' }] };
    const after = rackAfter(shop, [], {
      ...job,
      sawn: [{ id: 'w1', section, length: 6096, batch: 'H-204 ', cuts: [], left: 0, rack: true, on: '' }],
    });
    expect(after.sticks[0]!.count).toBe(2);
    const die = job.dies[0]!;
    const pull = { die: die.id, section, pulled: 95, net: 90, on: '' };
    const law = pullLaw([{ ...pull, batch: 'h-204' }, pull], die, one!, 'H-204');
    expect(law?.pulls).toHaveLength(1);
  });
});
