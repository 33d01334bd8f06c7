/**
 * The two logs of pulls. A pull has no id: two are the same where all that was read is, and of such as many count as were
 * logged. In the shop's log stands no tube and no bend, since those are the job's; die and section go by the shop's ids.
 */
import { batchKey } from '../job/batch.ts';
import { MOST_PULLS } from '../job/limits.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Job } from '../job/types.ts';
import { beyond } from './beyond.ts';
import { counterparts, type Counterparts } from './counterparts.ts';
import type { Shop } from './types.ts';

/** The job's pull as the shop logs it; null where the shop has not its die, or not its section. */
export function asLogged(pull: Pull, { dies, sections }: Counterparts): Pull | null {
  const { tube: _tube, bend: _bend, ...read } = pull;
  const [die, section] = [dies.get(pull.die), sections.get(pull.section)];
  return die === undefined || section === undefined ? null : { ...read, die: die.id, section: section.id };
}

/** All of the job's, as far as the shop can log them. */
export const allLogged = (pulls: readonly Pull[], found: Counterparts): readonly Pull[] =>
  pulls.flatMap((pull) => asLogged(pull, found) ?? []);

/** Those for which there is no equal one among the others, each of which stands for one. */
export const unlogged = (pulls: readonly Pull[], others: readonly Pull[]): readonly Pull[] =>
  beyond(pulls, others, keyOf);

const keyOf = ({ die, section, batch, pulled, net, on }: Pull): string =>
  JSON.stringify([die, section, batchKey(batch), pulled, net, on]);

/** The shop with these in its log as well. It holds 1000 like a job's: beyond that the oldest are let go. */
export const withPulls = (shop: Shop, pulls: readonly Pull[]): Shop =>
  pulls.length === 0 ? shop : { ...shop, pulls: [...shop.pulls, ...pulls].slice(-MOST_PULLS) };

/** The shop, and of its log what this session has put there. */
export interface Followed {
  readonly shop: Shop;
  readonly own: readonly Pull[];
}

/**
 * After an edit of a job: what it has logged goes to the shop's log too, unless that has it already. What it takes out of its log
 * stays in the shop's, since it was read there, except what this session has put there: a reading that is taken back or put
 * right a minute later never was.
 */
export function followed(state: Followed, before: readonly Pull[], job: Job): Followed {
  const { shop, own } = state;
  const found = counterparts(job, shop);
  const [those, these] = [allLogged(before, found), allLogged(job.pulls, found)];
  const gone = inBoth(own, unlogged(those, these));
  const left = gone.length === 0 ? shop : { ...shop, pulls: unlogged(shop.pulls, gone) };
  const news = inBoth(unlogged(these, those), unlogged(these, left.pulls));
  if (gone.length + news.length === 0) return state;
  return { shop: withPulls(left, news), own: [...unlogged(own, gone), ...news] };
}

/** Those of the first that stand in the second as well. */
function inBoth(pulls: readonly Pull[], others: readonly Pull[]): readonly Pull[] {
  const rest = new Set(unlogged(pulls, others));
  return pulls.filter((pull) => !rest.has(pull));
}
