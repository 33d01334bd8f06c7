import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { counterparts } from '../../../src/core/shop/counterparts.ts';
import { allThatDiffers, differences } from '../../../src/core/shop/differences.ts';
import { given, jobFrom, taken } from '../../../src/core/shop/exchange.ts';
import { parseShop } from '../../../src/core/shop/parse.ts';
import { EMPTY_SHOP, type Shop } from '../../../src/core/shop/types.ts';
import { differenceInWords } from '../../../src/core/words/shop.ts';
import { sampleFile } from '../job/sample.ts';
import { shopFile } from './sample.ts';

function sampleShop(): Shop {
  const parsed = parseShop(JSON.stringify(shopFile()));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.shop;
}

/** What the shop has, with the tubes of the sample drawn in it. */
function sampleJob(): Job {
  const parsed = parseJob(JSON.stringify(sampleFile()));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const { nodes, points, members } = parsed.job;
  return { ...jobFrom(shop, 'in'), nodes, points, members };
}

const shop = sampleShop();
const job = sampleJob();
const words = (theShop: Shop, theJob: Job) =>
  differences(theShop, theJob).map((one) =>
    differenceInWords(one, theJob.lengthUnit, (id) => theJob.dies.find((die) => die.id === id)!.name)
      // A length is not broken over two lines.
      .replaceAll('\u00a0', ' '),
  );
const withDie = (fields: object, at = 0): Job => ({
  ...job,
  dies: job.dies.map((die, i) => (i === at ? { ...die, ...fields } : die)),
});

describe('which record is which', () => {
  const idsOf = (theJob: Job) =>
    [...counterparts(theJob, shop).dies].map(([ours, { id }]) => `${ours}=${id}`).toSorted();

  it('goes by id and tube, and by the radius or the name', () => {
    expect(idsOf(job)).toEqual(['d1=d1', 'd2=d2']);
    expect(idsOf(withDie({ centrelineRadius: 153 }))).toEqual(['d1=d1', 'd2=d2']);
    expect(idsOf(withDie({ name: 'The big one' }))).toEqual(['d1=d1', 'd2=d2']);
  });

  it('does not take another die for the same one since both are the first of their job', () => {
    expect(idsOf(withDie({ name: '7 in CLR', centrelineRadius: 177.8 }))).toEqual(['d2=d2']);
    expect(idsOf(withDie({ outerDiameter: 38.1 }))).toEqual(['d2=d2']);
  });

  it('finds a die of just its sizes under another id, and gives it to one alone', () => {
    const swapped = {
      ...job,
      dies: [
        { ...job.dies[1]!, id: 'd1' },
        { ...job.dies[0]!, id: 'd2' },
        { ...job.dies[0]!, id: 'd9' },
      ],
    };
    expect(idsOf(swapped)).toEqual(['d1=d2', 'd2=d1']);
  });
});

