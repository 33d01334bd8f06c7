/** The straight stick drawn at scale under a tape: bend zones, and every mark told from the blank's end A. */
import { useId, type ReactNode } from 'react';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { LengthUnit } from '../../core/job/types.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import type { ShownLength } from '../../core/units/length.ts';
import { layLabels, layStick, stickMarks, type StickMark } from './stick.ts';
import { figureWidth, markLength, SvgLength } from './SvgLength.tsx';

const MARGIN = 20;
const STICK_TOP = 44;
const STICK_HEIGHT = 26;
const ROW = 21;
const LETTER = 7;

export function StickDrawing({ tube, width, unit }: { tube: SolvedTube; width: number; unit: LengthUnit }): ReactNode {
  const hatch = useId();
  const stick = layStick(tube);
  const breadth = width - 2 * MARGIN;
  const scale = breadth / Math.max(stick.blank, 1);
  const x = (tape: number): number => MARGIN + tape * scale;
  const marks = stickMarks(tube).map((mark) => ({ ...mark, shown: markLength(mark.at, unit) }));
  const laid = layLabels(
    marks.map((mark) => ({ at: mark.at * scale, width: labelWidth(mark, mark.shown) })),
    breadth,
    10,
  );
  const rows = 1 + Math.max(0, ...laid.map((label) => label.row));
  const bottom = STICK_TOP + STICK_HEIGHT;
  const height = bottom + 14 + rows * ROW;
  const [endA, endB] = stick.ends;
  return (
    <svg className="drawing" width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={describe(tube, unit)}>
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
      <text x={width - MARGIN} y="14" className="draw-text draw-strong" textAnchor="end">
        <tspan className="draw-soft">node at </tspan>
        <SvgLength shown={markLength(endB.node, unit)} />
        <tspan dx="8">End B</tspan>
      </text>
      <rect className="draw-steel" x={x(0)} y={STICK_TOP} width={stick.blank * scale} height={STICK_HEIGHT} />
      {stick.zones.map((zone) => (
        <g key={zone.bend}>
          <rect fill={`url(#${hatch})`} className="draw-brass-edge" x={x(zone.start)} y={STICK_TOP} width={Math.max(0, (zone.end - zone.start) * scale)} height={STICK_HEIGHT} />
          <text className="draw-text" textAnchor="middle" x={x((zone.start + zone.end) / 2)} y={STICK_TOP - 8}>
            <tspan className="draw-strong">{zone.bend}</tspan>
            <tspan className="draw-soft" dx="5">
              {`${formatAngle(toDegrees(tube.bends[zone.bend - 1]?.angle ?? 0), 1)}°`}
            </tspan>
          </text>
        </g>
      ))}
      <line className="draw-axis" x1={x(Math.min(0, endA.node))} x2={x(Math.max(stick.blank, endB.node))} y1={STICK_TOP + STICK_HEIGHT / 2} y2={STICK_TOP + STICK_HEIGHT / 2} />
      {[endA, endB].map((end, index) => (
        <g key={index}>
          <line className="draw-throat" x1={x(end.throat)} x2={x(end.throat)} y1={STICK_TOP} y2={bottom} />
          <circle className="draw-node" cx={clampTo(x(end.node), 6, width - 6)} cy={STICK_TOP + STICK_HEIGHT / 2} r="5" />
        </g>
      ))}
      {marks.map((mark, index) => {
        const label = laid[index] ?? { left: 0, row: 0 };
        const at = x(mark.at);
        const base = bottom + 14 + label.row * ROW;
        return (
          <g key={`${mark.kind}${mark.bend}`}>
            <path className={`draw-mark draw-mark-${mark.kind}`} d={`M${at} ${STICK_TOP - 4}V${base}`} />
            <rect className="draw-label" x={MARGIN + label.left - 3} y={base + 1} width={labelWidth(mark, mark.shown) + 6} height={ROW - 3} />
            <text className="draw-text" x={MARGIN + label.left} y={base + 15}>
              <tspan className="draw-soft">{mark.words} </tspan>
              <SvgLength shown={mark.shown} />
              {mark.side && <tspan className="draw-brass-text">{mark.side === 'B' ? ' ▸' : ' ◂'}</tspan>}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

const labelWidth = (mark: StickMark, shown: ShownLength): number =>
  LETTER * (mark.words.length + 1) + figureWidth(shown) + (mark.side ? 14 : 0);

const clampTo = (value: number, least: number, greatest: number): number => Math.max(least, Math.min(greatest, value));

/** The drawing in words: every mark with its place, and where its bend lies. */
function describe(tube: SolvedTube, unit: LengthUnit): string {
  const marks = stickMarks(tube).map((mark) => {
    const side = mark.side === null ? '' : `, the bend lies towards end ${mark.side}`;
    return `${mark.words} ${markLength(mark.at, unit).text} ${unit}${side}`;
  });
  return `${tube.name} as a straight stick, measured from end A: ${marks.join('; ')}`;
}
