/** What a pointer means: named places before crossings and tubes, those before straight lines, and these before places in a plane. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { addScaled, distance, normalize, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { distanceToPath, nearestOnPath } from '../../../src/core/geometry/path.ts';
import { projectionOf, type Projection } from '../../../src/view/camera/projection.ts';
import { sightOf } from '../../../src/view/canvas/sight.ts';
import { aimAt, targetsOf } from '../../../src/view/draw/aim.ts';
import { placesNear, stepped } from '../../../src/view/draw/walk.ts';
import { snapTyped, NOTHING_TYPED } from '../../../src/view/draw/typed.ts';
import type { Ground } from '../../../src/core/shape/draw/ground.ts';
import { snapsOf, type Snap } from '../../../src/core/shape/draw/snaps.ts';
import { courseOf } from '../../../src/core/shape/draw/tube.ts';
import { groundName } from '../../../src/core/words/drawing.ts';

/** A hoop of two corners across the car, and a bar that runs from it to the rear; points before it. */
const FRAME = derived({
  lengthUnit: 'mm',
  points: [
    { id: 'sill', name: 'Sill', position: [400, 600, 300] },
    { id: 'mid', name: 'Middle', position: [500, 0, 200] },
  ],
  sections: [{ id: 's', outerDiameter: 40, wall: 2 }],
  dies: [{ id: 'd', outerDiameter: 40, centrelineRadius: 120 }],
  nodes: [
    { id: 'foot', at: { kind: 'fixed', position: [0, 600, 0] } },
    { id: 'top', at: { kind: 'fixed', position: [0, 500, 1100] } },
    { id: 'rear', at: { kind: 'fixed', position: [-900, 450, 400] } },
    { id: 'land', at: { kind: 'on', member: 'hoop', from: 'start', distance: 800 } },
  ],
  members: [
    { id: 'hoop', path: ['foot', 'top', "top'", "foot'"], section: 's', die: 'd' },
    { id: 'stay', path: ['land', 'rear'], section: 's', mirror: true },
  ],
});

