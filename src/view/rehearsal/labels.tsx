/** What is written at the bender: the tube's ends, what holds it, what stands round, and the touch of the step shown. */
import type { RefObject } from 'react';
import { addScaled, type Vec3 } from '../../core/geometry/vector.ts';
import type { Solid } from '../../core/rehearse/types.ts';
import { hitInWords, solidInWords } from '../../core/words/rehearsal.ts';
import type { Label } from '../labels/label.ts';
import type { Stage } from './rehearsed.ts';
import type { TubeEnd, TubeEnds } from './TubeOnMachine.tsx';

export function rehearsalLabels(solids: readonly Solid[], { step }: Stage, ends: RefObject<TubeEnds>): Label[] {
  const rear = step.front === 'A' ? 'B' : 'A';
  return [
    ...(step.hit === null
      ? []
      : [
          {
            key: 'hit',
            // Over its sign, or under it.
            at: (pixelsPerMm) => [step.hit!.at, addScaled(step.hit!.at, [0, 0, 1], -68 / pixelsPerMm)],
            shift: [0, -34],
            rank: 0,
            look: 'dimension',
            tone: 'bad',
            text: `× ${hitInWords(step.hit)}`,
          } satisfies Label,
        ]),
    // They go with the tube: their places are those of the frame that is drawn.
    {
      key: 'front',
      at: (pixelsPerMm) => offEnd(ends.current.front, pixelsPerMm),
      drifts: true,
      rank: 1,
      look: 'end',
      text: step.front,
    },
    {
      key: 'rear',
      at: (pixelsPerMm) => offEnd(ends.current.rear, pixelsPerMm),
      drifts: true,
      rank: 1,
      look: 'end',
      text: rear,
    },
    { key: 'feed', at: [[-1180, 0, 0]], rank: 6, look: 'axis', text: 'feed' },
    ...solids.flatMap((solid, index): Label[] => {
      const { part } = solid.id;
      if (part === 'floor' || part === 'column' || solid.turning) return [];
      return [
        {
          key: `solid ${index}`,
          at: nameplaces(solid.shape),
          // What holds the tube is named below it, where nothing swings.
          shift: [0, part === 'room' ? 0 : 34],
          rank: part === 'room' ? 4 : 5,
          look: 'name',
          text: solidInWords(solid.id).replace(/^the /, ''),
        },
      ];
    }),
  ];
}

/** So far off the end that the letter covers no touch there, pixels. */
const OFF = 28;

const offEnd = ({ at, off }: TubeEnd, pixelsPerMm: number): readonly Vec3[] => [
  addScaled(at, off, OFF / pixelsPerMm),
  addScaled(at, [0, 0, -1], (1.2 * OFF) / pixelsPerMm),
  at,
];

/** On top of a solid; along the foot of a wall, where there is room. */
function nameplaces(shape: Solid['shape']): readonly Vec3[] {
  switch (shape.kind) {
    case 'box':
      return [shape.axes.reduce((at, axis, k) => addScaled(at, axis, axis[2] * shape.half[k]!), shape.centre)];
    case 'cylinder':
      return [addScaled(shape.centre, [0, 0, 1], shape.halfHeight)];
    case 'plane': {
      const [x, y] = shape.normal;
      const foot: Vec3 = Math.hypot(x, y) < 0.5 ? shape.point : [shape.point[0], shape.point[1], 0];
      return [0, 500, -500, 1000, -1000, 1500, -1500].map((along) => addScaled(foot, [y, -x, 0], along));
    }
  }
}
