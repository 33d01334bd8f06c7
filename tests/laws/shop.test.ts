/** Shop and job, whatever the one has and the other has otherwise. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { derive } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { allThatDiffers, differences } from '../../src/core/shop/differences.ts';
import { given, jobFrom, taken } from '../../src/core/shop/exchange.ts';
import { parseShop } from '../../src/core/shop/parse.ts';
import { serialiseShop } from '../../src/core/shop/serialise.ts';
import type { Shop } from '../../src/core/shop/types.ts';
import { shopFile } from '../core/shop/sample.ts';
import { deepFreeze } from './jobs.ts';
import { drawn } from '../draws.ts';

const name = fc.constantFrom('6 in CLR', '4 1/2 in CLR', '', '\u202e"; DROP', '__proto__', 'x'.repeat(300));
const ids = ['a', 'b', 'c', 'constructor', '__proto__'] as const;
const some = <T extends { id: string }>(one: fc.Arbitrary<T>, least = 0) =>
  fc.uniqueArray(one, { selector: ({ id }) => id, minLength: least, maxLength: 4 });

const section = fc.record({
  id: fc.constantFrom(...ids),
  name,
  outerDiameter: fc.constantFrom(38.1, 44.45),
  wall: fc.constantFrom(2.413, 3.048),
  material: fc.constantFrom('', '4130-n'),
});
const die = fc.record({
  id: fc.constantFrom(...ids),
  name,
  outerDiameter: fc.constantFrom(38.1, 44.45),
  centrelineRadius: fc.constantFrom(114.3, 152.4),
  clampOffset: fc.constantFrom(0, 100),
  leastStraight: fc.constantFrom(0, 50),
  leastGrip: fc.constant(0),
  greatestAngle: fc.constantFrom(120, 180),
  radius: fc.constantFrom('nominal' as const, 'from-pulls' as const),
});
const bender = fc.constantFrom(
  ...((['left', 'right'] as const).map((turns) => ({ ...shopFile().bender, turns })) as never[]),
);
const pullsOf = (dies: readonly { id: string }[], sections: readonly { id: string }[]) =>
  dies.length === 0 || sections.length === 0
    ? fc.constant([])
    : fc.array(
        fc.record({
          die: fc.constantFrom(...dies.map(({ id }) => id)),
          section: fc.constantFrom(...sections.map(({ id }) => id)),
          pulled: fc.constantFrom(63, 93),
          net: fc.constantFrom(60, 90),
          on: fc.constant(''),
        }),
        { maxLength: 5 },
      );

const anyShop: fc.Arbitrary<Shop> = fc
  .tuple(some(section), some(die), fc.option(bender, { nil: undefined }))
  .chain(([sections, dies, machine]) =>
    pullsOf(dies, sections).map((pulls) =>
      deepFreeze({
        ...structuredClone({ ...shopFile(), sections, dies, pulls, sticks: [] }),
        bender: machine,
      } as unknown as Shop),
    ),
  )
  .map(({ bender: machine, ...shop }) => (machine === undefined ? shop : { ...shop, bender: machine }));

/** A job whose tubes use some of its dies and sections; one machine for all of its dies, or none. */
const anyJob: fc.Arbitrary<Job> = fc
  .tuple(
    anyShop,
    fc.constantFrom('in' as const, 'mm' as const),
    fc.array(fc.tuple(fc.nat(3), fc.nat(3)), { maxLength: 3 }),
  )
  .map(([shop, unit, uses]) => {
    const job = jobFrom(shop, unit);
    const nodes = ['m', 'n'].map((id, i) => ({
      id,
      name: id,
      at: { kind: 'fixed' as const, position: [i * 500, 0, 0] as const },
    }));
    const members = uses.flatMap(([d, s], i) => {
      const [ofDie, ofSection] = [job.dies[d], job.sections[s]];
      if (ofDie === undefined || ofSection === undefined) return [];
      const auto = { fit: 'auto' as const, allowance: 0 };
      return [
        {
          id: `t${i}`,
          name: '',
          role: '',
          path: ['m', 'n'],
          section: ofSection.id,
          die: ofDie.id,
          mirror: false,
          ends: [auto, auto] as const,
        },
      ];
    });
    return deepFreeze({ ...job, nodes, members });
  });

const check = (law: (shop: Shop, job: Job) => void): void =>
  fc.assert(fc.property(anyShop, anyJob, law), { seed: 1129, numRuns: drawn(80, 300) });

it('a job from the shop comes through the door as it is, derives alone and differs in nothing', () => {
  check((shop) => {
    const job = jobFrom(shop, 'mm');
    expect(parseJob(serialiseJob(job))).toEqual({ ok: true, job });
    expect(derive(job).ok).toBe(true);
    expect(allThatDiffers(shop, job)).toEqual([]);
  });
});

it('the file of a shop comes back equal', () => {
  check((shop) => {
    expect(parseShop(serialiseShop(shop))).toEqual({ ok: true, shop });
  });
});

it('after taking nothing is left that the shop has', () => {
  let found = 0;
  check((shop, job) => {
    const before = allThatDiffers(shop, job);
    const after = allThatDiffers(shop, taken(job, shop, before));
    found += before.length - after.length;
    expect(after.filter(({ kind }) => !kind.endsWith('/not-in-shop'))).toEqual([]);
    expect(parseJob(serialiseJob(taken(job, shop, before))).ok).toBe(true);
  });
  expect(found).toBeGreaterThan(drawn(25, 100));
});

it('after giving as well nothing is left at all, and the shop is one that can be read', () => {
  check((shop, job) => {
    const there = given(shop, job, allThatDiffers(shop, job));
    expect(parseShop(serialiseShop(there)).ok).toBe(true);
    // A die that was not in the shop before is used in the shop's machine from now on.
    const now = taken(job, there, allThatDiffers(there, job));
    expect(differences(there, now)).toEqual([]);
    expect(allThatDiffers(there, now)).toEqual([]);
  });
});

it('taking and giving nothing changes nothing', () => {
  check((shop, job) => {
    expect(taken(job, shop, [])).toBe(job);
    expect(given(shop, job, [])).toEqual(shop);
  });
});
