/** One end unrolled flat at one scale both ways: the cut lines of outer wall and bore, scrap hatched below them. */
import { useId, type ReactNode } from 'react';
import type { LengthUnit } from '../../core/units/length.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { referenceInWords } from '../../core/words/ends.ts';
import { profileDrawing, type FlatPoint } from './profile.ts';
import { figureWidth, markLength, SvgLength } from './SvgLength.tsx';

const SIDE = 108;
const AIR = 6;
const FOOT = 20;
/** From this width on, pixels, the quarters have room for their angles too. */
const WIDE = 280;

interface ProfileDrawingProps {
  readonly tube: SolvedTube;
  readonly which: 0 | 1;
  readonly width: number;
  readonly height: number;
  readonly unit: LengthUnit;
}

export function ProfileDrawing({ tube, which, width, height, unit }: ProfileDrawingProps): ReactNode {
  const hatch = useId();
  const end = tube.ends[which];
  const drawing = profileDrawing(end, tube.section.outerDiameter);
  const rise = Math.max(drawing.highest - drawing.lowest, 1);
  // Tube left standing above the throat, and scrap below the tip, both a sixth of the diameter.
  const spare = tube.section.outerDiameter / 6;
  const scale = Math.min((width - SIDE - AIR) / (2 * drawing.halfWidth), (height - FOOT - AIR) / (rise + 2 * spare));
  const middle = SIDE + drawing.halfWidth * scale;
  const x = (round: number): number => middle + round * scale;
  const y = (along: number): number => AIR + (drawing.highest + spare - along) * scale;
  const [left, right] = [x(-drawing.halfWidth), x(drawing.halfWidth)];
  const foot = y(drawing.lowest - spare);
  const levels = [
    { name: 'throat', at: drawing.throat },
    { name: 'tip', at: drawing.tip },
  ];
  const apart = drawing.throat && drawing.tip ? y(drawing.tip.along) - y(drawing.throat.along) : 0;
  const name = which === 0 ? 'A' : 'B';
  const words = levels
    .map((level) => (level.at ? `${level.name} ${markLength(level.at.along, unit).text} ${unit}` : ''))
    .join(', ');
  return (
    <svg
      className="drawing"
      width={width}
      height={foot + FOOT}
      viewBox={`0 0 ${width} ${foot + FOOT}`}
      role="img"
      aria-label={`End ${name} unrolled: ${words} from the node; 0° is the ${referenceInWords(tube, which)}`}
    >
      <defs>
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <line x1="0" y1="0" x2="0" y2="7" className="draw-scrap-line" />
        </pattern>
      </defs>
      <rect className="draw-sheet" x={left} y={AIR} width={right - left} height={foot - AIR} />
      {drawing.outer.map((stretch, index) => (
        <g key={index}>
          <path className="draw-tube" d={`${line(stretch, x, y)}V${AIR}H${x(stretch[0]?.round ?? 0)}Z`} />
          <path fill={`url(#${hatch})`} d={`${line(stretch, x, y)}V${foot}H${x(stretch[0]?.round ?? 0)}Z`} />
        </g>
      ))}
      {[-90, 0, 90].map((degree) => (
        <line
          key={degree}
          className={degree === 0 ? 'draw-reference' : 'draw-grid'}
          x1={x((degree / 180) * drawing.halfWidth)}
          x2={x((degree / 180) * drawing.halfWidth)}
          y1={AIR}
          y2={foot}
        />
      ))}
      {drawing.inner.map((stretch, index) => (
        <path key={index} className="draw-inner" d={line(stretch, x, y)} />
      ))}
      {drawing.outer.map((stretch, index) => (
        <path key={index} className="draw-outer" d={line(stretch, x, y)} />
      ))}
      {levels.map(({ name: level, at }, index) => {
        if (at === null) return null;
        const shown = markLength(at.along, unit);
        // Labels of a shallow cut are spread so that they do not stand on one another.
        const shift = apart < 20 ? (index === 0 ? -1 : 1) * ((20 - apart) / 2) : 0;
        return (
          <g key={level}>
            <line className="draw-level" x1={SIDE - 6} x2={x(at.round)} y1={y(at.along)} y2={y(at.along)} />
            <circle className="draw-spot" cx={x(at.round)} cy={y(at.along)} r="3.5" />
            <text className="draw-text" x={SIDE - 10 - figureWidth(shown)} y={y(at.along) + 5 + shift}>
              <SvgLength shown={shown} />
            </text>
            <text
              className="draw-text draw-soft"
              textAnchor="end"
              x={SIDE - 14 - figureWidth(shown)}
              y={y(at.along) + 5 + shift}
            >
              {level}
            </text>
          </g>
        );
      })}
      {(right - left < WIDE ? [-180, 0, 180] : [-180, -90, 0, 90, 180]).map((degree) => (
        <text
          key={degree}
          className={degree === 0 ? 'draw-text draw-strong' : 'draw-text draw-soft'}
          textAnchor={degree === 180 ? 'end' : degree === -180 ? 'start' : 'middle'}
          x={x((degree / 180) * drawing.halfWidth)}
          y={foot + 14}
        >
          {`${String(degree).replace('-', '−')}°`}
        </text>
      ))}
    </svg>
  );
}

const line = (stretch: readonly FlatPoint[], x: (round: number) => number, y: (along: number) => number): string =>
  stretch
    .map((point, index) => `${index === 0 ? 'M' : 'L'}${x(point.round).toFixed(2)} ${y(point.along).toFixed(2)}`)
    .join('');