describe('differences', () => {
  it('are none in a job that the shop has begun, and none of what the shop alone has', () => {
    expect(differences(shop, job)).toEqual([]);
    expect(differences(shop, { ...job, dies: job.dies.slice(0, 1), sections: job.sections.slice(0, 1) })).toEqual([]);
    expect(differences(EMPTY_SHOP, job)).toEqual([]);
  });

  it('give each field as it stands here and there', () => {
    expect(differences(shop, withDie({ clampOffset: 120, greatestAngle: 90, name: 'Other' }))).toEqual([
      {
        kind: 'die/otherwise',
        id: 'd1',
        name: 'Other',
        fields: [
          { field: 'clampOffset', inShop: 114.3, inJob: 120 },
          { field: 'greatestAngle', inShop: 120, inJob: 90 },
        ],
      },
    ]);
  });

  it('are not made by what arithmetic leaves of a length', () => {
    const wall = (0.1 + 0.2) * 10;
    expect(wall).not.toBe(3);
    const typed = { ...job, sections: job.sections.map((section) => ({ ...section, wall })) };
    const there = { ...shop, sections: shop.sections.map((section) => ({ ...section, wall: 3 })) };
    expect(differences(there, typed)).toEqual([]);
  });

  it('are silent on what the job has and does not use', () => {
    const more = { ...job.dies[0]!, id: 'd5', name: '9 in CLR', centrelineRadius: 228.6 };
    const spare = { ...job, dies: [...job.dies, more] };
    expect(differences(shop, spare)).toEqual([]);
    expect(allThatDiffers(shop, spare).map(({ kind }) => kind)).toEqual(['die/not-in-shop']);
    const used = { ...spare, members: spare.members.map((member) => (member.die ? { ...member, die: 'd5' } : member)) };
    expect(differences(shop, used)).toEqual([{ kind: 'die/not-in-shop', id: 'd5', name: '9 in CLR' }]);
  });

  it('tell the one machine of the shop from those of the dies of a job', () => {
    const [first, second] = job.dies as [(typeof job.dies)[0], (typeof job.dies)[0]];
    const { bender, ...bare } = second;
    const other = { ...job, dies: [{ ...first, bender: { ...bender!, turns: 'right' as const } }, bare] };
    expect(differences(shop, other)).toEqual([
      { kind: 'bender/otherwise', dies: ['d1'], fields: [{ field: 'turns', inShop: 'left', inJob: 'right' }] },
      { kind: 'bender/not-in-job', dies: ['d2'] },
    ]);
  });

  it('count the pulls that only one log has, of the dies and sections that tubes are made with', () => {
    const pull = { die: 'd1', section: 'main', pulled: 93, net: 90, on: '' };
    const of = (pulls: Job['pulls']) =>
      differences(shop, { ...job, pulls }).map((one) => [one.kind, 'count' in one && one.count]);
    expect(of([...job.pulls, pull, pull])).toEqual([['pulls/not-in-shop', 2]]);
    expect(of([])).toEqual([['pulls/not-in-job', 1]]);
    // That of d2, which no tube is bent on, is nothing to ask about.
    expect(of(job.pulls.slice(0, 1))).toEqual([]);
    // The bend that it was read on is the job's own matter.
    expect(of(job.pulls.map((one) => ({ ...one, tube: 'hoop', bend: 1 })))).toEqual([]);
  });
});

describe('in words', () => {
  it('say what stands on either side, in the unit of the job', () => {
    expect(words(shop, withDie({ clampOffset: 120.65, radius: 'from-pulls' }))).toEqual([
      'Die 6 in CLR. Clamp before start of bend: shop 4 1/2 in, this job 4 3/4 in; radius that bends are laid out with: shop as the die says, this job as the pulls say.',
    ]);
    const { stick: _, ...section } = job.sections[0]!;
    const metric = {
      ...job,
      lengthUnit: 'mm' as const,
      sections: [{ ...section, material: 'e235-n' }, job.sections[1]!],
    };
    expect(words(shop, metric)).toEqual([
      'Section 1 3/4 x .120. Material: shop 1020 DOM, as drawn, this job E235+N; length of its sticks: shop 6096.0 mm, this job not given.',
    ]);
  });

  it('say of a machine which dies are used in it, of a room how much stands in it, and where that is alike no more than that', () => {
    const bender = job.dies[0]!.bender!;
    const emptied = { ...job, dies: job.dies.map((die) => ({ ...die, bender: { ...bender, room: [] } })) };
    expect(words(shop, emptied)).toEqual([
      'The bender of 6 in CLR and 4 1/2 in CLR. Room round it: shop 2 things, this job 0 things.',
    ]);
    const room = bender.room.toReversed();
    expect(words(shop, { ...job, dies: job.dies.map((die) => ({ ...die, bender: { ...bender, room } })) })).toEqual([
      'The bender of 6 in CLR and 4 1/2 in CLR. Room round it not the same.',
    ]);
  });

  it('count pulls', () => {
    expect(words(shop, { ...job, pulls: [] })).toEqual([
      'The shop’s log has 1 pull of 1 3/4 x .120 on 6 in CLR that this job has not.',
    ]);
  });

  it('shorten a name that is too long', () => {
    const [line] = words(shop, withDie({ name: 'x'.repeat(300), clampOffset: 1 }));
    expect(line!.length).toBeLessThan(320);
  });
});

