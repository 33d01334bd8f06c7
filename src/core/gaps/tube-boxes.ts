/** Boxes round the pieces of tubes: which come near enough to be measured. */
import { boxRound, type Box } from '../geometry/box-tree.ts';
import type { Piece } from '../geometry/path.ts';
import { distance, interpolate } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import type { SolvedTube } from '../solve/types.ts';
import { outsideOf } from './outside.ts';

/** A box round each piece of the tube. */
export const boxesOf = remembered((tube: SolvedTube): readonly Box[] => {
  const { pieces, radius } = outsideOf(tube);
  return pieces.map((piece) => boxOf(piece, radius));
});

const boxOf = (piece: Piece, margin: number): Box =>
  piece.kind === 'line'
    ? boxRound([piece.from, piece.to], margin)
    : // An arc of less than half a turn lies in the ball on its chord.
      boxRound([interpolate(piece.from, piece.to, 0.5)], distance(piece.from, piece.to) / 2 + margin);

/** Whether two boxes come nearer to one another than `below` mm along every axis. */
export const meet = (a: Box, b: Box, below: number): boolean =>
  a.low[0] - b.high[0] < below &&
  b.low[0] - a.high[0] < below &&
  a.low[1] - b.high[1] < below &&
  b.low[1] - a.high[1] < below &&
  a.low[2] - b.high[2] < below &&
  b.low[2] - a.high[2] < below;
