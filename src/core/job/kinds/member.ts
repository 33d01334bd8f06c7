/** Members: each a tube, and where it is mirrored its twin. */
import * as v from 'valibot';
import { fault, quoted, type Fault } from '../fault.ts';
import type { DieId, MemberId, NodeRef, SectionId } from '../reference.ts';
import { AUTO, endPart, type EndFit } from './end.ts';
import { named } from './fields.ts';
import { isReference, type Kind, type Reference } from './kind.ts';

export interface Member {
  readonly id: MemberId;
  readonly name: string;
  readonly role: string;
  readonly path: readonly NodeRef[];
  readonly section: SectionId;
  /** Needed as soon as the path bends. */
  readonly die?: DieId;
  /** Heat or batch that the tube is cut from; its pulls then count before the others. */
  readonly batch?: string;
  /** True: a twin, mirrored in y = 0, is derived beside it. */
  readonly mirror: boolean;
  readonly ends: readonly [EndFit, EndFit];
}

export const memberKind: Kind<Member> = {
  word: 'member',
  letter: 'm',
  shape: v.looseObject({
    ...named,
    role: v.optional(v.string(), ''),
    path: v.pipe(v.array(v.string()), v.minLength(2, 'fewer than two nodes')),
    section: v.string(),
    die: v.exactOptional(v.string()),
    batch: v.exactOptional(v.string()),
    mirror: v.optional(v.boolean(), false),
    ends: v.optional(v.strictTuple([endPart.shape, endPart.shape]), () => [{ ...AUTO }, { ...AUTO }]),
  }),
  keys: ['id name role path section die batch mirror ends', ...endPart.keys],
  hasImage: ({ mirror }) => mirror,
  beyondShape: ({ id, path, section, die, ends }, at) => [
    // An end is coped to what it meets: only the path says where the tube runs.
    ...path.map((to, i): Reference => ({ place: `${at}.path[${i}]`, list: 'nodes', to, carried: true })),
    { place: `${at}.section`, list: 'sections', to: section },
    ...(die === undefined ? [] : [{ place: `${at}.die`, list: 'dies', to: die } as const]),
    ...ends.flatMap((end, i) => endPart.beyondShape(end, `${at}.ends[${i}]`)).map((item) => notItself(item, id)),
  ],
};

const notItself = (item: Reference | Fault, id: MemberId): Reference | Fault =>
  isReference(item) && item.to === id ? fault(item.place, `${quoted(id)} is the member itself`) : item;
