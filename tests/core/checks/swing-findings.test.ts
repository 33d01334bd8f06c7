import { describe, expect, it } from 'vitest';
import { rehearse } from '../../../src/core/rehearse/rehearse.ts';
import { mendOf, swingFindings } from '../../../src/core/checks/swing-findings.ts';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import type { Obstacle } from '../../../src/core/job/kinds/obstacle.ts';
import type { Rehearsal } from '../../../src/core/rehearse/types.ts';
import { swingMendInWords } from '../../../src/core/words/rehearsal.ts';
import { derived, inWords } from '../frame.ts';
import { bendable, BENDER, DIE, frameOf, type Shape } from '../rehearse/tubes.ts';

const foundOf = (
  shape: Shape,
  planeHeight: number,
  room: readonly Obstacle[] = [],
  inOrder = (rehearsal: Rehearsal): readonly BendStep[] => rehearsal.plain,
) => {
  const tube = bendable(shape, { planeHeight, room });
  const rehearsal = rehearse(tube);
  return inWords(frameOf(shape, { planeHeight, room }), swingFindings(tube, rehearsal, inOrder(rehearsal)));
};

/** Bend 2 made with end A in front: leg A, behind a bend of 90 degrees down, hangs 152.4 + 900 mm below the bend plane. */
const DOWN: Shape = {
  bends: [
    { rotation: 0, angle: 90 },
    { rotation: -90, angle: 90 },
  ],
  straights: [900, 300, 900],
};

describe('swingFindings', () => {
  it('says nothing where the plain order is free', () => {
    expect(foundOf(DOWN, 1500)).toEqual([]);
  });

  it('names the order to take where the plain one touches something', () => {
    const found = foundOf(DOWN, 900);
    expect(found.map(({ id, severity }) => `${severity} ${id}`)).toEqual(['warning bend/order-matters']);
    expect(found[0]!.message).toContain('the floor');
    expect(found[0]!.message).toContain('Take bends 2 and 1 in that order with end A in front.');
  });

  it('says no more where the tube is bent in that order', () => {
    expect(foundOf(DOWN, 900, [], ({ proposed }) => proposed!)).toEqual([]);
  });

  it('says what is touched, and what would mend it, where no order is free', () => {
    const wall: Obstacle = { name: 'Wall', kind: 'plane', point: [0, 700, 0], normal: [0, -1, 0] };
    const [finding] = foundOf({ bends: [{ rotation: 0, angle: 90 }], straights: [900, 900] }, 900, [wall]);
    expect(finding).toMatchObject({ id: 'bend/no-free-order', severity: 'warning', bend: 1 });
    expect(finding!.message).toMatch(/Wall at \d+°\. Move Wall away/);
  });

  it('says what would mend it by itself too, and nothing where an order is free', () => {
    const wall: Obstacle = { name: 'Wall', kind: 'plane', point: [0, 700, 0], normal: [0, -1, 0] };
    const mended = (height: number, room: readonly Obstacle[]) => {
      const tube = bendable(
        { bends: [{ rotation: 0, angle: 90 }], straights: [900, 900] },
        { planeHeight: height, room },
      );
      const mend = mendOf(rehearse(tube));
      return mend === null ? null : swingMendInWords(mend);
    };
    expect(mended(900, [wall])).toMatch(/^Move Wall away/u);
    expect(mended(900, [])).toBeNull();
  });

  it('says what the plain order of a tube of nine bends touches, and claims nothing of the others', () => {
    const many: Shape = {
      bends: Array.from({ length: 9 }, (_, i) => ({ rotation: i % 2 === 0 ? 180 : 0, angle: 20 })),
      straights: Array.from({ length: 10 }, () => 300),
    };
    expect(foundOf(many, 900)).toEqual([]);
    const wall: Obstacle = { name: 'Wall', kind: 'plane', point: [0, 500, 0], normal: [0, -1, 0] };
    const [finding] = foundOf(many, 900, [wall]);
    expect(finding).toMatchObject({ id: 'bend/plain-order-touches', severity: 'warning' });
    expect(finding!.message).toMatch(/with end A in front, bend \d .*Wall at \d+°\. No other order is searched/);
  });

  it('leaves what the die cannot do to the checks', () => {
    expect(foundOf({ bends: [{ rotation: 0, angle: 130 }], straights: [500, 500] }, 900)).toEqual([]);
  });
});

describe('withSlowFindings', () => {
  it('puts warnings after errors and before notes, and leaves a frame without a bender as it is', () => {
    const records = (die: object) => ({
      dies: [die],
      nodes: { a: [0, 0, 0], b: [1100, 0, 0], c: [1100, 1100, 0] },
      members: [{ id: 't', path: ['a', 'b', 'c'] }],
      envelopes: [
        {
          id: 'head',
          name: 'Head',
          kind: 'box',
          centre: [500, 0, 0],
          size: [100, 100, 100],
          rotation: [0, 0, 0],
          gap: 50,
        },
      ],
    });
    const bare = derived(records(DIE));
    expect(withSlowFindings(bare)).toBe(bare);
    const room = [{ name: 'Wall', kind: 'plane', point: [0, 700, 0], normal: [0, -1, 0] }];
    const frame = withSlowFindings(derived(records({ ...DIE, bender: { ...BENDER, room } })));
    const severities = frame.findings.map(({ severity }) => severity);
    expect(severities).toEqual(severities.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(frame.findings.map(({ id }) => id)).toContain('bend/no-free-order');
    expect(severities[0]).toBe('error');
  });
});

const order = ['error', 'warning', 'note'];
