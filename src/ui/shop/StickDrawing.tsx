/** The straight stick drawn at scale under a tape: bend zones, and every mark told from the blank's end A. */
import { useId, type ReactNode } from 'react';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { LengthUnit } from '../../core/job/types.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import type { ShownLength } from '../../core/units/length.ts';
import { layFlags, layStick, stickMarks, type StickMark } from './stick.ts';
import { figureWidth, markLength, SvgLength } from './SvgLength.tsx';

const MARGIN = 20;
/** Below this width, pixels, the two ends' headings need a line each. */
const NARROW = 560;
const HEADING = 18;
const STICK_HEIGHT = 24;
const ROW = 19;
const LETTER = 7;

export function StickDrawing({ tube, width, unit }: { tube: SolvedTube; width: number; unit: LengthUnit }): ReactNode {
  const hatch = useId();
  const stick = layStick(tube);
  const breadth = width - 2 * MARGIN;
  const scale = breadth / Math.max(stick.blank, 1);
  const x = (tape: number): number => MARGIN + tape * scale;
  const { marks, laid, height } = layMarks(tube, width, unit);
  const [endA, endB] = stick.ends;
  const top = stickTop(width);
  const bottom = top + STICK_HEIGHT;
  return (
    <svg
      className="drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={describe(tube, unit)}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" className="draw-brass-wash" />
          <line x1="0" y1="0" x2="0" y2="6" className="draw-brass-line" />
        </pattern>
      </defs>
      <text x={MARGIN} y="14" className="draw-text draw-strong">
        End A
        <tspan className="draw-soft" dx="8">
          node at{' '}
        </tspan>
        <SvgLength shown={markLength(endA.node, unit)} />
      </text>
      <text
        x={width - MARGIN}
        y={width < NARROW ? 14 + HEADING : 14}
        className="draw-text draw-strong"
        textAnchor="end"
      >
        <tspan className="draw-soft">node at </tspan>
        <SvgLength shown={markLength(endB.node, unit)} />
        <tspan className="draw-soft">, cut at </tspan>
        <SvgLength shown={markLength(stick.blank, unit)} />
        <tspan dx="8">End B</tspan>
      </text>
      <rect className="draw-steel" x={x(0)} y={top} width={stick.blank * scale} height={STICK_HEIGHT} />
      {stick.zones.map((zone) => (
        <g key={zone.bend}>
          <rect
            fill={`url(#${hatch})`}
            className="draw-brass-edge"
            x={x(zone.start)}
            y={top}
            width={Math.max(0, (zone.end - zone.start) * scale)}
            height={STICK_HEIGHT}
          />
          <text className="draw-text" textAnchor="middle" x={x((zone.start + zone.end) / 2)} y={top - 8}>
            <tspan className="draw-strong">{zone.bend}</tspan>
            <tspan className="draw-soft" dx="5">
              {`${formatAngle(toDegrees(tube.bends[zone.bend - 1]?.angle ?? 0), 1)}°`}
            </tspan>
          </text>
        </g>
      ))}
      <line
        className="draw-axis"
        x1={x(Math.min(0, endA.node))}
        x2={x(Math.max(stick.blank, endB.node))}
        y1={top + STICK_HEIGHT / 2}
        y2={top + STICK_HEIGHT / 2}
      />
      {[endA, endB].map((end, index) => (
        <g key={index}>
          <line className="draw-throat" x1={x(end.throat)} x2={x(end.throat)} y1={top} y2={bottom} />
          <circle className="draw-node" cx={clampTo(x(end.node), 6, width - 6)} cy={top + STICK_HEIGHT / 2} r="5" />
        </g>
      ))}
      {marks.map((mark, index) => (
        <path
          key={`${mark.kind}${mark.bend}`}
          className={`draw-mark draw-mark-${mark.kind}`}
          d={`M${x(mark.at)} ${top - 4}V${rowBase(laid[index]?.row ?? 0, width) + ROW - 4}`}
        />
      ))}
      {marks.map((mark, index) => {
        const flag = laid[index] ?? { left: 0, row: 0 };
        return (
          <text
            key={`${mark.kind}${mark.bend}`}
            className="draw-text draw-flag"
            x={MARGIN + flag.left + 5}
            y={rowBase(flag.row, width) + 14}
          >
            {mark.side === 'A' && <tspan className="draw-brass-text">◂ </tspan>}
            <tspan className="draw-soft">{mark.words} </tspan>
            <SvgLength shown={mark.shown} />
            {mark.side === 'B' && <tspan className="draw-brass-text"> ▸</tspan>}
          </text>
        );
      })}
    </svg>
  );
}

/** The marks with their labels in place, and how high the whole drawing becomes. */
function layMarks(tube: SolvedTube, width: number, unit: LengthUnit) {
  const breadth = width - 2 * MARGIN;
  const scale = breadth / Math.max(tube.blankLength, 1);
  const marks = stickMarks(tube).map((mark) => ({ ...mark, shown: markLength(mark.at, unit) }));
  const flags = marks.map((mark) => ({ at: mark.at * scale, width: labelWidth(mark, mark.shown) }));
  const laid = layFlags(flags, breadth, 8);
  const rows = 1 + Math.max(-1, ...laid.map((label) => label.row));
  return { marks, laid, height: rowBase(rows, width) + 4 };
}

/** Height of the drawing in pixels at this width: what is left of the bench goes to the ends. */
export const stickHeight = (tube: SolvedTube, width: number, unit: LengthUnit): number =>
  layMarks(tube, width, unit).height;

const stickTop = (width: number): number => (width < NARROW ? 40 + HEADING : 40);

const rowBase = (row: number, width: number): number => stickTop(width) + STICK_HEIGHT + 6 + row * ROW;

const labelWidth = (mark: StickMark, shown: ShownLength): number =>
  LETTER * (mark.words.length + 1) + figureWidth(shown) + 22;

const clampTo = (value: number, least: number, greatest: number): number => Math.max(least, Math.min(greatest, value));

/** The drawing in words: every mark with its place, and where its bend lies. */
function describe(tube: SolvedTube, unit: LengthUnit): string {
  const marks = stickMarks(tube).map((mark) => {
    return `${mark.words} ${markLength(mark.at, unit).text} ${unit}, the bend lies towards end ${mark.side}`;
  });
  return `${tube.name} as a straight stick, cut to ${markLength(tube.blankLength, unit).text} ${unit}, measured from end A: ${marks.join('; ')}`;
}