function derived(records: object): Derived {
  const parsed = parseJob(JSON.stringify({ format: 'cagewright/job', version: 1, name: 'Aim', ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const result = derive(parsed.job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

const SIGHT = sightOf(FRAME.tubes);
/** A pixel a mm. */
const seenFrom = (yaw: number, pitch: number): Projection =>
  projectionOf({ target: [0, 0, 500], yaw, pitch, span: 1600 }, 1600, 1600);
const FRONT = seenFrom(0, 0);
const LEFT = seenFrom(Math.PI / 2, 0);
const SLANT = seenFrom(0.6, 0.5);

const inAir = (at: Vec3): Snap => ({ ground: { kind: 'space', position: at }, at });
const targets = (...places: readonly Vec3[]) => targetsOf(FRAME, SIGHT, places.map(inAir));
function aimed(view: Projection, place: Vec3, [dx, dy] = [0, 0], ...before: readonly Vec3[]): Snap {
  const { x, y } = view.toScreen(place);
  return aimAt(targets(...before), view, { x: x + dx, y: y + dy, reach: 4 }, 1)!;
}
/** Whose its coordinates are. */
const ownersOf = ({ ground }: Snap) => (ground.kind === 'space' ? (ground.by ?? []) : []);

describe('a pointer', () => {
  it('means the nearest named place within its reach, a node before a point', () => {
    expect(aimed(SLANT, [0, 600, 0], [6, -5]).ground).toEqual({ kind: 'node', node: 'foot' });
    expect(aimed(SLANT, [0, -600, 0], [3, 2]).ground).toEqual({ kind: 'node', node: "foot'" });
    expect(aimed(SLANT, [400, 600, 300], [-4, 4]).ground).toEqual({ kind: 'point', point: 'sill' });
    expect(aimed(SLANT, [400, -600, 300], [-4, 4]).ground).toEqual({ kind: 'point', point: "sill'" });
    // Seen from the front the stay's end on the hoop hides nothing of the node: it wins over all that lies as near.
    expect(aimed(FRONT, FRAME.nodes.get('land')!).ground).toEqual({ kind: 'node', node: 'land' });
  });

  it('reaches farther by finger', () => {
    const { x, y } = SLANT.toScreen([400, 600, 300]);
    const by = (reach: number) => aimAt(targets(), SLANT, { x: x - 15, y: y - 5, reach }, 1)!.ground.kind;
    expect([by(4), by(16)]).toEqual(['space', 'point']);
  });

  it('means starts, middles and ends of bends, middles of straights, and where a tube crosses the centre plane', () => {
    const hoop = FRAME.bars.get('hoop')!;
    const [bend] = hoop.bends;
    const { pieces } = hoop.path;
    expect(aimed(FRONT, pieces[1]!.from, [2, 2]).ground).toEqual({
      kind: 'bend',
      tube: 'hoop',
      bend: 1,
      where: 'start',
    });
    expect(aimed(FRONT, pieces[1]!.to, [2, 2]).ground).toEqual({ kind: 'bend', tube: 'hoop', bend: 1, where: 'end' });
    expect(bend!.end - bend!.start).toBeGreaterThan(100);
    const centre = aimed(FRONT, [0, 0, 1100], [2, 3]);
    expect([centre.ground.kind, centre.at]).toEqual(['centre', [0, 0, 1100]]);
    const straight = pieces[0]!;
    const middle: Vec3 = [0, 1, 2].map((i) => (straight.from[i]! + straight.to[i]!) / 2) as unknown as Vec3;
    expect(aimed(FRONT, middle).ground).toEqual({ kind: 'middle', tube: 'hoop', straight: 1 });
  });

  it('means the mirror image of a place of the tube itself, so that a hoop comes out alike', () => {
    const aim = aimed(FRONT, [700, -300, 250], [3, 3], [700, 300, 250], [700, 200, 900]);
    expect(aim.ground).toEqual({ kind: 'image', of: { kind: 'space', position: [700, 300, 250] } });
    expect(aim.at).toEqual([700, -300, 250]);
  });

  it('else the tube that is seen there, on its centreline, in whole steps from end A', () => {
    const place: Vec3 = [0, 580, 220];
    const aim = aimed(FRONT, place, [3, 0]);
    expect(aim.ground).toMatchObject({ kind: 'along', tube: 'hoop' });
    const hoop = FRAME.bars.get('hoop')!;
    expect(nearestOnPath(hoop.path, aim.at).distance).toBeLessThan(1e-9);
    const along = nearestOnPath(hoop.path, aim.at).at;
    expect(along).toBeCloseTo(Math.round(along), 6);
    expect(distance(aim.at, place)).toBeLessThan(2);
  });

  it('else straight along an axis from the place before, in whole steps, with two coordinates of that place', () => {
    const from: Vec3 = [700, 300, 250.5];
    const last = inAir(from).ground;
    const up = aimed(FRONT, [700, 300, 700.2], [5, 0], from);
    expect([up.at, ownersOf(up)]).toEqual([
      [700, 300, 700.5],
      [last, last, null],
    ]);
    const across = aimed(FRONT, [700, 150, 250.5], [0, 5], from);
    expect([across.at, ownersOf(across)]).toEqual([
      [700, 150, 250.5],
      [last, null, last],
    ]);
    const ahead = aimed(LEFT, [900, 300, 250.5], [0, 5], from);
    expect([ahead.at, ownersOf(ahead)]).toEqual([
      [900, 300, 250.5],
      [null, last, last],
    ]);
    const centre = aimed(FRONT, [700, 3, 250.5], [0, 5], from);
    expect([centre.at, ownersOf(centre)]).toEqual([
      [700, 0, 250.5],
      [last, null, last],
    ]);
  });

  it('on a tube too it finds what is level with the place before', () => {
    const from: Vec3 = [800, 300, 250];
    const hoop = FRAME.bars.get('hoop')!;
    const level = aimed(FRONT, [0, 600 - (250 * 100) / 1100, 250], [0, 4], from);
    expect(level.ground).toEqual({ kind: 'level', tube: 'hoop', with: inAir(from).ground, nth: 1 });
    expect(level.at[2]).toBeCloseTo(250, 9);
    expect(nearestOnPath(hoop.path, level.at).distance).toBeLessThan(1e-9);
  });

  it('else a place in the plane through the place before that faces the view, under the pixel to a step', () => {
    const from: Vec3 = [700, 300.25, 250.5];
    for (const [view, axis] of [
      [FRONT, 0],
      [LEFT, 1],
      [seenFrom(0.3, 1.2), 2],
    ] as const) {
      const pixel = view.toScreen(from);
      const aim = aimAt(targets(from), view, { x: pixel.x + 61.3, y: pixel.y + 47.7, reach: 4 }, 1)!;
      expect(aim.ground.kind).toBe('space');
      expect(aim.at[axis]).toBe(from[axis]);
      expect(ownersOf(aim)[axis]).toEqual(inAir(from).ground);
      const seen = view.toScreen(aim.at);
      expect(Math.hypot(seen.x - pixel.x - 61.3, seen.y - pixel.y - 47.7)).toBeLessThan(1);
    }
  });

  it('with no place before, one on the floor; from the side in the centre plane; from the front in none', () => {
    const pixel = SLANT.toScreen([900, 200, 0]);
    const floor = aimAt(targets(), SLANT, { ...pixel, reach: 4 }, 1)!;
    expect([floor.at, groundName(FRAME, floor.ground, [])]).toEqual([[900, 200, 0], 'On the floor']);
    expect(aimed(SLANT, [900, 3, 0]).at).toEqual([900, 0, 0]);
    const side = aimed(LEFT, [900, 0, 700]);
    expect([side.at, groundName(FRAME, side.ground, [])]).toEqual([[900, 0, 700], 'On the centre plane']);
    expect(aimAt(targets(), FRONT, { x: 20, y: 20, reach: 4 }, 1)).toBeNull();
  });
});

describe('straight on', () => {
  const [start, corner]: readonly [Vec3, Vec3] = [
    [800, 200, 100],
    [860, 320, 350],
  ];
  const way = normalize(subtract(corner, start));
  const drawn = [inAir(start), inAir(corner)];
  const grounds = drawn.map(({ ground }) => ground);

  it('the tube goes on as it came to the place before, in whole steps, and has no bend there', () => {
    const aim = aimed(SLANT, addScaled(corner, way, 240.3), [3, 1], start, corner);
    expect(distance(aim.at, addScaled(corner, way, 240))).toBeLessThan(2);
    expect(distance(aim.at, corner)).toBeCloseTo(Math.round(distance(aim.at, corner)), 9);
    expect(groundName(FRAME, aim.ground, grounds)).toBe('Straight on');
    const course = courseOf(FRAME.job, 's', [start, corner, aim.at]);
    if (typeof course === 'string') throw new Error(course);
    expect(course.bends).toEqual([]);
    expect(course.developedLength).toBeCloseTo(distance(start, aim.at), 9);
  });

  it('the other way it would double back: nothing is found there', () => {
    const aim = aimed(SLANT, addScaled(corner, way, -130), [3, 1], start, corner);
    expect(groundName(FRAME, aim.ground, grounds)).not.toContain('Straight on');
  });

  it('is said of a plumb leg that goes on plumb, and keeps the coordinates of the place before', () => {
    const up: Vec3 = [800, 200, 400];
    const aim = aimed(SLANT, [800, 200, 633.2], [2, 0], start, up);
    expect(aim.at).toEqual([800, 200, 633]);
    const own = [start, up].map((at) => inAir(at).ground);
    expect(groundName(FRAME, { kind: 'space', position: aim.at, by: [own[1]!, own[1]!, null] }, own)).toBe(
      'Straight on, plumb over the place before',
    );
  });
});

it('a node at a sharp corner says how far off it the tube passes', () => {
  const at = FRAME.nodes.get('top')!;
  const off = distanceToPath(FRAME.bars.get('hoop')!.path, at);
  expect(off).toBeGreaterThan(10);
  expect(groundName(FRAME, { kind: 'node', node: 'top' }, [])).toBe(
    `Node top, the sharp corner: hoop passes ${off.toFixed(1)} mm off it`,
  );
  expect(groundName(FRAME, { kind: 'node', node: 'foot' }, [])).toBe('Node foot, end A of hoop');
});

describe('lines that cross in the air', () => {
  /** Off every tube, and off the named places that are not meant. */
  const from: Vec3 = [800, 250, 120];
  const node = (id: string): Snap => snapsOf(FRAME).find(({ ground }) => ground.kind === 'node' && ground.node === id)!;
  const rear = node('rear');
  const drawn = [inAir(from)];
  const last = drawn[0]!.ground;
  const at = (view: Projection, place: Vec3, [dx, dy]: readonly [number, number], lately: readonly Snap[]) => {
    const { x, y } = view.toScreen(place);
    return aimAt(targetsOf(FRAME, SIGHT, drawn, lately), view, { x: x + dx, y: y + dy, reach: 4 }, 1)!;
  };
  const named = ({ ground }: Snap) => groundName(FRAME, ground, [last]);

  it('of the place before and one lately pointed at, to the last digit, with the owner of each coordinate', () => {
    for (const [place, by, words] of [
      [[800, 250, 400], [last, last, rear.ground], 'Plumb over the place before, level with rear'],
      [[-900, 450, 120], [rear.ground, rear.ground, last], 'Level with the place before, plumb under rear'],
      [
        [800, 450, 120],
        [last, rear.ground, last],
        'Level and straight across from the place before, as far out as rear',
      ],
      [
        [-900, 250, 120],
        [rear.ground, last, last],
        'Level and straight along from the place before, as far along the car as rear',
      ],
    ] as const) {
      const aim = at(SLANT, place, [4, -5], [rear]);
      expect([aim.at, ownersOf(aim), named(aim)]).toEqual([place, by, words]);
    }
  });

  it('none is found with a place that is neither meant nor near', () => {
    const aim = at(SLANT, [800, 250, 400], [4, -5], []);
    expect(aim.at[2]).not.toBe(400);
    expect(ownersOf(aim)).toEqual([last, last, null]);
  });

  it('with a place that is near on the screen, from the one before', () => {
    // A pixel a mm, from the front: sill' is 60 to the side and 40 up from where its height crosses the plumb line.
    const before = inAir([700, -540, 100]);
    const { x, y } = FRONT.toScreen([700, -540, 300]);
    const aim = aimAt(targetsOf(FRAME, SIGHT, [before]), FRONT, { x: x + 3, y: y + 4, reach: 4 }, 1)!;
    expect(aim.at).toEqual([700, -540, 300]);
    expect(ownersOf(aim)).toEqual([before.ground, before.ground, { kind: 'point', point: "sill'" }]);
  });

  it('the line alone of one lately pointed at, in whole steps from it', () => {
    const aim = at(SLANT, [-900, 450, 900.4], [3, 0], [rear]);
    expect([aim.at, ownersOf(aim)]).toEqual([
      [-900, 450, 900],
      [rear.ground, rear.ground, null],
    ]);
    expect(named(aim)).toBe('Plumb over rear');
  });

  it('in a view along an axis, as deep as the place before', () => {
    const start = inAir([500, -200, 640]);
    const { x, y } = FRONT.toScreen([0, 450, 640]);
    const all = targetsOf(FRAME, SIGHT, [start, ...drawn], [rear]);
    const aim = aimAt(all, FRONT, { x: x + 5, y: y - 4, reach: 4 }, 1)!;
    expect([aim.at, ownersOf(aim)]).toEqual([
      [800, 450, 640],
      [last, rear.ground, start.ground],
    ]);
  });

  it('one coordinate alone in the plane that faces the view', () => {
    const top = seenFrom(0, Math.PI / 2 - 0.05);
    const aim = at(top, [333, 447, 120], [0, 0], [rear]);
    expect([aim.at[1], aim.at[2], ownersOf(aim)]).toEqual([450, 120, [null, rear.ground, last]]);
    expect(aim.at[0]).toBeCloseTo(333, 0);
    expect(named(aim)).toBe('Level with the place before, as far out as rear');
  });
});

describe('keys', () => {
  const sill = snapsOf(FRAME).find(({ ground }) => ground.kind === 'point' && ground.point === 'sill')!;

  it('lead to the twelve named places nearest on the screen, the nearest first, one at each place', () => {
    const near = placesNear(targets(), SLANT, sill);
    const from = SLANT.toScreen(sill.at);
    const away = (at: Vec3) => Math.hypot(SLANT.toScreen(at).x - from.x, SLANT.toScreen(at).y - from.y);
    const aways = near.map(({ at }) => away(at));
    expect(near).toHaveLength(12);
    expect(aways).toEqual(aways.toSorted((a, b) => a - b));
    expect(new Set(near.map(({ at }) => at.join())).size).toBe(12);
    const others = snapsOf(FRAME).filter(({ at }) => ![sill, ...near].some((each) => distance(each.at, at) < 1e-6));
    const inBay = others.filter(({ at }) => {
      const { x, y } = SLANT.toScreen(at);
      return x >= 0 && y >= 0 && x <= SLANT.width && y <= SLANT.height;
    });
    expect(inBay.length).toBeGreaterThan(3);
    expect(Math.min(...inBay.map(({ at }) => away(at)))).toBeGreaterThanOrEqual(aways.at(-1)!);
  });

  it('go in steps along the axes of the car, and what is not stepped stays of the place stepped from', () => {
    const up = stepped(targets(), sill, 'PageUp', 'mm', false);
    expect([up.at, ownersOf(up)]).toEqual([
      [400, 600, 310],
      [sill.ground, sill.ground, null],
    ]);
    const right = stepped(targets(), up, 'ArrowRight', 'mm', true);
    expect([right.at, ownersOf(right)]).toEqual([
      [400, 599, 310],
      [sill.ground, null, null],
    ]);
    expect(stepped(targets(), sill, 'ArrowUp', 'in', false).at[0]).toBe(425.4);
  });

  it('stop at the height of the place before, and on the centre plane', () => {
    const before: Vec3 = [700, 0, 306];
    const [last] = targets(before).drawn;
    const level = stepped(targets(before), sill, 'PageUp', 'mm', false);
    expect([level.at, ownersOf(level)]).toEqual([
      [400, 600, 306],
      [sill.ground, sill.ground, last!.ground],
    ]);
    expect(stepped(targets(before), level, 'PageUp', 'mm', false).at[2]).toBe(316);
    expect(stepped(targets(), inAir([10, -4, 20]), 'ArrowLeft', 'mm', false).at).toEqual([10, 0, 20]);
  });
});

describe('numbers', () => {
  const last = inAir([700, 300, 250]);
  const by = (aim: Snap | null, at: Vec3, typed: object) =>
    ownersOf(snapTyped(at, { ...NOTHING_TYPED, ...typed }, last, aim));

  it('leave to another place what was lined up with it, and what they say themselves they own', () => {
    const owner: Ground = { kind: 'point', point: 'sill' };
    const level: Snap = {
      ground: { kind: 'space', position: [900, 310, 300], by: [null, null, owner] },
      at: [900, 310, 300],
    };
    expect(by(level, [950, 320, 300], { length: '60' })).toEqual([null, null, owner]);
    expect(by(level, [950, 320, 300], { height: '300' })).toEqual([]);
    expect(by(null, [950, 320, 250], { length: '60', slope: '0' })).toEqual([null, null, last.ground]);
    expect(by(null, [700, 300, 310], { length: '60', slope: '90' })).toEqual([last.ground, last.ground, null]);
  });
});
