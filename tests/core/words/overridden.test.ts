import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { overriddenInWords, type WroteTwice } from '../../../src/core/words/overridden.ts';

const one: WroteTwice = { list: 'nodes', record: 'N12', field: 'at', theirs: 0, counts: 1 };
const words = (given: Partial<WroteTwice>, unit: 'mm' | 'in' = 'mm') =>
  overriddenInWords({ ...one, ...given }, emptyJob(unit));

describe('what both wrote', () => {
  it('says of which thing it is', () => {
    expect(words({}).title).toBe('Node N12');
    expect(words({ list: 'dies', record: 'Big die', field: 'clampOffset' }).title).toBe('Die Big die');
    expect(words({ list: 'bent', record: 'Main hoop', field: 'bends 2' }).title).toBe(
      'Its bend run, Main hoop, bends 2',
    );
    expect(words({ list: '', record: 'carMass', field: 'carMass' }).title).toBe('The job');
  });

  it('says each value in the unit of the job, what counts first', () => {
    const inches = words({ list: 'dies', field: 'clampOffset', theirs: 812.8, counts: 25.4 }, 'in').lines;
    expect(inches).toEqual([{ label: 'Clamp before the bend', here: '1 in', there: '32 in' }]);
    const bend = { field: 'bends 2', counts: { pulled: 93, net: 90 }, theirs: { pulled: 93, net: 90.5 } };
    expect(words({ list: 'bent', ...bend }).lines).toEqual([{ label: 'Net', here: '90°', there: '90.5°' }]);
    expect(words({ field: 'mirror', theirs: true, counts: undefined }).lines).toEqual([
      { label: 'Its twin on the other side', here: 'not given', there: 'yes' },
    ]);
  });
});
