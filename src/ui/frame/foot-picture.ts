/**
 * Pictures of how an end stands: two side views of its plate against a level, and the foot seen from the tube's side. Marks on the layers that
 * the screen colours; millimetres of the drawing, not of the car.
 */
import { blanksOf } from '../../core/feet/blanks.ts';
import type { Outline } from '../../core/feet/outline.ts';
import { frameOf, slopeOf } from '../../core/feet/slope.ts';
import { toRadians } from '../../core/geometry/angle.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Foot } from '../../core/job/kinds/foot.ts';
import { leanNames } from '../../core/words/feet.ts';
import { arrowhead, FAINT, FINE, FIRM, onLayer, stroke, text } from '../../drawing/ink.ts';
import { moved, stretched } from '../../drawing/move.ts';
import type { Mark, Picture } from '../../drawing/types.ts';
import { extentOf, lineMarks } from '../../exports/feet/pattern.ts';

const [WIDE, HIGH] = [34, 26];
/** Half of the plate, and the tube, as they are drawn. */
const [HALF, TUBE] = [13, 13];

/** `direction` is the unit direction into the tube at that end. */
export function slopePicture(normal: Vec3, direction: Vec3): Picture {
  const { face, leans } = slopeOf(normal);
  const { axis, sense, towards } = frameOf(face);
  const marks = ([0, 1] as const).flatMap((which): Mark[] => {
    const to = towards[which];
    // The tube as it is seen in that plane: across the view, and out along the way that the plate faces.
    const [tubeOver, tubeOut] = [direction[to], direction[axis] * sense];
    const [own, other] = leanNames(face, which);
    // One looks at the car's left side, and from the front: forward is to the left, and left to the right.
    const view =
      to === 0
        ? sideView(0 - leans[which], 0 - tubeOver, tubeOut, [other, own])
        : sideView(leans[which], tubeOver, tubeOut, [own, other]);
    return moved(view, which * WIDE, 0);
  });
  return { width: 2 * WIDE, height: HIGH, marks };
}

/** A lean above zero lets the plate fall to the right: the first of its two names stands there. */
function sideView(lean: number, over: number, out: number, names: readonly [string, string]): Mark[] {
  const middle = { x: WIDE / 2, y: 10 };
  const [c, s] = [Math.cos(toRadians(lean)), Math.sin(toRadians(lean))];
  const on = (along: number) => ({ x: middle.x + along * c, y: middle.y - along * s });
  const way = (name: string): string => name.split(' ')[1]!;
  return [
    ...onLayer(
      'node',
      stroke(
        [
          { x: middle.x - HALF - 2, y: middle.y },
          { x: middle.x + HALF + 2, y: middle.y },
        ],
        { ...FAINT, dash: [1.5, 1] },
      ),
    ),
    stroke([middle, { x: middle.x + TUBE * over, y: middle.y + TUBE * out }], { ...FINE, width: 2.2, grey: 0.5 }),
    stroke([on(-HALF), on(HALF)], { ...FIRM, width: 0.9 }),
    text(0.5, 1.5, way(names[1]), { size: 3.1 }),
    text(WIDE - 1.5, 1.5, way(names[0]), { size: 3.1, anchor: 'end' }),
  ];
}

/** The foot from the tube's side, along to the right, in a frame of `room` either way; the outline where the tube stands. */
export function footPicture(foot: Foot, outline: Outline | null, room: number): Picture {
  const [blank] = blanksOf(foot);
  const { width, height } = extentOf(blank!);
  const scale = room / Math.max(width, height);
  const marks = lineMarks({ blank: blank!, outlines: outline === null ? [] : [{ outline, under: '' }] });
  const arrow = [
    stroke([
      { x: 0, y: -2.5 },
      { x: 8, y: -2.5 },
    ]),
    arrowhead({ x: 9, y: -2.5 }, 0, 2),
    text(10, -3.6, 'along', { size: 3.1 }),
  ];
  return {
    width: width * scale,
    height: height * scale + 5,
    marks: moved([...stretched(marks, scale, scale, 0, 0), ...arrow], 0, 5),
  };
}
