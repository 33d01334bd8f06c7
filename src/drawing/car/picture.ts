/** The car with the places that are measured on it, each with its number beside it on a leader; and what is asked of them drawn large. */
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Step, SideOfPlace, ToMeasure } from '../../core/survey/to-measure.ts';
import { placeMark } from '../../core/words/measuring.ts';
import { circle, disc, FAINT, HAIR, onLayer, shape, stroke, text } from '../ink.ts';
import type { Lettering } from '../lettering.ts';
import type { Mark, Pen, Picture, Place2 } from '../types.ts';
import { outlineOf, seenFrom, type View } from './outline.ts';

export interface CarPicture extends ToMeasure {
  readonly view: View;
  /** mm of the paper. */
  readonly width: number;
  readonly height: number;
}

const BODY: Pen = { width: 0.3, grey: 0.45 };
const ZERO: Pen = { width: 0.2, grey: 0, dash: [3, 1, 0.6, 1] };

/** Height of a number's letters, mm. */
const NUMBER = 3.5;
/** Between the middles of numbers in a row and in a column, mm. */
const ROW_STEP = 8.5;
const COLUMN_STEP = 5;
/** Rows of numbers, one behind another, mm: as high and as wide as they take. */
const ROW = 6;
const COLUMN = 11;

/** Every place with its number. `letters` say how wide a number is. */
export function numberedPlaces(car: CarPicture, letters: Lettering): Picture {
  const { on, marks } = besideLabels(car, labelsOf(car), letters);
  return { width: car.width, height: car.height, marks: [...bodyOf(car, on), ...marks] };
}

/** A number, and the place that it belongs to, as it is seen, mm of the car. */
export interface Label {
  readonly words: string;
  readonly target: Place2;
}

/** Labels in two rows or columns, low or left, and high or right, each with a leader to its place; and where on the picture a place is seen. */
export function besideLabels(
  car: CarPicture,
  sides: readonly [readonly Label[], readonly Label[]],
  letters: Lettering,
): { readonly on: OnPicture; readonly marks: readonly Mark[] } {
  const { view, width, height } = car;
  const isRow = view !== 'behind';
  const [step, lane] = isRow ? [ROW_STEP, ROW] : [COLUMN_STEP, COLUMN];
  const along = isRow ? width : height;
  const lanes = sides.map((labels) => Math.max(1, Math.ceil((labels.length * step) / along)));
  const [low, high] = lanes.map((count) => count * lane + 2) as [number, number];
  const room = isRow
    ? { left: 2, right: width - 2, low, high: height - high }
    : { left: low, right: width - high, low: 2, high: height - 2 };
  const on = placing(car, room);
  const marks = sides.flatMap((labels, i) => {
    const key = ({ x, y }: Place2): number => (isRow ? x : y);
    const aside = ({ x, y }: Place2): number => (isRow ? y : x);
    const sorted = labels
      .map(({ words, target }) => ({ words, target: on(target) }))
      .toSorted((a, b) => key(a.target) - key(b.target) || aside(a.target) - aside(b.target));
    const gap = Math.min(step, along / Math.max(1, sorted.length));
    const places = sorted.map(({ target }) => key(target));
    const spread = spreadOut(places, gap, step / 2, along - step / 2);
    const inward = i === 0 ? 1 : -1;
    return sorted.flatMap(({ words, target }, nth): Mark[] => {
      const deep = (nth % lanes[i]!) * lane + lane / 2;
      const far = i === 0 ? deep : (isRow ? height : width) - deep;
      const centre = isRow ? { x: spread[nth]!, y: far } : { x: far, y: spread[nth]! };
      const half = letters.width(words, NUMBER, true) / 2 + 0.8;
      const from = isRow ? { x: centre.x, y: centre.y + inward * 2.2 } : { x: centre.x + inward * half, y: centre.y };
      return [
        stroke([from, target], HAIR),
        disc(target, 0.7, null, 0),
        text(centre.x, centre.y - 0.36 * NUMBER, words, { size: NUMBER, bold: true, anchor: 'middle' }),
      ];
    });
  });
  return { on, marks };
}

/** What is asked on a small sketch without numbers: the place large, and what is read from where to where. */
export function askedOnCar(car: CarPicture, asked: Step): Picture {
  const { width, height, view } = car;
  const on = placing(car, { left: 4, right: width - 4, low: 4, high: height - 4 });
  const seen = (place: Vec3): Place2 => on(seenFrom(view, place));
  const others = car.places.flatMap(({ sides }) => sides.map(({ at }) => disc(seen(at), 0.6, null, 0.5)));
  const [from, to] = lineAsked(asked);
  const ends = asked.kind === 'tape' ? [from, to] : [to];
  return {
    width,
    height,
    marks: [
      ...bodyOf(car, on),
      ...others,
      ...onLayer(
        'asked',
        stroke([seen(from), seen(to)], { width: 1.1, grey: 0 }),
        ...ends.map((end) => disc(seen(end), 2.2, null, 0)),
      ),
    ],
  };
}

