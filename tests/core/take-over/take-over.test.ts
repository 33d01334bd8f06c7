import { describe, expect, it } from 'vitest';
import { addReading } from '../../../src/core/edit/measurements.ts';
import { addMember } from '../../../src/core/edit/members.ts';
import { addNode } from '../../../src/core/edit/nodes.ts';
import { addPoint } from '../../../src/core/edit/points.ts';
import { addPull } from '../../../src/core/edit/pulls.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { numbersOf } from '../../../src/core/job/numbers.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { alignedTo } from '../../../src/core/take-over/aligned.ts';
import { alongWith } from '../../../src/core/take-over/along.ts';
import { differencesOf, type Difference } from '../../../src/core/take-over/differences.ts';
import { isSameJob } from '../../../src/core/take-over/same-job.ts';
import { takeOver } from '../../../src/core/take-over/take-over.ts';
import { withIds } from '../../../src/core/take-over/with-ids.ts';
import { demoText } from '../../command-line.ts';
import { sampleFile } from '../job/sample.ts';

const read = (text: string): Job => {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(parsed.faults.map(({ place, message }) => `${place}: ${message}`).join('\n'));
  return parsed.job;
};
const sample = read(JSON.stringify(sampleFile()));
const demo = read(demoText());

const between = (here: Job, there: Job): readonly Difference[] => differencesOf(here, alignedTo(here, there));
const ids = (found: readonly Difference[]): string[] => found.map(({ id }) => id);

function taken(here: Job, there: Job, ...chosen: readonly string[]): Job {
  const answer = takeOver(here, there, new Set(chosen));
  if (Array.isArray(answer)) throw new Error(JSON.stringify(answer));
  return read(serialiseJob(answer as Job));
}

/** A bar drawn from new node to new node. */
function withBar(job: Job, name: string, at: number): Job {
  const a = addNode(job, `${name}, end A`, { kind: 'fixed', position: [at, 0, 0] });
  const b = addNode(a, `${name}, end B`, { kind: 'fixed', position: [at, 500, 0] });
  const path = b.nodes.slice(-2).map(({ id }) => id);
  return addMember(b, { name, path, section: 'main' });
}

describe('two jobs', () => {
  it('are states of one when most things in them are', () => {
    expect(isSameJob(demo, demo)).toBe(true);
    expect(isSameJob(demo, { ...withBar(demo, 'Knee bar', 200), name: 'Another name' })).toBe(true);
  });

  it('are not when only name and ids are alike, as in jobs that were begun empty', () => {
    const begun = (names: readonly string[]): Job =>
      names.reduce((job, name, i) => addPoint(job, name, [i, i * i, names.length]), emptyJob('mm'));
    const [one, other] = [begun(['Sill', 'Post', 'Tower']), begun(['Door', 'Roof', 'Tunnel', 'Dash'])];
    expect(one.points.map(({ id }) => id)).toEqual(other.points.slice(0, 3).map(({ id }) => id));
    expect(isSameJob(one, other)).toBe(false);
    expect(isSameJob(demo, sample)).toBe(false);
    expect(isSameJob(emptyJob('mm'), emptyJob('mm'))).toBe(false);
  });

  it('that share no more than a third are so only when they are called alike', () => {
    const part = (names: readonly string[], name: string): Job =>
      names.reduce((job, each) => addPoint(job, each, [each.length, each.codePointAt(0)!, 0]), {
        ...emptyJob('mm'),
        name,
      });
    const [one, other] = [part(['a', 'bb', 'ccc'], 'Coupe'), part(['a', 'xx', 'yyy'], 'Coupe')];
    expect(isSameJob(one, other)).toBe(true);
    expect(isSameJob(one, { ...other, name: 'Saloon' })).toBe(false);
  });
});