describe('into the shop', () => {
  it('another die under a taken id comes under one of its own, with its pulls, and is found there', () => {
    const [first, ...rest] = job.dies;
    const foreign: Job = { ...job, dies: [{ ...first!, name: '7 in CLR', centrelineRadius: 177.8 }, ...rest] };
    const there = given(shop, foreign, differences(shop, foreign));
    expect(there.dies.map(({ id, name }) => [id, name])).toEqual([
      ['d1', '6 in CLR'],
      ['d2', '4 1/2 in CLR'],
      ['d3', '7 in CLR'],
    ]);
    expect(there.pulls.filter(({ die }) => die === 'd3')).toEqual([{ ...job.pulls[0]!, die: 'd3' }]);
    expect(there.dies.some((die) => 'bender' in die)).toBe(false);
    expect(differences(there, foreign)).toEqual([]);
  });

  it('nothing a second time', () => {
    const there = given(EMPTY_SHOP, job, allThatDiffers(EMPTY_SHOP, job));
    expect(there.pulls).toEqual(shop.pulls);
    expect(there.bender).toEqual(shop.bender);
    expect(given(there, job, allThatDiffers(there, job))).toEqual(there);
    expect(given(there, job, allThatDiffers(EMPTY_SHOP, job)).pulls).toEqual(there.pulls);
  });

  it('what is taken from it leaves what the job alone has', () => {
    const pull = { die: 'd1', section: 'main', pulled: 93, net: 90, on: '' };
    const mine: Job = { ...withDie({ clampOffset: 1 }), pulls: [pull] };
    const next = taken(mine, shop, differences(shop, mine));
    expect(next.dies).toEqual(job.dies);
    expect(next.pulls).toEqual([pull, shop.pulls[0]]);
    expect(next.members).toBe(mine.members);
    expect(differences(shop, next).map(({ kind }) => kind)).toEqual(['pulls/not-in-shop']);
  });
});

describe('what ends are cut with', () => {
  const { tools, ...without } = job;

  it('comes with a new job whole, and is no difference then', () => {
    const { notchers, saws, benchSaw } = shopFile();
    expect(tools).toEqual({ notchers, saws, benchSaw });
    expect(differences(shop, job)).toEqual([]);
    expect(jobFrom(EMPTY_SHOP, 'in')).not.toHaveProperty('tools');
  });

  it('is asked about where the job has none or others and a tube to cut; taken, it is the shop’s', () => {
    const none = 'The shop’s notchers and saws are not in this job: its recipes are general.';
    const others = 'The shop’s notchers and saws are not those of this job: its recipes go by its own.';
    for (const [other, said] of [
      [without, none],
      [{ ...job, tools: { notchers: [], saws: [] } }, none],
      [{ ...job, tools: { notchers: [], saws: [{ diameter: 51 }] } }, others],
    ] as const) {
      expect(words(shop, other)).toEqual([said]);
      expect(taken(other, shop, differences(shop, other)).tools).toEqual(tools);
      expect(differences(shop, { ...other, members: [] })).toEqual([]);
    }
  });

  it('goes from a job into a shop that has none, with all that the job has; nobody is asked', () => {
    const bare = { ...shop, notchers: [], saws: [] };
    delete (bare as { benchSaw?: number }).benchSaw;
    expect(differences(bare, job)).toEqual([]);
    expect(given(bare, job, allThatDiffers(bare, job))).toEqual(shop);
  });

  it('given, it is the job’s alone, and nothing is asked again', () => {
    // Of another shop's file: no bench saw, and a key that is nobody's here.
    const others = { notchers: [], saws: [{ diameter: 51 }], sections: [], format: 'of their own' };
    const foreign: Job = { ...job, tools: others };
    const { benchSaw: _, ...rest } = shop;
    const there = given(shop, foreign, differences(shop, foreign));
    expect(there).toEqual({ ...rest, notchers: [], saws: [{ diameter: 51 }] });
    expect(differences(there, foreign)).toEqual([]);
    expect(allThatDiffers(there, foreign)).toEqual([]);
    expect(given(shop, without, differences(shop, without))).toEqual(shop);
  });
});

describe('what a job is quoted with', () => {
  it('comes with a new job, is asked about where a job has none or others, and goes both ways', () => {
    const { rates } = shop;
    expect(job.quote).toEqual({ rates });
    const { quote: _, ...none } = job;
    const other: Job = { ...job, quote: { rates: { hourly: 70 }, customer: 'A customer' } };
    expect(words(shop, none)).toEqual(['The shop’s rates and prices are not in this job: its quote has none.']);
    expect(words(shop, other)).toEqual([
      'The shop’s rates and prices are not those of this job: its quote goes by its own.',
    ]);
    expect(taken(other, shop, differences(shop, other)).quote).toEqual({ rates, customer: 'A customer' });
    expect(given(shop, other, differences(shop, other)).rates).toEqual({ hourly: 70 });
    expect(differences(shop, { ...none, members: [] })).toEqual([]);
    const { rates: __, ...bare } = shop;
    expect(differences(bare, job)).toEqual([]);
    expect(given(bare, job, allThatDiffers(bare, job))).toEqual(shop);
  });
});
