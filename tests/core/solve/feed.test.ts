/** Which order a tube is bent in, and what of the blank that leaves for the machine. Lengths by hand, from straights and the die. */
import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { feedOf } from '../../../src/core/solve/feed.ts';
import { derived, inWords, tube as tubeIn } from '../frame.ts';

/** Straights of 247.6, 295.2 and 147.6 mm on CLR 152.4: the tail wants 200. */
const DIE = { id: 'd', outerDiameter: 44.45, centrelineRadius: 152.4, leastGrip: 200 };
const records = (more: object = {}) => ({
  dies: [DIE],
  nodes: { a: [0, 0, 0], b: [400, 0, 0], c: [400, 600, 0], e: [700, 600, 0] },
  members: [{ id: 't', path: ['a', 'b', 'c', 'e'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
  ...more,
});
const fed = (more: object = {}) => {
  const frame = derived(records(more));
  return feedOf(frame.job, tubeIn(frame, 't'));
};
const steps = (...made: readonly (readonly [number, 'A' | 'B'])[]) => made.map(([bend, front]) => ({ bend, front }));

describe('how a tube is fed', () => {
  it('from end A in the plain order where nothing is said; end B is behind and 52.4 short', () => {
    const feed = fed();
    expect(feed).toMatchObject({ from: 'A', mark: 'start', fine: false, step: 1, orderFrom: 'plain', outdated: false });
    expect(feed.order).toEqual(steps([1, 'A'], [2, 'A']));
    expect(feed.grip[0]).toBe(0);
    expect(feed.grip[1]).toBeCloseTo(52.4, 9);
  });

  it('from end B end A is behind, and long enough', () => {
    const feed = fed({ marking: { from: 'B' } });
    expect(feed.order).toEqual(steps([2, 'B'], [1, 'B']));
    expect(feed.grip).toEqual([0, 0]);
  });

  it('a bender that leaves the measured end behind takes the other in front', () => {
    expect(fed({ dies: [{ ...DIE, bender: { bendLies: 'before' } }] }).order).toEqual(steps([2, 'B'], [1, 'B']));
  });

  it('its own end comes before the job’s, its own order before the plain one, that of its run before both', () => {
    const own = { tube: 't', from: 'B', order: steps([2, 'A'], [1, 'A']) };
    expect(fed({ feeds: [own] })).toMatchObject({
      from: 'B',
      orderFrom: 'tube',
      order: own.order,
      plain: steps([2, 'B'], [1, 'B']),
    });
    const bent = [{ tube: 't', order: steps([1, 'B'], [2, 'B']) }];
    expect(fed({ feeds: [own], bent })).toMatchObject({ from: 'B', orderFrom: 'run', order: bent[0]!.order });
  });

  it('an order that does not hold every bend once is passed over', () => {
    for (const order of [steps([1, 'B']), steps([1, 'B'], [3, 'B']), steps([1, 'B'], [2, 'B'], [3, 'B'])]) {
      expect(fed({ feeds: [{ tube: 't', order }] })).toMatchObject({ orderFrom: 'plain', outdated: true });
      const own = { tube: 't', order: steps([2, 'A'], [1, 'A']) };
      expect(fed({ bent: [{ tube: 't', order }], feeds: [own] })).toMatchObject({ orderFrom: 'tube', outdated: false });
    }
  });

  it('a tube that is no symmetric hoop is marked from end A where others are from the middle', () => {
    expect(fed({ marking: { from: 'middle' } }).from).toBe('A');
  });

  it('is the same object as long as nothing that it goes by has changed', () => {
    const frame = derived(records());
    const tube = tubeIn(frame, 't');
    const feed = feedOf(frame.job, tube);
    expect(feedOf({ ...frame.job, feeds: [...frame.job.feeds] }, tube)).toBe(feed);
    expect(feedOf({ ...frame.job, lengthUnit: 'in' }, tube)).not.toBe(feed);
  });
});

describe('what is found of it', () => {
  const found = (more: object) =>
    derived(records(more)).findings.map(({ id, end }) => (end === undefined ? id : `${id} ${end}`));
  it('the tail is looked for at the end that stays behind in this order', () => {
    expect(found({})).toEqual(['bend/short-tail B']);
    expect(found({ marking: { from: 'B' } })).toEqual([]);
    expect(found({ feeds: [{ tube: 't', order: steps([2, 'B'], [1, 'B']) }] })).toEqual([]);
  });
  it('an order of other bends is named, and what is drawn straight has none', () => {
    expect(found({ feeds: [{ tube: 't', order: steps([1, 'B']) }] })).toEqual([
      'bend/order-outdated',
      'bend/short-tail B',
    ]);
    const straight = derived({
      nodes: { a: [0, 0, 0], b: [400, 0, 0] },
      members: [{ id: 't', path: ['a', 'b'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
      feeds: [{ tube: 't', order: steps([1, 'B']) }],
    });
    expect(inWords(straight, straight.findings)[0]!.message).toContain('it is straight now');
  });
  it('a stick too short says the length to cut, and which way would do', () => {
    const stick = (length: number, more: object = {}) => {
      const frame = derived({
        ...records(more),
        sections: [{ id: 'main', name: '1 3/4', outerDiameter: 44.45, wall: 3.048, stick: length }],
      });
      return inWords(frame, frame.findings).filter(({ id }) => id === 'stock/longer-than-stick');
    };
    // 247.6 + 295.2 + 147.6 and two quarter circles of 239.39: 1169.18; with 52.4 of grip 1221.58.
    expect(stick(1200)[0]!.message).toMatch(
      /1221\.6 mm long, 52\.4 mm of it for the grip.*Bent from end B it needs less/u,
    );
    expect(stick(1200, { marking: { from: 'B' } })).toEqual([]);
  });
});

it('a file that says nothing of it comes back as it was', () => {
  const { job } = derived(records());
  const text = serialiseJob(job);
  expect(text).not.toContain('"marking"');
  expect(parseJob(text)).toEqual({ ok: true, job });
});
