import { expect, it } from 'vitest';
import { MOST_PULLS } from '../../../src/core/job/limits.ts';
import type { Pull } from '../../../src/core/job/kinds/pull.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { jobFrom } from '../../../src/core/shop/exchange.ts';
import { followed, type Followed } from '../../../src/core/shop/log.ts';
import type { Shop } from '../../../src/core/shop/types.ts';
import { shopFile } from './sample.ts';

const shop = shopFile() as unknown as Shop;
const job = jobFrom(shop, 'in');
const reading = (pulled: number, net: number): Pull => ({ die: 'd1', section: 'main', pulled, net, on: '2026-05-01' });
const start: Followed = { shop, own: [] };

/** Edits of the job's log one after another. */
function through(...logs: readonly Job['pulls'][]): Followed {
  return logs.reduce(
    ({ state, before }, pulls) => ({ state: followed(state, before, { ...job, pulls }), before: pulls }),
    { state: start, before: job.pulls },
  ).state;
}
const news = ({ shop: { pulls } }: Followed) => pulls.slice(shop.pulls.length);

it('what a job logs stands in the shop’s log as well, without the tube that it was read on', () => {
  const logged = [...job.pulls, { ...reading(93, 90), tube: "hoop'", bend: 2 }];
  expect(news(through(logged))).toEqual([reading(93, 90)]);
});

it('two readings alike are two, and an edit of something else adds nothing', () => {
  const two = [...job.pulls, reading(93, 90), reading(93, 90)];
  expect(news(through(two.slice(0, -1), two, two.toReversed()))).toEqual([reading(93, 90), reading(93, 90)]);
});

it('what the shop has already is not logged again', () => {
  expect(followed(start, [], { ...job, pulls: shop.pulls })).toBe(start);
});

it('a reading that is put right, undone or done again leaves one', () => {
  const [misread, right] = [
    [...job.pulls, reading(39, 90)],
    [...job.pulls, reading(93, 90)],
  ];
  expect(news(through(misread, right))).toEqual([reading(93, 90)]);
  expect(news(through(misread, job.pulls))).toEqual([]);
  expect(news(through(misread, job.pulls, misread))).toEqual([reading(39, 90)]);
});

it('what was there before this session stays when a job takes it out of its log', () => {
  expect(through([]).shop).toBe(shop);
  expect(through([], job.pulls).shop).toBe(shop);
});

it('a pull on a die that the shop has not stays with the job', () => {
  const dies = [...job.dies, { ...job.dies[0]!, id: 'd7', centrelineRadius: 300 }];
  const foreign = { ...job, dies, pulls: [...job.pulls, { ...reading(93, 90), die: 'd7' }] };
  expect(followed(start, job.pulls, foreign)).toBe(start);
});

it('a full log lets its oldest go', () => {
  const full = Array.from({ length: MOST_PULLS }, (_, i) => reading(1 + i / 100, 1));
  const logged = [...job.pulls, reading(93, 90)];
  const { shop: after } = followed({ shop: { ...shop, pulls: full }, own: [] }, job.pulls, { ...job, pulls: logged });
  expect(after.pulls).toHaveLength(MOST_PULLS);
  expect([after.pulls[0], after.pulls.at(-1)]).toEqual([full[1], reading(93, 90)]);
});