/** From which sides it is seen best: a height from two, since from the side nobody tells left from right. */
export function viewsOf(asked: Step): readonly View[] {
  if (asked.kind === 'coordinate') return asked.axis === 'z' ? ['side', 'behind'] : ['above'];
  const [from, to] = lineAsked(asked);
  return Math.abs(from[2] - to[2]) > Math.abs(from[0] - to[0]) ? ['behind'] : ['above'];
}

/** Where the tape lies, or from the line on the floor to the place. */
function lineAsked(asked: Step): readonly [Vec3, Vec3] {
  if (asked.kind === 'tape') return [asked.from[1].at, asked.to[1].at];
  const { at } = asked.on;
  const [x, y, z] = at;
  return [({ x: [0, y, z], y: [x, 0, z], z: [x, y, 0] } as const)[asked.axis], at];
}

type Side = SideOfPlace['side'];

/** In two rows or columns: low or left, and high or right. From the side one number stands for both sides of the car. */
function labelsOf({ places, view }: CarPicture): readonly [readonly Label[], readonly Label[]] {
  const label = (place: (typeof places)[number], on: SideOfPlace): Label => ({
    words: view === 'side' ? String(place.number) : placeMark(place, on),
    target: seenFrom(view, on.at),
  });
  if (view === 'side') {
    const all = places.map((place) => label(place, place.sides[0]!));
    const heights = all.map(({ target }) => target.y);
    const half = (Math.min(...heights) + Math.max(...heights)) / 2;
    return [all.filter(({ target }) => target.y < half), all.filter(({ target }) => target.y >= half)];
  }
  const on = (...sides: readonly Side[]): readonly Label[] =>
    places.flatMap((place) => place.sides.filter(({ side }) => sides.includes(side)).map((each) => label(place, each)));
  return view === 'above' ? [on('right'), on('left', 'middle')] : [on('left', 'middle'), on('right')];
}

/** Increasing places as near as may be to the wanted ones, `gap` apart, between both ends. */
function spreadOut(wanted: readonly number[], gap: number, low: number, high: number): readonly number[] {
  const up: number[] = [];
  for (const [i, at] of wanted.entries()) up.push(Math.max(at, i === 0 ? low : up[i - 1]! + gap));
  for (let i = up.length - 1; i >= 0; i--) up[i] = Math.min(up[i]!, i === up.length - 1 ? high : up[i + 1]! - gap);
  return up;
}

/** All that is to be seen, mm of the car. */
function seenOf({ places, car, view }: CarPicture): readonly Place2[] {
  const outline = car === null ? null : outlineOf(view, car);
  return [
    ...places.flatMap(({ sides }) => sides.map(({ at }) => seenFrom(view, at))),
    ...(outline?.body ?? []),
    ...(outline?.wheels ?? []).flatMap(({ centre: { x, y }, radius }) => [
      { x: x - radius, y: y - radius },
      { x: x + radius, y: y + radius },
    ]),
  ];
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

function bounds(car: CarPicture): Bounds {
  const seen = [...seenOf(car), seenFrom(car.view, [0, 0, 0])];
  const [xs, ys] = [seen.map(({ x }) => x), seen.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** mm. A job whose points all lie in one place is still drawn to some scale. */
const LEAST_SEEN = 100;

export type OnPicture = (place: Place2) => Place2;

/** In the middle of the room, as large as it can be. */
function placing(car: CarPicture, room: Bounds): OnPicture {
  const { left, right, low, high } = bounds(car);
  const scale = Math.min(
    (room.right - room.left) / Math.max(right - left, LEAST_SEEN),
    (room.high - room.low) / Math.max(high - low, LEAST_SEEN),
  );
  return ({ x, y }) => ({
    x: (room.left + room.right) / 2 + scale * (x - (left + right) / 2),
    y: (room.low + room.high) / 2 + scale * (y - (low + high) / 2),
  });
}

/** The car, and the lines on the floor that it is measured from. */
export function bodyOf(car: CarPicture, on: OnPicture): readonly Mark[] {
  const { left, right, low, high } = bounds(car);
  const zero = seenFrom(car.view, [0, 0, 0]);
  const lines = [
    stroke([on({ x: left, y: zero.y }), on({ x: right, y: zero.y })], ZERO),
    stroke([on({ x: zero.x, y: low }), on({ x: zero.x, y: high })], ZERO),
  ];
  if (car.car === null) return lines;
  const outline = outlineOf(car.view, car.car);
  return [
    ...outline.wheels.map(({ centre, radius }) =>
      circle(on(centre), on({ x: radius, y: 0 }).x - on({ x: 0, y: 0 }).x, FAINT),
    ),
    shape(outline.body.map(on), BODY, null),
    ...outline.lines.map((places) => stroke(places.map(on), FAINT)),
    ...lines,
  ];
}
