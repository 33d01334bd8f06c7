/**
 * What the core exports says what it is: each function and constant has a comment, or stands in one block with one that has, or is
 * the only one of a file whose head says it. Edits, sentences and the tables of record kinds speak by their names and types.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const core = join(import.meta.dirname, '../src/core');
const SPEAK_FOR_THEMSELVES = /^(edit|words|(job|shop)\/kinds|job\/places)\//u;

/** The names of the exports of a source that say nothing, with their lines. */
function mute(code: string): string[] {
  const lines = code.split('\n');
  const exported = lines.flatMap((line, at) => {
    const [, name] = /^export (?:async )?(?:function\*?|const) (\w+)/u.exec(line) ?? [];
    return name === undefined ? [] : [{ name, at }];
  });
  const hasHead = lines[0]!.startsWith('/**');
  if (exported.length === 1 && hasHead) return [];
  const says = (at: number): boolean => {
    const above = lines[at - 1] ?? '';
    return above.endsWith('*/') || (exported.some((other) => other.at === at - 1) && says(at - 1));
  };
  return exported.filter(({ at }) => !says(at)).map(({ name, at }) => `${at + 1}: ${name}`);
}

it('every export of the core says what it is', () => {
  const files = readdirSync(core, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.ts') && !SPEAK_FOR_THEMSELVES.test(file));
  expect(files.length).toBeGreaterThan(100);
  expect(
    files.flatMap((file) => mute(readFileSync(join(core, file), 'utf8')).map((line) => `${file}:${line}`)),
  ).toEqual([]);
});

it('one that says nothing is seen', () => {
  expect(mute('/** Head. */\nexport const a = 1;\n\nexport const b = 2;\n')).toEqual(['4: b']);
  expect(mute('/** Head. */\nimport x;\n\nexport const b = 2;\n')).toEqual([]);
  expect(mute('/** A. */\nexport const a = 1;\nexport const b = 2;\n')).toEqual([]);
});

it('no source is longer than 400 lines', () => {
  const src = join(core, '..');
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) => /\.(?:tsx?|mjs)$/u.test(file));
  const long = files.filter((file) => readFileSync(join(src, file), 'utf8').split('\n').length > 400);
  expect(long).toEqual([]);
});
