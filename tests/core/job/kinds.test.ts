/** The table of kinds against files that have one of everything: a new kind, or a new field, is tested by being in them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { removeUnused, withoutUnreferred } from '../../../src/core/edit/references.ts';
import { placeOfList } from '../../../src/core/job/in-blocks.ts';
import { joinedOrder } from '../../../src/core/job/joined-order.ts';
import { stockPart } from '../../../src/core/job/kinds/stock.ts';
import { surveyPart } from '../../../src/core/job/kinds/survey.ts';
import { kindOf, LISTS } from '../../../src/core/job/kinds.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { PLACES } from '../../../src/core/job/places.ts';
import { bareId } from '../../../src/core/job/reference.ts';
import { referencesOf } from '../../../src/core/job/references.ts';
import { KEY_ORDER } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { jobFaults } from '../../../src/core/job/validate.ts';
import { sampleFile, withValue } from './sample.ts';

const textOf = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

function read(text: string): Job {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}

const SAMPLE = read(JSON.stringify(sampleFile()));
const FILES: readonly (readonly [string, Job])[] = [
  ['the sample', SAMPLE],
  ['the demo', read(textOf('public/demo.cagewright.json'))],
];

/** members[3].path[1] -> members, 3, path, 1. */
const keysOf = (place: string) =>
  place.split(/[.[\]]+/u).flatMap((key) => (key === '' ? [] : [/^\d+$/u.test(key) ? Number(key) : key]));

const allReferences = (job: Job) =>
  LISTS.flatMap((list) =>
    job[list].flatMap((record, i) =>
      referencesOf(list, record).map((reference) => ({ ...reference, owner: `${list}[${i}]`, from: list, record })),
    ),
  );

describe('the table', () => {
  it('has a row for each list of a job, and the sample a record of each', () => {
    for (const [, job] of FILES) {
      expect(
        Object.keys(job)
          .filter((key) => Array.isArray(job[key as keyof Job]))
          .toSorted(),
      ).toEqual(LISTS.toSorted());
    }
    expect(LISTS.filter((list) => SAMPLE[list].length === 0)).toEqual([]);
    expect(new Set(SAMPLE.nodes.map(({ at }) => at.kind))).toEqual(new Set(Object.keys(PLACES)));
  });

  it('gives each kind that has ids a letter of its own', () => {
    const letters = LISTS.flatMap((list) => kindOf(list).letter ?? []);
    expect(new Set(letters).size).toBe(letters.length);
  });

  it('knows the order of every key that the schema has', () => {
    const schema = JSON.parse(textOf('docs/job.schema.json')) as { properties: Record<string, unknown> };
    expect(
      objectsIn(schema)
        .flat()
        .filter((key) => !KEY_ORDER.includes(key)),
    ).toEqual([]);
    const lines = [...LISTS.flatMap((list) => kindOf(list).keys), ...surveyPart.keys, ...stockPart.keys].map((line) =>
      line.split(' '),
    );
    const inRecords = LISTS.flatMap((list) => objectsIn(schema.properties[kindOf(list).within?.[0] ?? list]));
    expect(inRecords.length).toBeGreaterThan(LISTS.length);
    const hasLine = (keys: readonly string[]) => lines.some((line) => keys.every((key) => line.includes(key)));
    expect(inRecords.filter((keys) => !hasLine(keys))).toEqual([]);
  });
});

/** The keys of every object that a JSON schema describes, without those that are barred. */
function objectsIn(schema: unknown): readonly (readonly string[])[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const below = Object.values(schema).flatMap(objectsIn);
  const { properties, type } = schema as { properties?: Record<string, unknown>; type?: unknown };
  if (type !== 'object' || properties === undefined) return below;
  return [Object.keys(properties).filter((key) => properties[key] !== false), ...below];
}

/** An angle is kept at a corner of the path by name: where that is another, the angle is a fault of its own. */
const ofReferences = ({ place }: { readonly place: string }): boolean => !place.includes('.keptAngles[');

