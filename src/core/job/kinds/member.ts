import type { DieId, MemberId, NodeRef, SectionId } from '../reference.ts';
import type { EndFit } from './end.ts';

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
