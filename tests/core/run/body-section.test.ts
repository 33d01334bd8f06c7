/** Body lines cut by a hoop's plane, against places worked out by hand: a hoop that leans, lines that come through it, touch it, lie in it. */
import { describe, expect, it } from 'vitest';
import { bodySection, hoopsInBody } from '../../../src/core/run/body-section.ts';
import { derived, tube } from '../frame.ts';

type Triple = readonly [number, number, number];
const HALF = 44.45 / 2;

/** From (-300, 500, 0) up to (0, 500, 1000) and across: its plane is x = 0.3 z - 300. Lines by name, each from place to place. */
function car(lines: Readonly<Record<string, readonly Triple[]>>) {
  const places = Object.entries(lines).flatMap(([name, through]) =>
    through.map((position, i) => ({ id: `${name}-${i}`, name: `${name} ${i}`, position })),
  );
  const frame = derived({
    nodes: { a: [-300, 500, 0], b: [0, 500, 1000], c: [0, -500, 1000], d: [-300, -500, 0] },
    members: [
      { id: 'hoop', path: ['a', 'b', 'c', 'd'] },
      { id: 'bar', path: ['b', 'c'] },
    ],
    points: places,
    bodyLines: Object.entries(lines).map(([id, through]) => ({
      id,
      name: id,
      points: through.map((_, i) => `${id}-${i}`),
    })),
  });
  return { frame, found: bodySection(frame.job, tube(frame, 'hoop')) };
}

const near = (place: Triple | undefined, wanted: Triple): void =>
  wanted.forEach((value, axis) => expect(place?.[axis]).toBeCloseTo(value, 9));

describe('the car in the plane of a hoop', () => {
  it('is cut where each line comes through, with what is left to the tube', () => {
    // At z = 400 the plane is at x = -180: of a line from -500 to 300 that is two fifths of the way.
    const { found } = car({
      sill: [
        [-500, 600, 400],
        [300, 640, 400],
      ],
      other: [
        [-500, -600, 400],
        [300, -640, 400],
      ],
    });
    expect(found.map(({ line, isImage, isOutside }) => [line, isImage, isOutside])).toEqual([
      ['sill', false, true],
      ['other', false, true],
    ]);
    near(found[0]!.at, [-180, 616, 400]);
    near(found[1]!.at, [-180, -616, 400]);
    // Square off a straight leg that stands upright at y = 500, in a plane that holds the y axis.
    for (const { gap } of found) expect(gap).toBeCloseTo(116 - HALF, 9);
    // The plane lies as the tube is laid on the floor: from leg to leg 1000, and so from place to place 1232.
    expect(Math.hypot(found[0]!.flat.x - found[1]!.flat.x, found[0]!.flat.y - found[1]!.flat.y)).toBeCloseTo(1232, 9);
  });

  it('is seen in the mirror where a line was measured on one side alone, and inside the hoop told from outside', () => {
    const { found } = car({
      belt: [
        [-400, 700, 700],
        [400, 700, 700],
      ],
      tunnel: [
        [-500, 0, 200],
        [500, 0, 200],
      ],
      roof: [
        [-500, 300, 1100],
        [500, 300, 1100],
      ],
    });
    expect(found.map(({ line, isImage, isOutside, at }) => [line, isImage, isOutside, Math.sign(at[1])])).toEqual([
      ['belt', false, true, 1],
      ['roof', false, true, 1],
      ['roof', true, true, -1],
      ['belt', true, true, -1],
      ['tunnel', false, false, 0],
    ]);
    // At z = 1100 the plane is at x = 30; along it from the top bar 100 / cos of its lean.
    expect(found[1]!.gap).toBeCloseTo(Math.hypot(100, 30) - HALF, 9);
  });

  it('a line that only touches is there once, one that lies in it at both its ends, one that goes back and forth as often', () => {
    const touching = car({
      post: [
        [-400, 620, 500],
        [-150, 620, 500],
        [-400, 620, 600],
      ],
      other: [
        [-400, -620, 500],
        [-150, -620, 500],
      ],
    }).found;
    expect(touching.map(({ line }) => line)).toEqual(['post', 'other']);
    near(touching[0]!.at, [-150, 620, 500]);
    const along = car({
      pillar: [
        [-300, 650, 0],
        [-150, 600, 500],
        [0, 560, 1000],
      ],
    }).found;
    expect(along.filter(({ isImage }) => !isImage).map(({ at }) => at[2])).toEqual([0, 500, 1000]);
    const zigzag = car({
      edge: [
        [-400, 650, 200],
        [100, 650, 300],
        [-400, 650, 400],
        [100, 650, 500],
      ],
    }).found;
    expect(zigzag.filter(({ isImage }) => !isImage)).toHaveLength(3);
  });

  it('is of hoops alone: a straight bar has no plane, and what lies level is no hoop', () => {
    const { frame } = car({
      sill: [
        [-500, 600, 400],
        [300, 640, 400],
      ],
    });
    expect(hoopsInBody(frame.job, frame.tubes).map(({ tube: { id } }) => id)).toEqual(['hoop']);
    const level = derived({
      nodes: { a: [-300, 500, 400], b: [500, 500, 400], c: [500, -500, 400], d: [-300, -500, 400] },
      members: [{ id: 'ring', path: ['a', 'b', 'c', 'd'] }],
      points: [
        { id: 'p', name: 'p', position: [0, 600, 0] },
        { id: 'q', name: 'q', position: [0, 600, 900] },
      ],
      bodyLines: [{ id: 'l', name: 'l', points: ['p', 'q'] }],
    });
    expect(hoopsInBody(level.job, level.tubes)).toEqual([]);
  });
});
