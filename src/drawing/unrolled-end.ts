/**
 * One end of a tube unrolled flat, at one scale both ways: what is left of the tube over the cut line, what comes off hatched under it,
 * the bore's line broken, and how far throat and tip are from the node. The reference, 0 degrees, stands in the middle; both edges are the
 * seam. Where nothing reaches the end the sheet is empty.
 */
import { flatEnd } from '../core/cope/flat-end.ts';
import type { SurfacePlace } from '../core/cope/cut-pieces.ts';
import { toRadians } from '../core/geometry/angle.ts';
import type { SolvedTube } from '../core/solve/types.ts';
import { formatLength, type LengthUnit } from '../core/units/length.ts';
import { figure } from './figures.ts';
import { hatched } from './hatch.ts';
import { box, disc, FINE, FIRM, HAIR, onLayer, SMALL, stroke, text, shape } from './ink.ts';
import type { Lettering } from './lettering.ts';
import { moved } from './move.ts';
import type { Size } from './shelves.ts';
import type { Mark, Picture, Place2 } from './types.ts';

/** Round the sheet: air over it and to its right, and under it room for the degrees. */
const AIR = 1.5;
const FOOT = 5;
/** Between a level's name, its figure, and the sheet. */
const BETWEEN = 1.2;
/** From one level's letters to the other's at least. */
const LINE = 5;
const FIGURE = 3.8;
const APART = 1.6;
const SPOT = 0.8;

/** Of the sheet on the drawing, mm. */
interface Sheet {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
  /** Of a place on the tube. */
  readonly at: (place: SurfacePlace) => Place2;
}

interface Level {
  readonly name: 'throat' | 'tip';
  readonly place: SurfacePlace;
  readonly words: string;
  /** Of the words, as they are set. */
  readonly width: number;
}

/** As large as the space allows; at most as wide and as high as that, mm. */
export function unrolledEnd(
  letters: Lettering,
  tube: SolvedTube,
  which: 0 | 1,
  unit: LengthUnit,
  space: Size,
): Picture {
  const end = tube.ends[which];
  const { outer, bore } = flatEnd(end);
  const level = (name: Level['name'], place: SurfacePlace | null | undefined): Level[] => {
    if (place === null || place === undefined) return [];
    const words = figure(formatLength(place.s, unit));
    return [{ name, place, words, width: letters.width(words, FIGURE, true) }];
  };
  const levels = [...level('throat', end.high), ...level('tip', end.lows[0])];
  const names = levels.map(({ name, width }) => letters.width(name, SMALL, false) + width + 2 * BETWEEN);
  const side = Math.max(AIR, ...names) + BETWEEN;
  const { outerDiameter } = tube.section;
  const trims = [...outer, ...bore].flat().map(({ s }) => s);
  const [lowest, highest] = trims.length === 0 ? [0, 0] : [Math.min(...trims), Math.max(...trims)];
  // Tube left standing above the throat, and scrap below the tip, both a sixth of the diameter.
  const spare = outerDiameter / 6;
  const round = Math.PI * outerDiameter;
  const tall = Math.max(highest - lowest, 1) + 2 * spare;
  const scale = Math.min((space.width - side - AIR) / round, (space.height - FOOT - AIR) / tall);
  const middle = side + (round * scale) / 2;
  const sheet: Sheet = {
    left: side,
    right: side + round * scale,
    top: FOOT + tall * scale,
    foot: FOOT,
    at: ({ phi, s }) => ({
      x: middle + (phi * outerDiameter * scale) / 2,
      y: FOOT + (s - lowest + spare) * scale,
    }),
  };
  const { left, right, top, foot, at } = sheet;
  const curves = outer.map((piece) => piece.map(at));
  return {
    width: right + AIR,
    height: top + AIR,
    marks: [
      ...onLayer('flat', box(left, top, right - left, top - foot, null, 1)),
      ...curves.flatMap((curve) => [...tubeOver(curve, top), ...scrapUnder(curve, foot)]),
      ...onLayer('flat', box(left, top, right - left, top - foot)),
      ...quarters(sheet),
      ...onLayer('bore', ...bore.map((piece) => stroke(piece.map(at), { ...FINE, dash: [1.3, 0.8] }))),
      ...onLayer('cut', ...curves.map((curve) => stroke(curve, FIRM))),
      ...levelMarks(levels, sheet),
      ...degrees(letters, sheet),
    ],
  };
}

function tubeOver(curve: readonly Place2[], top: number): Mark[] {
  const corners = [
    { x: curve.at(-1)!.x, y: top },
    { x: curve[0]!.x, y: top },
  ];
  return onLayer('tube', shape([...curve, ...corners], null, 1));
}

function scrapUnder(curve: readonly Place2[], foot: number): Mark[] {
  const lines = hatched(
    curve.map(({ x, y }) => ({ x, y: y - foot })),
    APART,
  );
  return onLayer(
    'scrap',
    ...moved(
      lines.map((line) => stroke(line)),
      0,
      foot,
    ),
  );
}

/** The lines along the tube at the reference and a quarter turn to either side of it. */
const quarters = ({ at, top, foot }: Sheet): Mark[] =>
  [-90, 90, 0].flatMap((degree) => {
    const { x } = at({ phi: toRadians(degree), s: 0 });
    const places = [
      { x, y: foot },
      { x, y: top },
    ];
    return degree === 0
      ? onLayer('reference', stroke(places, FINE))
      : onLayer('quarter', stroke(places, { ...HAIR, dash: [0.5, 0.8] }));
  });

/** Each level's line from its letters to its place; the letters of a shallow cut are spread so that they do not stand on one another. */
function levelMarks(levels: readonly Level[], { left, at }: Sheet): Mark[] {
  const places = levels.map(({ place }) => at(place));
  const near = levels.length < 2 ? 0 : Math.max(0, LINE - (places[0]!.y - places[1]!.y)) / 2;
  return levels.flatMap(({ name, words, width }, i) => {
    const place = places[i]!;
    const base = place.y - FIGURE * 0.36 + (i === 0 ? near : -near);
    const line = stroke([{ x: left - BETWEEN, y: place.y }, place], FINE);
    const figures = left - 1.5 * BETWEEN - width;
    return [
      ...onLayer('level', line, disc(place, SPOT, null, 0)),
      ...onLayer('figure', text(figures, base, words, { size: FIGURE, bold: true })),
      ...onLayer('aside', text(figures - BETWEEN * 0.8, base, name, { anchor: 'end' })),
    ];
  });
}

/** Under the sheet, the seam's at its corners; the quarters where there is room for them. */
function degrees(letters: Lettering, { at, left, right }: Sheet): Mark[] {
  const wide = letters.width('−180°', SMALL, false);
  const room = (right - left) / wide;
  const named = room < 3.4 ? [0] : room < 7.6 ? [-180, 0, 180] : [-180, -90, 0, 90, 180];
  return named.flatMap((degree) =>
    onLayer(
      degree === 0 ? 'name' : 'aside',
      text(at({ phi: toRadians(degree), s: 0 }).x, 0.9, `${String(degree).replace('-', '−')}°`, {
        bold: degree === 0,
        anchor: degree === -180 ? 'start' : degree === 180 ? 'end' : 'middle',
      }),
    ),
  );
}
