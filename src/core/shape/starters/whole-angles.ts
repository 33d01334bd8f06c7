/**
 * Bends brought to whole degrees by moving corners a little, each one way only, away from the trim. As many moves as there are conditions: a
 * bend each, and after these one more, either way, where two uprights are to lie in one plane. Newton's method, its slopes from differences.
 */
import type { Degrees } from '../../geometry/angle.ts';
import { solveLinear } from '../../numerics/linear.ts';

/** How far each move goes, mm. */
export type Moves = readonly number[];

/** What comes of the moves. */
export interface Outcome {
  /** Of bends that are to be whole. */
  readonly turns: readonly Degrees[];
  /** What is to be zero, mm. */
  readonly apart: readonly number[];
  /** Whether what they must keep off is kept off. */
  readonly keepsOff: boolean;
}

/** mm. The most that a corner is moved for whole degrees, and that an upright is leant to lie in one plane with the other. */
const FARTHEST_MOVE = 60;
const FARTHEST_LEANT = 80;
/** mm. Of a corner moved to see what comes of it. */
const STEP = 0.01;
/** Degrees, and mm. */
const MET = 1e-10;
const MOST_STEPS = 15;

/** The shortest moves, by the sum of their squares, after which all is as it is to be; null where none are near enough. */
export function movesToWhole(count: number, after: (moves: Moves) => Outcome): Moves | null {
  const start = Array.from({ length: count }, () => 0);
  let best: Moves | null = null;
  for (const wanted of targets(after(start).turns)) {
    const moves = solve(start, wanted, after);
    if (moves === null || !moves.every((move, i) => isAllowed(move, i < wanted.length)) || !after(moves).keepsOff)
      continue;
    if (best === null || squares(moves) < squares(best)) best = moves;
  }
  return best;
}

const isAllowed = (move: number, ofBend: boolean): boolean =>
  ofBend ? move >= 0 && move <= FARTHEST_MOVE : Math.abs(move) <= FARTHEST_LEANT;

const squares = (moves: Moves): number => moves.reduce((sum, move) => sum + move * move, 0);

/** The whole degrees on either side of each angle, and one more either way; every one with every other. */
function targets(angles: readonly Degrees[]): readonly (readonly Degrees[])[] {
  return angles.reduce<readonly (readonly Degrees[])[]>(
    (rows, angle) => rows.flatMap((row) => [-1, 0, 1, 2].map((more) => [...row, Math.floor(angle) + more])),
    [[]],
  );
}

function solve(start: Moves, wanted: readonly Degrees[], after: (moves: Moves) => Outcome): Moves | null {
  const beyond = (moves: Moves): readonly number[] => {
    const { turns, apart } = after(moves);
    return [...turns.map((turn, i) => turn - wanted[i]!), ...apart];
  };
  let moves = start;
  for (let step = 0; step < MOST_STEPS; step++) {
    const off = beyond(moves);
    if (off.every((each) => Math.abs(each) <= MET)) return moves;
    const ahead = moves.map((move, i) => beyond(moves.with(i, move + STEP)));
    const rows = off.map((now, row) => ahead.map((column) => (column[row]! - now) / STEP));
    const change = solveLinear(rows, off);
    if (change === null) return null;
    moves = moves.map((move, i) => move - change[i]!);
  }
  return null;
}
