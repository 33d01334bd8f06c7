/** What makes pages of sheets.pdf readable: no words over other words, none off the page, none too small. */
import { expect } from 'vitest';
import { overlapsOf } from './overlap.ts';
import type { ReadPage } from './pdf.ts';

/** Of a letter's body, mm: smaller is not read at arm's length. Labels on pictures are the smallest. */
const LEAST = 3.0;
/** 11 points of a letter's body, in mm. */
const ELEVEN = 11 * (25.4 / 72);
/** What prevents mistakes, by the first words of a line of it. */
const PREVENTS =
  /^(?:Cut the blank to|Use the wrap|One pass|Half from each side|Saw off what|Mark (?:to|away)|Exactly|As set it|Scribed line|Inside line|Make one of each|Left |\d (?:Hole saw|Off square|Centre|Mark|Round|Depth))/u;

export function expectReadable(pages: readonly ReadPage[]): void {
  pages.forEach((page, i) => {
    expect(overlapsOf(page), `page ${i + 1}`).toEqual([]);
    for (const { text, size, x, width } of page.texts) {
      expect(size, text).toBeGreaterThanOrEqual(LEAST);
      if (PREVENTS.test(text)) expect(size, text).toBeGreaterThanOrEqual(ELEVEN - 1e-6);
      expect(x + width, text).toBeLessThanOrEqual(page.width - 9.9);
    }
  });
}
