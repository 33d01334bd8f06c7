/** The bender and what stands round it, seen from above at scale: what the set-up's numbers mean. */
import { shownName } from '../../core/job/shown.ts';
import { useId, type ReactNode } from 'react';
import { dot, normalize } from '../../core/geometry/vector.ts';
import type { Bender } from '../../core/job/kinds/bender.ts';
import type { Die } from '../../core/job/kinds/die.ts';
import type { Obstacle } from '../../core/job/kinds/obstacle.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { useSpace } from '../kit/useSpace.ts';
import { footprint, planFrame, wallLine, type PlaneObstacle, type Spot } from './bender-plan.ts';
import '../kit/draw.css';
import './bender.css';

const LOWEST = 150;
const TALLEST = 320;
/** Below the drawing, pixels: the bar that shows its scale. */
const FOOT = 30;
/** Longest of the bars that leaves room beside it, as a share of the width. */
const BAR = 0.4;
const BARS: Readonly<Record<LengthUnit, readonly number[]>> = {
  in: [12, 24, 48, 96, 192, 480, 1200].map((inches) => inches * 25.4),
  mm: [200, 500, 1000, 2000, 5000, 10_000, 20_000],
};

export function BenderPlan({ die, bender, unit }: { die: Die; bender: Bender; unit: LengthUnit }): ReactNode {
  const { frame, width } = useSpace();
  return (
    <div ref={frame} className="bender-plan">
      {width > 0 && <Plan die={die} bender={bender} unit={unit} width={width} />}
    </div>
  );
}

function Plan(props: { die: Die; bender: Bender; unit: LengthUnit; width: number }): ReactNode {
  const { die, bender, unit, width } = props;
  const hatch = useId();
  const shown = planFrame(bender, die);
  const [wide, deep] = [shown.right - shown.left, shown.top - shown.bottom];
  const scale = Math.min(width / wide, TALLEST / deep);
  const height = Math.max(LOWEST, deep * scale);
  const x = (mm: number): number => width / 2 + (mm - (shown.left + shown.right) / 2) * scale;
  const y = (mm: number): number => height / 2 - (mm - (shown.bottom + shown.top) / 2) * scale;
  const at = ([along, left]: Spot): string => `${x(along).toFixed(1)},${y(left).toFixed(1)}`;
  const side = bender.turns === 'left' ? 1 : -1;
  const radius = die.centrelineRadius;
  const leg = 1.6 * radius;
  const rear: Spot = [-2.6 * radius, 0];
  const front: Spot = [radius, side * (radius + leg)];
  const measured = bender.bendLies === 'beyond' ? front : rear;
  const bar = BARS[unit].findLast((length) => length * scale <= BAR * width) ?? BARS[unit][0]!;
  return (
    <svg
      className="drawing"
      width={width}
      height={height + FOOT}
      viewBox={`0 0 ${width} ${height + FOOT}`}
      role="img"
      aria-label={describe(bender)}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="6" className="plan-hatch" />
        </pattern>
        <clipPath id={`${hatch}-clip`}>
          <rect width={width} height={height} />
        </clipPath>
      </defs>
      <g clipPath={`url(#${hatch}-clip)`}>
        {bender.room.map((obstacle, i) =>
          obstacle.kind === 'box' ? (
            <polygon key={i} className="plan-box" points={footprint(obstacle).map(at).join(' ')} />
          ) : (
            <Wall key={i} wall={obstacle} planeHeight={bender.planeHeight} hatch={hatch} at={at} far={wide + deep} />
          ),
        )}
        <line className="draw-axis" x1={x(rear[0])} y1={y(0)} x2={x(2.8 * radius)} y2={y(0)} />
        <circle className="draw-steel" cx={x(0)} cy={y(side * radius)} r={radius * scale} />
        <path
          className="plan-tube"
          strokeWidth={Math.max(3, die.outerDiameter * scale)}
          d={`M ${at(rear)} L ${at([0, 0])} A ${radius * scale} ${radius * scale} 0 0 ${side > 0 ? 0 : 1} ${at([radius, side * radius])} L ${at(front)}`}
        />
        <circle className="plan-start" cx={x(0)} cy={y(0)} r="4" />
        <circle className="draw-node" cx={x(measured[0])} cy={y(measured[1])} r="5" />
        {bender.room.map((obstacle, i) => (
          <Name key={i} obstacle={obstacle} x={x} y={y} bender={bender} width={width} height={height} />
        ))}
      </g>
      <Feed from={x(rear[0])} at={y(0) + side * 20} />
      <text className="draw-text draw-clear plan-word" x={x(0)} y={y(side * radius) + 4} textAnchor="middle">
        die
      </text>
      <g transform={`translate(4 ${height + 18})`}>
        <path className="plan-bar" d={`M 0 -5 V 5 M 0 0 H ${bar * scale} M ${bar * scale} -5 V 5`} />
        <text className="draw-text" x={bar * scale + 8} y="4">
          {`${formatLength(bar, unit).text} ${unit}`}
        </text>
      </g>
      <text className="draw-text draw-soft" x={width - 2} y={height + 22} textAnchor="end">
        ○ tape is hooked here
      </text>
    </svg>
  );
}

