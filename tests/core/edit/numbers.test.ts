/** Numbers of tubes: given once, whatever is done to the build order. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addMember, moveMember, updateMember } from '../../../src/core/edit/members.ts';
import { keepNumbers, numberByBuildOrder, renumbered, setNumber } from '../../../src/core/edit/numbers.ts';
import { removeSeveral } from '../../../src/core/edit/several.ts';
import { cutWhere, swapThrough } from '../../../src/core/edit/pieces.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { derive } from '../../../src/core/derive.ts';
import { derived, faultsOf, jobOf } from '../frame.ts';
import { drawn } from '../../draws.ts';

const records = {
  nodes: {
    a: [0, 300, 0],
    b: [0, 300, 900],
    c: [400, 300, 0],
    d: [400, 300, 900],
    e: [-400, 0, 500],
    f: [600, 0, 500],
  },
  members: [
    { id: 'left', path: ['a', 'b'], mirror: true },
    { id: 'rear', path: ['c', 'd'] },
    { id: 'along', path: ['e', 'f'] },
  ],
};
const job = jobOf(records);
const numbers = (of: Job): Record<string, number> => {
  const outcome = derive(of);
  if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
  return Object.fromEntries(outcome.value.tubes.map(({ id, number }) => [id, number]));
};
const edited = (before: Job, change: (job: Job) => Job | readonly unknown[]): Job => {
  const answer = change(before);
  if (Array.isArray(answer)) throw new Error(JSON.stringify(answer));
  return keepNumbers(before, answer as Job);
};

describe('numbers of tubes', () => {
  it('go by build order where the file gives none, a twin after its member', () => {
    expect(numbers(job)).toEqual({ left: 1, "left'": 2, rear: 3, along: 4 });
    expect(numbers({ ...job, lastNumber: 9 })).toEqual(numbers(job));
  });

  it('are those of the file, and a tube without one comes after all that were given', () => {
    const given = jobOf({ ...records, numbers: { rear: 7, left: 2, gone: 11 }, lastNumber: 20 });
    expect(numbers(given)).toEqual({ left: 2, "left'": 21, rear: 7, along: 22 });
    // A last number below the greatest says nothing: the greatest was given.
    expect(numbers({ ...given, lastNumber: 1 })).toEqual({ left: 2, "left'": 12, rear: 7, along: 13 });
  });

  it('stay when the order changes or a tube goes, and one that is gone is not given again', () => {
    const moved = edited(job, (before) => moveMember(before, 'along', 0));
    expect(numbers(moved)).toEqual({ along: 4, left: 1, "left'": 2, rear: 3 });
    const without = edited(job, (before) => removeSeveral(before, 'members', ['along']));
    expect(numbers(without)).toEqual({ left: 1, "left'": 2, rear: 3 });
    const again = edited(without, (before) => addMember(before, { name: 'New', path: ['e', 'f'], section: 'main' }));
    expect(Object.values(numbers(again))).toEqual([1, 2, 3, 5]);
    const mirrored = edited(job, (before) => updateMember(before, 'rear', { mirror: true }));
    expect(numbers(mirrored)).toEqual({ left: 1, "left'": 2, rear: 3, "rear'": 5, along: 4 });
    const emptied = edited(job, (before) => removeSeveral(before, 'members', ['left', 'rear', 'along']));
    const begun = edited(emptied, (before) => addMember(before, { name: 'New', path: ['e', 'f'], section: 'main' }));
    expect(Object.values(numbers(begun))).toEqual([5]);
  });

  it('of pieces are new ones: they are other tubes than the bar was', () => {
    const cut = edited(job, (before) => cutWhere(before, 'along', 'rear'));
    expect(numbers(cut)).toEqual({ left: 1, "left'": 2, rear: 3, 'along.1': 5, 'along.2': 6 });
  });

  it('come back when which of two runs through is swapped twice, and no other tube has had them meanwhile', () => {
    const cut = edited(job, (before) => cutWhere(before, 'along', 'rear'));
    const swapped = edited(cut, (before) => swapThrough(before, 'along', 'rear'));
    expect(numbers(swapped)).toEqual({ left: 1, "left'": 2, along: 4, 'rear.1': 7, 'rear.2': 8 });
    const more = edited(swapped, (before) => addMember(before, { name: 'New', path: ['a', 'd'], section: 'main' }));
    const back = edited(more, (before) => swapThrough(before, 'rear', 'along'));
    expect(numbers(back)).toEqual({ left: 1, "left'": 2, rear: 3, 'along.1': 5, 'along.2': 6, m4: 9 });
    expect(parseJob(serialiseJob(back))).toEqual({ ok: true, job: back });
    expect(back.members.slice(0, 3)).toEqual(cut.members);
    // A member that is gone takes its numbers with it, and so does a mirror image.
    const gone = edited(swapped, (before) => removeSeveral(before, 'members', ['left']));
    expect(Object.keys(gone.numbers!).toSorted()).toEqual(['along', 'along.1', 'along.2', 'rear', 'rear.1', 'rear.2']);
    // Put by, a number is not in the way of one that is given on purpose.
    expect(numbers(setNumber(swapped, 'left', 3) as Job)['left']).toBe(3);
  });

  it('are not written down while build order says the same', () => {
    const more = edited(job, (before) => addMember(before, { name: 'New', path: ['a', 'd'], section: 'main' }));
    expect([more.numbers, more.lastNumber]).toEqual([undefined, undefined]);
    expect(edited(job, (before) => updateMember(before, 'rear', { name: 'Else' })).numbers).toBeUndefined();
  });

  it('survive any run of edits: no tube gets another, no number a second tube', () => {
    const edit = fc.tuple(fc.constantFrom('add', 'remove', 'move', 'mirror'), fc.nat(50), fc.nat(50));
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 14 }), (edits) => {
        let now = job;
        // By tube, and not by id alone: an id may come back, its steel does not.
        const everGiven = new Set(Object.values(numbers(now)));
        for (const [kind, a, b] of edits) {
          const member = now.members[a % Math.max(now.members.length, 1)];
          const next = edited(now, (before) => {
            if (kind === 'add')
              return addMember(before, { name: 'New', path: ['a', 'd'], section: 'main', mirror: b % 2 === 0 });
            if (member === undefined) return before;
            if (kind === 'remove') return removeSeveral(before, 'members', [member.id]);
            if (kind === 'move') return moveMember(before, member.id, b % before.members.length);
            return updateMember(before, member.id, { mirror: !member.mirror });
          });
          const [were, are] = [numbers(now), numbers(next)];
          expect(new Set(Object.values(are)).size).toBe(Object.keys(are).length);
          for (const [tube, number] of Object.entries(are)) {
            if (Object.hasOwn(were, tube)) expect(number).toBe(were[tube]);
            else expect(everGiven.has(number)).toBe(false);
          }
          for (const number of Object.values(are)) everGiven.add(number);
          expect(parseJob(serialiseJob(next))).toEqual({ ok: true, job: next });
          now = next;
        }
      }),
      { seed: 51, numRuns: drawn(5, 600) },
    );
  });

  it('are given anew on purpose, and it is said whose is another then', () => {
    const one = setNumber(job, 'rear', 12) as Job;
    expect(numbers(one)).toEqual({ left: 1, "left'": 2, rear: 12, along: 4 });
    expect(renumbered(job, one)).toEqual([{ tube: 'rear', from: 3, to: 12 }]);
    expect(one.lastNumber).toBe(12);
    expect(setNumber(job, 'rear', 3)).toBe(job);
    expect(setNumber(job, 'rear', 4)).toEqual([{ place: '', message: '4 is the number of "along"' }]);
    const all = numberByBuildOrder(one);
    expect(numbers(all)).toEqual(numbers(job));
    expect(renumbered(one, all)).toEqual([{ tube: 'rear', from: 12, to: 3 }]);
    expect(numberByBuildOrder(job)).toBe(job);
  });

  it.each([
    [{ numbers: { left: 3, rear: 3 } }, 'numbers.rear', '3 is already "left"'],
    [{ numbers: { left: 0 } }, 'numbers.left', 'numbers count from 1'],
    [{ numbers: { "left'": 2.5 } }, `numbers["left'"]`, 'not a whole number'],
    [{ numbers: { left: 'four' } }, 'numbers.left', 'not a number'],
    [{ numbers: [1, 2] }, 'numbers', 'not an object'],
    [{ lastNumber: -1 }, 'lastNumber', 'numbers count from 1'],
  ])('are refused as %j', (fields, place, message) => {
    const file = JSON.stringify({ ...JSON.parse(serialiseJob(job)), ...fields });
    expect(parseJob(file)).toEqual({ ok: false, faults: [{ place, message }] });
  });

  it('of tubes that are not there are kept, and harm nobody', () => {
    const given = { ...records, numbers: { nobody: 4 } };
    expect(faultsOf(given)).toEqual([]);
    expect(derived(given).tubes.map(({ number }) => number)).toEqual([5, 6, 7, 8]);
  });

  it('go by ids like those of any object', () => {
    const odd = jobOf({ nodes: records.nodes, members: [{ id: 'toString', path: ['a', 'b'] }], numbers: {} });
    expect(numbers(odd)).toEqual({ toString: 1 });
    // No file may hold such a key: what an edit writes must still be read.
    const more = edited(odd, (before) => addMember(before, { name: 'New', path: ['c', 'd'], section: 'main' }));
    expect(parseJob(serialiseJob(more))).toEqual({ ok: true, job: more });
  });

  it('are changed in a frame derived from the one before as in a new one', () => {
    const first = derive(job);
    if (!first.ok) throw new Error('the job is derived');
    const renamed = setNumber(job, 'rear', 12) as Job;
    const [again, anew] = [derive(renamed, first.value), derive(renamed)];
    if (!again.ok || !anew.ok) throw new Error('the job is derived');
    expect(again.value.tubes.map(({ number }) => number)).toEqual([1, 2, 12, 4]);
    expect(again.value.findings).toEqual(anew.value.findings);
    expect(again.value.byId.get('along')).toBe(first.value.byId.get('along'));
  });
});
