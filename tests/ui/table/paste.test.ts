import { describe, expect, it } from 'vitest';
import { readBlock } from '../../../src/ui/table/paste.ts';

describe('a block of cells from a spreadsheet', () => {
  it('reads tabs as columns and lines as rows', () => {
    expect(readBlock('21 1/2\t12\n13\t-4')).toEqual([
      ['21 1/2', '12'],
      ['13', '-4'],
    ]);
  });

  it('takes every kind of line end, and no row from the one that closes the block', () => {
    expect(readBlock('1\t2\r\n3\t4\r\n')).toEqual([
      ['1', '2'],
      ['3', '4'],
    ]);
    expect(readBlock('1\r2')).toEqual([['1'], ['2']]);
  });

  it('keeps empty cells in their column', () => {
    expect(readBlock('\t5\n6\t')).toEqual([
      ['', '5'],
      ['6', ''],
    ]);
  });

  it('gives inches whether the spreadsheet quoted them or not', () => {
    // RFC 4180, section 2.7: a quote inside a quoted field is doubled.
    expect(readBlock('"1\' 9-1/2"""\t21 1/2"')).toEqual([['1\' 9-1/2"', '21 1/2"']]);
  });

  it('keeps a tab and a line end inside quotes', () => {
    expect(readBlock('"a\tb\nc"\td')).toEqual([['a\tb\nc', 'd']]);
  });

  it('has no cell in an empty text', () => {
    expect(readBlock('')).toEqual([]);
  });
});
