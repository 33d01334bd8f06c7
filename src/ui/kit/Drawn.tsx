/**
 * A drawing on the screen: the same marks that paper is printed with, in the screen's ink, and in the colours that drawn.css has for their
 * layers. One user unit is a millimetre.
 */
import type { ReactNode } from 'react';
import { isCircle } from '../../drawing/move.ts';
import type { Mark, Pen, Picture } from '../../drawing/types.ts';
import { SetWords } from './SetWords.tsx';
import './drawn.css';

interface DrawnProps extends Picture {
  /** Pixels a millimetre; letters of 3.1 mm are read from 4 on. */
  readonly scale: number;
  /** For whoever cannot see it; the words beside it say the rest. */
  readonly label: string;
}

export const Drawn = ({ marks, width, height, scale, label }: DrawnProps): ReactNode => (
  <svg
    className="drawn"
    width={width * scale}
    height={height * scale}
    viewBox={`0 0 ${width} ${height}`}
    role="img"
    aria-label={label}
  >
    {marks.map((mark, i) => drawn(mark, height, i))}
  </svg>
);

function drawn(mark: Mark, height: number, key: number): ReactNode {
  const place = ({ x, y }: { readonly x: number; readonly y: number }): string => `${short(x)} ${short(height - y)}`;
  const onLayer = `layer-${mark.layer}`;
  if (mark.kind === 'words') {
    const { at, text, size, anchor, bold } = mark;
    return (
      <text
        key={key}
        className={`${onLayer} drawn-words ${bold ? 'drawn-bold' : ''}`}
        x={short(at.x)}
        y={short(height - at.y)}
        fontSize={size}
        textAnchor={anchor}
      >
        <SetWords text={text} size={size} />
      </text>
    );
  }
  if (mark.kind === 'line') {
    const path = `M${mark.places.map(place).join('L')}${mark.closed ? 'Z' : ''}`;
    const look = `${onLayer} ${fillOf(mark.fill)} ${strokeOf(mark.pen)}`;
    return <path key={key} d={path} className={look} {...stroked(mark.pen)} />;
  }
  const { centre, radius, from, to, pen } = mark;
  const look = { className: `${onLayer} drawn-open ${strokeOf(pen)}`, ...stroked(pen) };
  if (isCircle(mark))
    return <circle key={key} cx={short(centre.x)} cy={short(height - centre.y)} r={radius} {...look} />;
  const on = (angle: number) =>
    place({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
  const large = to - from > Math.PI ? 1 : 0;
  return <path key={key} d={`M${on(from)}A${radius} ${radius} 0 ${large} 0 ${on(to)}`} {...look} />;
}

const short = (mm: number): string => mm.toFixed(3);

/** Black is ink, white is the ground it lies on, whatever colours these have; greys lie between. */
const fillOf = (fill: number | null): string =>
  fill === null ? 'drawn-open' : fill === 0 ? 'drawn-ink' : fill === 1 ? 'drawn-ground' : 'drawn-grey';

const strokeOf = (pen: Pen | null): string => (pen === null ? '' : pen.grey === 0 ? 'drawn-stroke' : 'drawn-faint');

const stroked = (pen: Pen | null) => ({
  strokeWidth: pen?.width,
  strokeDasharray: pen?.dash?.join(' '),
});
