/** What is found of bars that are made in pieces. Lengths mm. */
import type { TubeRef } from '../job/reference.ts';
import type { OfEnd, OfTube } from './types.ts';

/** The bar that is to run through passes where this one is not. */
export interface PieceCutterMisses extends OfEnd {
  readonly id: 'piece/cutter-misses';
  readonly runTube: TubeRef;
}

/** A hoop that is cut where another bar runs through. */
export interface HoopInPieces extends OfTube {
  readonly id: 'piece/hoop';
  readonly runTube: TubeRef;
}

/** Where a bar is cut by another, part of its wall passes by that and would hold the pieces together. */
export interface StripHolds extends OfEnd {
  readonly id: 'piece/strip-holds';
  readonly runTube: TubeRef;
  /** mm, at most the wall. */
  readonly thickness: number;
}

/** The same strip, so thin that it is filed off. */
export interface StripToFile extends OfEnd {
  readonly id: 'piece/strip-to-file';
  readonly runTube: TubeRef;
  readonly thickness: number;
}

export type PieceFinding = PieceCutterMisses | HoopInPieces | StripHolds | StripToFile;
