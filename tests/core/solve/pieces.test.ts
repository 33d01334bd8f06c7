/**
 * Bars in pieces. Their cuts against brute force: the nearest pair of places of two centrelines, found by marching along both, and the path itself
 * rolled out by placeAt, which was tested on its own. What the pieces add up to is common practice: steel is neither made nor lost by a saw cut.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { cutWhere, joinWhere, swapThrough } from '../../../src/core/edit/pieces.ts';
import { placeAt, type Path } from '../../../src/core/geometry/path.ts';
import { cross, distance, dot, length, mirrored, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { tubesOfMember } from '../../../src/core/job/member-of-tube.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';

const head = {
  format: 'cagewright/job',
  version: 1,
  name: 'Pieces',
  sections: [{ id: 's', outerDiameter: 44.45, wall: 3.048 }],
  dies: [{ id: 'd', outerDiameter: 44.45, centrelineRadius: 152.4 }],
};

function read(records: object): Job {
  const parsed = parseJob(JSON.stringify({ ...head, ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}

function derived(job: Job, previous?: Derived): Derived {
  const result = derive(job, previous);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

const node = (id: string, position: Vec3): object => ({ id, at: { kind: 'fixed', position } });

/** A bar and one that runs through it, each bent once or straight. */
const crossing = (a: readonly Vec3[], b: readonly Vec3[], mirror = false): Job =>
  read({
    nodes: [...a.map((at, i) => node(`a${i}`, at)), ...b.map((at, i) => node(`b${i}`, at))],
    members: [
      { id: 'through', path: b.map((_, i) => `b${i}`), section: 's', die: 'd', mirror },
      { id: 'bar', path: a.map((_, i) => `a${i}`), section: 's', die: 'd', mirror, cutBy: ['through'] },
    ],
  });

/** Some bend of 10 to 100 degrees near the middle, in one turned plane or another, or none. */
const route = fc
  .record({
    about: fc.tuple(
      fc.integer({ min: -60, max: 60 }),
      fc.integer({ min: 300, max: 420 }),
      fc.integer({ min: -60, max: 60 }),
    ),
    turn: fc.constantFrom(0, 10, 35, 70, 100),
    heading: fc.integer({ min: 0, max: 359 }),
    roll: fc.integer({ min: 0, max: 359 }),
  })
  .map(({ about, turn, heading, roll }): Vec3[] => {
    const [h, r, t] = [heading, roll, turn].map((degrees) => (degrees * Math.PI) / 180) as [number, number, number];
    const along: Vec3 = [Math.cos(h), 0, Math.sin(h)];
    const aside: Vec3 = [-Math.sin(h) * Math.cos(r), Math.sin(r), Math.cos(h) * Math.cos(r)];
    const on: Vec3 = [0, 1, 2].map((k) => Math.cos(t) * along[k]! + Math.sin(t) * aside[k]!) as unknown as Vec3;
    const at = (by: Vec3, mm: number): Vec3 => [0, 1, 2].map((k) => about[k]! + mm * by[k]!) as unknown as Vec3;
    return turn === 0 ? [at(along, -600), at(along, 600)] : [at(along, -600), [...about] as Vec3, at(on, 600)];
  });

/** By marching: the least distance from the path to the other, every `step` mm along both, then closer and closer about the best. */
function nearestByMarching(path: Path, other: Path): { readonly at: number; readonly apart: number } {
  let [low, high, lowOther, highOther] = [0, path.length, 0, other.length];
  let best = { at: 0, apart: Infinity };
  for (let steps = 400; high - low > 1e-7; steps = 40) {
    let bestOther = 0;
    for (let i = 0; i <= steps; i++) {
      const at = low + ((high - low) * i) / steps;
      const { point } = placeAt(path, at);
      for (let k = 0; k <= steps; k++) {
        const there = lowOther + ((highOther - lowOther) * k) / steps;
        const apart = distance(point, placeAt(other, there).point);
        if (apart < best.apart) {
          best = { at, apart };
          bestOther = there;
        }
      }
    }
    const [about, aboutOther] = [(4 * (high - low)) / steps, (4 * (highOther - lowOther)) / steps];
    [low, high] = [Math.max(best.at - about, 0), Math.min(best.at + about, path.length)];
    if (bestOther > 0)
      [lowOther, highOther] = [Math.max(bestOther - aboutOther, 0), Math.min(bestOther + aboutOther, other.length)];
    if (bestOther === 0) break;
  }
  return best;
}

