import { describe, expect, it } from 'vitest';
import { addObstacle, changeObstacle, clearBender, removeObstacle, setBender } from '../../../src/core/edit/dies.ts';
import { setStick } from '../../../src/core/edit/sections.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Obstacle } from '../../../src/core/job/kinds/obstacle.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleFile, sampleJob, withValue } from '../job/sample.ts';

const job = deepFreeze(sampleJob());
const WALL: Obstacle = { name: 'Back wall', kind: 'plane', point: [0, 2000, 0], normal: [0, -1, 0] };
const bender = (of: Job) => of.dies[0]!.bender;

describe('the bender of a die', () => {
  it('is at first what a file that says nothing of it gets', () => {
    const bare = clearBender(job, 'd1');
    expect(bare.dies[0]).not.toHaveProperty('bender');
    const filled = parseJob(JSON.stringify(withValue(sampleFile(), ['dies', 0, 'bender'], {})));
    if (!filled.ok) throw new Error('a file');
    expect(bender(setBender(bare, 'd1', {}))).toEqual(bender(filled.job));
    expect(clearBender(bare, 'd1')).toBe(bare);
  });
  it('changes field by field, and keeps the rest', () => {
    const right = setBender(job, 'd1', { turns: 'right' });
    expect(bender(right)).toEqual({ ...bender(job), turns: 'right' });
    expect(setBender(job, 'd1', { turns: 'left' })).toBe(job);
    expect(parseJob(serialiseJob(right))).toEqual({ ok: true, job: right });
  });
  it('has a room to which things come, change and go', () => {
    const names = (of: Job) => bender(of)!.room.map(({ name }) => name);
    expect(names(addObstacle(job, 'd1', WALL))).toEqual(['Bench', 'Wall', 'Back wall']);
    expect(names(changeObstacle(job, 'd1', 1, WALL))).toEqual(['Bench', 'Back wall']);
    expect(names(removeObstacle(job, 'd1', 0))).toEqual(['Wall']);
    expect(changeObstacle(job, 'd1', 7, WALL)).toBe(job);
    expect(removeObstacle(job, 'd1', 7)).toBe(job);
    const bare = clearBender(job, 'd1');
    expect(names(addObstacle(bare, 'd1', WALL))).toEqual(['Back wall']);
    expect(removeObstacle(bare, 'd1', 0)).toBe(bare);
  });
});

describe('the stick of a section', () => {
  it('is said, and no longer said', () => {
    const said = deepFreeze(setStick(job, 'main', 6000));
    expect(said.sections[0]!.stick).toBe(6000);
    expect(setStick(said, 'main', null).sections[0]).toStrictEqual(job.sections[0]);
    expect(setStick(job, 'main', null)).toBe(job);
  });
});
