/**
 * The places of a frame that a drawn tube snaps to: nodes (a tube's ends among them), measured points and their mirror images, and of each
 * bar the places where it crosses the centre plane, the starts, middles and ends of its bends, the middles of its straights. What is kept
 * of a bar is as old as the bar.
 */
import { placeAt } from '../../geometry/path.ts';
import { placesInPlane } from '../../geometry/plane-places.ts';
import { ROUNDING } from '../../geometry/tolerance.ts';
import { AXIS_INDEX, mirrored, type Vec3 } from '../../geometry/vector.ts';
import { isPrimed, primed, type NodeRef } from '../../job/reference.ts';
import { remembered } from '../../remembered.ts';

import type { Bar, Frame } from '../../solve/types.ts';
import { alongBar, type Ground } from './ground.ts';

export interface Snap {
  readonly ground: Ground;
  readonly at: Vec3;
}

/** Of several that lie under the pointer the first of this list is meant; those of one kind go by which is nearer to the eye. */
const RANKS: readonly Ground['kind'][] = [
  'node',
  'point',
  'image',
  'centre',
  'bend',
  'middle',
  'level',
  'along',
  'space',
];

/** A place's rank among those under the pointer: 0 comes first. */
export const rankOf = ({ ground }: Snap): number => RANKS.indexOf(ground.kind);

/** A bar that crosses the centre plane at a lower slope than this (sine of the angle) has no place there that could be pointed at. */
const LEAST_CROSSING = 0.1;

/** All of them, in no order that means anything. */
export const snapsOf = remembered((frame: Frame): readonly Snap[] => [
  ...nodeSnaps(frame),
  ...pointSnaps(frame),
  ...[...frame.bars.values()].flatMap(barSnaps),
]);

/** Every node, and the mirror images that a bar runs through: where an image is its own node, the node. */
function nodeSnaps({ job, nodes, bars }: Frame): readonly Snap[] {
  const used = new Set<NodeRef>(job.nodes.map(({ id }) => id));
  for (const { id, member } of bars.values()) {
    for (const node of member.path) used.add(id === member.id ? node : primed(node));
  }
  return [...used].flatMap((node): readonly Snap[] => {
    const at = nodes.get(node);
    return at === undefined || (at[1] === 0 && isPrimed(node)) ? [] : [{ ground: { kind: 'node', node }, at }];
  });
}

const pointSnaps = ({ job }: Frame): readonly Snap[] =>
  job.points.flatMap(({ id, position }): readonly Snap[] => [
    { ground: { kind: 'point', point: id }, at: position },
    ...(position[1] === 0 ? [] : [{ ground: { kind: 'point', point: primed(id) }, at: mirrored(position) } as const]),
  ]);

const barSnaps = remembered((bar: Bar): readonly Snap[] => {
  const tube = bar.id;
  const centres = placesInPlane(bar.path, AXIS_INDEX.y, 0).flatMap(({ point, tangent }, i): readonly Snap[] =>
    Math.abs(tangent[1]) < LEAST_CROSSING ? [] : [{ ground: { tube, kind: 'centre', nth: i + 1 }, at: point }],
  );
  const bends = bar.bends.flatMap((_, i) =>
    WHERE.map((where) => ({ tube, kind: 'bend', bend: i + 1, where }) as const),
  );
  const middles = bar.straights.flatMap((length, i) =>
    length > ROUNDING ? [{ tube, kind: 'middle', straight: i + 1 } as const] : [],
  );
  const others = [...bends, ...middles].flatMap((ground): readonly Snap[] => {
    const along = alongBar(bar, ground);
    return along === null ? [] : [{ ground, at: placeAt(bar.path, along).point }];
  });
  return [...centres, ...others];
});

const WHERE = ['start', 'middle', 'end'] as const;
