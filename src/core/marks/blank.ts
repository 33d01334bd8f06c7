/**
 * The blank before it is bent, laid along a tape hooked over the blank's end A. Every place is measured from
 * that one zero and never chained from mark to mark, so rounding does not add up.
 *
 * The blank's end A stands at developed length tip(A) - allowance(A) from end A's node, less the grip that is left there; all places
 * of the solved tube, which count from that node, move by it. An end that nothing reaches is taken as cut at its node. The
 * clamp lies on the side of the end that is in front when the bend is made.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { beyondNode, blankToCut } from '../solve/amount.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';

export interface BendZone {
  /** 1 = first from end A. */
  readonly bend: number;
  /** Tape places of its two tangents, mm. */
  readonly start: number;
  readonly end: number;
  /** Where the machine's clamp is set, mm; off the blank when the clamp would sit beyond its end. */
  readonly clamp: number;
  /** The end in front. */
  readonly front: 'A' | 'B';
}

export interface BlankEnd {
  /** Tape places, mm: the node, and the tip and throat of the finished end. */
  readonly node: number;
  readonly tip: number;
  readonly throat: number;
}

export interface Blank {
  /** Total length to cut, mm, and what of it is grip at end A and at end B: scrap. */
  readonly length: number;
  readonly grip: readonly [number, number];
  /** Add to a place measured from end A's node to read it on the tape, mm. */
  readonly fromNode: number;
  readonly zones: readonly BendZone[];
  readonly ends: readonly [BlankEnd, BlankEnd];
}

/** The blank and everything on it in mm of tape from the blank's end A, for bends that are made in this order. */
export function layBlank(tube: SolvedTube, order: readonly BendStep[]): Blank {
  const [endA, endB] = tube.ends;
  const { blank: length, grip } = blankToCut(tube, order);
  const fromNode = beyondNode(endA) + grip[0];
  const nodeB = tube.developedLength + fromNode;
  const offset = tube.die?.clampOffset ?? 0;
  return {
    length,
    grip,
    fromNode,
    zones: tube.bends.map((bend, index): BendZone => {
      const front = order.find((step) => step.bend === index + 1)?.front ?? 'A';
      return {
        bend: index + 1,
        start: bend.start + fromNode,
        end: bend.end + fromNode,
        clamp: (front === 'A' ? bend.start - offset : bend.end + offset) + fromNode,
        front,
      };
    }),
    ends: [
      { node: fromNode, tip: fromNode + trim(endA, 'tip'), throat: fromNode + trim(endA, 'throat') },
      { node: nodeB, tip: nodeB - trim(endB, 'tip'), throat: nodeB - trim(endB, 'throat') },
    ],
  };
}

export interface BlankMark {
  readonly kind: 'clamp' | 'start' | 'end';
  readonly bend: number;
  /** Tape place, mm. */
  readonly at: number;
  /** What stands before the figure on the drawing. */
  readonly words: string;
  /** Towards which end of the tube the bend lies from this mark. */
  readonly side: 'A' | 'B';
}

/** Everything that is marked on the blank, in the order of the tape; a clamp that would sit beyond an end is left out. */
export function blankMarks({ zones, length }: Blank): BlankMark[] {
  const marks: BlankMark[] = zones.flatMap(({ bend, start, end, clamp, front }): BlankMark[] => [
    { kind: 'clamp', bend, at: clamp, words: `${bend} clamp`, side: front === 'A' ? 'B' : 'A' },
    { kind: 'start', bend, at: front === 'A' ? start : end, words: `${bend} start`, side: front === 'A' ? 'B' : 'A' },
    { kind: 'end', bend, at: front === 'A' ? end : start, words: `${bend} end`, side: front === 'A' ? 'A' : 'B' },
  ]);
  const isOnBlank = (at: number): boolean => at >= -ROUNDING && at <= length + ROUNDING;
  return marks.filter(({ kind, at }) => kind !== 'clamp' || isOnBlank(at)).toSorted((a, b) => a.at - b.at);
}

const trim = (end: TubeEnd, which: 'tip' | 'throat'): number => end[which] ?? 0;

/** Where a block of figures stands under the blank, in the drawing's unit. */
export interface LaidBlock {
  readonly left: number;
  /** 0 is the tier nearest the blank. */
  readonly tier: number;
}

/**
 * Stands blocks of one width in a row, each as near under its bend as its neighbours and the drawing's edges let it;
 * too many for one row go on in even tiers below. `middles` are those of the bends, in the order of the tape, which is
 * the order of the answer.
 */
export function layBlocks(middles: readonly number[], width: number, breadth: number, gap: number): LaidBlock[] {
  const most = Math.max(1, Math.floor((breadth + gap) / (width + gap)));
  const tiers = Math.ceil(middles.length / most);
  const each = Math.ceil(middles.length / tiers);
  return Array.from({ length: tiers }, (_, tier) => {
    const lefts: number[] = [];
    const row = middles.slice(tier * each, (tier + 1) * each);
    row.forEach((middle, index) => {
      const earliest = index === 0 ? 0 : lefts[index - 1]! + width + gap;
      lefts.push(Math.max(middle - width / 2, earliest));
    });
    // Back from the far edge: what was pushed over it pushes its neighbours back.
    let latest = breadth - width;
    for (let index = row.length - 1; index >= 0; index -= 1) {
      lefts[index] = Math.max(0, Math.min(lefts[index]!, latest));
      latest = lefts[index]! - width - gap;
    }
    return lefts.map((left): LaidBlock => ({ left, tier }));
  }).flat();
}
