/**
 * The rack of the shop and the sticks of a job. A job takes the rack over when somebody asks for it; what is then sawn for the job comes off the shop's rack, and what is
 * left goes onto it. Sticks are the same where section, length and batch are.
 */
import { isSameBatch } from '../job/batch.ts';
import { costOfLeft, sortsSawn, type Sawn } from '../job/kinds/sawn.ts';
import { MOST_STICK_SORTS } from '../job/limits.ts';
import type { Stick } from '../job/kinds/stick.ts';
import type { Job } from '../job/types.ts';
import { counterparts, isSameLength } from './counterparts.ts';
import { freeId } from './free-id.ts';
import type { Stick as RackStick } from './kinds/stick.ts';
import type { Shop } from './types.ts';

/** The job with the shop's rack in place of its own: those that are to be bought stay. Sections that the job has not are left out. */
export function withRack(job: Job, shop: Shop): Job {
  const { sections } = counterparts(job, shop);
  const toBuy = job.stickSorts.filter(({ count }) => count === undefined);
  const taken = new Set([...job.stickSorts.map(({ id }) => id), ...sortsSawn(job)]);
  const known = job.stickSorts.filter(({ count }) => count !== undefined);
  const onRack = job.sections.flatMap(({ id: section }) =>
    shop.sticks
      .filter((stick) => stick.section === sections.get(section)?.id && stick.count > 0)
      .map((stick): Stick => {
        // What the job knows already keeps its id: by that a left-over is known.
        const at = known.findIndex((each) => isSame({ ...stick, section }, each));
        const id = at === -1 ? freeId(taken, `k${taken.size + 1}`, 'k') : known.splice(at, 1)[0]!.id;
        taken.add(id);
        return { ...stick, id, section, rack: true };
      }),
  );
  return { ...job, stickSorts: [...onRack, ...toBuy] };
}

/** The shop after an edit of a job: what the job had sawn before, and what it has now. Of a section that the shop has not, nothing changes; what the rack has no room for is left off. */
export const rackAfter = (shop: Shop, before: readonly Sawn[], job: Job): Shop => racked(shop, before, job).shop;

/** What of it was left off: one sort more than the record holds. */
export const leftOffRack = (shop: Shop, before: readonly Sawn[], job: Job): readonly OffRack[] =>
  racked(shop, before, job).off;

/** A stick, or what is left of one. */
export type OffRack = Omit<RackStick, 'count'>;

interface Racked {
  readonly shop: Shop;
  readonly off: readonly OffRack[];
}

function racked(shop: Shop, before: readonly Sawn[], job: Job): Racked {
  const { sections } = counterparts(job, shop);
  const [were, are] = [idsOf(before), idsOf(job.sawn)];
  const onRack = (sawn: Sawn, times: 1 | -1) => {
    const section = sections.get(sawn.section)?.id;
    return section === undefined ? [] : changesOf({ ...sawn, section }, times);
  };
  return [
    ...before.filter(({ id }) => !are.has(id)).flatMap((sawn) => onRack(sawn, -1)),
    ...job.sawn.filter(({ id }) => !were.has(id)).flatMap((sawn) => onRack(sawn, 1)),
  ].reduce<Racked>(changed, { shop, off: [] });
}

const idsOf = (sawn: readonly Sawn[]): ReadonlySet<string> => new Set(sawn.map(({ id }) => id));

/** Off the rack where below 0. */
interface Change {
  readonly stick: OffRack;
  readonly by: 1 | -1;
}

/** One stick less where it came off this rack, and its left-over where that is kept; the other way round with -1. */
function changesOf(sawn: Sawn, times: 1 | -1): readonly Change[] {
  const { section, length, batch, cost, rack, kept, left } = sawn;
  const ofLeft = costOfLeft(sawn);
  const of = { section, ...(batch !== undefined && { batch }) };
  const priced = { ...of, length, ...(cost !== undefined && { cost }) };
  return [
    ...(rack === true ? [{ stick: priced, by: times === 1 ? -1 : 1 } as const] : []),
    ...(kept === undefined
      ? []
      : [{ stick: { ...of, length: left, ...(ofLeft !== undefined && { cost: ofLeft }) }, by: times }]),
  ];
}

/** What is not there cannot be taken off. */
function changed({ shop, off }: Racked, { stick, by }: Change): Racked {
  const at = shop.sticks.findIndex((each) => isSame(each, stick) && each.count + by >= 0);
  if (at === -1) {
    if (by === -1) return { shop, off };
    if (shop.sticks.length >= MOST_STICK_SORTS) return { shop, off: [...off, stick] };
    return { shop: { ...shop, sticks: [...shop.sticks, { ...stick, count: 1 }] }, off };
  }
  const count = shop.sticks[at]!.count + by;
  const sticks = count === 0 ? shop.sticks.toSpliced(at, 1) : shop.sticks.with(at, { ...shop.sticks[at]!, count });
  return { shop: { ...shop, sticks }, off };
}

const isSame = (
  one: Pick<RackStick, 'section' | 'length' | 'batch'>,
  other: Pick<RackStick, 'section' | 'length' | 'batch'>,
): boolean =>
  one.section === other.section && isSameLength(one.length, other.length) && isSameBatch(one.batch, other.batch);
