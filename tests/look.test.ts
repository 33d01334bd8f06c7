/**
 * The look stands once: every colour of the screen is a custom property of look.css, which three reads from the page too, and
 * what a class looks like stands in one file.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const src = join(import.meta.dirname, '../src');
const sources = readdirSync(src, { recursive: true, encoding: 'utf8' }).map((file) => file.replaceAll('\\', '/'));
const read = (file: string): string => readFileSync(join(src, file), 'utf8');
const sheets = sources.filter((file) => file.endsWith('.css'));
const LOOK = 'app/look.css';

/** Colours as they are written: numbers, functions, and the names that a person would take. */
const COLOUR =
  /#(?:[\da-f]{3,4}|[\da-f]{6}|[\da-f]{8})\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch)\(|(?<=[:\s'"])(?:white|black|grey|gray|red|green|blue|yellow|orange|brown|silver)(?=[;\s'")])/giu;

const withoutComments = (css: string): string => css.replaceAll(/\/\*.*?\*\//gsu, '');

interface Rule {
  readonly selector: string;
  readonly declarations: readonly string[];
}

/** The rules of a style sheet that stand on their own: outside other rules and outside media that ask for something. */
function rulesOf(css: string): Rule[] {
  const rules: Rule[] = [];
  let [depth, from, head] = [0, 0, ''];
  const text = withoutComments(css);
  for (let i = 0; i < text.length; i += 1) {
    if (text[i] === '{') {
      if (depth === 0) [head, from] = [text.slice(from, i).trim(), i + 1];
      depth += 1;
    } else if (text[i] === '}') {
      depth -= 1;
      if (depth > 0) continue;
      const body = text.slice(from, i);
      from = i + 1;
      if (head.startsWith('@')) continue;
      const declarations = body.split(/[;{}]/u).map((each) => each.trim().replaceAll(/\s+/gu, ' '));
      rules.push({ selector: head, declarations: declarations.filter((each) => each !== '').toSorted() });
    }
  }
  return rules;
}

/** What several files say alike: the keys that `keysOf` finds in more than one of them. */
function shared(keysOf: (rule: Rule) => readonly string[], files: Readonly<Record<string, string>>): string[] {
  const seen = new Map<string, Set<string>>();
  for (const [file, css] of Object.entries(files)) {
    for (const key of rulesOf(css).flatMap(keysOf)) seen.set(key, (seen.get(key) ?? new Set()).add(file));
  }
  return [...seen].filter(([, within]) => within.size > 1).map(([key, within]) => `${key}: ${[...within].join(', ')}`);
}

/** The class that a rule is about: of `.card.chosen` and of `.card:hover` the card; none where it is a class within another thing. */
const classesOf = ({ selector }: Rule): string[] =>
  selector.split(',').flatMap((one) => /^\.([\w-]+)(?:[.:[][^\s>~+]*)?$/u.exec(one.trim())?.[1] ?? []);

/** All that a rule says, where that is enough not to be alike by chance: a row of things is a row. */
const bodyOf = ({ declarations }: Rule): string[] =>
  declarations.filter((each) => !each.startsWith('display')).length < 3 ? [] : [declarations.join('; ')];

const allSheets = Object.fromEntries(sheets.map((file) => [file, read(file)]));

describe('a colour', () => {
  it('stands nowhere but in look.css', () => {
    const files = sources.filter((file) => /\.(?:css|tsx?|html)$/u.test(file) && file !== LOOK);
    expect(files.length).toBeGreaterThan(300);
    const found = files
      .filter((file) => /^(?:app|ui|view)\/|\.html$/u.test(file))
      .flatMap((file) =>
        [
          ...read(file)
            .replaceAll(/^\s*(?:\*|\/\/|\/\*).*$/gmu, '')
            .matchAll(COLOUR),
        ].map(([it]) => `${file}: ${it}`),
      );
    expect(found).toEqual([]);
  });

  it('is given to one name of a ground, and each name has a colour on both grounds', () => {
    const grounds = rulesOf(read(LOOK)).map(({ declarations }) =>
      declarations.filter((each) => each.startsWith('--') && each.search(COLOUR) >= 0).map((each) => each.split(': ')),
    );
    expect(grounds).toHaveLength(2);
    const [light, dim] = grounds.map((ground) => ground.map(([name]) => name));
    expect(light!.length).toBeGreaterThan(12);
    expect(dim).toEqual(light);
    const values = grounds.map((ground) => ground.map(([, value]) => value));
    for (const each of values) expect(new Set(each).size).toBe(each.length);
  });

  it('that three is drawn in is one of them', () => {
    const names = /const NAMES = \[(.*?)\]/su.exec(read('view/canvas/palette.ts'))![1]!.match(/(?<=')[\w-]+(?=')/gu)!;
    expect(names.length).toBeGreaterThan(5);
    for (const name of names) expect(read(LOOK)).toContain(`--${name}: #`);
  });
});

describe('a class', () => {
  it('is given its look in one file', () => {
    expect(shared(classesOf, allSheets)).toEqual([]);
  });

  it('says nothing that another one says word for word in another file', () => {
    expect(shared(bodyOf, allSheets)).toEqual([]);
  });
});

it('what is said twice is seen', () => {
  const twice = {
    'a.css': '.one { color: var(--ink); gap: 1px; margin: 0; }',
    'b.css': '/* .two {} */ .one:hover { gap: 2px; } .three { margin: 0; color: var(--ink); gap: 1px; }',
    'c.css': '@media print { .one { gap: 3px; } } .four .one { gap: 4px; }',
  };
  expect(shared(classesOf, twice)).toEqual(['one: a.css, b.css']);
  expect(shared(bodyOf, twice)).toEqual(['color: var(--ink); gap: 1px; margin: 0: a.css, b.css']);
  for (const colour of ['#fff', 'rgb(1 2 3)', ' white;', "'red'"]) expect(colour.match(COLOUR)).not.toBeNull();
  for (const none of ['url(#id)', '#fffg', 'white-space: nowrap', '.press', 'redo()'])
    expect(none.match(COLOUR)).toBeNull();
});
