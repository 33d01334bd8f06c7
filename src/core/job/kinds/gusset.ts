/**
 * Gussets: sheet that stiffens the corner between two tubes at a node, or the inside of one tube's bend. A leg says along which bar the sheet runs and towards
 * which of that bar's ends; two legs along one bar, one to each end, stand across the bend at the node.
 */
import * as v from 'valibot';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { fault, figure, type Fault } from '../fault.ts';
import { MOST_GUSSETS } from '../limits.ts';
import type { GussetId, NodeRef, TubeRef } from '../reference.ts';
import { across, length, named, number, size } from './fields.ts';
import type { Kind } from './kind.ts';
import { sharpFaults } from './kink.ts';

/** Flat: one sheet in the plane of the two axes. Bent: one sheet folded along its free edge, a face to either side of the tubes. */
export type Gusset = {
  readonly id: GussetId;
  readonly name: string;
  readonly node: NodeRef;
  readonly between: readonly [GussetLeg, GussetLeg];
  readonly thickness: number;
  /** Cut off the corner for the weld of the tubes, along each leg, mm. */
  readonly relief: number;
  /** Whether its mirror image is made too, where the same bars run on the other side of the car. */
  readonly mirror: boolean;
} & (
  | { readonly kind: 'flat' }
  | {
      readonly kind: 'bent';
      /** Over both faces, mm. */
      readonly width: number;
      /** On the inside of the fold. */
      readonly radius: number;
      /** Where the fibre lies that keeps its length, as a share of the thickness out from the inside. Absent: by DIN 6935. */
      readonly kFactor?: number;
    }
);

export interface GussetLeg {
  readonly member: TubeRef;
  /** The end of the bar to which the leg runs from the node. */
  readonly towards: 'A' | 'B';
  /** Along the tube's surface, from where the two surfaces' lines meet to the free edge, mm. */
  readonly leg: number;
}

/** Whether both legs run along one bar, across a bend of it. */
export const isAcrossBend = ({ between: [a, b] }: Pick<Gusset, 'between'>): boolean => a.member === b.member;

const common = {
  ...named,
  node: v.string(),
  between: v.strictTuple([legShape(), legShape()]),
  thickness: across,
  relief: v.optional(length, 0),
  mirror: v.optional(v.boolean(), true),
};

function legShape() {
  return v.looseObject({ member: v.string(), towards: v.picklist(['A', 'B']), leg: size });
}

export const gussetKind: Kind<Gusset> = {
  word: 'gusset',
  letter: 'g',
  shape: v.variant('kind', [
    v.looseObject({ ...common, kind: v.literal('flat') }),
    v.looseObject({
      ...common,
      kind: v.literal('bent'),
      width: across,
      radius: across,
      kFactor: v.exactOptional(number(0, 0.5, 'below zero', 'beyond 0.5')),
    }),
  ]),
  keys: ['id name kind node between thickness relief width radius kFactor mirror', 'member towards leg'],
  most: MOST_GUSSETS,
  beyondShape: (gusset, at) => [
    { place: `${at}.node`, list: 'nodes', to: gusset.node, goes: true },
    ...gusset.between.map(({ member }, i) => ({
      place: `${at}.between[${i}].member`,
      list: 'members' as const,
      to: member,
      goes: true as const,
    })),
    ...legFaults(gusset, at),
    ...foldFaults(gusset, at),
  ],
};

function legFaults(gusset: Gusset, at: string): readonly Fault[] {
  const { between, relief } = gusset;
  const [a, b] = between;
  if (isAcrossBend(gusset)) {
    if (a.towards === b.towards) return [fault(`${at}.between[1].towards`, 'is where the first leg runs too')];
    return relief > 0 ? [fault(`${at}.relief`, 'a bend has no weld to keep clear of')] : [];
  }
  return between.flatMap(({ leg }, i) =>
    relief < leg ? [] : [fault(`${at}.between[${i}].leg`, `${figure(leg)} leaves nothing beside the relief`)],
  );
}

function foldFaults(gusset: Gusset, at: string): readonly Fault[] {
  if (gusset.kind === 'flat') return [];
  const { width, radius, thickness } = gusset;
  const least = 2 * (radius + thickness);
  return [
    ...(width < least - ROUNDING
      ? [
          fault(
            `${at}.width`,
            `${figure(width)} is less than the fold takes: twice radius and thickness, ${figure(least)}`,
          ),
        ]
      : []),
    ...sharpFaults(radius, thickness, `${at}.radius`),
  ];
}