describe('a bar in pieces', () => {
  it('is cut where it comes nearest to what runs through, as marching finds it', () => {
    let tried = 0;
    fc.assert(
      fc.property(route, route, (a, b) => {
        const result = derive(crossing(a, b));
        if (!result.ok) return;
        const { bars, tubes } = result.value;
        const [bar, through] = [bars.get('bar')!, bars.get('through')!];
        const found = nearestByMarching(bar.path, through.path);
        const cut = tubes.find(({ id }) => id === 'bar.2')!.piece!.from;
        // Where the two run nearly side by side the place is soft, the distance is not.
        const apart = distance(
          placeAt(bar.path, cut).point,
          placeAt(through.path, tubes.find(({ id }) => id === 'bar.1')!.ends[1].cuts[0]!.landingAt).point,
        );
        expect(apart).toBeLessThan(found.apart + 1e-6);
        tried++;
      }),
      fixed(drawn(6, 120)),
    );
    expect(tried).toBeGreaterThan(drawn(3, 60));
  });

  it('lies where the bar lies, and adds up to it', () => {
    fc.assert(
      fc.property(route, route, (a, b) => {
        const result = derive(crossing(a, b, true));
        if (!result.ok) return;
        const { bars, tubes, byId } = result.value;
        for (const name of ['bar', "bar'"]) {
          const bar = bars.get(name)!;
          const pieces = tubes.filter((tube) => tube.bar === name);
          expect(pieces.map(({ piece }) => piece!.number)).toEqual([1, 2]);
          expect(pieces.reduce((sum, tube) => sum + tube.developedLength, 0)).toBeCloseTo(bar.developedLength, 9);
          const turned = (bends: Derived['tubes'][number]['bends']) => bends.reduce((sum, { angle }) => sum + angle, 0);
          expect(pieces.reduce((sum, { bends }) => sum + turned(bends), 0)).toBeCloseTo(turned(bar.bends), 5);
          for (const tube of pieces) {
            const sum =
              tube.straights.reduce((all, each) => all + each, 0) + tube.bends.reduce((all, { arc }) => all + arc, 0);
            expect(sum).toBeCloseTo(tube.developedLength, 9);
            if (bar.straights.some((straight) => straight < 0)) continue;
            for (const share of [0, 0.13, 0.5, 0.77, 1]) {
              const at = share * tube.developedLength;
              const here = placeAt(tube.path, at);
              const there = placeAt(bar.path, tube.piece!.from + at);
              expect(distance(here.point, there.point)).toBeLessThan(1e-9);
              expect(distance(here.tangent, there.tangent)).toBeLessThan(1e-8);
            }
          }
        }
        // A twin's pieces are the images of its member's.
        for (const piece of ['bar.1', 'bar.2']) {
          const [own, image] = [byId.get(piece)!, byId.get(`${piece}'`)!];
          expect(image.twinOf).toBe(piece);
          own.corners.forEach((corner, i) => expect(distance(mirrored(corner), image.corners[i]!)).toBeLessThan(1e-9));
        }
      }),
      fixed(drawn(60, 500)),
    );
  });

  it('has pieces of one straight bar in line to 1e-9', () => {
    const [a, b]: readonly [Vec3, Vec3] = [
      [137.3, 400.1, 20.7],
      [-811.9, 512.3, 733.1],
    ];
    const job = crossing(
      [a, b],
      [
        [-300, 380, -200],
        [-290.4, 520.3, 900],
      ],
    );
    const along = subtract(b, a);
    const pieces = derived(job).tubes.filter(({ bar }) => bar === 'bar');
    for (const { corners, bends } of pieces) {
      expect(bends).toEqual([]);
      for (const corner of corners) {
        expect(length(cross(subtract(corner, a), along)) / length(along)).toBeLessThan(1e-9);
      }
    }
  });

  it('is coped to what cuts it, from a place and no node', () => {
    const job = crossing(
      [
        [0, 300, 0],
        [0, 300, 1000],
      ],
      [
        [-400, 300, 380.5],
        [500, 300, 612.25],
      ],
    );
    const file = fabrication(derived(job));
    const pieces = file.tubes.filter(({ of }) => of === 'bar');
    expect(pieces.map(({ id, piece }) => [id, piece])).toEqual([
      ['bar.1', [1, 2]],
      ['bar.2', [2, 2]],
    ]);
    // On the line from (-400, 380.5) to (500, 612.25) at x = 0: by proportion.
    const height = 380.5 + ((612.25 - 380.5) * 400) / 900;
    const [end, next] = [pieces[0]!.ends[1], pieces[1]!.ends[0]];
    for (const each of [end, next]) {
      expect(each.node).toBeNull();
      expect(distance(each.place!, [0, 300, height])).toBeLessThan(1e-9);
      expect(each.cuts.map(({ against }) => against)).toEqual(['through']);
      // Two tubes of one size: nothing passes by, and the tip reaches the crossing of the axes.
      expect(each.profile.every((s) => s !== null)).toBe(true);
    }
    const [r, up] = [44.45 / 2, Math.atan2(612.25 - 380.5, 900)];
    // Where the run leans away the wall ends r / cos + r tan past the axis: the height of an elliptic section at the tube's far line.
    expect(end.throat! + next.throat!).toBeCloseTo(2 * (r / Math.cos(up) + r * Math.tan(up)), 6);
    expect(dot(end.direction, [0, 0, 1])).toBeCloseTo(-1, 12);
  });

  it('keeps its place in the bend, with a part of the arc on either side and no straight', () => {
    const job = crossing(
      [
        [0, 300, 0],
        [0, 300, 700],
        [0, 900, 700],
      ],
      [
        [-400, 345, 655.5],
        [400, 344, 655],
      ],
    );
    const [one, two] = derived(job).tubes.filter(({ bar }) => bar === 'bar');
    expect([one!.straights.at(-1), two!.straights[0]]).toEqual([0, 0]);
    expect(one!.bends[0]!.angle + two!.bends[0]!.angle).toBeCloseTo(Math.PI / 2, 12);
    expect(distance(one!.path.pieces.at(-1)!.to, two!.path.pieces[0]!.from)).toBeLessThan(1e-9);
    expect(one!.ends[1].cuts[0]!.onBend).toBe(false);
    for (const { bends } of [one!, two!])
      expect(bends[0]!.setBack).toBeCloseTo(152.4 * Math.tan(bends[0]!.angle / 2), 9);
  });

  it('is the same object after an edit elsewhere', () => {
    const job = crossing(
      [
        [0, 300, 0],
        [0, 300, 1000],
      ],
      [
        [-400, 300, 380.5],
        [500, 300, 612.25],
      ],
    );
    const more: Job = {
      ...job,
      nodes: [...job.nodes, { id: 'far', name: 'far', at: { kind: 'fixed', position: [2000, 0, 0] } }],
    };
    const before = derived(more);
    const moved: Job = {
      ...more,
      nodes: more.nodes.map((each) =>
        each.id === 'far' ? { ...each, at: { kind: 'fixed', position: [2100, 0, 0] } } : each,
      ),
    };
    const after = derived(moved, before);
    expect(after).toEqual(derived(moved));
    for (const id of ['bar.1', 'bar.2', 'through']) expect(after.byId.get(id)).toBe(before.byId.get(id));
    expect(after.bars.get('bar')).toBe(before.bars.get('bar'));
  });

  it('follows what moves, as if it were derived anew', () => {
    const job = crossing(
      [
        [0, 300, 0],
        [5, 310, 500],
        [0, 340, 1000],
      ],
      [
        [-400, 300, 380.5],
        [500, 320, 612.25],
      ],
      true,
    );
    const before = derived(job);
    for (const { id } of job.nodes) {
      const moved: Job = {
        ...job,
        nodes: job.nodes.map((each) =>
          each.id === id && each.at.kind === 'fixed'
            ? {
                ...each,
                at: {
                  kind: 'fixed',
                  position: [each.at.position[0] + 3, each.at.position[1] + 4, each.at.position[2]],
                },
              }
            : each,
        ),
      };
      expect(derived(moved, before)).toEqual(derived(moved));
    }
  });
});

