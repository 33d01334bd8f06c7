/**
 * A cut as the person at the notcher sees it from above, the drill towards them: the tube comes from the left, its sawn end on the right, the
 * mark on the side that is turned to the drill (or away from it), the saw across it at the angle that is set, and what it takes away hatched.
 * A cut that no saw makes is seen the same way, without the saw. Paper and screen draw these same marks.
 */
import { deepSide, SQUARE } from '../core/cope/end-mark.ts';
import { sawnEndOf, sleevesMade, type Notching } from '../core/cope/notching.ts';
import { toDegrees, wrapHalfTurn, type Radians } from '../core/geometry/angle.ts';
import { trimOn } from '../core/solve/end-cutter.ts';
import type { SolvedTube } from '../core/solve/types.ts';
import { clipped, type Box2 } from './clip.ts';
import { endPicture } from './end-on/cope.ts';
import { settingInWords } from '../core/words/notching.ts';
import { hatched } from './hatch.ts';
import { arc, around, disc, FINE, FIRM, HAIR, PLAIN, shape, stroke, text } from './ink.ts';
import type { Line, Mark, Picture, Place2 } from './types.ts';

export const AT_NOTCHER = { width: 66, height: 21 };
/** Across the tube on the picture; its sawn end from the right, its axis from below; mm. */
const ACROSS = 12;
const PAST_END = 15;
const AXIS = 12;
const WEDGE = 2.2;
/** Where the mark's wedge stands, from the left. */
const MARK = 9;
/** No figure of the bold typeface is wider, at the size of the angle. */
const DIGIT = 2.75;
/** Lines a whole turn of the cut's curve is drawn with. */
const EDGES = 180;

/** Of cut `index` of an end, as it is set on the machine; of one by its wrap, as the end comes out. */
export function atNotcher(tube: SolvedTube, which: 0 | 1, notching: Notching, index: number): Picture {
  const end = tube.ends[which];
  const notch = notching.notches[index]!;
  const { cut, sawn } = notch;
  const { outerDiameter } = tube.section;
  const scale = ACROSS / outerDiameter;
  const pastEnd = notching.leans === 'past-end';
  /** Of the mark: 1 towards the drill, -1 away from it. */
  const facing = pastEnd ? -1 : 1;
  const { turn } = deepSide(tube, cut);
  const radius = outerDiameter / 2;
  // A cut that runs on past the picture is drawn to its edge.
  const long = (AT_NOTCHER.width - PAST_END - 1) / scale;
  const blankEnd = sawnEndOf(end, notch);
  const sleeves = sawn === null ? end.cutter.sleeves : sleevesMade(end, [notch]);
  const trim = trimOn({ ...end.cutter, sleeves }, radius);
  /** On the picture: mm into the tube from its sawn end, and towards the drill. */
  const at = (into: number, towardsDrill: number): Place2 => ({
    x: AT_NOTCHER.width - PAST_END - scale * into,
    y: AXIS - scale * towardsDrill,
  });
  /** The cut's edge at theta round from the mark, clockwise as one looks at the end: how far in, and towards the drill. */
  const edge = (theta: number): readonly [into: number, towardsDrill: number] => {
    const degree = ((Math.round(toDegrees(turn + theta)) % 360) + 360) % 360;
    const s = trim[degree]!;
    return [Number.isNaN(s) ? 0 : Math.min(Math.max(0, s - blankEnd), long), facing * Math.cos(theta) * radius];
  };
  // From the drill's side over the top to the far side; the top is clockwise of the mark where that faces the drill.
  const half = (side: 1 | -1): (readonly [number, number])[] =>
    Array.from({ length: EDGES + 1 }, (_, i) => {
      const round = (i / EDGES) * Math.PI;
      return edge(side * (pastEnd ? Math.PI - round : round));
    });
  const [above, below] = [half(facing), half(pastEnd ? 1 : -1)];
  const over = above.map(([into, drill]) => at(into, drill));
  const body: Mark[] = [
    shape([at(long, radius), ...over, at(long, -radius)], FIRM, 1),
    stroke(
      below.map(([into, drill]) => at(into, drill)),
      { ...HAIR, dash: [0.8, 0.6] },
    ),
    stroke([at(0, radius), at(0, -radius)], FINE),
    stroke([at(0, radius), over[0]!], FINE),
    stroke([at(0, -radius), over.at(-1)!], FINE),
    ...waste(above).map(([from, to]) => stroke([at(from.y, from.x), at(to.y, to.x)], HAIR)),
    stroke([at(long, 0), at(-6 / scale, 0)], { ...HAIR, dash: [3, 0.8, 0.8, 0.8] }),
  ];
  const markAt = { x: MARK, y: AXIS - facing * (ACROSS / 2) };
  const wedge: Mark[] = [
    shape(
      [
        { x: markAt.x, y: markAt.y + facing * 0.6 },
        { x: markAt.x - 1.3, y: markAt.y - facing * WEDGE },
        { x: markAt.x + 1.3, y: markAt.y - facing * WEDGE },
      ],
      null,
      0,
    ),
    text(markAt.x + 2.4, markAt.y + (pastEnd ? 0.7 : -3.4), 'mark', { size: PLAIN }),
  ];
  const saw =
    sawn === null
      ? []
      : sawMarks(
          at(sawn.centre, 0),
          scale * sawn.saw,
          { set: sawn.set, said: settingInWords(sawn.set, notching.notcher) },
          pastEnd,
        );
  return { ...AT_NOTCHER, marks: [...body, ...wedge, ...saw] };
}

