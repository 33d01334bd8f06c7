/** A tube that comes down beside its foot: against a hoop that was moved and lifted by hand, its legs upright or leaning. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import type { Finding } from '../../../src/core/checks/types.ts';
import { findingInWords } from '../../../src/core/words/findings.ts';
import { jobOf } from '../frame.ts';

const CORNERS = [
  [0, 600, 0],
  [0, 600, 1000],
  [0, -600, 1000],
  [0, -600, 0],
] as const;

/** End A on a box, end B on a plate; where it was measured in the car, by end. */
function hoop(seat: readonly object[], kind: 'plate' | 'box' = 'box', made: readonly object[] = []): Derived {
  const bends = [1, 2].map((bend) => ({ bend, pulled: 94, net: 90, ...(bend === 2 && { rotation: 0 }) }));
  const order = [1, 2].map((bend) => ({ bend, front: 'A' }));
  const job = jobOf({
    nodes: Object.fromEntries(CORNERS.map((place, i) => [`h${i}`, place])),
    sections: [{ id: 'main', outerDiameter: 40, wall: 2.5 }],
    dies: [{ id: 'd', outerDiameter: 40, centrelineRadius: 150 }],
    feet: [
      { id: 'a', name: 'Left foot', kind, size: [60, 60], thickness: 3, ...(kind === 'box' && { height: 40 }) },
      { id: 'b', name: 'Right foot', kind: 'plate', size: [60, 60], thickness: 3 },
    ],
    members: [
      {
        id: 'hoop',
        name: 'Hoop',
        section: 'main',
        path: CORNERS.map((_, i) => `h${i}`),
        ends: ['a', 'b'].map((foot) => ({ fit: 'foot', foot, normal: [0, 0, 1] })),
      },
    ],
    bent: [{ tube: 'hoop', order, done: [], bends, checks: [], stands: true, seat }],
    made,
  });
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
}

const offFeet = (frame: Derived) =>
  frame.findings.flatMap((finding: Finding) => (finding.id === 'made/off-foot' ? [finding] : []));

describe('a tube that leads beside its feet', () => {
  it('where it comes down on them nothing is said', () => {
    expect(offFeet(hoop([]))).toEqual([]);
    expect(
      offFeet(
        hoop([
          { at: 'A', x: 0.4, y: 600, z: 0 },
          { at: 'B', x: 0.4, z: 0 },
        ]),
      ),
    ).toEqual([]);
  });

  it('moved along the floor: a note while it stands on them, a warning past the edge, each with which way', () => {
    const near = hoop([
      { at: 'A', x: 4, y: 600, z: 0 },
      { at: 'B', x: 4, z: 0 },
      { at: 'middle', x: 4 },
    ]);
    expect(offFeet(near).map(({ end, severity, over }) => [end, severity, over])).toEqual([
      ['A', 'note', 0],
      ['B', 'note', 0],
    ]);
    for (const { aside, up } of offFeet(near)) {
      expect(aside[0]).toBeCloseTo(4, 4);
      expect([aside[1], aside[2], up]).toEqual([0, 0, 0]);
    }
    expect(near.findings.filter(({ id, node }) => id === 'made/off-node' && (node === 'h0' || node === 'h3'))).toEqual(
      [],
    );
    const far = hoop([
      { at: 'A', x: -14, y: 600, z: 0 },
      { at: 'B', x: -14, z: 0 },
      { at: 'middle', x: -14 },
    ]);
    const [first] = offFeet(far);
    expect(first!.severity).toBe('warning');
    // The plate reaches 30 mm from its middle, the tube 20 from its axis.
    expect(first!.over).toBeCloseTo(4, 4);
    expect(findingInWords(first!, far)).toBe(
      'Hoop, end A, comes down 14.0 mm further back than it was drawn on Left foot. Its outline stands 4.0 mm past the edge there. Set it where the tube comes down, if it is not welded yet; else make it larger.',
    );
  });

  it('lifted or let down: how much higher the foot, or shorter the tube', () => {
    const at = (z: number) =>
      hoop(
        [
          { at: 'A', x: 0, y: 600, z },
          { at: 'B', x: 0, z },
          { at: 'middle', x: 0 },
        ],
        'plate',
      );
    const [high] = offFeet(at(3));
    expect(high!.up).toBeCloseTo(3, 4);
    expect(findingInWords(high!, at(3))).toBe(
      'Hoop, end A, comes down 3.0 mm above Left foot. Make it 3.0 mm higher, or pack it.',
    );
    const [low] = offFeet(at(-2));
    expect(findingInWords(low!, at(-2))).toBe(
      'Hoop, end A, comes down 2.0 mm lower than Left foot takes it. Cut the tube 2.0 mm shorter there than its sheet says.',
    );
  });

  it('leaning: where its axis meets the face, which a lifted tube meets farther aside', () => {
    // Turned about the line through its feet: the top 100 mm forward of 1 000.
    const lean = hoop([
      { at: 'A', x: 0, y: 600, z: 5 },
      { at: 'B', x: 0, z: 5 },
      { at: 'middle', x: 100 },
    ]);
    const { direction, position } = lean.byId.get('hoop')!.ends[0];
    const [first] = offFeet(lean);
    const along = position[2] / direction[2];
    expect(first!.along).toBeCloseTo(along, 9);
    expect(first!.aside[0]).toBeCloseTo(position[0] - along * direction[0] || 0, 9);
  });
});
