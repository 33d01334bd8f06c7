/**
 * The straight blank to scale, with what is marked on it before it is bent: every mark measured from one zero, an arrow on the side on
 * which its bend lies. What the clamp needs beyond the finished tube is crossed out; a broken line is the throat of a cope; a ring stands
 * where the end's node is, also where that is beyond the blank. Paper and screen draw these same marks.
 */
import { toDegrees } from '../../core/geometry/angle.ts';
import { beyondNode } from '../../core/solve/amount.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { boxOf, isClear } from '../clear.ts';
import { box, disc, FAINT, FINE, FIRM, HAIR, onLayer, SMALL, stroke, text } from '../ink.ts';
import type { Lettering } from '../lettering.ts';
import type { Mark, Pen, Picture, Words } from '../types.ts';
import { drawMarks, layMarks } from './marks.ts';
import type { Measured } from './measured.ts';

/** Over the blank, for the numbers of its bends; the blank itself; and at both sides, for the letters of its ends. */
const HEAD = 5.6;
const HIGH = 7;
const SIDE = 9;
/** Of a node's ring; and how far beyond the blank one is drawn at most, clear of the letter there. */
const RING = 1;
const BEYOND = 3;
/** Bends nearer to one another than this have their numbers alone over them, and nearer than that nothing. */
const ROOM_FOR_ANGLES = 18;
const ROOM_FOR_NUMBERS = 5;

interface Scale {
  /** Of a place in mm from the blank's end A. */
  readonly x: (mm: number) => number;
  readonly lower: number;
  readonly upper: number;
  /** Of end A's node from the blank's end A, mm. */
  readonly nodeA: number;
}

/** `width`: how wide the drawing is to be, mm; it is as high as its marks need. */
export function blankDrawing(
  letters: Lettering,
  tube: SolvedTube,
  measured: Measured,
  unit: LengthUnit,
  width: number,
): Picture {
  const { tape } = measured;
  const breadth = width - 2 * SIDE;
  const laid = layMarks(letters, measured, unit, breadth);
  const scale: Scale = {
    x: (mm) => SIDE + (mm * breadth) / Math.max(tape.blank, 1),
    lower: laid.height,
    upper: laid.height + HIGH,
    nodeA: beyondNode(tube.ends[0]) + tape.grip[0],
  };
  const { x, lower, upper } = scale;
  const zero = zeroMark(measured, scale);
  return {
    width,
    height: laid.height + HIGH + HEAD,
    marks: [
      ...onLayer('steel', box(x(0), upper, breadth, HIGH, null, 1)),
      ...zones(tube, scale),
      ...scrap(measured, scale),
      ...throats(tube, scale),
      ...onLayer('steel', box(x(0), upper, breadth, HIGH, FIRM)),
      ...nodes(tube, measured, scale),
      ...onLayer(
        'name',
        text(0, (lower + upper) / 2 - 2, 'A', { size: 6, bold: true }),
        text(width, (lower + upper) / 2 - 2, 'B', { size: 6, bold: true, anchor: 'end' }),
        ...bendNames(letters, tube, scale, zero),
      ),
      ...drawMarks(laid, SIDE, lower, upper),
      ...onLayer('zero', upright(x(tape.zero), lower - 2.4, upper + 1.8, { width: 0.9, grey: 0 }), zero),
    ],
  };
}

const upright = (x: number, low: number, high: number, pen: Pen = FINE): Mark =>
  stroke(
    [
      { x, y: low },
      { x, y: high },
    ],
    pen,
  );

/** On the side of it that the tape runs to. */
const zeroMark = ({ feed, tape }: Measured, { x, upper }: Scale): Words =>
  text(x(tape.zero), upper + 2.3, '0', {
    size: 4.4,
    bold: true,
    anchor: feed.from === 'A' ? 'start' : feed.from === 'B' ? 'end' : 'middle',
  });

