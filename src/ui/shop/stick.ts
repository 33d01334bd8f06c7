/**
 * The straight stick before it is bent, laid along a tape hooked over the blank's end A. Every place is told from
 * that one zero and never chained from mark to mark, so rounding does not add up.
 *
 * The blank's end A stands at developed length tip(A) - allowance(A) from end A's node; all places of the solved tube,
 * which count from that node, move by it. An end that nothing reaches is taken as cut at its node.
 */
import { bendMarks } from '../../core/shop/marks.ts';
import type { SolvedTube, TubeEnd } from '../../core/solve/types.ts';

export interface BendZone {
  /** 1 = first from end A. */
  readonly bend: number;
  /** Tape places of its two tangents, mm. */
  readonly start: number;
  readonly end: number;
  /** Where the machine's clamp is set, mm; before the tape's zero when the clamp would sit beyond the end. */
  readonly clamp: number;
}

export interface StickEnd {
  /** Tape places, mm: the node, and the tip and throat of the finished end. */
  readonly node: number;
  readonly tip: number;
  readonly throat: number;
}

export interface Stick {
  /** Total length to cut, mm. */
  readonly blank: number;
  /** Add to a place told from end A's node to read it on the tape, mm. */
  readonly fromNode: number;
  readonly zones: readonly BendZone[];
  readonly ends: readonly [StickEnd, StickEnd];
}

/** The stick and everything on it in mm of tape from the blank's end A. */
export function layStick(tube: SolvedTube): Stick {
  const [endA, endB] = tube.ends;
  const fromNode = endA.allowance - trim(endA, 'tip');
  const marks = bendMarks(tube);
  const nodeB = tube.developedLength + fromNode;
  return {
    blank: tube.blankLength,
    fromNode,
    zones: tube.bends.map((bend, index) => ({
      bend: index + 1,
      start: bend.start + fromNode,
      end: bend.end + fromNode,
      clamp: (marks[index]?.clampMark ?? bend.start) + fromNode,
    })),
    ends: [
      { node: fromNode, tip: fromNode + trim(endA, 'tip'), throat: fromNode + trim(endA, 'throat') },
      { node: nodeB, tip: nodeB - trim(endB, 'tip'), throat: nodeB - trim(endB, 'throat') },
    ],
  };
}

export interface StickMark {
  /** 'cut': the blank's end B. */
  readonly kind: 'clamp' | 'start' | 'end' | 'cut';
  /** 0 on the cut. */
  readonly bend: number;
  /** Tape place, mm. */
  readonly at: number;
  /** What stands before the figure on the drawing. */
  readonly words: string;
  /** Towards which end of the tube the bend lies from this mark; null on the cut. */
  readonly side: 'A' | 'B' | null;
}

/** Everything that is marked on the stick, in the order of the tape; a clamp that would sit beyond the end is left out. */
export function stickMarks(tube: SolvedTube): StickMark[] {
  const stick = layStick(tube);
  const marks: StickMark[] = stick.zones.flatMap(({ bend, start, end, clamp }): StickMark[] => [
    { kind: 'clamp', bend, at: clamp, words: `${bend} clamp`, side: 'B' },
    { kind: 'start', bend, at: start, words: `${bend} start`, side: 'B' },
    { kind: 'end', bend, at: end, words: `${bend} end`, side: 'A' },
  ]);
  marks.push({ kind: 'cut', bend: 0, at: stick.blank, words: 'cut', side: null });
  return marks.filter((mark) => mark.at >= 0).sort((a, b) => a.at - b.at);
}

const trim = (end: TubeEnd, which: 'tip' | 'throat'): number => end[which] ?? 0;

/** A number that hangs on a mark: its tape place, and how wide it is set, in the drawing's own unit. */
export interface MarkLabel {
  readonly at: number;
  readonly width: number;
}

export interface LaidLabel {
  /** Left edge of the label, inside 0..breadth whenever it fits at all. */
  readonly left: number;
  /** 0 is the row nearest the stick. */
  readonly row: number;
}

/**
 * Places labels centred under their marks, each in the first row where it touches none before it; answers them in the
 * order given. `breadth` is the width of the drawing and `gap` the least air between two labels.
 */
export function layLabels(labels: readonly MarkLabel[], breadth: number, gap: number): LaidLabel[] {
  const rows: { left: number; right: number }[][] = [];
  return labels.map(({ at, width }) => {
    const left = Math.max(0, Math.min(at - width / 2, breadth - width));
    const right = left + width;
    const touches = (other: { left: number; right: number }): boolean => left < other.right + gap && other.left < right + gap;
    let row = rows.findIndex((taken) => !taken.some(touches));
    if (row === -1) row = rows.push([]) - 1;
    rows[row]?.push({ left, right });
    return { left, row };
  });
}
