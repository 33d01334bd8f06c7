/**
 * A dimension on the picture: a line with arrowheads where the tape is laid, or as far beside it as the tube and what is drawn already want,
 * with thin lines out to it from its two places; its letter stands in a gap of the line.
 */
import { arrowhead, FAINT, FINE, onLayer, stroke, text } from '../ink.ts';
import type { Lettering } from '../lettering.ts';
import type { Mark, Place2 } from '../types.ts';
import { added, between, cross2, crowd, dot2, fromWords, less, long, type Bar, type Box } from './room.ts';

export interface Dimension {
  readonly letter: string;
  /** On the picture. */
  readonly from: Place2;
  readonly to: Place2;
  /** Unit vector on the picture, along which it is measured. */
  readonly along: Place2;
  /** From centre to centre its line may lie in the tube at its two places; over the outsides it lies clear of it. */
  readonly isCentre: boolean;
  /** Another one may cross it in the middle. */
  readonly isDiagonal: boolean;
}

/** What is on the picture by now. */
export interface Taken {
  readonly tube: readonly Bar[];
  /** Of dimensions: the lines with arrowheads, and those out to them. */
  readonly lines: Bar[];
  readonly outs: Bar[];
  readonly words: Box[];
}

/** Height of the letter's body; paper and telephone read it. */
export const LETTER = 4;
const ARROW = 1.9;
/** Of an arrowhead, as arrowhead() draws it. */
const ARROW_HALF = 0.75;
/** Between words and anything else, and between a dimension's line and the tube. */
const CLEAR = 0.5;
const OFF_TUBE = 1.4;
/** Between dimension lines that run the same way. */
const PITCH = 3;
/** The sine of what two lines turn by that run nearly the same way. */
const SAME_WAY = 0.2;
/** How far out a line is tried, and by what steps. */
const TRIES = 70;
const TRY = 0.8;
/** Past the line that they go out to, and short of the place that they begin at. */
const PAST = 1;
const SHORT_OF = 0.6;
/** Where in a line its letter is tried, from one end to the other: in the middle first, but off it where another may cross. */
const ALONG = [0.5, 0.42, 0.58, 0.35, 0.65, 0.28, 0.72, 0.22, 0.78, 0.16, 0.84];
const OFF_MIDDLE = [0.3, 0.7, 0.25, 0.75, 0.36, 0.64, 0.2, 0.8, 0.42, 0.58, 0.5, 0.15, 0.85];
/** mm that a line is put farther out sooner than that one of its lines lies across the tube, or across another dimension. */
const ACROSS_TUBE = 8;
const ACROSS_LINE = 3;
/** Half the breadth of the tube, times which a line from centre to centre may run in it at either end. */
const IN_TUBE = 2.6;

/** mm of the picture: no way at all. */
const NONE = 1e-6;

interface Laid {
  readonly cost: number;
  readonly line: Bar;
  readonly outs: readonly Bar[];
  readonly letter: Box;
  readonly marks: readonly Mark[];
}

/** Its marks where it fits best, and the room that it takes put down; null where it fits nowhere. */
export function laidDown(dimension: Dimension, taken: Taken, face: Lettering): readonly Mark[] | null {
  const { from, to, along } = dimension;
  const aside = { x: -along.y, y: along.x };
  const [a, b] = [dot2(from, aside), dot2(to, aside)];
  const isInPlace = Math.abs(a - b) < NONE;
  const beside = Array.from({ length: TRIES }, (_, i) => OFF_TUBE + i * TRY);
  const levels = [
    ...(isInPlace && dimension.isCentre ? [a] : []),
    ...beside.flatMap((by) => [Math.max(a, b) + by, Math.min(a, b) - by]),
  ];
  const best = levels.reduce<Laid | null>((found, level) => {
    const least = Math.max(0, level - Math.max(a, b), Math.min(a, b) - level);
    if (found !== null && found.cost <= least) return found;
    const laid = laidAt(dimension, aside, level, least, taken, face);
    return laid === null || (found !== null && found.cost <= laid.cost) ? found : laid;
  }, null);
  if (best === null) return null;
  taken.lines.push(best.line);
  taken.outs.push(...best.outs);
  taken.words.push(best.letter);
  return best.marks;
}