describe('edits of pieces', () => {
  const job = crossing(
    [
      [0, 300, 0],
      [0, 300, 1000],
    ],
    [
      [-400, 300, 380.5],
      [500, 300, 612.25],
    ],
    true,
  );

  it('joins what was cut, and cuts it again: the same job', () => {
    const joined = joinWhere(job, 'bar', 'through') as Job;
    expect(derived(joined).tubes.map(({ id }) => id)).toEqual(['through', "through'", 'bar', "bar'"]);
    expect(cutWhere(joined, 'bar', 'through')).toEqual(job);
  });

  it('swaps which of two runs through, and back', () => {
    const swapped = swapThrough(job, 'bar', 'through') as Job;
    expect(swapped.members.map(({ cutBy }) => cutBy)).toEqual([['bar'], undefined]);
    expect(swapThrough(swapped, 'through', 'bar')).toEqual(job);
  });

  it('swaps a bar across the car on both sides', () => {
    const across: Job = {
      ...job,
      nodes: job.nodes.map((each) =>
        each.id === 'b0'
          ? { ...each, at: { kind: 'fixed', position: [0, -600, 500] } }
          : each.id === 'b1'
            ? { ...each, at: { kind: 'fixed', position: [0, 600, 500] } }
            : each,
      ),
      members: job.members.map((each) => (each.id === 'through' ? { ...each, mirror: false } : each)),
    };
    expect(derived(across).tubes.map(({ id }) => id)).toEqual(['through', 'bar.1', 'bar.2', "bar.1'", "bar.2'"]);
    const swapped = swapThrough(across, 'bar', 'through') as Job;
    expect(swapped.members[0]!.cutBy).toEqual(['bar', "bar'"]);
    expect(derived(swapped).tubes.map(({ id }) => id)).toEqual(['through.1', 'through.2', 'through.3', 'bar', "bar'"]);
    expect(swapThrough(swapped, 'through', "bar'")).toEqual({ ...across, members: across.members.map((each) => each) });
  });

  it('keeps a bar whole whose tube has a bend run', () => {
    const [whole, _] = [joinWhere(job, 'bar', 'through') as Job, null];
    const run = { ...whole, bent: [{ tube: "bar'", order: [], done: [], bends: [], checks: [] }] };
    expect(cutWhere(run, 'bar', 'through')).toEqual([
      { place: 'bent[0].tube', message: `"bar'" has a bend run as it is: take that out first, in the Shop` },
    ]);
  });

  it('names the tubes of a member', () => {
    expect(job.members.map(tubesOfMember)).toEqual([
      ['through', "through'"],
      ['bar.1', 'bar.2', "bar.1'", "bar.2'"],
    ]);
  });
});

