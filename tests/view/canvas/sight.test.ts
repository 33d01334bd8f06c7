/** That the tree loses no tube, and that what is looked into grows with the labels and not with labels times tubes. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import type { Box, BoxTree } from '../../../src/core/geometry/box-tree.ts';
import { distanceToPath } from '../../../src/core/geometry/path.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { interpolate } from '../../../src/core/geometry/vector.ts';
import type { Job } from '../../../src/core/job/types.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { projectionOf, type Projection } from '../../../src/view/camera/projection.ts';
import { fitPoints } from '../../../src/view/camera/rig.ts';
import { numberLabels } from '../../../src/view/labels/labels-of.tsx';
import { placeLabels } from '../../../src/view/labels/place-labels.ts';
import { isHidden, sightOf, tubeAt, type Sight } from '../../../src/view/canvas/sight.ts';
import { chosenMiddle, wallUnder } from '../../../src/view/canvas/turns-about.ts';
import { latticeOf } from '../../bench/lattice.ts';
import { seeded } from '../../core/rehearse/draws.ts';

const parsed = parseJob(readFileSync('tests/fixtures/demo-first-round.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error('the demo of the first round must open');
const demo = parsed.job;

const BAY = { width: 1000, height: 800 };

function tubesOf(job: Job): readonly SolvedTube[] {
  const result = derive(job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value.tubes;
}

/** The whole frame in view, from so far round. */
function viewOf(tubes: readonly SolvedTube[], yaw: number, pitch: number): Projection {
  const rig = { target: [0, 0, 0], yaw, pitch, span: 1000 } as const;
  const places = tubes.flatMap(({ corners }) => corners);
  return projectionOf(fitPoints(rig, places, { ...BAY, below: 60 }), BAY.width, BAY.height);
}

const EVERYWHERE: Box = { low: [-1e9, -1e9, -1e9], high: [1e9, 1e9, 1e9] };

/** The same tubes, all of them asked. */
const asked = ({ stretches }: Sight): Sight => ({
  stretches,
  boxes: stretches.map(() => EVERYWHERE),
  tree: { ...EVERYWHERE, items: Uint32Array.from(stretches.keys()) },
});

describe('the tube at a pixel', () => {
  it.each([
    ['the demo', demo],
    ['a lattice', latticeOf(200)],
  ])('of %s is the one found by asking all', (_, job) => {
    const tubes = tubesOf(job);
    const sight = sightOf(tubes);
    const draw = seeded(5);
    const found = new Set<SolvedTube | null>();
    let hidden = 0;
    for (let i = 0; i < 150; i += 1) {
      const view = viewOf(tubes, 6.28 * draw(), 3 * draw() - 1.5);
      const [x, y, reach] = [BAY.width * draw(), BAY.height * draw(), i % 2 === 0 ? 0 : 16];
      const tube = tubeAt(sight, view, x, y, reach)?.tube ?? null;
      expect(tube?.id).toBe(tubeAt(asked(sight), view, x, y, reach)?.tube.id);
      found.add(tube);

      const own = tubes[Math.floor(tubes.length * draw())]!;
      const { from, to } = own.path.pieces[0]!;
      const place = interpolate(from, to, draw());
      if (own.path.pieces[0]!.kind === 'arc') continue;
      const on = view.toScreen(place);
      expect(isHidden(sight, view, place, own)).toBe(tubeAt(asked(sight), view, on.x, on.y, 0)?.tube !== own);
      hidden += isHidden(sight, view, place, own) ? 1 : 0;
    }
    expect(found.size).toBeGreaterThan(10);
    expect(hidden).toBeGreaterThan(5);
  });
});

/** How many boxes are looked at, and tubes asked, to place the numbers of so many tubes once. */
function workOf(count: number): { readonly asked: number; readonly boxes: number } {
  const tubes = tubesOf(latticeOf(count));
  const labels = numberLabels(tubes, []);
  const work = { asked: 0, boxes: 0 };
  const watched = <T extends object>(thing: T, key: keyof T, counts: keyof typeof work): T => {
    const value = thing[key];
    return Object.defineProperty({ ...thing }, key, {
      get() {
        work[counts] += 1;
        return value;
      },
    });
  };
  const branch = (tree: Branch): Branch =>
    watched(
      'items' in tree ? tree : { ...tree, halves: [branch(tree.halves[0]), branch(tree.halves[1])] },
      'low',
      'boxes',
    );
  const { stretches, boxes, tree } = sightOf(tubes);
  const sight = {
    stretches: stretches.map((stretch) => watched(stretch, 'chain', 'asked')),
    boxes: boxes.map((box) => watched(box, 'low', 'boxes')),
    tree: branch(tree!),
  };
  const sizes = labels.map(() => ({ width: 22, height: 16 }));
  const placed = placeLabels(labels, sizes, sight, viewOf(tubes, 0.66, 0.42), 60);
  expect(placed.filter((place) => place !== null).length).toBeGreaterThan(50);
  return work;
}

type Branch = NonNullable<BoxTree>;

describe('the work of placing the numbers', () => {
  it('grows with the tubes: with eight times as many no label asks more', () => {
    const [few, many] = [workOf(125), workOf(1000)];
    // Were every tube asked for every label, these would be 15 625 and 1 000 000 at the least.
    expect(few.asked).toBeLessThan(2 * 125);
    expect(many.asked).toBeLessThan(2 * 1000);
    // A box is looked at in three directions; the tree grows by three levels.
    expect(many.boxes).toBeLessThan(2 * 8 * few.boxes);
  });
});

describe('what the view turns about', () => {
  const tubes = tubesOf(demo);
  const sight = sightOf(tubes);
  const view = viewOf(tubes, 0.6, 0.4);

  it('is the wall under the pointer, where there is a tube', () => {
    const random = seeded(11);
    let found = 0;
    for (let nth = 0; nth < 400; nth += 1) {
      const [x, y] = [random() * BAY.width, random() * BAY.height];
      const place = wallUnder(sight, view, x, y, 0);
      const tube = tubeAt(sight, view, x, y, 0)?.tube;
      expect(place === null).toBe(tube === undefined);
      if (place === null || tube === undefined) continue;
      found += 1;
      const at = view.toScreen(place);
      expect(at.x).toBeCloseTo(x, 9);
      expect(at.y).toBeCloseTo(y, 9);
      expect(distanceToPath(tube.path, place)).toBeLessThan(tube.section.outerDiameter);
    }
    expect(found).toBeGreaterThan(20);
  });

  it('is else the middle of what is chosen, unless that is out of the bay', () => {
    expect(chosenMiddle([], view)).toBeNull();
    const [low, high] = [view.toPlace(100, 100), view.toPlace(300, 500)];
    expect(chosenMiddle([low, high], view)).toEqual(interpolate(low, high, 0.5));
    expect(chosenMiddle([view.toPlace(-10, 100)], view)).toBeNull();
  });
});
