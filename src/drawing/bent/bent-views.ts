/**
 * A bent tube as it lies on the bench to be checked, with its check dimensions where they are taken: seen from above, on the plane of its first
 * bend, and if it does not lie flat from the side under that, square to it. Ends are lettered, bends numbered; a dimension's letter
 * names its row in the list. One that a view would show shorter than it is is not drawn in it.
 */
import { placeOnPiece, type ArcPiece } from '../../core/geometry/path.ts';
import { cross, dot, scale as scaled, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import { checkDimensions, measuredAlong, type CheckDimension } from '../../core/run/check-dimensions.ts';
import { checkPlaces, upOnBench } from '../../core/run/check-places.ts';
import type { SawnTube } from '../../core/run/sawn-tube.ts';
import { FAINT, onLayer, stroke, text } from '../ink.ts';
import type { Lettering } from '../lettering.ts';
import { moved } from '../move.ts';
import { extentOf, project, type View } from '../projection.ts';
import type { Mark, Picture, Place2 } from '../types.ts';
import { bodyBars, bodyMarks } from './body.ts';
import { boxAround, boxSize, laidDown, LETTER, type Dimension, type Taken } from './dimensions.ts';
import { added, crowd, fromWords, long, type Bar, type Box } from './room.ts';

/** A check dimension with the letter that it is drawn by; null where no view shows it in full. */
export interface Lettered {
  readonly check: CheckDimension;
  readonly letter: string | null;
}

/** mm. A dimension that a view shows by so much shorter is not drawn in it: a tape does not show it. */
const FORESHORTENED = 0.05;
/** Of a way's length that is seen: a short dimension that is turned towards the eye is not drawn either. */
const NEARLY_FULL = 0.99;
/** Between the two views. */
const APART = 5;
/** Smaller by this at least, until it all fits; and so often. */
const SMALLER = 0.93;
const TRIES = 40;

/** Of the tube alone, seen from above and, unless it lies flat, from the side; none for a straight one. */
export function viewsOf({ pieces }: SawnTube, checks: readonly CheckDimension[]): readonly View[] {
  const first = pieces.find((piece): piece is ArcPiece => piece.kind === 'arc');
  const along = measuredAlong(pieces);
  if (first === undefined || along === null || checks.length === 0) return [];
  const { lies } = checks[0]!;
  const start = pieces[0]!.from;
  const lean = (up: Vec3): number => pieces.reduce((sum, { to }) => sum + dot(subtract(to, start), up), 0);
  if (lies.along !== 'ends-on-first-bend') {
    // A flat tube can be turned over: its bends upwards, end A on the left.
    const across = cross(first.normal, along);
    const up = lean(across) < 0 ? scaled(across, -1) : across;
    return [{ right: along, up, toEye: cross(along, up) }];
  }
  const high = upOnBench(first, lies);
  const across = cross(high, along);
  const [right, up] = lean(across) < 0 ? [scaled(along, -1), scaled(across, -1)] : [along, across];
  return [
    { right, up, toEye: high },
    { right, up: high, toEye: scaled(up, -1) },
  ];
}

/** Whether a view shows a dimension as long as it is, and not end-on. */
export function showsInFull(view: View, form: SawnTube, check: CheckDimension): boolean {
  const { from, to, along } = checkPlaces(form, check);
  const seen = long(project(view, along));
  return seen > NEARLY_FULL && Math.abs(dot(subtract(to, from), along)) * (1 - seen) <= FORESHORTENED;
}

/** A tube's check dimensions in order, with the letters that they have on the picture. None for a straight tube. */
export const letteredChecks = (form: SawnTube): readonly Lettered[] => shownIn(form).lettered;

/** By its number, the view that each is drawn in. */
function shownIn(form: SawnTube): {
  views: readonly View[];
  lettered: readonly (Lettered & { readonly view: number })[];
} {
  const checks = checkDimensions(form);
  const views = viewsOf(form, checks);
  let count = 0;
  const lettered = checks.map((check) => {
    const isLevel = check.id === 'stands-off' && views.length === 1;
    const view = isLevel ? -1 : views.findIndex((each) => showsInFull(each, form, check));
    return { check, view, letter: view < 0 ? null : LETTERS[count++]! };
  });
  return { views, lettered };
}

/** Of a bent tube, no higher than the room and as wide. */
export function bentViews(face: Lettering, form: SawnTube, room: { width: number; height: number }): Picture {
  const { views, lettered } = shownIn(form);
  const wide = (view: View): number => {
    const { left, right } = extentOf(bodyBars(form, view, 1).flatMap(({ from, to }) => [from, to]));
    return right - left + form.outerDiameter;
  };
  let scale = room.width / Math.max(...views.map(wide));
  for (let i = 0; ; i++) {
    const laid = views.map((view, which) => {
      const drawn = lettered.filter((each) => each.view === which);
      return drawnView(face, form, view, scale, drawn, which === 0);
    });
    const picture = stackedUp(laid, room.width);
    if (i === TRIES || (picture.width <= room.width && picture.height <= room.height))
      return { ...picture, width: room.width };
    scale *= Math.min(SMALLER, room.width / picture.width, room.height / picture.height);
  }
}

const LETTERS = 'abcdefgh';

interface DrawnView {
  readonly marks: readonly Mark[];
  readonly room: Box;
}

/** The order in which they are laid down: what has its one place first, what can go farther out last. */
const ORDER: readonly CheckDimension['id'][] = [
  'diagonal-a',
  'diagonal-b',
  'chord',
  'legs-at-ends',
  'legs-at-bends',
  'stands-off',
  'height',
  'width',
];

function drawnView(
  face: Lettering,
  form: SawnTube,
  view: View,
  scale: number,
  lettered: readonly Lettered[],
  numbered: boolean,
): DrawnView {
  const on = (place: Vec3): Place2 => {
    const { x, y } = project(view, place);
    return { x: scale * x, y: scale * y };
  };
  const dimensions = lettered
    .toSorted((a, b) => ORDER.indexOf(a.check.id) - ORDER.indexOf(b.check.id))
    .map(({ check, letter }): Dimension => {
      const { from, to, along } = checkPlaces(form, check);
      const { x, y } = project(view, along);
      return {
        letter: letter!,
        from: on(from),
        to: on(to),
        along: { x: x / long({ x, y }), y: y / long({ x, y }) },
        isCentre: check.kind === 'centre',
        isDiagonal: check.id.startsWith('diagonal'),
      };
    });
  const tube = bodyBars(form, view, scale);
  const bench = numbered ? [] : [benchOf(form, on)];
  const { taken, marks: dimensionMarks } = allLaidDown(dimensions, tube, bench, face);
  const marks = [
    ...bench.flatMap(benchMark),
    ...bodyMarks(form, view, scale),
    ...dimensionMarks,
    ...namesOf(form, numbered).map(({ name, place, towards }) =>
      nameMark(
        face,
        name,
        on(place),
        long(project(view, towards)) === 0 ? null : on(towards),
        taken,
        scale * form.outerDiameter,
      ),
    ),
  ];
  return { marks, room: roomOf(taken) };
}

/** One that finds no place because of what was laid down before it goes first, and all are laid down anew. */
function allLaidDown(
  dimensions: readonly Dimension[],
  tube: readonly Bar[],
  bench: readonly Bar[],
  face: Lettering,
): { taken: Taken; marks: readonly Mark[] } {
  let order = dimensions;
  for (let i = 0; ; i++) {
    const taken: Taken = { tube, lines: [], outs: [...bench], words: [] };
    const laid = order.map((dimension) => laidDown(dimension, taken, face));
    const left = laid.indexOf(null);
    if (left < 0 || i === dimensions.length) return { taken, marks: laid.flatMap((marks) => marks ?? []) };
    order = [order[left]!, ...order.filter((_, k) => k !== left)];
  }
}

/** The plane of the first bend, from which the side view counts, from end to end. */
function benchOf({ pieces }: SawnTube, on: (place: Vec3) => Place2): Bar {
  const { left, right } = extentOf(pieces.flatMap(({ from, to }) => [on(from), on(to)]));
  const { y } = on(pieces.find(({ kind }) => kind === 'arc')!.from);
  return { from: { x: left, y }, to: { x: right, y }, half: 0 };
}

/** In dots and dashes. */
const benchMark = ({ from, to }: Bar): Mark[] =>
  onLayer('bench', stroke([from, to], { ...FAINT, dash: [3, 0.8, 0.8, 0.8] }));

interface Named {
  readonly name: string;
  readonly place: Vec3;
  /** Where it stands best: beyond an end, within a bend. */
  readonly towards: Vec3;
}

function namesOf({ pieces }: SawnTube, numbered: boolean): Named[] {
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  const arcs = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  const numbers = arcs.map((arc, i): Named => {
    const { point } = placeOnPiece(arc, arc.length / 2);
    return { name: String(i + 1), place: point, towards: subtract(point, arc.centre) };
  });
  return [
    { name: 'A', place: first.from, towards: scaled(first.startTangent, -1) },
    { name: 'B', place: last.to, towards: last.endTangent },
    ...(numbered ? numbers : []),
  ];
}

/** How far from the tube's edge a name is tried, and how many places round it. */
const RINGS = Array.from({ length: 16 }, (_, i) => 0.7 + 0.7 * i);
const ROUND = 16;

/** As near to its place as there is room, on the side that it is wanted on first. */
function nameMark(
  face: Lettering,
  name: string,
  place: Place2,
  towards: Place2 | null,
  taken: Taken,
  thick: number,
): Mark {
  const size = boxSize(name, face);
  const ahead = towards === null ? 0 : Math.atan2(towards.y, towards.x);
  const places = RINGS.flatMap((ring) =>
    Array.from({ length: ROUND }, (_, i): Place2 => {
      const turn = (i % 2 === 0 ? i / 2 : -(i + 1) / 2) * ((2 * Math.PI) / ROUND);
      const way = { x: Math.cos(ahead + turn), y: Math.sin(ahead + turn) };
      const half = Math.abs(way.x) * (size.width / 2) + Math.abs(way.y) * (size.height / 2);
      return added(place, way, thick / 2 + ring + half);
    }),
  );
  const at = places.find((each) => isFree(boxAround(each, size), taken)) ?? places[0]!;
  taken.words.push(boxAround(at, size));
  return onLayer('node', text(at.x, at.y - size.height / 2, name, { size: LETTER, bold: true, anchor: 'middle' }))[0]!;
}

const isFree = (box: Box, { tube, lines, outs, words }: Taken): boolean =>
  words.every((other) => !crowd(box, other, 0.4)) &&
  [...tube, ...lines, ...outs].every((bar) => fromWords(box, bar) >= 0.4);

function roomOf({ tube, lines, outs, words }: Taken): Box {
  const places = [...tube, ...lines, ...outs].flatMap(({ from, to, half }) =>
    [from, to].flatMap(({ x, y }) => [
      { x: x - half, y: y - half },
      { x: x + half, y: y + half },
    ]),
  );
  const corners = words.flatMap(({ left, right, low, high }) => [
    { x: left, y: low },
    { x: right, y: high },
  ]);
  const { left, right, low, high } = extentOf([...places, ...corners]);
  return { left: left - EDGE, right: right + EDGE, low: low - EDGE, high: high + EDGE };
}

/** For pens and arrowheads. */
const EDGE = 0.8;

/** The side view under the one from above, their places in line; in the middle of the width. */
function stackedUp(views: readonly DrawnView[], width: number): Picture {
  const [left, right] = [
    Math.min(...views.map(({ room }) => room.left)),
    Math.max(...views.map(({ room }) => room.right)),
  ];
  const high = views.reduce((sum, { room }) => sum + room.high - room.low, APART * (views.length - 1));
  const dx = Math.max(0, (width - (right - left)) / 2) - left;
  let top = high;
  const marks = views.flatMap(({ marks: own, room }) => {
    const put = moved(own, dx, top - room.high);
    top -= room.high - room.low + APART;
    return put;
  });
  return { width: right - left, height: high, marks };
}
