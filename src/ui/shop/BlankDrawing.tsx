/**
 * The blank drawn at scale: its bend zones, and under each bend a block of its marks, every one measured from the
 * blank's end A.
 */
import { useId, type ReactNode } from 'react';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { spokenReading, tapeReading } from '../../core/units/tape.ts';
import { layBlocks, layBlank, blankMarks, type Blank, type BlankMark } from '../../core/marks/blank.ts';
import { figureWidth, markLength, SvgLength } from './SvgLength.tsx';

const MARGIN = 20;
/** Below this width, pixels, the two ends' headings need a line each. */
const NARROW = 560;
const HEADING = 18;
const BLANK_HEIGHT = 24;
/** How far a mark's line reaches below the blank, and from there to the first row of figures. */
const TICK = 8;
const LEAD = 10;
const ROW = 18;
const TIER_GAP = 6;
/** Room for "4 clamp" before the figures, and for the arrow after them. */
const WORDS = 58;
const ARROW = 18;
/** And for the sign after the figures. */
const LEANS = 12;
const ROWS: readonly BlankMark['kind'][] = ['clamp', 'start', 'end'];

interface BlankDrawingProps {
  readonly tube: SolvedTube;
  /** The bends in the order in which they are made. */
  readonly order: readonly BendStep[];
  readonly width: number;
  readonly unit: LengthUnit;
  /** The finer of the unit's two tapes: marks are given as this tape shows them, as everywhere. */
  readonly fine: boolean;
  /** Why it is not to be cut, else null. */
  readonly fault: string | null;
}

