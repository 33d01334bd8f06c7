/** What a pointer means: named places before tubes, tubes before straight lines, those before places in a plane. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { distance, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { nearestOnPath } from '../../../src/core/geometry/path.ts';
import { projectionOf, type Projection } from '../../../src/view/camera/projection.ts';
import { sightOf } from '../../../src/view/canvas/sight.ts';
import { aimAt, targetsOf, type Aim } from '../../../src/view/draw/aim.ts';
import { walkTo } from '../../../src/view/draw/walk.ts';

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

const targets = (...places: readonly Vec3[]) =>
  targetsOf(
    FRAME,
    SIGHT,
    places.map((at) => ({ ground: { kind: 'space', position: at }, at })),
  );
function aimed(view: Projection, place: Vec3, [dx, dy] = [0, 0], ...before: readonly Vec3[]): Aim {
  const { x, y } = view.toScreen(place);
  return aimAt(targets(...before), view, { x: x + dx, y: y + dy, reach: 4 }, 1)!;
}

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

  it('else straight along an axis from the place before, in whole steps', () => {
    const from: Vec3 = [700, 300, 250.5];
    const up = aimed(FRONT, [700, 300, 700.2], [5, 0], from);
    expect([up.guides, up.at]).toEqual([['plumb'], [700, 300, 700.5]]);
    const across = aimed(FRONT, [700, 150, 250.5], [0, 5], from);
    expect([across.guides, across.at]).toEqual([['across'], [700, 150, 250.5]]);
    const ahead = aimed(LEFT, [900, 300, 250.5], [0, 5], from);
    expect([ahead.guides, ahead.at]).toEqual([['ahead'], [900, 300, 250.5]]);
    const centre = aimed(FRONT, [700, 3, 250.5], [0, 5], from);
    expect([centre.guides, centre.at]).toEqual([
      ['across', 'centre'],
      [700, 0, 250.5],
    ]);
  });

  it('on a tube too it finds what is level with the place before', () => {
    const from: Vec3 = [800, 300, 250];
    const hoop = FRAME.bars.get('hoop')!;
    const level = aimed(FRONT, [0, 600 - (250 * 100) / 1100, 250], [0, 4], from);
    expect(level.guides).toEqual(['level']);
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
      const seen = view.toScreen(aim.at);
      expect(Math.hypot(seen.x - pixel.x - 61.3, seen.y - pixel.y - 47.7)).toBeLessThan(1);
    }
  });

  it('with no place before, one on the floor; from the side in the centre plane; from the front in none', () => {
    const pixel = SLANT.toScreen([900, 200, 0]);
    const floor = aimAt(targets(), SLANT, { ...pixel, reach: 4 }, 1)!;
    expect([floor.at, floor.guides]).toEqual([[900, 200, 0], ['floor']]);
    expect(aimed(SLANT, [900, 3, 0]).at).toEqual([900, 0, 0]);
    const side = aimed(LEFT, [900, 0, 700]);
    expect([side.at, side.guides]).toEqual([[900, 0, 700], ['centre']]);
    expect(aimAt(targets(), FRONT, { x: 20, y: 20, reach: 4 }, 1)).toBeNull();
  });
});

describe('an arrow key', () => {
  it('leads to a named place that way, and by keys alone every one that is seen is come to', () => {
    const all = targets();
    const isMine = (at: Vec3) => {
      const { x, y } = SLANT.toScreen(at);
      return x >= 0 && y >= 0 && x <= SLANT.width && y <= SLANT.height;
    };
    const seen = all.named.filter(({ at }) => isMine(at));
    const reached = new Set<Aim>();
    const open: { x: number; y: number }[] = [{ x: 800, y: 800 }];
    while (open.length > 0) {
      const from = open.pop()!;
      for (const key of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']) {
        const next = walkTo(all, SLANT, from, key);
        if (next === null || reached.has(next)) continue;
        reached.add(next);
        open.push(SLANT.toScreen(next.at));
      }
    }
    const pixels = new Set([...reached].map(({ at }) => JSON.stringify(SLANT.toScreen(at))));
    const missed = seen.filter(({ at }) => {
      const here = SLANT.toScreen(at);
      return ![...pixels].some((each) => Math.hypot(JSON.parse(each).x - here.x, JSON.parse(each).y - here.y) < 3);
    });
    expect(seen.length).toBeGreaterThan(15);
    expect(missed.map(({ ground }) => ground)).toEqual([]);
  });

  it('goes the way of the arrow', () => {
    const from = SLANT.toScreen([0, 0, 500]);
    const to = SLANT.toScreen(walkTo(targets(), SLANT, from, 'ArrowUp')!.at);
    expect(to.y).toBeLessThan(from.y);
  });
});
