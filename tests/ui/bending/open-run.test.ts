/** Which run is open: what was kept is trusted no further than it can be used. */
import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/core/derive.ts';
import { readOpenRun, tubeOfRun } from '../../../src/ui/bending/open-run.ts';
import { proposalOf } from '../../../src/ui/run/useProposal.ts';
import { bentTube } from '../../core/run/tubes.ts';

const frame = { byId: new Map([['hoop', {}]]) } as unknown as Derived;

describe('the open run', () => {
  it('is read back, and nothing else is taken for one', () => {
    expect(readOpenRun({ slot: 's1', tube: 'hoop', left: true, more: 1 })).toEqual({
      slot: 's1',
      tube: 'hoop',
      left: true,
    });
    for (const kept of [null, 'hoop', 7, {}, { slot: 's1' }, { job: 'Cage', tube: 'hoop' }])
      expect(readOpenRun(kept)).toBeNull();
  });

  it('is of this job, of a tube that it has, and has not been left', () => {
    const open = { slot: 's1', tube: 'hoop', left: false };
    expect(tubeOfRun(open, 's1', frame)).toBe('hoop');
    expect(tubeOfRun(open, 's2', frame)).toBeNull();
    expect(tubeOfRun({ ...open, tube: 'gone' }, 's1', frame)).toBeNull();
    expect(tubeOfRun({ ...open, left: true }, 's1', frame)).toBeNull();
    expect(tubeOfRun(null, 's1', frame)).toBeNull();
  });
});

describe('the order that is proposed', () => {
  const bender = {
    turns: 'left',
    bendLies: 'beyond',
    planeHeight: 1000,
    rotationBy: 'level',
    levelStep: 0.1,
    wheelStep: 1,
    pullStep: 0.5,
    room: [],
  } as const;
  const plainTube = bentTube(2);
  const tube = { ...plainTube, die: { ...plainTube.die!, bender } };

  it('needs a bender that is set up, and the time to be found', () => {
    expect(proposalOf(plainTube, [], undefined, undefined)).toMatchObject({ order: null, barred: false });
    expect(proposalOf(plainTube, [], undefined, undefined).words).toContain('not set up');
    expect(proposalOf(tube, [], undefined, undefined).words).toContain('Trying');
    const given = proposalOf(tube, [], undefined, 'no answer came');
    expect(given).toEqual({
      order: null,
      words: 'This tube could not be rehearsed, which is a fault of the program: no answer came.',
      better: false,
      barred: false,
    });
  });

  it('says why there is none, and what the plain order runs into', () => {
    const step = { bend: 1, front: 'A', pullTo: 1, pulled: 1, net: 1, rotation: 0, rotationFrom: null } as const;
    const hit = {
      angle: Math.PI / 4,
      solid: { part: 'room', kind: 'plane', name: 'Wall' },
      by: 'front',
      at: [0, 0, 0],
    } as const;
    const plain = [{ ...step, hit, cannotHold: null }];
    const none = { plain, proposed: null, reason: { kind: 'bends-overlap' } as const, free: 0, all: 2 };
    expect(proposalOf(tube, [], none, undefined)).toEqual({
      order: null,
      words: 'No order keeps clear: its bends overlap, so it cannot be made.',
      better: false,
      barred: true,
    });
    const other = { ...step, front: 'B', hit: null, cannotHold: null } as const;
    const rehearsal = { ...none, proposed: [other], reason: null, free: 1 };
    const found = proposalOf(tube, [{ bend: 1, front: 'A' }], rehearsal, undefined);
    expect(found.order).toEqual([{ bend: 1, front: 'B' }]);
    expect(found.better).toBe(true);
    // Every order keeps clear: none is better than the one that the marks and sheets go by.
    const free = { ...rehearsal, plain: [{ ...step, hit: null, cannotHold: null }], free: 2 };
    expect(proposalOf(tube, [{ bend: 1, front: 'A' }], free, undefined).better).toBe(false);
    expect(found.words).toMatch(/As the marks come, bend 1 .*Wall at 45°\.$/u);
    // Of an order that nobody asked for nothing is said.
    expect(proposalOf(tube, [{ bend: 1, front: 'B' }], rehearsal, undefined).words).not.toContain('Wall');
  });
});