export function BlankDrawing({ tube, order, width, unit, fine, fault }: BlankDrawingProps): ReactNode {
  const hatch = useId();
  const blank = layBlank(tube, order);
  const breadth = width - 2 * MARGIN;
  const scale = breadth / Math.max(blank.length, 1);
  const x = (tape: number): number => MARGIN + tape * scale;
  const { marks, laid, blockWidth, figures, height } = layMarks(blank, width, unit, fine);
  const oneTier = laid.every(({ tier }) => tier === 0);
  const [endA, endB] = blank.ends;
  const top = blankTop(width);
  const bottom = top + BLANK_HEIGHT;
  return (
    <svg
      className="drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={describe(tube, blank, unit, fine, fault)}
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
        {fault === null ? (
          <>
            <tspan className="draw-soft">node at </tspan>
            <SvgLength shown={markLength(endB.node, unit)} />
            <tspan className="draw-soft">, cut at </tspan>
            <SvgLength shown={markLength(blank.length, unit)} />
          </>
        ) : (
          <tspan className="draw-oxide-text">{`× ${fault}`}</tspan>
        )}
        <tspan dx="8">End B</tspan>
      </text>
      <rect className="draw-steel" x={x(0)} y={top} width={blank.length * scale} height={BLANK_HEIGHT} />
      {[0, blank.length - blank.grip[1]].map((from, index) => (
        <rect
          key={index}
          className="draw-scrap"
          x={x(from)}
          y={top}
          width={blank.grip[index]! * scale}
          height={BLANK_HEIGHT}
        />
      ))}
      {blank.zones.map((zone) => (
        <g key={zone.bend}>
          <rect
            fill={`url(#${hatch})`}
            className="draw-brass-edge"
            x={x(zone.start)}
            y={top}
            width={Math.max(0, (zone.end - zone.start) * scale)}
            height={BLANK_HEIGHT}
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
        x2={x(Math.max(blank.length, endB.node))}
        y1={top + BLANK_HEIGHT / 2}
        y2={top + BLANK_HEIGHT / 2}
      />
      {[endA, endB].map((end, index) => (
        <g key={index}>
          <line className="draw-throat" x1={x(end.throat)} x2={x(end.throat)} y1={top} y2={bottom} />
          <circle className="draw-node" cx={clampTo(x(end.node), 6, width - 6)} cy={top + BLANK_HEIGHT / 2} r="5" />
        </g>
      ))}
      {marks.map((mark) => (
        <path
          key={`${mark.kind}${mark.bend}`}
          className={`draw-mark draw-mark-${mark.kind}`}
          d={`M${x(mark.at)} ${top - 4}V${bottom + TICK}`}
        />
      ))}
      {oneTier &&
        blank.zones.map((zone, index) => {
          const left = MARGIN + (laid[index]?.left ?? 0);
          const from = x((zone.start + zone.end) / 2);
          const to = clampTo(from, left, left + blockWidth);
          return (
            <path
              key={zone.bend}
              className="draw-lead"
              d={`M${from} ${bottom + 2}L${to} ${bottom + TICK + LEAD - 4}M${left} ${bottom + TICK + LEAD - 4}H${left + blockWidth - 6}`}
            />
          );
        })}
      {marks.map((mark) => {
        const block = laid[mark.bend - 1] ?? { left: 0, tier: 0 };
        const left = MARGIN + block.left;
        const base = tierTop(block.tier, width) + (ROWS.indexOf(mark.kind) + 1) * ROW - 5;
        return (
          <g key={`${mark.kind}${mark.bend}`}>
            <text className="draw-text draw-soft" x={left} y={base}>
              {mark.words}
            </text>
            <text className="draw-text" x={left + WORDS} y={base}>
              <SvgLength shown={mark.shown} leans={mark.shown.leans} />
            </text>
            <text className="draw-text draw-brass-text" x={left + WORDS + figures + 4} y={base}>
              {mark.side === 'A' ? '◂' : '▸'}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** The marks, one block a bend, and how high the whole drawing becomes. */
function layMarks(blank: Blank, width: number, unit: LengthUnit, fine: boolean) {
  const breadth = width - 2 * MARGIN;
  const { length, zones } = blank;
  const scale = breadth / Math.max(length, 1);
  const marks = blankMarks(blank).map((mark) => ({ ...mark, shown: tapeReading(mark.at, unit, fine) }));
  const figures = Math.max(0, ...marks.map(({ shown }) => figureWidth(shown) + (shown.leans === '' ? 0 : LEANS)));
  const blockWidth = WORDS + figures + ARROW;
  const middles = zones.map(({ start, end }) => ((start + end) / 2) * scale);
  const laid = layBlocks(middles, blockWidth, breadth, 10);
  const tiers = 1 + Math.max(-1, ...laid.map(({ tier }) => tier));
  return { marks, laid, blockWidth, figures, height: tierTop(tiers, width) };
}

const blankTop = (width: number): number => (width < NARROW ? 40 + HEADING : 40);

const tierTop = (tier: number, width: number): number =>
  blankTop(width) + BLANK_HEIGHT + TICK + LEAD + tier * (ROWS.length * ROW + TIER_GAP);

const clampTo = (value: number, least: number, greatest: number): number => Math.max(least, Math.min(greatest, value));

/** What is sawn off after bending; nothing where no grip is left. */
function gripInWords({ grip }: Blank, unit: LengthUnit): string {
  const ends = grip.flatMap((length, i) =>
    length > 0 ? [`${markLength(length, unit).text} ${unit} at end ${i === 0 ? 'A' : 'B'}`] : [],
  );
  return ends.length === 0 ? '' : `, of which ${ends.join(' and ')} is scrap to hold it by`;
}

/** The drawing in words: every mark with its place, and where its bend lies. */
function describe(tube: SolvedTube, blank: Blank, unit: LengthUnit, fine: boolean, fault: string | null): string {
  const marks = blankMarks(blank).map((mark) => {
    return `${mark.words} ${spokenReading(tapeReading(mark.at, unit, fine), unit)}, the bend lies towards end ${mark.side}`;
  });
  const cut = fault ?? `cut to ${markLength(blank.length, unit).text} ${unit}${gripInWords(blank, unit)}`;
  return `The blank of ${tube.name}, ${cut}, measured from end A: ${marks.join('; ')}`;
}
