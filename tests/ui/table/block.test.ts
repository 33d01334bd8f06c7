import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/core/job/types.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { placeBlock, type PasteTarget } from '../../../src/ui/table/block.ts';

/** Two rows by three columns; the last column is only read. A cell writes itself into the job's name. */
const target: PasteTarget = {
  rowNames: ['Sill', 'Roof'],
  headers: ['Along', 'Height', 'No.'],
  read(row, column, text) {
    if (column === 2) return null;
    if (text === 'x') return { ok: false, why: 'not a length' };
    return { ok: true, change: (job: Job) => ({ ...job, name: `${job.name}[${row},${column}=${text}]` }) };
  },
};
const job = { ...emptyJob('in'), name: '' };

describe('a block set into a table', () => {
  it('becomes one change, from the cell it was set at', () => {
    const { cells, change, refusals } = placeBlock(target, 0, 0, [
      ['1', '2'],
      ['3', '4'],
    ]);
    expect(cells).toBe(4);
    expect(refusals).toEqual([]);
    expect(change(job).name).toBe('[0,0=1][0,1=2][1,0=3][1,1=4]');
  });

  it('names every cell it could not read, and sets the others', () => {
    const { cells, change, refusals } = placeBlock(target, 1, 0, [['x', '5', '7']]);
    expect(cells).toBe(1);
    expect(change(job).name).toBe('[1,1=5]');
    expect(refusals).toEqual(['Roof, Along: “x” not a length', 'Roof, No.: “7” cannot be set here']);
  });

  it('leaves a cell alone where the block is empty', () => {
    expect(placeBlock(target, 0, 0, [['', '2']]).cells).toBe(1);
  });

  it('says what lay beyond the table', () => {
    const { cells, refusals } = placeBlock(target, 1, 1, [['1', '', '9', '9'], ['2'], ['3']]);
    expect(cells).toBe(1);
    expect(refusals).toEqual(['2 rows beyond the end of the table left out', '2 columns beyond the last one left out']);
  });
});
