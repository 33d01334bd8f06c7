/** Who refers to whom, read off the table of kinds. */
import { remembered } from '../remembered.ts';
import { isReference, type Reference } from './kinds/kind.ts';
import { kindOf, LISTS } from './kinds.ts';
import { bareId } from './reference.ts';
import type { AnyRecord, Job, List } from './types.ts';

/** All that a record of this list refers to, in the order of the file. */
export const referencesOf = <L extends List>(list: L, record: Job[L][number]): readonly Reference[] =>
  OF_LIST[list](record);

/** A node or a member: what others stand on. */
export interface Carrier {
  readonly list: 'nodes' | 'members';
  readonly id: string;
}

/** The nodes and members that a node or a member stands on: it is solved after them, and moves with them. */
export const carriersOf = <L extends Carrier['list']>(list: L, record: Job[L][number]): readonly Carrier[] =>
  referencesOf(list, record).flatMap(({ list: of, to, carried }) =>
    carried && (of === 'nodes' || of === 'members') ? [{ list: of, id: bareId(to) }] : [],
  );

const OF_LIST = Object.fromEntries(LISTS.map((list) => [list, remembered(read(list))])) as Readonly<
  Record<List, (record: AnyRecord) => readonly Reference[]>
>;

function read(list: List): (record: AnyRecord) => readonly Reference[] {
  return (record) => [...(kindOf(list).beyondShape?.(record, 0, [record]) ?? [])].filter(isReference);
}
