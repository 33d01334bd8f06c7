/** Who refers to whom, read off the table of kinds. */
import { remembered } from '../remembered.ts';
import { isReference, type Reference } from './kinds/kind.ts';
import type { Member } from './kinds/member.ts';
import type { FrameNode } from './kinds/node.ts';
import { kindOf } from './kinds.ts';
import { bareId } from './reference.ts';
import type { Job, List } from './types.ts';

/** All that a record of this list refers to, in the order of the file; places counted from the record: .path[1]. */
export const referencesOf = <L extends List>(list: L, record: Job[L][number]): readonly Reference[] =>
  (kindOf(list).beyondShape?.(record, '', 0, [record]) ?? []).filter(isReference);

/** A node or a member: what others stand on. */
export interface Carrier {
  readonly list: 'nodes' | 'members';
  readonly id: string;
}

/** The nodes and members that a node or a member stands on: it is solved after them, and moves with them. */
export const carriersOf = <L extends Carrier['list']>(list: L, record: Job[L][number]): readonly Carrier[] =>
  CARRIERS[list](record);

const carriersIn = (from: Carrier['list']) =>
  remembered((record: FrameNode | Member): readonly Carrier[] =>
    referencesOf(from, record).flatMap(({ list, to, carried }) =>
      carried && (list === 'nodes' || list === 'members') ? [{ list, id: bareId(to) }] : [],
    ),
  );

const CARRIERS = { nodes: carriersIn('nodes'), members: carriersIn('members') };
