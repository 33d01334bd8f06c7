/**
 * What passes between shop and job: a new job from the shop, the shop's records into a job, a job's into the shop. Differences say
 * what passes; they are those of the same shop and job.
 */
import { emptyJob } from '../job/empty-job.ts';
import { FIRST_ACCURACY } from '../job/kinds/accuracy.ts';
import { NEW_MARKING } from '../job/kinds/marking.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Section } from '../job/kinds/section.ts';
import type { Tools } from '../job/kinds/tools.ts';
import type { Job } from '../job/types.ts';
import type { LengthUnit } from '../units/length.ts';
import { counterparts } from './counterparts.ts';
import type { Difference } from './differences.ts';
import { freeId } from './free-id.ts';
import type { ShopDie } from './kinds/die.ts';
import { shopKindOf } from './kinds.ts';
import { allLogged, asLogged, unlogged, withPulls } from './log.ts';
import { toolsOf } from './tools.ts';
import type { Shop } from './types.ts';

/** A job with nothing drawn in it: the shop's sections, its dies on its bender, its log, its way of marking, the room its torch wants, how its bends scatter, how it saws, what it cuts ends with and what it quotes with. */
export function jobFrom(shop: Shop, lengthUnit: LengthUnit): Job {
  const { sections, dies, pulls, marking = NEW_MARKING, torchGap, torchRoom, scatter, sawing, rates } = shop;
  const tools = toolsOf(shop);
  return {
    ...emptyJob(lengthUnit),
    marking,
    ...(torchGap !== undefined && { torchGap }),
    ...(torchRoom !== undefined && { torchRoom }),
    ...(scatter && { accuracy: { ...FIRST_ACCURACY, ...scatter } }),
    ...(tools && { tools }),
    ...(sawing && { stock: sawing }),
    ...(rates && { quote: { rates } }),
    sections,
    dies: dies.map((die) => onBender(die, shop.bender)),
    pulls,
  };
}

const onBender = (die: ShopDie, bender: Bender | undefined): Die => (bender === undefined ? die : { ...die, bender });

function offBender(die: Die): ShopDie {
  const { bender: _, ...rest } = die;
  return rest;
}

/** The job with the shop's in these; what the shop has not stays as it is. Ids in the job stay: its tubes go by them. */
export function taken(job: Job, shop: Shop, differences: readonly Difference[]): Job {
  const found = counterparts(job, shop);
  const concerned = (kind: Difference['kind']) => concernedBy(differences, kind);
  const [sectionsTaken, diesTaken] = [concerned('section/otherwise'), concerned('die/otherwise')];
  const onShopsBender = new Set([...concerned('bender/otherwise'), ...concerned('bender/not-in-job')]);
  const sections = mapKeeping(job.sections, (section): Section => {
    const there = found.sections.get(section.id);
    return there !== undefined && sectionsTaken.has(section.id) ? { ...there, id: section.id } : section;
  });
  const dies = mapKeeping(job.dies, (die): Die => {
    const there = found.dies.get(die.id);
    const next = there !== undefined && diesTaken.has(die.id) ? { ...onBender(there, die.bender), id: die.id } : die;
    return onShopsBender.has(die.id) ? onBender(next, shop.bender) : next;
  });
  const news = differences.flatMap((one): readonly Pull[] => {
    if (one.kind !== 'pulls/not-in-job') return [];
    const { die, section } = one;
    const pair = { die, section, pulled: 0, net: 0, on: '' };
    const there = asLogged(pair, found);
    if (there === null) return [];
    const theirs = shop.pulls.filter((pull) => pull.die === there.die && pull.section === there.section);
    return unlogged(theirs, allLogged(job.pulls, found)).map((pull) => ({ ...pull, die, section }));
  });
  const pulls = news.length === 0 ? job.pulls : [...job.pulls, ...news];
  const tools = about(differences, 'tools') ? toolsOf(shop) : job.tools;
  const quote = about(differences, 'rates') && shop.rates ? { ...job.quote, rates: shop.rates } : job.quote;
  return sections === job.sections &&
    dies === job.dies &&
    pulls === job.pulls &&
    tools === job.tools &&
    quote === job.quote
    ? job
    : { ...job, ...(tools && { tools }), ...(quote && { quote }), sections, dies, pulls };
}

/**
 * The shop with the job's in these; what the job has not stays as it is. Of two machines in one job the first is the shop's. Pulls
 * go in where the shop has their die and section by then.
 */
export function given(shop: Shop, job: Job, differences: readonly Difference[]): Shop {
  const found = counterparts(job, shop);
  const concerned = (...kinds: readonly Difference['kind'][]) =>
    new Set(kinds.flatMap((kind) => [...concernedBy(differences, kind)]));
  const ofSections = concerned('section/otherwise', 'section/not-in-shop');
  const ofDies = concerned('die/otherwise', 'die/not-in-shop');
  const sections = job.sections
    .filter(({ id }) => ofSections.has(id))
    .reduce(
      (list, section) => put(list, section, found.sections.get(section.id), shopKindOf('sections').letter),
      shop.sections,
    );
  const dies = job.dies
    .filter(({ id }) => ofDies.has(id))
    .reduce((list, die) => put(list, offBender(die), found.dies.get(die.id), shopKindOf('dies').letter), shop.dies);
  const [onIt] = concerned('bender/otherwise', 'bender/not-in-shop');
  const bender = job.dies.find(({ id }) => id === onIt)?.bender ?? shop.bender;
  const withTools = about(differences, 'tools') && job.tools ? cutWith(shop, job.tools) : shop;
  const rates = (about(differences, 'rates') ? job.quote?.rates : undefined) ?? shop.rates;
  const withRecords: Shop = { ...withTools, ...(bender && { bender }), ...(rates && { rates }), sections, dies };
  const after = counterparts(job, withRecords);
  const pulls = differences.flatMap((one): readonly Pull[] =>
    one.kind === 'pulls/not-in-shop'
      ? allLogged(
          job.pulls.filter(({ die, section }) => die === one.die && section === one.section),
          after,
        )
      : [],
  );
  return withPulls(withRecords, unlogged(pulls, shop.pulls));
}

/** The shop with these tools alone: a bench saw that they have not is none of the shop's either. */
function cutWith(shop: Shop, { notchers, saws, benchSaw }: Tools): Shop {
  const { benchSaw: _, ...rest } = shop;
  return { ...rest, ...(benchSaw !== undefined && { benchSaw }), notchers, saws };
}

/** Whether one of these is about what the whole job goes by. */
const about = (differences: readonly Difference[], what: 'tools' | 'rates'): boolean =>
  differences.some(({ kind }) => kind.startsWith(`${what}/`));

/** The job's ids of what these differences are about. */
const concernedBy = (differences: readonly Difference[], kind: Difference['kind']): ReadonlySet<string> =>
  new Set(
    differences.flatMap((one): readonly string[] => {
      if (one.kind !== kind) return [];
      if ('id' in one) return [one.id];
      return 'dies' in one ? one.dies : [];
    }),
  );

/** The record in the place of that one, under its id; a new one comes last, under its own id where that is free. */
function put<R extends { readonly id: string }>(
  list: readonly R[],
  record: R,
  there: R | undefined,
  letter = '',
): readonly R[] {
  if (there !== undefined) return list.map((one) => (one.id === there.id ? { ...record, id: one.id } : one));
  return [...list, { ...record, id: freeId(new Set(list.map(({ id }) => id)), record.id, letter) }];
}
