/**
 * How unlike the two sides of the car are: from where the left point of each pair would stand on the right to where the right one does, the
 * difference drawn many times as long as it is, since none would be seen at the scale of a car.
 */
import { addScaled, mirrored, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { PointPair } from '../../core/survey/point-pairs.ts';
import { arrowhead, disc, onLayer, stroke } from '../ink.ts';
import type { Lettering } from '../lettering.ts';
import type { Mark, Picture } from '../types.ts';
import { seenFrom } from './outline.ts';
import { besideLabels, bodyOf, type CarPicture } from './picture.ts';

/** Times: whole steps that a person can halve in the head. */
const TIMES = [1, 2, 5, 10, 20, 50, 100] as const;
/** mm of the car: the longest arrow is drawn no longer. */
const LONGEST = 450;
/** mm: less than a shop measures is no arrow. */
const NONE = 0.05;
const HEAD = 2.6;

/** How many times as long as it is a difference is drawn: alike for all pairs and views. */
export function timesEnlarged(pairs: readonly PointPair[]): number {
  const most = Math.max(0, ...pairs.map(({ off }) => off));
  return TIMES.findLast((times) => times * most <= LONGEST) ?? TIMES[0];
}

/** Numbered in the order of the pairs, from 1. */
export function unlikeSides(car: CarPicture, pairs: readonly PointPair[], letters: Lettering): Picture {
  const { view, width, height } = car;
  const times = timesEnlarged(pairs);
  const imaged = ({ left }: PointPair): Vec3 => mirrored(left.position);
  const labels = pairs.map((pair, i) => ({ words: String(i + 1), target: seenFrom(view, imaged(pair)) }));
  const { on, marks } = besideLabels(car, view === 'above' ? [labels, []] : [[], labels], letters);
  const arrows = pairs.flatMap((pair): Mark[] => {
    const from = imaged(pair);
    const [tail, tip] = [from, addScaled(from, subtract(pair.right.position, from), times)].map((at) =>
      on(seenFrom(view, at)),
    ) as [ReturnType<typeof on>, ReturnType<typeof on>];
    const left = disc(on(seenFrom(view, pair.left.position)), 0.6, null, 0.5);
    const long = Math.hypot(tip.x - tail.x, tip.y - tail.y);
    if (pair.off < NONE || long === 0) return [left];
    const way = Math.atan2(tip.y - tail.y, tip.x - tail.x);
    return [
      left,
      ...onLayer('asked', stroke([tail, tip], { width: 0.7, grey: 0 }), arrowhead(tip, way, Math.min(HEAD, long))),
    ];
  });
  return { width, height, marks: [...bodyOf(car, on), ...marks, ...arrows] };
}
