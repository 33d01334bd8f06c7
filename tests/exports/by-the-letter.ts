/**
 * A bender and somebody who does what the sheet says, to the letter: the tube as a body of marked places, each with the direction
 * of the tube there and the line scribed along it, moved by nothing but rigid motions of the whole or of what the die has hold of.
 * The machine: x along the feed towards the die, y to the left of it, z up; every bend starts at the origin and is level. Nothing
 * of the program's own geometry is used.
 */
import {
  along,
  difference,
  inner,
  outer,
  size,
  square,
  sum,
  times,
  unit,
  type Triple,
} from '../reference/oracles/space.ts';

export interface Turning {
  /** The bend that has to lie level, and the side that its leg has to point to. */
  readonly zeroOn: number;
  readonly legTo: 'left' | 'right';
  readonly degrees: number;
  readonly sense: 'clockwise' | 'anticlockwise' | null;
}

export interface LetterStep {
  readonly bend: number;
  readonly front: 'A' | 'B';
  /** mm from the blank's end A to the mark, which is the start of the bend; it lies towards the other end. */
  readonly mark: number;
  readonly degrees: number;
  readonly radius: number;
  /** Null: as it lies. */
  readonly turning: Turning | null;
}

interface Place {
  /** mm from the blank's end A. */
  readonly s: number;
  readonly at: Triple;
  /** Towards end B. */
  readonly way: Triple;
  /** From the axis to the line scribed along the tube. */
  readonly line: Triple;
}

/** What a person could read off once the tube is turned. */
export interface Readings {
  /** Degrees against level: of the leg laid at zero, of a bar that lay level across the tube at zero, of the leg. */
  readonly legAtZero: number;
  readonly bar: number;
  readonly leg: number;
  /** Off the feed, as seen from behind: to the right and up. */
  readonly legPoints: { readonly right: number; readonly up: number };
  /** Of the scribed line, clockwise from the top as seen from behind, (-180, 180]. */
  readonly line: number;
  /** Straight on the feed behind the start of the bend, mm, and the bend at which that ends; null: the tube's end. */
  readonly behind: { readonly length: number; readonly before: number | null };
}

const DEGREE = Math.PI / 180;
const NEAR = 1e-6;

/** Right-hand about x: as seen from behind, towards the die, clockwise. */
const rolled =
  (angle: number) =>
  ([x, y, z]: Triple): Triple => [
    x,
    y * Math.cos(angle) - z * Math.sin(angle),
    y * Math.sin(angle) + z * Math.cos(angle),
  ];

const moved = (place: Place, turn: (v: Triple) => Triple, shift: Triple = [0, 0, 0]): Place => ({
  s: place.s,
  at: sum(turn(place.at), shift),
  way: turn(place.way),
  line: turn(place.line),
});

type Zones = ReadonlyMap<number, { readonly low: number; readonly high: number }>;

/** The tube as bent, and what is read before each bend but the first. `machine`: the side that the bender bends to. */
export function bentToTheLetter(blank: number, steps: readonly LetterStep[], machine: 'left' | 'right') {
  const zones: Zones = new Map(
    steps.map(({ bend, front, mark, degrees, radius }) => {
      const other = mark + (front === 'A' ? 1 : -1) * radius * degrees * DEGREE;
      return [bend, { low: Math.min(mark, other), high: Math.max(mark, other) }] as const;
    }),
  );
  const marks = [0, blank, ...[...zones.values()].flatMap(({ low, high }) => [low, high])].toSorted((a, b) => a - b);
  // The line is scribed on top while the straight blank lies in the machine for its first bend.
  const way: Triple = steps[0]!.front === 'A' ? [-1, 0, 0] : [1, 0, 0];
  let places = marks.map((s): Place => ({ s, at: times(s, way), way, line: [0, 0, 1] }));
  const made = new Set<number>();
  const readings = steps.map((step): Readings | null => {
    places = laidIn(places, step);
    let read: Readings | null = null;
    if (step.turning !== null) {
      const leg = legOf(places, step, step.turning, zones, made);
      // To zero: whole, about the feed, until the leg is level on its side.
      const off = Math.atan2(leg().tip[2], leg().tip[1]);
      const level = (step.turning.legTo === 'left' ? 0 : Math.PI) - off;
      places = places.map((place) => moved(place, rolled(level)));
      const legAtZero = lean(legOf(places, step, step.turning, zones, made)().way);
      // And from there, as it says; half a turn goes either way.
      const angle = step.turning.degrees * DEGREE * (step.turning.sense === 'anticlockwise' ? -1 : 1);
      places = places.map((place) => moved(place, rolled(angle)));
      const { tip, way: along } = legOf(places, step, step.turning, zones, made)();
      const { line } = places.find(({ s }) => Math.abs(s - step.mark) < NEAR)!;
      read = {
        legAtZero,
        bar: lean(rolled(angle)([0, 1, 0])),
        leg: lean(along),
        legPoints: { right: -tip[1], up: tip[2] },
        line: Math.atan2(-line[1], line[2]) / DEGREE,
        behind: straightBehind(places, step, zones),
      };
    }
    places = pulled(places, step, machine);
    made.add(step.bend);
    return read;
  });
  return { places, readings };
}

/** Degrees against level. */
const lean = (way: Triple): number => Math.asin(Math.min(1, Math.abs(way[2]) / size(way))) / DEGREE;

/**
 * Drawn along, and turned end for end where need be, until the mark is at the start of bend and the end in front is ahead: without
 * rolling it, so that what lay level lies level.
 */
