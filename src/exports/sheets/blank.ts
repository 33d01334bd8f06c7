/**
 * The straight blank to scale, with what is marked on it before it is bent: every mark measured from one zero, an arrow on the side on
 * which its bend lies. What the clamp needs beyond the finished tube is
 * crossed out; a broken line is the throat of a cope.
 */
import { toDegrees } from '../../core/geometry/angle.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { sideOf } from '../../core/words/marks.ts';
import { tapeReading } from '../../core/units/tape.ts';
import { beyondNode } from '../../core/solve/amount.ts';
import { layBlocks } from '../../core/marks/blank.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Mark } from '../../drawing/types.ts';
import type { Context } from './context.ts';
import { markFigure } from './figures.ts';
import { arrowhead, box, FAINT, FINE, FIRM, HAIR, LENGTH, SMALL, stroke, text } from '../../drawing/ink.ts';
import { onBlank, type Measured } from './measured.ts';
import type { Block } from './page.ts';

const HEAD = 5.6;
const HIGH = 7;
const LEAD = 4;
const TIER = 6.6;
/** Room at both sides for the letters of the ends. */
const SIDE = 9;
const GAP = 3;
const ARROW = 3;
const MOST_TIERS = 7;

export function blankBlock(context: Context, tube: SolvedTube, marking: Measured): Block {
  const { letters, unit, width } = context;
  const { tape, feed } = marking;
  const breadth = width - 2 * SIDE;
  const scale = breadth / Math.max(tape.blank, 1);
  const marks = tape.steps
    .flatMap((step) =>
      step.marks.map((mark) => ({
        mark,
        at: onBlank(marking, step, mark) * scale,
        side: sideOf(mark, step),
        words: `${step.bend}: ${markFigure(tapeReading(mark.exact, unit, feed.fine))}`,
      })),
    )
    .toSorted((a, b) => a.at - b.at);
  const wide = Math.max(0, ...marks.map(({ words }) => letters.width(words, LENGTH, true))) + 2 * ARROW + 3;
  const laid = layBlocks(
    marks.map(({ at }) => at),
    wide,
    breadth,
    GAP,
  );
  const wanted = 1 + Math.max(-1, ...laid.map(({ tier }) => tier));
  // A tube of very many bends has its figures in the table alone.
  const tiers = wanted > MOST_TIERS ? 0 : wanted;
  const middles = tube.bends.map(({ start, end }) => ((start + end) / 2) * scale);
  const close = Math.min(Infinity, ...middles.slice(1).map((middle, i) => middle - middles[i]!));
  const fromBlank = beyondNode(tube.ends[0]) + tape.grip[0];
  return {
    height: HEAD + HIGH + (tiers === 0 ? 3 : LEAD + tiers * TIER + 1),
    draw: (left, top) => {
      const x = (mm: number): number => left + SIDE + mm * scale;
      const [upper, lower] = [top - HEAD, top - HEAD - HIGH];
      const middle = (upper + lower) / 2;
      const zones = tube.bends.flatMap((bend, i): Mark[] => {
        const [from, to] = [x(bend.start + fromBlank), x(bend.end + fromBlank)];
        const named = `${i + 1} · ${formatAngle(toDegrees(bend.angle), 1)}°`;
        return [
          ...hatch(from, to, lower, upper),
          ...(close < 5
            ? []
            : [
                text((from + to) / 2, upper + 1.4, close < 18 ? String(i + 1) : named, {
                  anchor: 'middle',
                  size: SMALL,
                }),
              ]),
        ];
      });
      const throats = tube.ends.map(({ throat }, i) =>
        i === 0 ? fromBlank + (throat ?? 0) : tube.developedLength + fromBlank - (throat ?? 0),
      );
      const scrap = tape.grip.flatMap((grip, i): Mark[] => {
        if (grip === 0) return [];
        const [from, to] = i === 0 ? [x(0), x(grip)] : [x(tape.blank - grip), x(tape.blank)];
        return [
          stroke([
            { x: from, y: lower },
            { x: to, y: upper },
          ]),
          stroke([
            { x: from, y: upper },
            { x: to, y: lower },
          ]),
          stroke([
            { x: i === 0 ? to : from, y: lower },
            { x: i === 0 ? to : from, y: upper },
          ]),
        ];
      });
      const zero = x(tape.zero);
      const ticks = marks.flatMap(({ mark, at, side, words }, i): Mark[] => {
        const { left: shift, tier } = laid[i]!;
        const place = left + SIDE + at;
        const from = left + SIDE + shift;
        const base = lower - LEAD - tier * TIER - 4.2;
        const end = Math.min(from + wide - 1, Math.max(from + 1, place));
        const onIt = mark.onBlank
          ? [
              stroke(
                [
                  { x: place, y: upper + 0.8 },
                  { x: place, y: lower - 1.6 },
                ],
                FIRM,
              ),
            ]
          : [];
        if (tiers === 0) return onIt;
        const leader = stroke(
          [
            { x: place, y: lower - 1.6 },
            { x: end, y: base + LENGTH * 0.85 },
          ],
          HAIR,
        );
        return [
          ...onIt,
          ...(mark.onBlank && tiers === 1 ? [leader] : []),
          ...(side.arrow.includes('◂') ? [arrowhead({ x: from, y: base + 1.9 }, Math.PI, ARROW)] : []),
          text(from + ARROW + 0.5, base, words, { size: LENGTH, bold: true }),
          ...(side.arrow.includes('▸')
            ? [arrowhead({ x: from + 2 * ARROW + 2.5 + letters.width(words, LENGTH, true), y: base + 1.9 }, 0, ARROW)]
            : []),
        ];
      });
      return [
        ...zones,
        ...scrap,
        ...throats.map((at) =>
          stroke(
            [
              { x: x(at), y: lower },
              { x: x(at), y: upper },
            ],
            { ...FINE, dash: [1, 0.8] },
          ),
        ),
        box(x(0), upper, tape.blank * scale, HIGH, FIRM),
        stroke(
          [
            { x: x(0), y: middle },
            { x: x(tape.blank), y: middle },
          ],
          { ...FAINT, dash: [6, 1, 1, 1] },
        ),
        text(left, middle - 2, 'A', { size: 6, bold: true }),
        text(left + width, middle - 2, 'B', { size: 6, bold: true, anchor: 'end' }),
        stroke(
          [
            { x: zero, y: lower - 2.4 },
            { x: zero, y: upper + 2.4 },
          ],
          { width: 0.9, grey: 0 },
        ),
        text(zero, upper + 3, '0', {
          size: 4.4,
          bold: true,
          anchor: feed.from === 'A' ? 'start' : feed.from === 'B' ? 'end' : 'middle',
        }),
        ...ticks,
      ];
    },
  };
}

/** Slanted lines within the upright rectangle. */
function hatch(left: number, right: number, low: number, high: number): Mark[] {
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
  return [
    ...lines,
    stroke(
      [
        { x: left, y: low },
        { x: left, y: high },
      ],
      FINE,
    ),
    stroke(
      [
        { x: right, y: low },
        { x: right, y: high },
      ],
      FINE,
    ),
  ];
}
