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
  readonly kind: 'clamp' | 'start' | 'end';
  readonly bend: number;
  /** Tape place, mm. */
  readonly at: number;
  /** What stands before the figure on the drawing. */
  readonly words: string;
  /** Towards which end of the tube the bend lies from this mark. */
  readonly side: 'A' | 'B';
}

/** Everything that is marked on the stick, in the order of the tape; a clamp that would sit beyond the end is left out. */
export function stickMarks(tube: SolvedTube): StickMark[] {
  const stick = layStick(tube);
  const marks: StickMark[] = stick.zones.flatMap(({ bend, start, end, clamp }): StickMark[] => [
    { kind: 'clamp', bend, at: clamp, words: `${bend} clamp`, side: 'B' },
    { kind: 'start', bend, at: start, words: `${bend} start`, side: 'B' },
    { kind: 'end', bend, at: end, words: `${bend} end`, side: 'A' },
  ]);
  return marks.filter((mark) => mark.at >= 0).toSorted((a, b) => a.at - b.at);
}

const trim = (end: TubeEnd, which: 'tip' | 'throat'): number => end[which] ?? 0;

/** A label that hangs on a mark like a flag: where the mark stands and how wide the label is set, in the drawing's unit. */
export interface Flag {
  readonly at: number;
  readonly width: number;
}

export interface LaidFlag {
  /** Left edge of the label: at its mark, or further left so that it ends at `breadth`. */
  readonly left: number;
  /** 0 is the row nearest the stick. */
  readonly row: number;
}

/**
 * Places labels to the right of their marks, each in a deeper row than every label whose mark falls within it, so that
 * no mark's line runs through another label. Only labels pushed left by the drawing's edge may be crossed. Answers in
 * the order given.
 */
export function layFlags(flags: readonly Flag[], breadth: number, gap: number): LaidFlag[] {
  const rows = new Map<number, number>();
  const order = flags.map((_, index) => index).toSorted((a, b) => flags[b]!.at - flags[a]!.at || b - a);
  const left = ({ at, width }: Flag): number => Math.min(at, breadth - width);
  for (const index of order) {
    const flag = flags[index]!;
    const right = left(flag) + flag.width + gap;
    const within = [...rows].filter(([other]) => left(flags[other]!) < right);
    rows.set(
      index,
      within.reduce((deepest, [, row]) => Math.max(deepest, row + 1), 0),
    );
  }
  return flags.map((flag, index) => ({ left: left(flag), row: rows.get(index) ?? 0 }));
}
