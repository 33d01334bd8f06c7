/** What a pointer that moves costs while a tube is drawn: the search for what it means, the tube through it, the leg and the words. */
import type { Derived } from '../../src/core/derive.ts';
import { legTo } from '../../src/core/shape/draw/leg.ts';
import type { Snap } from '../../src/core/shape/draw/snaps.ts';
import { groundName } from '../../src/core/words/drawing.ts';
import { projectionOf } from '../../src/view/camera/projection.ts';
import { sightOf } from '../../src/view/canvas/sight.ts';
import { aimAt, targetsOf } from '../../src/view/draw/aim.ts';
import { courseThrough, stockFor } from '../../src/view/draw/course.ts';
import { timed, type Timing } from './clock.ts';

const SIZE = { width: 1000, height: 800 };

/** Of pointers strewn over the bay, with two places drawn. */
export function timePointer(frame: Derived): Timing {
  const [node, at] = [...frame.nodes][0]!;
  const drawn: readonly Snap[] = [
    { ground: { kind: 'node', node }, at },
    { ground: { kind: 'space', position: [200, 300, 400] }, at: [200, 300, 400] },
  ];
  const places = drawn.map((snap) => snap.at);
  const grounds = drawn.map((snap) => snap.ground);
  const targets = targetsOf(frame, sightOf(frame.tubes), drawn, drawn.slice(0, 1));
  const view = projectionOf({ target: [0, 0, 600], yaw: 0.6, pitch: 0.4, span: 4000 }, SIZE.width, SIZE.height);
  const stock = stockFor(frame.job, { places: [], section: null, bothSides: null, lost: 0 });
  let moves = 0;
  return timed(2000, 200, () => {
    moves += 1;
    const pointer = { x: (moves * 37) % SIZE.width, y: (moves * 91) % SIZE.height, reach: 4 };
    const aim = aimAt(targets, view, pointer, 1);
    if (aim === null) return;
    courseThrough(stock, [...places, aim.at], true);
    legTo(frame, places, aim.at, aim.ground);
    groundName(frame, aim.ground, grounds);
  });
}
