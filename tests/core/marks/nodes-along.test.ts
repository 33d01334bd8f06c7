import { describe, expect, it } from 'vitest';
import { nodesAlong } from '../../../src/core/marks/nodes-along.ts';
import { derived, tube } from '../frame.ts';

/**
 * A hoop across the car, CLR 152.4, from y = -500 to 500 and 1000 high: legs of 847.6 to the tangents, 239.39 of each bend,
 * 695.2 between. A brace meets its top 200 to one side, its mirror image the other; a post stands under the middle.
 */
const FRAME = derived({
  nodes: {
    footLeft: [0, 500, 0],
    topLeft: [0, 500, 1000],
    topRight: [0, -500, 1000],
    footRight: [0, -500, 0],
    braced: { kind: 'on', member: 'hoop', distance: 847.6 + 76.2 * Math.PI + 147.6, from: 'start' },
    back: [-900, 200, 0],
    middle: [0, 0, 1000],
    floor: [300, 0, 0],
    aside: [700, 0, 0],
  },
  members: [
    { id: 'hoop', path: ['footLeft', 'topLeft', 'topRight', 'footRight'] },
    { id: 'brace', path: ['braced', 'back'], mirror: true },
    { id: 'post', path: ['middle', 'floor'] },
    { id: 'other', path: ['floor', 'aside'] },
  ],
});

describe('the nodes along a tube', () => {
  it('are its corners at the middle of their bends, and where other tubes and their twins meet it, each once', () => {
    const arc = 76.2 * Math.PI;
    const top = 847.6 + arc;
    expect(nodesAlong(tube(FRAME, 'hoop'), FRAME)).toEqual([
      { node: 'topLeft', at: expect.closeTo(847.6 + arc / 2, 6) },
      { node: 'braced', at: expect.closeTo(top + 147.6, 6) },
      { node: 'middle', at: expect.closeTo(top + 347.6, 6) },
      { node: "braced'", at: expect.closeTo(top + 547.6, 6) },
      { node: 'topRight', at: expect.closeTo(top + 695.2 + arc / 2, 6) },
    ]);
  });

  it('are none where a tube has only its ends', () => {
    expect(nodesAlong(tube(FRAME, 'brace'), FRAME)).toEqual([]);
    expect(nodesAlong(tube(FRAME, "brace'"), FRAME)).toEqual([]);
  });
});
