/**
 * What a person reads stands once: no text of four words or more is written in two files of src. What several say is named where the
 * first of them, or core/words, says it.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { expect, it } from 'vitest';

const src = join(import.meta.dirname, '../src');
const FEW = 4;

/** The texts of a source: strings, pieces of templates, text between tags; as they read, with single spaces. */
function textsOf(file: string, code: string): Set<string> {
  const texts = new Set<string>();
  const add = (text: unknown): void => {
    const words = String(text).replaceAll(/\s+/gu, ' ').trim();
    if ((words.match(/(?<!\S)[\p{L}’']+/gu) ?? []).length >= FEW) texts.add(words);
  };
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) return node.forEach(visit);
    if (typeof node !== 'object' || node === null) return;
    const { type, value } = node as { type?: string; value?: unknown };
    if ((type === 'Literal' && typeof value === 'string') || type === 'JSXText') add(value);
    if (type === 'TemplateElement') add((value as { cooked?: string }).cooked ?? '');
    Object.values(node).forEach(visit);
  };
  visit(parseSync(file, code).program);
  return texts;
}

/** Each text that stands in more than one of the sources, with their names. */
function saidTwice(sources: Readonly<Record<string, string>>): string[] {
  const seen = new Map<string, string[]>();
  for (const [file, code] of Object.entries(sources)) {
    for (const text of textsOf(file, code)) seen.set(text, [...(seen.get(text) ?? []), file]);
  }
  return [...seen].filter(([, files]) => files.length > 1).map(([text, files]) => `${text}: ${files.join(', ')}`);
}

it('no text of four words stands in two files', () => {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/u.test(file));
  expect(files.length).toBeGreaterThan(300);
  expect(saidTwice(Object.fromEntries(files.map((file) => [file, readFileSync(join(src, file), 'utf8')])))).toEqual([]);
});

it('one that does is seen, however it is written', () => {
  const sources = {
    'a.ts': "export const a = 'Cut the blank to';",
    'b.tsx': 'export const B = () => <p>Cut the\n  blank to <b>{1}</b></p>;',
    'c.ts': 'export const c = (mm: number) => `Cut the blank to ${mm}`;',
    'd.ts': "// Cut the blank to\nexport const d = 'Cut the blank';",
  };
  expect(saidTwice(sources)).toEqual(['Cut the blank to: a.ts, b.tsx, c.ts']);
});
