/**
 * The marks on the blank: a line across it for each, and in rows below it each mark's bend, what the tape shows there, and an arrow on the
 * side on which the bend lies; and where the grip is sawn off. Each kind of mark is a layer of its own: mark-start, mark-clamp,
 * mark-middle, mark-end, mark-saw.
 */
import { sawMarks } from '../../core/marks/tape.ts';
import { tapeReading } from '../../core/units/tape.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { sideOf } from '../../core/words/marks.ts';
import { markFigure } from '../figures.ts';
import { arrowhead, FIRM, HAIR, LENGTH, onLayer, stroke, text } from '../ink.ts';
import type { Lettering } from '../lettering.ts';
import type { Mark } from '../types.ts';
import { layBlocks, type LaidBlock } from './lay.ts';
import { onBlank, type Measured } from './measured.ts';

const LEAD = 4;
const TIER = 6.6;
const GAP = 3;
/** Beyond the blank, for leaders. */
const ASIDE = 6;
const ARROW = 3;
/** More marks than this have their figures in the table alone, where they are found sooner. */
const MOST_MARKS = 24;

interface LaidMark extends LaidBlock {
  readonly layer: string;
  /** Where on the blank, mm from where it begins on paper. */
  readonly at: number;
  readonly onBlank: boolean;
  readonly arrow: string;
  readonly words: string;
  /** Of the words alone. */
  readonly width: number;
}

export interface LaidMarks {
  readonly marks: readonly LaidMark[];
  /** Of the widest words with an arrow on either side. */
  readonly wide: number;
  /** Rows of figures; 0 where they are left out. */
  readonly tiers: number;
  /** What they need below the blank, mm. */
  readonly height: number;
}

/** `breadth`: how long the blank is drawn, mm. */
export function layMarks(letters: Lettering, measured: Measured, unit: LengthUnit, breadth: number): LaidMarks {
  const { tape, feed } = measured;
  const named = (name: string | number, exact: number) => {
    const words = `${name}: ${markFigure(tapeReading(exact, unit, feed.fine))}`;
    return { words, width: letters.width(words, LENGTH, true) };
  };
  const drawnAt = (along: number): number => (along * breadth) / Math.max(tape.blank, 1);
  const marks = [
    ...tape.steps.flatMap((step) =>
      step.marks.map((mark) => ({
        layer: `mark-${mark.kind}`,
        at: drawnAt(onBlank(measured, step, mark)),
        onBlank: mark.onBlank,
        arrow: sideOf(mark, step).arrow,
        ...named(step.bend, mark.exact),
      })),
    ),
    ...sawMarks(tape).map((saw) => ({
      layer: 'mark-saw',
      at: drawnAt(saw.onBlank),
      onBlank: true,
      arrow: '',
      ...named('saw', saw.exact),
    })),
  ].toSorted((a, b) => a.at - b.at);
  const wide = Math.max(0, ...marks.map(({ width }) => width)) + 2 * ARROW + 3;
  const laid = layBlocks(
    marks.map(({ at }) => at),
    wide,
    breadth,
    GAP,
    ASIDE,
  );
  const tiers = marks.length > MOST_MARKS ? 0 : 1 + Math.max(-1, ...laid.map(({ tier }) => tier));
  return {
    marks: marks.map((mark, i) => ({ ...mark, ...laid[i]! })),
    wide,
    tiers,
    height: tiers === 0 ? 3 : LEAD + tiers * TIER + 1,
  };
}

/** `left`: where the blank begins; `lower` and `upper`: its edges. */
export const drawMarks = ({ marks, tiers, wide }: LaidMarks, left: number, lower: number, upper: number): Mark[] =>
  marks.flatMap((mark) => {
    const place = left + mark.at;
    const line = stroke(
      [
        { x: place, y: upper + 0.8 },
        { x: place, y: lower - 1.6 },
      ],
      FIRM,
    );
    const onIt = mark.onBlank ? onLayer(mark.layer, line) : [];
    if (tiers === 0) return onIt;
    const from = left + mark.left;
    const level = (tier: number): number => lower - LEAD - tier * TIER - 4.2;
    const base = level(mark.tier);
    const leader = stroke(
      [
        { x: place, y: lower - 1.6 },
        ...mark.through.flatMap((x, tier) => [
          { x: left + x, y: level(tier) + LENGTH * 0.85 },
          { x: left + x, y: level(tier) - 1 },
        ]),
        {
          x: Math.min(from + wide - 1, Math.max(from + 1, left + (mark.through.at(-1) ?? mark.at))),
          y: base + LENGTH * 0.85,
        },
      ],
      HAIR,
    );
    const after = from + 2 * ARROW + 2.5 + mark.width;
    return [
      ...onIt,
      ...(mark.onBlank ? onLayer('leader', leader) : []),
      ...onLayer(
        mark.layer,
        ...(mark.arrow.includes('◂') ? [arrowhead({ x: from, y: base + 1.9 }, Math.PI, ARROW)] : []),
        ...(mark.arrow.includes('▸') ? [arrowhead({ x: after, y: base + 1.9 }, 0, ARROW)] : []),
      ),
      ...onLayer('figure', text(from + ARROW + 0.5, base, mark.words, { size: LENGTH, bold: true })),
    ];
  });
