/**
 * What there is to know of a kind of record, in one place: how a file holds it, what of it no shape can check, and what it
 * refers to. kinds.ts and places.ts hold a row for each kind; whoever reads, checks, writes, compares, deletes, moves or
 * solves records goes by these rows.
 */
import type * as v from 'valibot';
import type { Fault } from '../fault.ts';
import type { Collection } from '../types.ts';

/** Where a record names another. */
export interface Reference {
  /** members[3].path[1]. */
  readonly place: string;
  /** The list that it leads into. */
  readonly list: Collection;
  /** As it is written: where that kind has mirror images, a prime stands for one. */
  readonly to: string;
  /** Whether the record stands on what it names: it is solved after that, and moves with it. */
  readonly carried?: true;
  /** Whether it names a tube as it is made: of a bar in pieces one of these. */
  readonly made?: true;
  /** Whether the record goes when what it names is deleted. */
  readonly goes?: true;
  /** What to do where the image that it names is none any more; ends the sentence of the fault. */
  readonly remedy?: string;
}

/** How a file holds a record, or a part of one. */
interface Written<R> {
  /** What it is by shape, and what may be left out of it; docs/job.schema.json is made from it. */
  readonly shape: v.GenericSchema<unknown, Unnamed<R>>;
  /**
   * Keys in the order in which a file holds them, one line for each sort of object in it. All lines of all kinds have to
   * agree: there is one order for the whole file.
   */
  readonly keys: readonly string[];
  /** More of them in one list are refused. */
  readonly most?: number;
}

/** What the shape cannot check of a record or a part of one. */
export type Beyond = readonly (Reference | Fault)[];

/** A part of a record that comes in kinds of its own. */
export interface Part<P> extends Written<P> {
  /**
   * What the shape cannot check, in the order of the file: what it refers to, and what is wrong with it. `at` is where it
   * stands, each place begins with it. Whether a reference leads anywhere is seen by validate.ts.
   */
  beyondShape?(part: P, at: string): Beyond;
}

/** A kind of record that the job has a list of. */
export type Kind<R> = Listed<R> &
  (R extends { readonly id: string; readonly name: string }
    ? Named<R>
    : R extends { readonly id: string }
      ? Named<R> & Nameless
      : Nameless);

/** Of records of any kind. */
export interface Listed<R> extends Written<R> {
  /** Where a file holds the list, if not at its top under its own name. */
  readonly within?: readonly [block: 'survey' | 'stock', key: string];
  /** As of a part; some is wrong only beside the other records of the list. */
  beyondShape?(record: R, at: string, index: number, records: readonly R[]): Beyond;
}

/** Records that have an id, and most of them a name, which is the id where a file leaves it out. */
export interface Named<R> {
  /** What a fault calls it: no node "a-fot". */
  readonly word: string;
  /** New ids begin with it: n12. */
  readonly letter: string;
  /** Whether a prime names its mirror image; no record of a kind without this has one. */
  hasImage?(record: R): boolean;
}

/** Records without a name. */
export interface Nameless {
  /** What a fault calls one that is in the way. */
  readonly inWords: string;
}

type Unnamed<R> = R extends { readonly id: string; readonly name: string }
  ? Omit<R, 'name'> & { readonly name?: string | undefined }
  : R;

export const isReference = (item: Reference | Fault): item is Reference => 'to' in item;