describe('what differs', () => {
  it('is nothing between a job and itself, however it was read', () =>
    expect(between(sample, read(JSON.stringify(sampleFile())))).toEqual([]));

  it('is each record by itself, with the fields in which it does, under its trade', () => {
    const there: Job = {
      ...sample,
      carMass: 960,
      members: sample.members.map((member) => (member.id === 'stay' ? { ...member, name: 'Backstay' } : member)),
      bent: [],
      stock: { ...sample.stock, kerf: 3 },
    };
    const found = between(sample, there);
    expect(found.map(({ id, kind, trade }) => [id, kind, trade])).toEqual([
      ['bent/hoop', 'only-here', 'measured'],
      ['members/stay', 'differs', 'drawn'],
      ['head/stock.kerf', 'differs', 'stock'],
      ['head/carMass', 'differs', 'rules'],
    ]);
    expect(found[1]!.fields).toEqual([{ field: 'name', here: 'Rear stay', there: 'Backstay' }]);
    expect(found.some(({ offered }) => offered)).toBe(false);
  });

  it('of the log of pulls is an entry, as often as it is there', () => {
    const pull = sample.pulls[0]!;
    const found = between(sample, { ...sample, pulls: [pull, pull, pull] });
    expect(found.map(({ kind, offered }) => [kind, offered])).toEqual([
      ['only-there', true],
      ['only-there', true],
    ]);
    expect(taken(sample, { ...sample, pulls: [pull, pull, pull] }, ...ids(found)).pulls).toEqual([pull, pull, pull]);
  });

  it('offers a bend run that goes on from the one here, and not one that does not', () => {
    const [run] = sample.bent;
    const onward = {
      ...run!,
      done: [...run!.done, 'pull 1'],
      bends: [...run!.bends, { bend: 2, pulled: 90, net: 86 }],
    };
    expect(between(sample, { ...sample, bent: [onward] })[0]).toMatchObject({ id: 'bent/hoop', offered: true });
    expect(between({ ...sample, bent: [onward] }, sample)[0]).toMatchObject({ id: 'bent/hoop', offered: false });
  });
});

describe('two things under one new id', () => {
  const reading = (job: Job, from: string, to: string, value: number): Job =>
    addReading(job, { way: 'distance', from: { ref: from }, to: { ref: to }, value });
  const here = reading(withBar(sample, 'Knee bar', 100), 'sill-l', 'post', 601);
  const there = reading(withBar(sample, 'Dash bar', 300), 'post', 'tower', 702);

  it('stay two: theirs comes in under a free id, and what refers to it with it', () => {
    const bar = here.members.at(-1)!;
    expect(there.members.at(-1)!.id).toBe(bar.id);
    expect(there.members.at(-1)!.path).toEqual(bar.path);
    const found = between(here, there);
    const coming = found.filter(({ kind }) => kind === 'only-there');
    expect(coming.map(({ on }) => on)).toEqual(['measurements', 'nodes', 'nodes', 'members']);
    const both = taken(here, there, ...ids(coming));
    expect(
      both.members
        .slice(-2)
        .map(({ name }) => name)
        .toSorted(),
    ).toEqual(['Dash bar', 'Knee bar']);
    const dash = both.members.find(({ name }) => name === 'Dash bar')!;
    const ends = dash.path.map((id) => both.nodes.find((node) => node.id === id));
    expect(ends.map((node) => node?.name)).toEqual(['Dash bar, end A', 'Dash bar, end B']);
    expect(new Set(both.measurements.slice(-2).map(({ value }) => value))).toEqual(new Set([601, 702]));
  });

  it('are found to be the same things when it goes back', () => {
    const both = taken(here, there, ...ids(between(here, there).filter(({ kind }) => kind === 'only-there')));
    const back = between(there, both);
    expect(back.map(({ kind, there: record }) => [kind, (record as { name?: string }).name ?? 'reading'])).toEqual([
      ['only-there', 'reading'],
      ['only-there', 'Knee bar, end A'],
      ['only-there', 'Knee bar, end B'],
      ['only-there', 'Knee bar'],
    ]);
    const again = taken(there, both, ...ids(back));
    expect(between(both, again)).toEqual([]);
  });

  it('but one reading that was read again is one, with both values to choose from', () => {
    const other = reading(sample, 'sill-l', 'post', 604.5);
    const found = between(reading(sample, 'sill-l', 'post', 601), other);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      kind: 'differs',
      offered: false,
      fields: [{ field: 'value', here: 601, there: 604.5 }],
    });
  });

  it('and a point that is called the same is the same, whatever its id', () => {
    const one = addPoint(addPoint(sample, 'Harness eye', [1, 2, 3]), 'Roof', [4, 5, 6]);
    const other = addPoint(addPoint(sample, 'roof', [4, 5, 9]), 'Pedal', [7, 8, 9]);
    expect(between(one, other).map(({ kind, here: a, there: b }) => [kind, named(a), named(b)])).toEqual([
      ['only-here', 'Harness eye', undefined],
      ['differs', 'Roof', 'roof'],
      ['only-there', undefined, 'Pedal'],
    ]);
  });

  const named = (record: unknown): string | undefined => (record as { name: string } | undefined)?.name;
});

