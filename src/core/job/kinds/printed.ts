/** What was printed of a tube last: paper with another revision than the tube's is waste. */
import * as v from 'valibot';
import { coordinate } from './fields.ts';
import { tubeTwice } from './faults.ts';
import { MOST_SEEN } from '../limits.ts';
import type { TubeRef } from '../reference.ts';
import type { Kind } from './kind.ts';

export interface Printed {
  readonly tube: TubeRef;
  /** As solve/revision.ts. */
  readonly revision: string;
  /** What it said to cut, mm: how far it is out by now is told by it. */
  readonly cutLength: number;
  /** 2026-03-02. */
  readonly on: string;
}

/** The tube is no reference: paper of one that is gone is waste, too. */
export const printedKind: Kind<Printed> = {
  inWords: 'what was printed of it',
  shape: v.looseObject({ tube: v.string(), revision: v.string(), cutLength: coordinate, on: v.string() }),
  keys: ['on tube revision cutLength'],
  most: MOST_SEEN,
  beyondShape: (_, __, index, records) => tubeTwice(records, index, 'printed'),
};