/** The way the tube is fed, beside the tube and away from the die. */
const Feed = ({ from, at }: { from: number; at: number }): ReactNode => (
  <g transform={`translate(${from + 2} ${at})`}>
    <path className="draw-outer" d="M 0 0 H 34 M 27 -6 L 35 0 L 27 6" />
    <text className="draw-text draw-soft" x="40" y="4">
      feed
    </text>
  </g>
);

/** A wall as a line where it cuts the bend plane, hatched on the side away from the room. */
function Wall(props: {
  wall: PlaneObstacle;
  planeHeight: number;
  hatch: string;
  at: (spot: Spot) => string;
  far: number;
}): ReactNode {
  const { wall, at, far } = props;
  const line = wallLine(wall, props.planeHeight);
  if (line === null) return null;
  const out = normalize([-wall.normal[0], -wall.normal[1], 0]);
  const spot = (along: number, behind: number): Spot => [
    line.at[0] + along * line.along[0] + behind * out[0],
    line.at[1] + along * line.along[1] + behind * out[1],
  ];
  return (
    <>
      <polygon
        fill={`url(#${props.hatch})`}
        points={[spot(-far, 0), spot(far, 0), spot(far, far), spot(-far, far)].map(at).join(' ')}
      />
      <polyline className="plan-wall" points={[spot(-far, 0), spot(far, 0)].map(at).join(' ')} />
    </>
  );
}

/** Beside the thing, on the room's side of a wall; kept within the drawing. */
function Name(props: {
  obstacle: Obstacle;
  bender: Bender;
  x: (mm: number) => number;
  y: (mm: number) => number;
  width: number;
  height: number;
}): ReactNode {
  const { obstacle, x, y, width, height } = props;
  const place = placeOf(obstacle, props.bender.planeHeight);
  const name = shownName(obstacle.name);
  if (place === null || name === '') return null;
  const half = 3.6 * name.length + 4;
  const [across, down] = [x(place.spot[0]) + place.aside[0] * (half + 2), y(place.spot[1]) - place.aside[1] * 12];
  return (
    <text
      className="draw-text draw-clear plan-word"
      textAnchor="middle"
      x={Math.min(width - half, Math.max(half, across))}
      y={Math.min(height - 6, Math.max(14, down + 4))}
    >
      {name}
    </text>
  );
}

function placeOf(obstacle: Obstacle, planeHeight: number): { spot: Spot; aside: Spot } | null {
  if (obstacle.kind === 'box') return { spot: [obstacle.centre[0], obstacle.centre[1]], aside: [0, 0] };
  const line = wallLine(obstacle, planeHeight);
  if (line === null) return null;
  const back = dot([line.at[0], line.at[1], 0], [line.along[0], line.along[1], 0]);
  const into = normalize([obstacle.normal[0], obstacle.normal[1], 0]);
  return {
    spot: [line.at[0] - back * line.along[0], line.at[1] - back * line.along[1]],
    aside: [into[0], into[1]],
  };
}

function describe({ turns, bendLies, room }: Bender): string {
  const stands = room.map(({ name, kind }) => shownName(name) || (kind === 'box' ? 'a box' : 'a wall'));
  return [
    `The bender from above: the tube is fed to the right and bent to the ${turns}`,
    `the tape is hooked over the end that ${bendLies === 'beyond' ? 'is in front and swings' : 'stays behind'}`,
    stands.length === 0 ? 'nothing stands round it' : `round it: ${stands.join(', ')}`,
  ].join('; ');
}
