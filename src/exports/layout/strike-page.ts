/**
 * The page by which a flat tube is struck on the floor, before its sheets at full size: a small drawing with its figures, the places along and
 * square off a chalk line, the radii to swing the arcs with, and diagonals that tell by a tape whether it came out right.
 */
import { capital } from '../../core/words/lists.ts';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import type { Derived } from '../../core/derive.ts';
import { sectionInWords } from '../../core/job/sizes.ts';
import { bodySection, type BodyCrossing } from '../../core/run/body-section.ts';
import type { FlatTube } from '../../core/run/lay-flat.ts';
import { struck, type Struck, type StruckPlace } from '../../core/run/strike.ts';
import { revisionOf } from '../../core/solve/revision.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { stepBelow } from '../../core/units/step.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { revisionInWords } from '../../core/words/revision.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { angleFigure, figure, lengthFigure } from '../../drawing/figures.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { FAINT, line, words } from '../../drawing/strokes.ts';
import { moved } from '../../drawing/move.ts';
import type { Mark } from '../../drawing/types.ts';
import { CAR_IN_PLANE, crossingName } from '../../core/words/body-section.ts';
import { withoutSide } from '../../core/words/measuring.ts';
import { numbered } from '../../core/words/ends.ts';
import { strikeDrawing, UNDER } from './strike-drawing.ts';
import { bodyTag, ENDS, figureSize, tagOf } from './strike-tags.ts';

/** Body of the letters, mm: 11 points; a figure with a fraction is set larger. */
const SIZE = 3.9;
const LEADING = 4.9;
const ROW = 6.2;
/** Of the table from the left of the page's room, mm: tag, place, along, off; then the column beside it. */
const PLACE = 17;
const ALONG = 89;
const OFF = 116;
const BESIDE = 120;
/** A lower drawing cannot be read, mm: rather it is made as high as it likes, and the table goes on on another page. */
const LEAST_DRAWING = 55;

/** One page of marks; a second where the table is longer than the page. */
export function strikePages(
  derived: Derived,
  tube: SolvedTube,
  flat: FlatTube,
  face: Lettering,
  space: Box2,
): Mark[][] {
  const unit = derived.job.lengthUnit;
  const plan = struck(tube, flat);
  const rows = rowsOf(plan);
  const body = bodySection(derived.job, tube);
  const struckBy = besideRows(plan, unit);
  const head = headMarks(derived, tube, plan, face, space);
  const room = space.top - space.bottom - head.height;
  const needs = ROW * (Math.max(rows.length, struckBy.length) + 1) + 3;
  const most = room - needs < LEAST_DRAWING ? MOST_DRAWING : Math.min(room - needs, MOST_DRAWING);
  const list = bodyRows(body, unit);
  const width = space.right - space.left;
  const size = { width, height: most, free: list.length === 0 ? 0 : width - BESIDE };
  const { height: tall, marks: drawing } = strikeDrawing(plan, tube, body, face, unit, size);
  // Beside the drawing where that is high enough, else after all that the tube is struck by.
  const isBeside = ROW * list.length <= tall - UNDER;
  const listed = isBeside ? besideMarks(list, face, unit, space, space.top - head.height) : [];
  const beside = isBeside ? struckBy : [...struckBy, ...list];
  const first = Math.floor((room - tall - 3) / ROW) - 1;
  const later = Math.floor((space.top - space.bottom) / ROW) - 1;
  const pages: Mark[][] = [];
  for (let from = 0; from < Math.max(rows.length, beside.length, 1);) {
    const count = from === 0 ? first : later;
    const top = from === 0 ? space.top - head.height - tall - 3 : space.top;
    const table = tableMarks(plan, rows.slice(from, from + count), face, unit, space.left, top);
    const other = besideMarks(beside.slice(from, from + count), face, unit, space, top);
    pages.push([
      ...(from === 0 ? [...head.marks, ...moved(drawing, space.left, space.top - head.height - tall), ...listed] : []),
      ...table,
      ...other,
    ]);
    from += count;
  }
  return pages;
}

const MOST_DRAWING = 110;

function headMarks(derived: Derived, tube: SolvedTube, plan: Struck, face: Lettering, { left, right, top }: Box2) {
  const unit = derived.job.lengthUnit;
  const errors = errorsOf(derived.findings, tube.id);
  const title = shrunk(face, numbered(tube), right - left, 6, true);
  const said = [
    ...(errors.length > 0 ? [`! ${faultInWords(errors)}: see the checks.`] : []),
    `All figures are of the tube’s centreline. ${sectionInWords(tube.section, unit)}, ${revisionInWords(revisionOf(derived.job, tube))}`,
    howInWords(plan),
  ];
  const lines = said.flatMap((text) => wrapped(face, text, right - left, SIZE));
  return {
    height: 8 + LEADING * lines.length + 2,
    marks: [
      words('page', left, top - 5.5, title.text, title.size, { bold: true }),
      ...lines.map((text, i) => words('page', left, top - 8 - LEADING * (i + 0.8), text, SIZE)),
    ],
  };
}