describe('what cannot be', () => {
  const nodes = [
    node('p', [0, 300, 0]),
    node('q', [0, 300, 1000]),
    node('r', [-400, 300, 400]),
    node('t', [400, 300, 400]),
  ];
  const faultsOf = (members: readonly object[], more: object = {}): readonly string[] => {
    const parsed = parseJob(JSON.stringify({ ...head, nodes, members, ...more }));
    if (parsed.ok) {
      const result = derive(parsed.job);
      return result.ok ? [] : result.faults.map(({ place, message }) => `${place}: ${message}`);
    }
    return parsed.faults.map(({ place, message }) => `${place}: ${message}`);
  };
  const bar = { id: 'bar', path: ['p', 'q'], section: 's', cutBy: ['x'] };
  const x = { id: 'x', path: ['r', 't'], section: 's' };

  it('is refused with its place', () => {
    expect(faultsOf([x, { ...bar, cutBy: ['nobody'] }])).toEqual(['members[1].cutBy[0]: no member "nobody"']);
    expect(faultsOf([x, { ...bar, cutBy: ['bar'] }])).toEqual(['members[1].cutBy[0]: "bar" is the member itself']);
    expect(faultsOf([x, { ...bar, cutBy: [] }])).toEqual(['members[1].cutBy: names no member']);
    expect(faultsOf([x, { ...bar, cutBy: ['x', 'x'] }])).toEqual(['members[1].cutBy[1]: "x" is there already']);
    expect(faultsOf([x, { ...bar, mirror: true, cutBy: ["bar'"] }])).toEqual([
      'members[1].cutBy[0]: "bar" and its twin cannot both be cut by each other',
    ]);
    expect(faultsOf([{ ...x, cutBy: ['bar'] }, bar])).toEqual([
      'members[0].cutBy[0]: "bar" is itself cut by "x": one of the two has to run through',
      'members[1].cutBy[0]: "x" is itself cut by "bar": one of the two has to run through',
    ]);
    expect(faultsOf([x, bar, { id: 'bar.2', path: ['q', 't'], section: 's' }])).toEqual([
      'members[1].id: a piece of it is called "bar.2", and so is a member',
    ]);
    expect(faultsOf([x, bar], { bent: [{ tube: 'bar', order: [] }] })).toEqual([
      'bent[0].tube: "bar" is made in pieces: name one of them, "bar.1"',
    ]);
    expect(faultsOf([x, bar], { bent: [{ tube: 'bar.3', order: [] }] })).toEqual(['bent[0].tube: no member "bar.3"']);
    expect(faultsOf([x, bar], { bent: [{ tube: 'bar.2', order: [] }] })).toEqual([]);
  });

  it('would leave a piece of no length', () => {
    expect(faultsOf([{ ...x, path: ['q', 't'] }, bar])).toEqual([
      'members[1].cutBy[0]: "x" comes nearest to "bar" where that ends or is cut already: a piece would have no length',
    ]);
  });

  it('is found where the frame is wrong: a cutter that misses, a strip that holds', () => {
    const found = (away: number, ids: readonly string[]) => {
      const moved = nodes.map((each, i) =>
        i < 2 ? each : node(i === 2 ? 'r' : 't', [i === 2 ? -400 : 400, 300 + away, 400]),
      );
      const parsed = parseJob(JSON.stringify({ ...head, nodes: moved, members: [x, bar] }));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
      const { findings } = derived(parsed.job);
      const mine = findings.filter(({ id, severity }) => severity === 'error' && id.startsWith('piece/'));
      expect(mine.map(({ id, tube, end }) => `${id} ${tube} ${end}`)).toEqual(ids);
    };
    found(0, []);
    found(3, ['piece/strip-holds bar.1 B', 'piece/strip-holds bar.2 A']);
    found(60, ['piece/cutter-misses bar.1 B', 'piece/cutter-misses bar.2 A']);
  });
});