/** The same end as one looks at it, towards the tube, turned so that its mark is on the side that it has in the picture from above. */
export function endAtNotcher(tube: SolvedTube, { notches, leans }: Notching, index: number): Picture {
  const mark = deepSide(tube, notches[index]!.cut);
  const markAt = leans === 'past-end' ? Math.PI / 2 : -Math.PI / 2;
  return endPicture(mark, tube.bends.length > 0, wrapHalfTurn(markAt + mark.turn));
}

/** Between the sawn end and the edge, both as (towards the drill, into the tube): hatch.ts wants the former to rise. */
const waste = (above: readonly (readonly [number, number])[]): [Place2, Place2][] =>
  hatched(above.map(([into, drill]) => ({ x: drill, y: into })).toReversed(), 4);

/** Off square, and as the scale reads it. */
interface Set {
  readonly set: Radians;
  readonly said: string;
}

/** The saw's two sides, its axis with the drill at its lower end, its centre, and how far it is off square. */
function sawMarks(centre: Place2, diameter: number, setting: Set, pastEnd: boolean): Mark[] {
  const { set } = setting;
  const box: Box2 = { left: 0.5, right: AT_NOTCHER.width - 0.5, bottom: 3.9, top: AT_NOTCHER.height - 0.5 };
  // Downwards is towards the drill; back over the tube is to the left.
  const down = -Math.PI / 2 + (pastEnd ? 1 : -1) * set;
  const [far, near] = [around(centre, 40, down + Math.PI), around(centre, 40, down)];
  const side = (aside: number): Line =>
    stroke([around(far, aside, down + Math.PI / 2), around(near, aside, down + Math.PI / 2)], {
      ...FINE,
      dash: [1.6, 0.8],
    });
  const [axis] = clipped([stroke([far, near], { ...FINE, dash: [4, 0.8, 0.8, 0.8] })], box);
  const foot = around(centre, (centre.y - 1.6) / Math.cos(set), down);
  const isSquare = toDegrees(set) < SQUARE;
  const reach = centre.y - box.bottom - 1;
  const [from, to] = [-Math.PI / 2, down].toSorted((a, b) => a - b) as [number, number];
  return [
    ...clipped([side(diameter / 2), side(-diameter / 2)], box),
    ...(axis === undefined ? [] : [axis]),
    disc(centre, 0.8, null, 0),
    chuck(foot, down),
    text(foot.x - 3.4, 0.7, 'drill', { size: PLAIN, anchor: 'end' }),
    ...(isSquare
      ? []
      : [
          stroke([centre, { x: centre.x, y: box.bottom }], HAIR),
          arc(centre, reach, from, to, HAIR),
          ...beyondSaw(centre, diameter, setting, pastEnd),
        ]),
  ];
}

/** The angle's figure beside the saw's side that it does not lean to, where nothing else stands. */
function beyondSaw(centre: Place2, diameter: number, { set, said }: Set, pastEnd: boolean): Mark[] {
  const side = diameter / 2 / Math.cos(set);
  const x = centre.x + side + (pastEnd ? 3.5 : 1);
  const wide = said.length * DIGIT;
  return [text(Math.min(x, AT_NOTCHER.width - wide), 1.5, said, { size: PLAIN, bold: true })];
}

/** The drill's chuck, square to the saw's axis. */
function chuck(middle: Place2, down: number): Mark {
  const [wide, half] = [2.4, 1.2];
  const corner = (across: number, along: number): Place2 =>
    around(around(middle, along, down), across, down + Math.PI / 2);
  return shape([corner(-wide, -half), corner(wide, -half), corner(wide, half), corner(-wide, half)], null, 0.25);
}