/** Where the tube bends. */
const zones = ({ bends }: SolvedTube, { x, lower, upper, nodeA }: Scale): Mark[] =>
  bends.flatMap(({ start, end }) => {
    const [from, to] = [x(start + nodeA), x(end + nodeA)];
    return onLayer(
      'zone',
      box(from, upper, to - from, upper - lower, null, 1),
      ...slanted(from, to, lower, upper),
      upright(from, lower, upper),
      upright(to, lower, upper),
    );
  });

/** Slanted lines within an upright rectangle. */
function slanted(left: number, right: number, low: number, high: number): Mark[] {
  const step = 1.6;
  const rise = high - low;
  const lines: Mark[] = [];
  for (let from = Math.ceil((left - rise) / step) * step; from < right; from += step) {
    const [start, end] = [Math.max(left, from), Math.min(right, from + rise)];
    if (end - start < 0.05) continue;
    lines.push(
      stroke(
        [
          { x: start, y: low + (start - from) },
          { x: end, y: low + (end - from) },
        ],
        HAIR,
      ),
    );
  }
  return lines;
}

/** Numbers and angles over the bends, as far as they stand clear of one another and of the zero. */
function bendNames(letters: Lettering, { bends }: SolvedTube, { x, upper, nodeA }: Scale, zero: Words): Words[] {
  const middles = bends.map(({ start, end }) => x((start + end) / 2 + nodeA));
  const close = Math.min(Infinity, ...middles.slice(1).map((middle, i) => middle - middles[i]!));
  if (close < ROOM_FOR_NUMBERS) return [];
  const [beforeZero, afterZero] = boxOf(zero, letters).map(({ x: at }) => at) as [number, number, ...unknown[]];
  const over = (at: number, words: string): Words => text(at, upper + 1.4, words, { size: SMALL, anchor: 'middle' });
  return bends.reduce<Words[]>((placed, { angle }, i) => {
    const number = String(i + 1);
    const named = `${number} · ${formatAngle(toDegrees(angle), 1)}°`;
    const half = letters.width(number, SMALL, false) / 2 + 0.8;
    const wanted = [
      ...(close < ROOM_FOR_ANGLES ? [] : [over(middles[i]!, named)]),
      over(middles[i]!, number),
      over(afterZero + half, number),
      over(beforeZero - half, number),
    ];
    const found = wanted.find((words) => isClear(words, [zero, ...placed], letters));
    return found === undefined ? placed : [...placed, found];
  }, []);
}

function scrap({ tape: { grip, blank } }: Measured, { x, lower, upper }: Scale): Mark[] {
  return grip.flatMap((length, i) => {
    if (length === 0) return [];
    const [from, to] = i === 0 ? [x(0), x(length)] : [x(blank - length), x(blank)];
    const across = (low: number, high: number): Mark =>
      stroke([
        { x: from, y: low },
        { x: to, y: high },
      ]);
    return onLayer(
      'scrap',
      box(from, upper, to - from, upper - lower, null, 1),
      across(lower, upper),
      across(upper, lower),
      upright(i === 0 ? to : from, lower, upper),
    );
  });
}

function throats({ ends, developedLength }: SolvedTube, { x, lower, upper, nodeA }: Scale): Mark[] {
  const places = ends.map(({ throat }, i) => nodeA + (i === 0 ? (throat ?? 0) : developedLength - (throat ?? 0)));
  return onLayer('throat', ...places.map((at) => upright(x(at), lower, upper, { ...FINE, dash: [1, 0.8] })));
}

/** The line along the middle, from node to node where these lie beyond the blank. */
function nodes({ developedLength }: SolvedTube, { tape }: Measured, { x, lower, upper, nodeA }: Scale): Mark[] {
  const y = (lower + upper) / 2;
  const a = Math.max(x(0) - BEYOND, x(nodeA));
  const b = Math.min(x(tape.blank) + BEYOND, x(nodeA + developedLength));
  const axis = stroke(
    [
      { x: Math.min(a, x(0)), y },
      { x: Math.max(b, x(tape.blank)), y },
    ],
    { ...FAINT, dash: [6, 1, 1, 1] },
  );
  return [...onLayer('axis', axis), ...onLayer('node', ...[a, b].map((at) => disc({ x: at, y }, RING, FINE, 1)))];
}