function laidAt(
  { letter, from, to, along, isCentre, isDiagonal }: Dimension,
  aside: Place2,
  level: number,
  out: number,
  { tube, lines, outs, words }: Taken,
  face: Lettering,
): Laid | null {
  const [p, q] = [from, to].map((place) => added(place, aside, level - dot2(place, aside))) as [Place2, Place2];
  const length = dot2(less(q, p), along);
  const room = boxSize(letter, face);
  const gap = Math.abs(along.x) * room.width + Math.abs(along.y) * room.height + 2 * CLEAR;
  // Too short for both arrowheads and the letter between them: the arrowheads point inwards from outside.
  const isShort = length < 2 * ARROW + gap + 1;
  const tail = ARROW + 1;
  const line: Bar = isShort
    ? { from: added(p, along, -tail), to: added(q, along, tail), half: 0 }
    : { from: p, to: q, half: 0 };
  const onTube = out === 0 && isCentre;
  const clearTube = onTube ? middleOf(line, Math.max(...tube.map(({ half }) => half), 0) * IN_TUBE) : line;
  if (clearTube === null || tube.some((bar) => between(clearTube, bar) < (onTube ? 0.2 : OFF_TUBE - 0.1))) return null;
  if (words.some((box) => fromWords(box, line) < CLEAR + ARROW_HALF)) return null;
  if (lines.some((other) => runTogether(line, other))) return null;
  const newOuts = [
    [from, p],
    [to, q],
  ].flatMap(([place, foot]): Bar[] => {
    const way = less(foot!, place!);
    const reach = long(way);
    if (reach < NONE) return [];
    const unit = { x: way.x / reach, y: way.y / reach };
    return [{ from: added(place!, unit, Math.min(SHORT_OF, reach)), to: added(foot!, unit, PAST), half: 0 }];
  });
  if (newOuts.some((bar) => words.some((box) => fromWords(box, bar) < CLEAR))) return null;
  const places = isShort
    ? [added(q, along, tail + gap / 2), added(p, along, -tail - gap / 2)]
    : (isDiagonal ? OFF_MIDDLE : ALONG)
        .filter((t) => Math.min(t, 1 - t) * length > ARROW + gap / 2)
        .map((t) => added(p, along, t * length));
  const at = places.find((place) => {
    const box = boxAround(place, room);
    return (
      words.every((other) => !crowd(box, other, CLEAR)) &&
      [...tube, ...lines, ...outs].every((bar) => fromWords(box, bar) >= CLEAR) &&
      newOuts.every((bar) => fromWords(box, bar) >= CLEAR)
    );
  });
  if (at === undefined) return null;
  const crossings =
    ACROSS_TUBE * newOuts.filter((bar) => tube.some((other) => between(bar, other) < -0.5 * other.half)).length +
    ACROSS_LINE * newOuts.flatMap((bar) => lines.filter((other) => between(bar, other) <= 0)).length +
    ACROSS_LINE * outs.filter((other) => between(line, other) <= 0).length +
    ACROSS_LINE * lines.filter((other) => between(line, other) <= 0).length;
  const half = gap / 2;
  const angle = Math.atan2(along.y, along.x);
  const ink = isShort
    ? [
        stroke([added(p, along, -tail), p]),
        stroke([q, added(q, along, tail)]),
        arrowhead(p, angle, ARROW),
        arrowhead(q, angle + Math.PI, ARROW),
      ]
    : [
        stroke([p, added(at, along, -half)]),
        stroke([added(at, along, half), q]),
        arrowhead(p, angle + Math.PI, ARROW),
        arrowhead(q, angle, ARROW),
      ];
  return {
    cost: out + crossings,
    line,
    outs: newOuts,
    letter: boxAround(at, room),
    marks: onLayer(
      'check',
      ...newOuts.map((bar) => stroke([bar.from, bar.to], FAINT)),
      ...ink.map((mark) => (mark.closed ? mark : { ...mark, pen: FINE })),
      text(at.x, at.y - room.height / 2, letter, { size: LETTER, bold: true, anchor: 'middle' }),
    ),
  };
}

/** What is left of a line without so much at either end; null where that is nothing. */
function middleOf({ from, to, half }: Bar, without: number): Bar | null {
  const way = less(to, from);
  const length = long(way);
  if (length <= 2 * without) return null;
  return { from: added(from, way, without / length), to: added(to, way, -without / length), half };
}

/** Lines of nearly one direction that lie so near that one is taken for the other. */
function runTogether(one: Bar, other: Bar): boolean {
  const [a, b] = [less(one.to, one.from), less(other.to, other.from)];
  const sine = Math.abs(cross2(a, b)) / (long(a) * long(b) || 1);
  return sine < SAME_WAY && between(one, other) < PITCH;
}

/** Of small letters and figures, from the line they stand on to their top. */
const HIGH = 0.75;

export const boxSize = (words: string, face: Lettering, size = LETTER): { width: number; height: number } => ({
  width: face.width(words, size, true),
  height: HIGH * size,
});

/** Its tails, which hang a fifth under the line, count. */
export const boxAround = ({ x, y }: Place2, { width, height }: { width: number; height: number }): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  low: y - height / 2 - height / 4,
  high: y + height / 2,
});
