import type { NodeRef } from '../reference.ts';

export interface BetweenPlace {
  readonly kind: 'between';
  readonly nodes: readonly [NodeRef, NodeRef];
  readonly fraction: number;
}
