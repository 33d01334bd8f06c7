/** The documents say what is: their links lead somewhere, and the walk that docs/architecture.md lists goes one way. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const inDocs = readdirSync(join(root, 'docs'), { recursive: true, encoding: 'utf8' }).map((file) => `docs/${file}`);
const pages = [...readdirSync(root), ...inDocs].filter((file) => file.endsWith('.md'));

/** Where the links of a text lead that name a file, without a place in it. */
const linksIn = (text: string): string[] =>
  [...text.matchAll(/\]\(([^)\s#]+)[^)]*\)/g)].map(([, to]) => to!).filter((to) => !/^[a-z]+:/i.test(to));

describe('every link of the documents', () => {
  it('leads to a file that is there', () => {
    const links = pages.flatMap((page) => linksIn(read(page)).map((to) => ({ page, to })));
    expect(links.length).toBeGreaterThan(100);
    const dead = links.filter(({ page, to }) => !existsSync(join(root, dirname(page), to)));
    expect(dead).toEqual([]);
  });
});

type Steps = readonly (readonly string[])[];

/** The steps of the walk, each the files that its row of the table links to, from src. */
function walked(): Steps {
  const [, section] = read('docs/architecture.md').split('## The walk, file by file\n');
  const rows = section!.split('\n## ')[0]!.split('\n');
  return rows
    .filter((row) => row.startsWith('|'))
    .map((row) => linksIn(row).map((to) => to.replace('../src/', '')))
    .filter((files) => files.length > 0);
}

const importsOf = (file: string): string[] =>
  [...read(`src/${file}`).matchAll(/(?:from|import\()\s*'(\.[^']+)'/g)].map(([, to]) =>
    posix.join(posix.dirname(file), to!),
  );

/** What a file of the walk imports that stands neither in a step before its own nor after it in its own. */
function climbs(steps: Steps, imported: (file: string) => readonly string[]): string[] {
  const placeOf = (file: string) => {
    const step = steps.findIndex((files) => files.includes(file));
    return step < 0 ? null : { step, at: steps[step]!.indexOf(file) };
  };
  return steps.flat().flatMap((file) => {
    const own = placeOf(file)!;
    return imported(file)
      .filter((other) => {
        const place = placeOf(other);
        return place !== null && (place.step > own.step || (place.step === own.step && place.at < own.at));
      })
      .map((other) => `${file} imports ${other}`);
  });
}

describe('the walk from a point to its wrap', () => {
  it('never goes back up: a file takes what steps before it made, and calls those after it in its own step', () => {
    const steps = walked();
    expect(steps.flat()).toEqual(expect.arrayContaining(['core/job/parse.ts', 'core/cope/wrap.ts', 'drawing/pdf.ts']));
    expect(new Set(steps.flat()).size).toBe(steps.flat().length);
    expect(climbs(steps, importsOf)).toEqual([]);
  });

  it('would be seen to', () => {
    const steps = [['a.ts'], ['b.ts', 'c.ts']];
    const imports: Record<string, readonly string[]> = { 'a.ts': ['b.ts'], 'b.ts': ['a.ts', 'c.ts'], 'c.ts': ['b.ts'] };
    expect(climbs(steps, (file) => imports[file]!)).toEqual(['a.ts imports b.ts', 'c.ts imports b.ts']);
  });
});
