/** The scrap as it was held, roof and pillar by its gaps, and the bend that runs along both. Seen along the car, roof above. */
import type { ReactNode } from 'react';
import { toRadians } from '../../core/geometry/angle.ts';
import type { Sample } from '../../core/job/kinds/sample.ts';
import type { FittedBend, Flat } from '../../core/survey/sample-bend.ts';
import '../kit/draw.css';

/** mm shown of each leg beyond the last gap. */
const BEYOND = 60;

export function SamplePicture({ sample, found }: { sample: Sample; found: FittedBend }): ReactNode {
  const { radius, outerDiameter, gaps } = sample;
  const angle = toRadians(sample.angle);
  const reach = Math.max(200, ...gaps.map(({ along }) => along)) + BEYOND;
  const pillarStart: Flat = [radius * Math.sin(angle), -radius * (1 - Math.cos(angle))];
  const down: Flat = [Math.cos(angle), -Math.sin(angle)];
  const out: Flat = [Math.sin(angle), Math.cos(angle)];
  const far = Math.hypot(found.corner[0] - pillarStart[0], found.corner[1] - pillarStart[1]) + reach;
  const roofFrom = go(found.corner, found.roof, -(found.corner[0] + reach));
  const pillarTo = go(found.corner, found.pillar, far);
  const setBack = Math.tan(found.angle / 2) * radius;
  const begin = go(found.centrelineCorner, found.roof, -setBack);
  const end = go(found.centrelineCorner, found.pillar, setBack);
  const newLegs: readonly Flat[] = [go(begin, found.roof, -reach), begin, end, go(end, found.pillar, reach)];
  const scrap: readonly Flat[] = [[-reach, 0], [0, 0], pillarStart, go(pillarStart, down, reach)];
  const read = gaps.flatMap(({ leg, along, gap }): (readonly [Flat, Flat])[] => {
    if (gap === undefined) return [];
    const [at, way] =
      leg === 'roof'
        ? ([
            [-along, 0],
            [0, 1],
          ] as const)
        : ([go(pillarStart, down, along), out] as const);
    return [[go(at, way, outerDiameter / 2), go(at, way, outerDiameter / 2 + gap)]];
  });
  const all = [roofFrom, pillarTo, ...newLegs, ...scrap, found.corner];
  const [left, right] = [Math.min(...all.map(([x]) => x)) - 20, Math.max(...all.map(([x]) => x)) + 20];
  const [top, bottom] = [
    Math.max(...all.map(([, y]) => y)) + outerDiameter,
    Math.min(...all.map(([, y]) => y)) - outerDiameter,
  ];
  const d = ([x, y]: Flat): string => `${x.toFixed(1)} ${(-y).toFixed(1)}`;
  const bent = ([a, b, c, e]: readonly Flat[]): string =>
    `M${d(a!)} L${d(b!)} A${radius} ${radius} 0 0 1 ${d(c!)} L${d(e!)}`;
  return (
    <svg
      className="drawing sample-picture"
      viewBox={`${left} ${-top} ${right - left} ${top - bottom}`}
      role="img"
      aria-label="The scrap in the corner of roof and pillar, the gaps that were read, and the bend that runs along both"
    >
      <path d={bent(scrap)} className="sample-scrap" strokeWidth={outerDiameter} />
      <path d={bent(newLegs)} className="sample-bend" strokeWidth={outerDiameter} />
      <path d={bent(newLegs)} className="draw-axis" fill="none" vectorEffect="non-scaling-stroke" />
      <path
        d={`M${d(roofFrom)} L${d(found.corner)} L${d(pillarTo)}`}
        className="sample-car"
        vectorEffect="non-scaling-stroke"
      />
      {read.map(([from, to], i) => (
        <path key={i} d={`M${d(from)} L${d(to)}`} className="draw-cross" vectorEffect="non-scaling-stroke" />
      ))}
      {found.railAt && <circle cx={found.railAt[0]} cy={-found.railAt[1]} r={6} className="draw-node" />}
    </svg>
  );
}

const go = (from: Flat, way: Flat, by: number): Flat => [from[0] + by * way[0], from[1] + by * way[1]];