function howInWords({ symmetric, base }: Struck): string {
  const zero = symmetric
    ? 'Snap a chalk line, mark the zero on it and strike the centre line through the zero, square to it (3-4-5). Every place is set out twice: so far from the centre line to the left and to the right, then square off the chalk line.'
    : base < 1
      ? 'Snap a chalk line along the leg of end A; the zero is end A. Go along it from the zero, away from bend 1 where the figure has a minus; then square off it.'
      : 'Snap a chalk line from end A to end B; the zero is end A. Go along it towards B, the other way where the figure has a minus; then square off it.';
  return `${zero} Above the line as drawn; below it where the figure has a minus. Join ends and corners with straight lines, swing each arc about its centre from start to end. Check the diagonals before you bend to it.`;
}

interface Row {
  readonly tag: string;
  readonly name: string;
  readonly place: StruckPlace;
}

const OTHER = { start: 'end', end: 'start' } as const;

/** The place that a place's mirror image is. */
const imageOf = (place: StruckPlace, bends: number): Pick<StruckPlace, 'kind' | 'number'> => ({
  kind: place.kind === 'start' || place.kind === 'end' ? OTHER[place.kind] : place.kind,
  number: place.kind === 'node' || place.kind === 'sawn' ? 1 - place.number : bends + 1 - place.number,
});

function nameOf({ kind, number }: Pick<StruckPlace, 'kind' | 'number'>): string {
  switch (kind) {
    case 'node':
      return `end ${ENDS[number]!}, its node`;
    case 'sawn':
      return `sawn end ${ENDS[number]!}`;
    case 'corner':
      return `sharp corner ${number}`;
    case 'start':
    case 'end':
      return `${kind} of bend ${number}`;
    case 'centre':
      return `centre of arc ${number}`;
    case 'middle':
      return `middle of arc ${number}`;
  }
}

/** In the order in which it is set out: ends, corners, then bend by bend; of what is on both sides one row. */
function rowsOf({ places, symmetric, swings }: Struck): Row[] {
  const bends = swings.length;
  const ordered = [
    ...places.filter(({ kind }) => kind === 'node'),
    ...places.filter(({ kind }) => kind === 'sawn'),
    ...places.filter(({ kind }) => kind === 'corner'),
    ...places.filter(({ kind }) => kind !== 'node' && kind !== 'sawn' && kind !== 'corner'),
  ];
  if (!symmetric) return ordered.map((place) => ({ tag: tagOf(place), name: nameOf(place), place }));
  return ordered
    .filter((place) => {
      const image = imageOf(place, bends);
      return place.number < image.number || (place.number === image.number && place.kind !== 'end');
    })
    .map((place): Row => {
      const image = imageOf(place, bends);
      const alone = image.number === place.number && image.kind === place.kind;
      if (alone) return { tag: tagOf(place), name: nameOf(place), place };
      const tag = `${tagOf(place)}, ${tagOf({ ...place, ...image })}`;
      // "sharp corner 1 and 4", but "start of bend 1, end of 4".
      const name = `${nameOf(place)}${image.kind === place.kind ? ` and ${image.number}` : `, ${image.kind} of ${image.number}`}`;
      return place.kind === 'node'
        ? { tag, name: 'ends, their nodes', place }
        : place.kind === 'sawn'
          ? { tag: 'sawn', name: 'sawn ends', place }
          : { tag, name, place };
    });
}

function tableMarks(
  { symmetric }: Struck,
  rows: readonly Row[],
  face: Lettering,
  unit: LengthUnit,
  left: number,
  top: number,
): Mark[] {
  if (rows.length === 0) return [];
  const head = top - 4.6;
  const bold = { bold: true } as const;
  return [
    words('page', left, head, 'Place', SIZE, bold),
    words('page', left + ALONG, head, symmetric ? 'out each side' : 'along', SIZE, { ...bold, anchor: 'end' }),
    words('page', left + OFF, head, 'square off', SIZE, { ...bold, anchor: 'end' }),
    rule(left, left + OFF, head - 1.4),
    ...rows.flatMap(({ tag, name, place }, i): Mark[] => {
      const y = top - ROW * (i + 1) - 4.8;
      const long = shrunk(face, capital(name), ALONG - PLACE - 24, SIZE);
      const short = shrunk(face, tag, PLACE - 2, SIZE, true);
      // Out to its own side: end A's half lies on the left.
      const along = symmetric ? -place.x : place.x;
      return [
        words('page', left, y, short.text, short.size, bold),
        words('page', left + PLACE, y, long.text, long.size),
        words('page', left + ALONG, y, lengthFigure(along, unit), figureSize(unit), { anchor: 'end' }),
        words('page', left + OFF, y, lengthFigure(place.y, unit), figureSize(unit), { anchor: 'end' }),
        rule(left, left + OFF, y - 1.6),
      ];
    }),
  ];
}