function laidIn(places: readonly Place[], { mark, front }: LetterStep): Place[] {
  const here = places.find(({ s }) => Math.abs(s - mark) < NEAR)!;
  const ahead = front === 'A' ? times(-1, here.way) : here.way;
  const about = outer(ahead, [1, 0, 0]);
  const [c, s] = [ahead[0], size(about)];
  const axis: Triple = s < 1e-9 ? [0, 0, 1] : unit(about);
  const turn = (v: Triple): Triple =>
    sum(sum(times(c, v), times(s, outer(axis, v))), times((1 - c) * inner(axis, v), axis));
  return places.map((place) => moved({ ...place, at: difference(place.at, here.at) }, turn));
}

/** What is beyond a bend that is made, as one comes to it from the die: how far off the feed its end is, and its direction. */
function legOf(
  places: readonly Place[],
  { mark }: LetterStep,
  { zeroOn }: Turning,
  zones: Zones,
  made: ReadonlySet<number>,
) {
  const zone = zones.get(zeroOn)!;
  const towardsB = zone.low > mark - NEAR;
  const others = [...made].map((bend) => zones.get(bend)!);
  // Up to the next bend that is made, or the tube's end.
  const far = towardsB
    ? Math.min(places.at(-1)!.s, ...others.flatMap(({ low }) => (low > zone.high - NEAR ? [low] : [])))
    : Math.max(0, ...others.flatMap(({ high }) => (high < zone.low + NEAR ? [high] : [])));
  const [from, to] = [towardsB ? zone.high : zone.low, far].map((wanted) =>
    places.find(({ s }) => Math.abs(s - wanted) < NEAR)!,
  ) as [Place, Place];
  return () => ({ tip: to.at, way: towardsB ? from.way : times(-1, from.way) });
}

function straightBehind(places: readonly Place[], { front, mark }: LetterStep, zones: Zones): Readings['behind'] {
  const rear = places
    .filter(({ s }) => (front === 'A' ? s > mark - NEAR : s < mark + NEAR))
    .toSorted((a, b) => Math.abs(a.s - mark) - Math.abs(b.s - mark));
  const off = rear.findIndex(({ at }) => Math.hypot(at[1], at[2]) > 1e-5);
  const last = (off < 0 ? rear.at(-1) : rear[off - 1])!;
  const bend = [...zones].find(([, { low, high }]) => Math.abs((front === 'A' ? low : high) - last.s) < NEAR);
  return { length: -last.at[0], before: off < 0 ? null : bend![0] };
}

/** The clamp takes what is in front round with the die; what is behind is drawn along the feed, and so much of it is laid round the die. */
function pulled(
  places: readonly Place[],
  { mark, front, degrees, radius }: LetterStep,
  machine: 'left' | 'right',
): Place[] {
  const side = machine === 'left' ? 1 : -1;
  const angle = degrees * DEGREE;
  const swing = (v: Triple): Triple => {
    const [c, s] = [Math.cos(angle), side * Math.sin(angle)];
    return [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]];
  };
  const centre: Triple = [0, side * radius, 0];
  const still = (v: Triple): Triple => v;
  return places.map((place) => {
    const behind = (front === 'A' ? 1 : -1) * (place.s - mark);
    if (behind < NEAR) return moved(place, swing, difference(centre, swing(centre)));
    if (behind < radius * angle - NEAR) throw new Error('nothing is marked within a bend');
    return moved(place, still, [radius * angle, 0, 0]);
  });
}

/** The same places on the tube as it is drawn, from its corners; `sawn`: mm from the blank's end A to end A's node. */
export function drawnPlaces(
  corners: readonly Triple[],
  bends: readonly { readonly angle: number; readonly radius: number; readonly start: number; readonly end: number }[],
  sawn: number,
  blank: number,
): { readonly s: number; readonly at: Triple }[] {
  const ways = corners.slice(1).map((corner, i) => unit(difference(corner, corners[i]!)));
  const length = bends.length === 0 ? 0 : size(difference(corners.at(-1)!, corners.at(-2)!));
  const tangents = bends.flatMap(({ angle, radius, start, end }, i) => {
    const back = radius * Math.tan((angle * DEGREE) / 2);
    return [
      { s: sawn + start, at: along(corners[i + 1]!, ways[i]!, -back) },
      { s: sawn + end, at: along(corners[i + 1]!, ways[i + 1]!, back) },
    ];
  });
  const last = tangents.at(-1)!;
  const setBack = size(difference(last.at, corners.at(-2)!));
  const nodeB = last.s + length - setBack;
  return [
    { s: 0, at: along(corners[0]!, ways[0]!, -sawn) },
    ...tangents,
    { s: blank, at: along(corners.at(-1)!, ways.at(-1)!, blank - nodeB) },
  ];
}

/** How far the one set of places is from the other at most, mm, once laid on it at end A's leg and its first bend. */
export function apart(one: readonly { readonly at: Triple }[], other: readonly { readonly at: Triple }[]): number {
  const frame = (places: readonly { readonly at: Triple }[]) => {
    const [origin, first] = [places[0]!.at, unit(difference(places[1]!.at, places[0]!.at))];
    const inside = unit(square(difference(places[2]!.at, places[1]!.at), first));
    const third = outer(first, inside);
    return places.map(({ at }): Triple => {
      const v = difference(at, origin);
      return [inner(v, first), inner(v, inside), inner(v, third)];
    });
  };
  const [a, b] = [frame(one), frame(other)];
  return Math.max(...a.map((place, i) => size(difference(place, b[i]!))));
}