describe.each(FILES)('the references of %s', (_, job) => {
  const references = allReferences(job);

  it.each(LISTS)('in %s: one that leads nowhere is the one fault, at its place', (list) => {
    for (const { owner, place, from } of references) {
      if (from !== list) continue;
      const faults = jobFaults(withValue(job, keysOf(`${owner}${place}`), 'gone') as Job).filter(ofReferences);
      const there = owner.replace(list, placeOfList(list));
      expect(faults.map((fault) => [fault.place, fault.message.slice(-6)])).toEqual([[`${there}${place}`, '"gone"']]);
    }
  });

  it('bar what they name from being deleted, each at its place, but for what goes with it; none of it is cleared up', () => {
    for (const { owner, from, record, list, to, goes } of references) {
      const id = bareId(to);
      if (from === list && 'id' in record && record.id === id) continue;
      expect(withoutUnreferred(job, list, id)).toBe(job);
      if (goes) continue;
      const refused = removeUnused(job, list, id);
      if (!Array.isArray(refused)) throw new Error(`${list} ${id} went, though ${owner} names it`);
      const places = references.filter((one) => one.owner === owner && one.list === list && bareId(one.to) === id);
      expect(refused.map(({ place }) => place)).toContain(
        `${owner.replace(from, placeOfList(from))}${places[0]!.place}`,
      );
    }
  });

  // Contract of the file: points and nodes have images, members where they are mirrored, sections and dies none.
  it('may have a prime where there is a mirror image, and nowhere else', () => {
    for (const { owner, place, list, to, from } of references) {
      if (to.endsWith("'")) continue;
      const inFile = `${owner.replace(from, placeOfList(from))}${place}`;
      const isMirrored = job.members.some(({ id, mirror }) => list === 'members' && id === to && mirror);
      const hasImage = list === 'points' || list === 'nodes' || isMirrored;
      const faults = jobFaults(withValue(job, keysOf(`${owner}${place}`), `${to}'`) as Job).filter(ofReferences);
      expect([inFile, faults.map((fault) => fault.place)]).toEqual([inFile, hasImage ? [] : [inFile]]);
    }
  });
});

it('every kind of record is named by a reference of the sample, or nothing can name it', () => {
  const named = new Set(allReferences(SAMPLE).map(({ list }) => list));
  expect(LISTS.filter((list) => !named.has(list as never))).toEqual([
    'holds',
    'measurements',
    'bodyLines',
    'gussets',
    'envelopes',
    'rules',
    'stickSorts',
    'spares',
    'sawn',
    'pulls',
    'bent',
    'made',
    'feeds',
    'seen',
    'printed',
    'certificates',
    'photos',
    'variants',
  ]);
});

/** Text that a person may choose freely: it names no record, or one that may be gone. */
const FREE =
  /\.(id|sheet|body|edition|article|text|note|name|role|material|batch|on|by|check|as|finding|question|against|revision|file|data|instrument|certificate|kept|from)$|\.(done|roles|onto|notAsked)\[\d+\]$|^(pulls|seen|printed|stock\.sawn\[\d+\]\.cuts)\[\d+\]\.tube$|^photos\[\d+\]\.tubes\[\d+\]$/u;

it('text that is not free to choose is refused, at its place, where it says nothing', () => {
  const file = sampleFile();
  const texts = LISTS.flatMap((list) => textsIn(inFile(file, list), placeOfList(list))).filter(
    (place) => !FREE.test(place),
  );
  expect(texts.length).toBeGreaterThan(40);
  for (const place of texts) {
    const parsed = parseJob(JSON.stringify(withValue(file, keysOf(place), 'gone')));
    expect([place, parsed.ok ? [] : parsed.faults.map((fault) => fault.place)]).toEqual([place, [place]]);
  }
});

const inFile = (file: object, list: (typeof LISTS)[number]): unknown =>
  placeOfList(list)
    .split('.')
    .reduce<unknown>((part, key) => (part as Readonly<Record<string, unknown>>)[key], file);

/** The places of all text in plain data. */
function textsIn(value: unknown, place: string): readonly string[] {
  if (typeof value === 'string') return [place];
  if (Array.isArray(value)) return value.flatMap((item, i) => textsIn(item, `${place}[${i}]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => textsIn(item, `${place}.${key}`));
}

describe('several orders of keys joined', () => {
  it('agree with each, and begin with what is named first', () => {
    expect(joinedOrder([['b', 'd'], ['a', 'b', 'c'], ['e']])).toEqual(['a', 'b', 'd', 'c', 'e']);
  });

  it('are a mistake where they contradict each other', () => {
    expect(() =>
      joinedOrder([
        ['a', 'b'],
        ['b', 'a'],
      ]),
    ).toThrow('no order agrees with all: a b');
  });
});