const rule = (from: number, to: number, y: number): Mark =>
  line(
    'page',
    [
      { x: from, y },
      { x: to, y },
    ],
    FAINT,
  );

interface Beside {
  readonly text: string;
  readonly figure: string;
  readonly bold?: boolean;
}

/** What arcs are swung with, bends that are alike together; then the diagonals. */
function besideRows({ swings, checks, symmetric, outside: overAll }: Struck, unit: LengthUnit): Beside[] {
  const radii = new Map<string, number[]>();
  for (const { number, radius, outside } of swings) {
    const key = `${lengthFigure(radius, unit)}|${lengthFigure(outside, unit)}`;
    radii.set(key, [...(radii.get(key) ?? []), number]);
  }
  const bends = swings.length;
  const swung = [...radii].flatMap(([key, numbers]): Beside[] => {
    const [radius, outside] = key.split('|') as [string, string];
    const which = numbers.length === bends ? (bends === 1 ? 'Arc' : 'Every arc') : `Arc ${numbers.join(', ')}`;
    return [
      { text: `${which}: centreline`, figure: radius },
      { text: 'outside', figure: outside },
    ];
  });
  const turned = swings
    .filter(({ number }) => !symmetric || number <= bends + 1 - number)
    .map(({ number, angle }): Beside => ({
      text: symmetric && number < bends + 1 - number ? `Bend ${number}, ${bends + 1 - number}` : `Bend ${number}`,
      figure: angleFigure(angle),
    }));
  const crossed = checks.map(({ from, to, value }): Beside => {
    const pair = `${tagOf(from)} to ${tagOf(to)}`;
    const [other, last] = [imageOf(to, bends), imageOf(from, bends)];
    const own = tagOf({ ...to, ...other }) === tagOf(from);
    const both = symmetric && !own;
    const image = `${tagOf({ ...from, ...last })} to ${tagOf({ ...to, ...other })}`;
    return { text: both ? `${pair}, ${image}` : pair, figure: lengthFigure(value, unit) };
  });
  return [
    { text: 'Swing with', figure: '', bold: true },
    ...swung,
    ...turned,
    { text: 'Diagonals by tape', figure: '', bold: true },
    ...crossed,
    { text: 'Outside to outside', figure: '', bold: true },
    { text: 'over all, along', figure: lengthFigure(overAll.along, unit) },
    { text: 'over all, square off', figure: lengthFigure(overAll.off, unit) },
  ];
}

/** Where the car is in the hoop's plane: the broken line of the drawing. What is alike on both sides stands in one row, left then right; no gap is shown larger than it is. */
function bodyRows(body: readonly BodyCrossing[], unit: LengthUnit): Beside[] {
  if (body.length === 0) return [];
  const taken = new Set<number>();
  const rows = body.flatMap((each, i): readonly Beside[] => {
    if (taken.has(i)) return [];
    const like = body.findIndex((other, k) => k > i && !taken.has(k) && isLike(each, other));
    if (like < 0)
      return [{ text: `${bodyTag(i)}: ${crossingName(each)}`, figure: lengthFigure(stepBelow(each.gap, unit), unit) }];
    taken.add(like);
    const gaps = [each, body[like]!].map(({ gap }) => figure(formatLength(stepBelow(gap, unit), unit)));
    return [
      {
        text: `${bodyTag(i)}, ${bodyTag(like)}: ${withoutSide(crossingName(each))}`,
        figure: `${gaps.join(', ')} ${unit}`,
      },
    ];
  });
  return [{ text: CAR_IN_PLANE, figure: '', bold: true }, ...rows];
}

/** The same line of the body on the other side of the car. */
const isLike = (one: BodyCrossing, other: BodyCrossing): boolean =>
  one.at[1] * other.at[1] < 0 && withoutSide(crossingName(one)) === withoutSide(crossingName(other));

function besideMarks(
  rows: readonly Beside[],
  face: Lettering,
  unit: LengthUnit,
  { left, right }: Box2,
  top: number,
): Mark[] {
  const size = figureSize(unit);
  const from = left + BESIDE;
  return rows.flatMap(({ text, figure, bold = false }, i): Mark[] => {
    const y = top - ROW * i - 4.8 + (bold ? 0.2 : 0);
    const wide = right - from - face.width(figure, size, false) - 2;
    const set = shrunk(face, text, wide, SIZE, bold);
    return [
      words('page', from, y, set.text, set.size, { bold }),
      ...(figure === '' ? [] : [words('page', right, y, figure, size, { anchor: 'end' as const })]),
      rule(from, right, y - 1.6),
    ];
  });
}
