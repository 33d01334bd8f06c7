/**
 * No bare epsilon: a number of 0.001 or less in exponent form stands as a constant that has a name, and above it a line that says what
 * it is. What two files mean alike is one constant, in core/geometry/tolerance.ts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const SMALL = /(?<![\w.])\d+(?:\.\d+)?e-\d+/u;
const NAMED = /^\s*(?:export )?const [A-Z][A-Z_]* = \d+(?:\.\d+)?e-\d+;/u;
const COMMENT = /^\s*(?:\/\*\*|\*|\/\/)/u;

/** The lines of a source that break the rule, by their numbers. */
function bareEpsilons(source: string): number[] {
  const lines = source.split('\n');
  return lines.flatMap((line, at) => {
    const code = COMMENT.test(line) ? '' : line.replace(/\/\/.*$/u, '');
    if (!SMALL.test(code)) return [];
    let above = at - 1;
    while (NAMED.test(lines[above] ?? '')) above -= 1;
    return NAMED.test(line) && /\*\/\s*$|^\s*\/\//u.test(lines[above] ?? '') ? [] : [at + 1];
  });
}

describe('no bare epsilon', () => {
  it('stands in any source', () => {
    const sources = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/u.test(name));
    expect(sources.length).toBeGreaterThan(300);
    const found = sources.flatMap((name) =>
      bareEpsilons(readFileSync(join('src', name), 'utf8')).map((line) => `${name}:${line}`),
    );
    expect(found).toEqual([]);
  });

  it.each([
    ['in an expression', 'if (gap < 1e-9) return;'],
    ['with a name, but without a word on what it is', 'const SMALL = 1e-9;'],
    ['as a part of a constant', '/** Radians. */\nconst ALL = 2 * Math.PI - 1e-9;'],
  ])('is overlooked %s', (_, source) => {
    expect(bareEpsilons(source)).not.toEqual([]);
  });

  it('is one that is named and explained, or part of a comment', () => {
    expect(bareEpsilons('/** mm. What sums leave. */\nconst LEFT = 1e-9;\n// within 1e-9\nconst x = 12e3;')).toEqual(
      [],
    );
  });
});