describe('other ids', () => {
  it('stand wherever the old ones stood, as references and as mere names', () => {
    const piece = { ...sample, pulls: [{ ...sample.pulls[0]!, tube: "hoop.2'", bend: 1 }] };
    const renamed = withIds(piece, 'members', new Map([['hoop', 'm7']]));
    const text = serialiseJob(renamed).replaceAll('"as": "{\\"runTube\\":\\"hoop\\"}"', '');
    expect(text).not.toMatch(/"hoop[.'"]/u);
    expect(renamed.pulls[0]!.tube).toBe("m7.2'");
    expect(renamed.made[0]!.held.ends[0].cutters[0]!.against).toBe('m7');
    expect(withIds(renamed, 'members', new Map([['m7', 'hoop']]))).toEqual(piece);
    read(serialiseJob(withIds(sample, 'members', new Map([['hoop', 'm7']]))));
    for (const [list, id] of [
      ['points', 'post'],
      ['nodes', 'foot'],
      ['sections', 'main'],
      ['dies', 'd1'],
      ['feet', 'pad'],
      ['scans', 'scan1'],
    ] as const) {
      read(serialiseJob(withIds(sample, list, new Map([[id, 'new1']]))));
    }
  });
});

describe('what is taken over', () => {
  it('brings along what it refers to', () => {
    const there = withBar(sample, 'Dash bar', 300);
    const bar = `members/${there.members.at(-1)!.id}`;
    const found = between(sample, there);
    const asked = found.filter(({ id }) => id === bar);
    expect(alongWith(found, asked).map(({ there: node }) => (node as { name: string }).name)).toEqual([
      'Dash bar, end A',
      'Dash bar, end B',
    ]);
    expect(taken(sample, there, bar).nodes).toHaveLength(sample.nodes.length + 2);
  });

  it('stands in the build order after what it follows there', () => {
    const grown = withBar(sample, 'Dash bar', 300);
    const [hoop, stay, dash] = grown.members;
    const there = { ...grown, members: [hoop!, dash!, stay!] };
    const here = withBar(sample, 'Last bar', 700);
    const merged = taken(here, there, ...ids(between(here, there).filter(({ kind }) => kind === 'only-there')));
    expect(merged.members.map(({ name }) => name)).toEqual(['Main hoop', 'Dash bar', 'Rear stay', 'Last bar']);
    expect(numbersOf(merged)).toEqual(
      new Map([
        ['hoop', 1],
        [merged.members[1]!.id, 5],
        ['stay', 2],
        ["stay'", 3],
        [here.members.at(-1)!.id, 4],
      ]),
    );
  });

  it('keeps the number that is chalked on it where that was never given here', () => {
    const drawn = withBar(sample, 'Dash bar', 300);
    const bar = drawn.members.at(-1)!.id;
    const there = { ...drawn, numbers: { hoop: 1, stay: 2, "stay'": 3, [bar]: 12 }, lastNumber: 12 };
    expect(numbersOf(taken(sample, there, `members/${bar}`)).get(bar)).toBe(12);
    const here = { ...sample, numbers: { hoop: 1, stay: 2, "stay'": 3 }, lastNumber: 14 };
    expect(numbersOf(taken(here, there, `members/${bar}`)).get(bar)).toBe(15);
  });

  it('is refused, the place named, where something that stays goes by what is to be taken out', () => {
    const there = { ...sample, measurements: [], points: sample.points.filter(({ id }) => id !== 'sill-l') };
    const faults = takeOver(sample, there, new Set(['points/sill-l']));
    expect(faults).toContainEqual({
      place: 'survey.measurements[1].from',
      message: 'a measurement goes by "Sill top, left": leave that, or take both out',
    });
  });

  it('changes nothing where nothing is chosen, or only what is not there', () => {
    const there = addPull(sample, sample.pulls[0]!);
    expect(takeOver(sample, there, new Set())).toBe(sample);
    expect(takeOver(sample, there, new Set(['pulls/nonsense', '__proto__', 'members/hoop']))).toBe(sample);
    expect(takeOver(sample, sample, new Set(['members/hoop']))).toBe(sample);
  });

  it('leaves every other record the same object', () => {
    const there = { ...read(JSON.stringify(sampleFile())), carMass: 960 };
    const merged = takeOver(sample, there, new Set(['head/carMass'])) as Job;
    expect(merged.carMass).toBe(960);
    expect(merged.members).toBe(sample.members);
    expect(merged.measurements).toBe(sample.measurements);
  });

  it('takes a field away that is only here, and the block with the last of it', () => {
    const { carMass: _, stock: __, ...rest } = sample;
    const there = rest as Job;
    const merged = taken(
      sample,
      there,
      'head/carMass',
      'head/stock.kerf',
      'head/stock.squareOff',
      'head/stock.keepFrom',
    );
    expect('carMass' in merged || 'stock' in merged).toBe(false);
  });
});
