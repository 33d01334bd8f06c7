/** The chart of the pulls, drawn; its text alternative holds every reading. */
import { useId, type ReactNode } from 'react';
import type { Pull } from '../../core/job/kinds/pull.ts';
import type { PullLaw } from '../../core/springback/pull-law.ts';
import { layPullChart, pullChartInWords } from './pull-chart.ts';
import { useSpace } from '../kit/useSpace.ts';

const ARM = 5;

export function PullChart(props: { pulls: readonly Pull[]; law: PullLaw | null; spring: number | null }): ReactNode {
  const { pulls, law, spring } = props;
  const { frame, width } = useSpace();
  const field = useId();
  const chart = layPullChart(pulls, law, spring, width);
  const { left, right, top, bottom } = chart.plot;
  return (
    <figure className="pull-chart" ref={frame}>
      {width > 0 && (
        <svg
          className="drawing"
          width={width}
          height={chart.height}
          viewBox={`0 0 ${width} ${chart.height}`}
          role="img"
          aria-label={pullChartInWords(pulls, law, spring)}
        >
          <defs>
            <clipPath id={field}>
              <rect x={left} y={top} width={right - left} height={bottom - top} />
            </clipPath>
          </defs>
          <rect className="draw-sheet" x={left} y={top} width={right - left} height={bottom - top} />
          <g clipPath={`url(#${field})`}>
            {chart.band && <path className="draw-brass-wash" d={chart.band} />}
            {chart.up.map(({ at, text }) => (
              <path key={text} className="draw-grid" d={`M${left} ${at}H${right}`} />
            ))}
            {chart.across.map(({ at, text }) => (
              <path key={text} className="draw-grid" d={`M${at} ${top}V${bottom}`} />
            ))}
            {chart.estimate && <path className="draw-inner" d={chart.estimate.path} />}
            {chart.line && <path className="draw-outer" d={chart.line} />}
          </g>
          {chart.estimate && (
            <text className="draw-text draw-soft draw-clear" x={right - 6} y={chart.estimate.labelAt} textAnchor="end">
              steel alone, an estimate
            </text>
          )}
          {chart.crosses.map(({ x, y, counts }, index) => (
            <path
              key={index}
              className={counts ? 'draw-cross' : 'draw-cross draw-cross-apart'}
              d={`M${x - ARM} ${y - ARM}l${2 * ARM} ${2 * ARM}m0 ${-2 * ARM}l${-2 * ARM} ${2 * ARM}`}
            />
          ))}
          {chart.up.map(({ at, text }) => (
            <text key={text} className="draw-text draw-figure" x={left - 6} y={at + 4} textAnchor="end">
              {text}
            </text>
          ))}
          {chart.across.map(({ at, text }, index) => (
            <text
              key={text}
              className="draw-text draw-figure"
              x={at}
              y={bottom + 15}
              textAnchor={index === chart.across.length - 1 ? 'end' : 'middle'}
            >
              {text}
            </text>
          ))}
          <text className="draw-text draw-soft" x={left} y={top - 9}>
            opens by
          </text>
          <text className="draw-text draw-soft" x={right} y={chart.height - 4} textAnchor="end">
            net angle
          </text>
        </svg>
      )}
      <figcaption className="small">
        <span className="draw-brass-sign" aria-hidden="true">
          ✕
        </span>{' '}
        a pull{chart.line && ' · line: what is pulled past the finished angle, as far as these pulls are enough'}
        {chart.band && ' · band: 95 % of further pulls'}
        {chart.crosses.some(({ counts }) => !counts) && law !== null && ' · pale: other batches'}
      </figcaption>
    </figure>
  );
}
