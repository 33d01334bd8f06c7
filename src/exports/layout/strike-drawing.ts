/**
 * A flat tube drawn small, as it is struck on the floor: chalk line and centre line, the tube with its edges, its sharp corners, every place by
 * its tag, and how far the corners are along the line and off it.
 */
import type { BodyCrossing } from '../../core/run/body-section.ts';
import { extremesOf, type FlatArc, type FlatLine, type FlatPlace } from '../../core/run/lay-flat.ts';
import type { Struck, StruckPlace } from '../../core/run/strike.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { boxOf, clearOf, isClear } from '../../drawing/clear.ts';
import { clipped } from '../../drawing/clip.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import type { Size } from '../../drawing/shelves.ts';
import { cross, DASHED, FAINT, FINE, FIRM, HAIR, line, words } from '../../drawing/strokes.ts';
import type { Arc, Line, Mark, Pen, Picture, Place2, Words } from '../../drawing/types.ts';
import { bodyTag, figureSize, tagOf } from './strike-tags.ts';

/** Body of the tags, mm: 11 points. */
const TAG = 3.9;
/** Left of the drawing for the figures off the line, and round it for tags; mm. */
const LEFT = 30;
/** Under it for the figures along the line, mm. */
export const UNDER = 13;
const ROUND = 7;

/** The car on either side of the hoop: light, and no line that is struck. Across, between the roof rails, nothing was measured, and nothing is drawn. */
const BODY: Pen = { width: 0.2, grey: 0.55, dash: [1, 0.8] };

/** As wide as `size`, and no higher; from its lower left corner, not to scale with anything. `body`: where body lines come through the tube's plane. So much is kept `free` on the right, but for the figures under it. */
export function strikeDrawing(
  plan: Struck,
  tube: SolvedTube,
  body: readonly BodyCrossing[],
  face: Lettering,
  unit: LengthUnit,
  size: Size & { readonly free: number },
): Picture {
  const ra = tube.section.outerDiameter / 2;
  const figure = figureSize(unit);
  const crossings = body.map((each, i) => ({
    ...plan.onFloor(each.flat),
    isOutside: each.isOutside,
    isLeft: each.at[1] > 0,
    tag: bodyTag(i),
  }));
  const reached = [...plan.places, ...crossings, { x: 0, y: 0 }, ...plan.pieces.flatMap((piece) => reachOf(piece, ra))];
  const [left, right] = [Math.min(...reached.map(({ x }) => x)), Math.max(...reached.map(({ x }) => x))];
  const [bottom, top] = [Math.min(...reached.map(({ y }) => y)), Math.max(...reached.map(({ y }) => y))];
  const [wide, tall] = [size.width - size.free - LEFT - 2 * ROUND, size.height - UNDER - 2 * ROUND];
  const small = Math.min(wide / Math.max(right - left, 1), tall / Math.max(top - bottom, 1));
  const dx = LEFT + ROUND + (wide - small * (right - left)) / 2 - small * left;
  const dy = UNDER + ROUND - small * bottom;
  const at = ({ x, y }: FlatPlace): Place2 => ({ x: dx + small * x, y: dy + small * y });
  const lines = [
    line(
      'map',
      [at({ x: left, y: 0 }), at({ x: right, y: 0 })].map(({ x, y }, i) => ({ x: x + (i === 0 ? -5 : 5), y })),
      {
        ...FINE,
        dash: [6, 1.5, 1, 1.5],
      },
    ),
    ...(plan.symmetric
      ? [
          line(
            'map',
            [{ ...at({ x: 0, y: bottom }) }, at({ x: 0, y: top })].map(({ x, y }, i) => ({
              x,
              y: y + (i === 0 ? -4 : 5),
            })),
            { ...HAIR, dash: [6, 1.5, 1, 1.5] },
          ),
        ]
      : []),
    line('map', outlineOf(plan).map(at), { ...DASHED, grey: 0.45 }),
    ...plan.pieces.flatMap((piece): Mark[] => [
      aside(piece, 0, at, small, FIRM),
      aside(piece, ra, at, small, FAINT),
      aside(piece, -ra, at, small, FAINT),
    ]),
    ...plan.places.flatMap((place) => sign(place, at(place))),
    ...[true, false].map((left) =>
      line('map', crossings.filter(({ isOutside, isLeft }) => isOutside && isLeft === left).map(at), BODY),
    ),
    ...crossings.flatMap((place) => cross('map', at(place), 0.9)),
  ];
  const along = ladder(
    corners(plan).map(({ x }) => x),
    (value) => at({ x: value, y: 0 }).x,
    24,
    size.width - 12,
  );
  const off = ladder(
    corners(plan).map(({ y }) => y),
    (value) => at({ x: 0, y: value }).y,
    figure + 0.8,
  );
  const foot = Math.min(at({ x: 0, y: 0 }).y, at({ x: 0, y: bottom }).y) - ROUND + 1;
  const rail = at({ x: left, y: 0 }).x - ROUND + 1;
  const figures: Mark[] = [
    ...along.flatMap(({ value, true: x, put }): Mark[] => [
      line(
        'map',
        [
          { x, y: at({ x: 0, y: 0 }).y - 1.5 },
          { x, y: foot },
          { x: put, y: foot - 3 },
        ],
        HAIR,
      ),
      words('map', put, foot - 3 - figure * 0.8, lengthFigure(plan.symmetric ? Math.abs(value) : value, unit), figure, {
        anchor: 'middle',
      }),
    ]),
    ...off.flatMap(({ value, true: y, put }): Mark[] => [
      line(
        'map',
        [
          { x: at(cornerAt(plan, value)).x - 2, y },
          { x: rail, y },
          { x: rail - 3, y: put },
        ],
        HAIR,
      ),
      words('map', rail - 4, put - figure * 0.33, lengthFigure(value, unit), figure, { anchor: 'end' }),
    ]),
  ];
  const marks = [
    ...lines,
    ...figures,
    ...tags([...tagsOf(plan), ...crossings.map((place) => ({ ...place, text: place.tag, bold: false }))], at, face, [
      ...lines,
      ...figures,
    ]),
  ];
  return { width: size.width, height: UNDER + 2 * ROUND + small * (top - bottom), marks };
}

