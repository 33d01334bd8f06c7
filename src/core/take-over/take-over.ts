/**
 * One state of a job with what a person chose of another taken over. What is only here stays unless it is chosen, and is then taken out; what is
 * only there comes in where it is chosen; of what differs the other's takes the place. What comes brings along whatever it refers to and
 * is missing here. Nobody chose is nothing changed.
 */
import { keepNumbers, withNumbers } from '../edit/numbers.ts';
import type { Edited } from '../edit/records.ts';
import { fault, quoted, type Fault } from '../job/fault.ts';
import { placeOfList } from '../job/in-blocks.ts';
import { COLLECTIONS, kindOf, LISTS } from '../job/kinds.ts';
import { lastNumberOf, numbersOf } from '../job/numbers.ts';
import type { TubeRef } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import { shownName } from '../job/shown.ts';
import type { AnyRecord, Job, List } from '../job/types.ts';
import { alignedTo } from './aligned.ts';
import { alongWith, idsNamed } from './along.ts';
import { differencesOf, type Difference } from './differences.ts';
import { keyed, SHELVES, withField, type Shelf } from './shelves.ts';

/**
 * The job after it, by ids of differences; the very same where none is chosen. Faults where something that stays refers to what is to be taken
 * out. Whether it is a job otherwise is for the door to say, as of any edit.
 */
export function takeOver(job: Job, other: Job, chosen: ReadonlySet<string>): Edited {
  const theirs = alignedTo(job, other);
  const found = differencesOf(job, theirs);
  const asked = found.filter(({ id }) => chosen.has(id));
  if (asked.length === 0) return job;
  const all = [...asked, ...alongWith(found, asked)];
  const onShelves = SHELVES.reduce((done, shelf) => withShelf(done, shelf, all, theirs), job);
  const taken = all.reduce(
    (done, { on, key, there }) => (on === 'head' ? withField(done, key, there) : done),
    onShelves,
  );
  const held = stillUsed(job, taken);
  return held.length > 0 ? held : numbered(job, taken, theirs);
}

function withShelf(job: Job, shelf: Shelf, all: readonly Difference[], other: Job): Job {
  const own = new Map(all.flatMap((one) => (one.on === shelf.name ? [[one.key, one] as const] : [])));
  if (own.size === 0) return job;
  const kept = new Map<string, object>();
  for (const [key, record] of keyed(shelf, job)) {
    const one = own.get(key);
    if (one?.kind === 'only-here') continue;
    kept.set(key, one === undefined ? record : (one.there as object));
  }
  const order = [...keyed(shelf, other).keys()];
  const coming = order.filter((key) => own.get(key)?.kind === 'only-there');
  const sequence = coming.reduce((done, key) => setIn(done, key, order), [...kept.keys()]);
  return shelf.put(
    job,
    sequence.map((key) => kept.get(key) ?? (own.get(key)!.there as object)),
  );
}

/** The sequence with the key after what it follows in `order`, as far as that is in it; else before what follows it there; else last. */
function setIn(sequence: readonly string[], key: string, order: readonly string[]): string[] {
  const at = order.indexOf(key);
  const there = new Map(sequence.map((each, i) => [each, i]));
  const before = order.slice(0, at).findLast((each) => there.has(each));
  const after = order.slice(at + 1).find((each) => there.has(each));
  const place =
    before !== undefined ? there.get(before)! + 1 : after !== undefined ? there.get(after)! : sequence.length;
  return sequence.toSpliced(place, 0, key);
}

/** A fault for each record that stays and refers to one that was there and is gone. */
function stillUsed(before: Job, after: Job): readonly Fault[] {
  const gone = new Map<List, ReadonlyMap<string, AnyRecord>>();
  for (const list of COLLECTIONS) {
    if (before[list] === after[list]) continue;
    const left = new Set(after[list].map(({ id }) => id));
    const lost = before[list].filter(({ id }) => !left.has(id));
    if (lost.length > 0) gone.set(list, new Map(lost.map((record) => [record.id, record])));
  }
  if (gone.size === 0) return [];
  return LISTS.flatMap((list) =>
    after[list].flatMap((record, i): readonly Fault[] => {
      const named = referencesOf(list, record).flatMap((reference) => {
        const id = idsNamed(reference.to).find((each) => gone.get(reference.list)?.has(each));
        return id === undefined ? [] : [{ place: reference.place, lost: gone.get(reference.list)!.get(id)! }];
      })[0];
      if (named === undefined) return [];
      const name = kindOf(list).inWords ?? nameOf(record);
      return [
        fault(
          `${placeOfList(list)}[${i}]${named.place}`,
          `${name} goes by ${nameOf(named.lost)}: leave that, or take both out`,
        ),
      ];
    }),
  );
}

const nameOf = (record: AnyRecord): string =>
  quoted('name' in record ? shownName(record.name) : 'id' in record ? record.id : '');

/**
 * Every tube that was here keeps its number. One that comes keeps the number that it has there, since it may be chalked on it, if that
 * was never given here; else it takes the next free.
 */
function numbered(before: Job, after: Job, other: Job): Job {
  const kept = keepNumbers(before, after);
  const [were, there] = [numbersOf(before), numbersOf(other)];
  const last = Math.max(lastNumberOf(before), 0, ...were.values());
  const are = numbersOf(kept);
  const used = new Set([...are].flatMap(([tube, number]) => (were.has(tube) ? [number] : [])));
  const numbers = new Map<TubeRef, number>();
  let next = last;
  const coming = [...are.keys()].filter((tube) => !were.has(tube));
  for (const tube of coming) {
    const wanted = there.get(tube) ?? 0;
    if (wanted <= last || used.has(wanted)) continue;
    numbers.set(tube, wanted);
    used.add(wanted);
  }
  for (const tube of coming) {
    if (numbers.has(tube)) continue;
    const putBy = before.numbers?.[tube];
    if (putBy !== undefined && !used.has(putBy)) numbers.set(tube, putBy);
    else {
      do next += 1;
      while (used.has(next));
      numbers.set(tube, next);
    }
    used.add(numbers.get(tube)!);
  }
  if (coming.every((tube) => are.get(tube) === numbers.get(tube))) return kept;
  const putBy = Object.entries(kept.numbers ?? {}).filter(([tube, number]) => !are.has(tube) && !used.has(number));
  const all = new Map([...are, ...numbers]);
  return withNumbers(kept, [...all, ...putBy], Math.max(lastNumberOf(kept), ...all.values()));
}