const corners = ({ places }: Struck): StruckPlace[] =>
  places.filter(({ kind }) => kind === 'corner' || kind === 'node');

/** The one farthest left of those so far off. */
const cornerAt = (plan: Struck, off: number): StruckPlace =>
  corners(plan)
    .filter(({ y }) => Math.abs(y - off) < SAME)
    .reduce((best, each) => (each.x < best.x ? each : best));

/** mm. Figures this near to one another are one. */
const SAME = 0.05;

/** From node to node over the sharp corners. */
const outlineOf = ({ places }: Struck): StruckPlace[] => {
  const [a, b] = places.filter(({ kind }) => kind === 'node');
  return [a!, ...places.filter(({ kind }) => kind === 'corner'), b!];
};

/** Each value once, its true place on the paper and where its figure stands, at least `apart` from its neighbours and none beyond `most`. */
function ladder(values: readonly number[], place: (value: number) => number, apart: number, most = Infinity) {
  const once = values.toSorted((a, b) => a - b).filter((value, i, all) => i === 0 || value - all[i - 1]! >= SAME);
  const put = once.map(place);
  for (let round = 0; round < 60; round++) {
    for (let i = 1; i < put.length; i++) {
      const short = apart - (put[i]! - put[i - 1]!);
      if (short <= 0) continue;
      put[i - 1]! -= short / 2;
      put[i]! += short / 2;
    }
  }
  const back = Math.max(0, (put.at(-1) ?? 0) - most);
  return once.map((value, i) => ({ value, true: place(value), put: put[i]! - back }));
}

function reachOf(piece: FlatLine | FlatArc, ra: number): FlatPlace[] {
  return piece.kind === 'arc' ? extremesOf(piece, piece.radius + ra) : [piece.from, piece.to];
}

function aside(
  piece: FlatLine | FlatArc,
  by: number,
  at: (place: FlatPlace) => Place2,
  small: number,
  pen: typeof FINE,
): Mark {
  if (piece.kind === 'arc') {
    const { centre, radius, low, high, left } = piece;
    return {
      kind: 'arc',
      layer: 'map',
      centre: at(centre),
      radius: small * (left ? radius - by : radius + by),
      from: low,
      to: high,
      pen,
    };
  }
  const { from, to } = piece;
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const [nx, ny] = [(-(to.y - from.y) / long) * by, ((to.x - from.x) / long) * by];
  return line(
    'map',
    [from, to].map(({ x, y }) => at({ x: x + nx, y: y + ny })),
    pen,
  );
}

/** A cross at a centre, a short stroke square to nothing at what lies on the tube. */
const sign = ({ kind }: StruckPlace, at: Place2): Mark[] => cross('map', at, kind === 'centre' ? 1.6 : 0.9);

interface Tag extends FlatPlace {
  readonly text: string;
  readonly bold: boolean;
}

const tagsOf = (plan: Struck): readonly Tag[] =>
  plan.places
    .filter(({ kind }) => kind !== 'sawn')
    .toSorted((one, other) => order(one) - order(other))
    .map((place) => ({
      x: place.x,
      y: place.y,
      text: tagOf(place),
      bold: place.kind === 'corner' || place.kind === 'node',
    }));

function tags(
  places: readonly Tag[],
  at: (place: FlatPlace) => Place2,
  face: Lettering,
  drawn: readonly Mark[],
): Mark[] {
  const set: Words[] = drawn.filter((mark) => mark.kind === 'words');
  const lines = drawn.filter((mark): mark is Line | Arc => mark.kind !== 'words');
  const crossed = (mark: Words): boolean => {
    const [low, , high] = boxOf(mark, face);
    return clipped(lines, { left: low!.x, bottom: low!.y, right: high!.x, top: high!.y }).length > 0;
  };
  return places.map(({ text, bold, ...place }) => {
    const { x, y } = at(place);
    const wide = face.width(text, TAG, bold) / 2;
    const spots = [1.4, 2.6, 4, 6, 8, 10].flatMap((far) =>
      [90, 45, 135, 0, 180, -45, -135, -90].map((degrees) => {
        const angle = (degrees * Math.PI) / 180;
        return words(
          'map',
          x + Math.cos(angle) * (far + wide),
          y + Math.sin(angle) * (far + 0.8) - TAG * 0.35,
          text,
          TAG,
          {
            anchor: 'middle',
            bold,
          },
        );
      }),
    );
    const put = spots.find((mark) => isClear(apart(mark), set, face) && !crossed(mark)) ?? clearOf(spots, set, face);
    set.push(put);
    return put;
  });
}

/** With some room on either side, so that two are not read as one. */
const apart = (mark: Words): Words => ({ ...mark, text: ` ${mark.text} ` });

const order = ({ kind }: StruckPlace): number =>
  ['node', 'corner', 'centre', 'start', 'end', 'middle', 'sawn'].indexOf(kind);
