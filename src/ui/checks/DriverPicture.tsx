/** Which places of the driver are measured, and which way the head goes: seen from the left, the front of the car to the left. */
import type { ReactNode } from 'react';
import '../kit/draw.css';

export const DriverPicture = (): ReactNode => (
  <figure className="driver-picture">
    <svg className="drawing" viewBox="28 0 192 150" width="230" height="180" aria-hidden="true">
      <path className="draw-steel" d="M140 70L166 146H66L70 134H144L126 80Z" />
      <path className="draw-outer" d="M30 140L48 112L104 120L112 82Q116 72 128 76L140 128L134 134H74L58 128" />
      <path className="draw-outer" d="M114 88L92 112L58 98" />
      <path className="draw-inner" d="M52 86L60 110" />
      <path className="draw-steel" d="M84 66V40Q86 14 112 14Q140 16 140 44V62Q138 72 126 72H96Z" />
      <path className="draw-inner" d="M84 40H106V56H84" />
      <rect className="draw-grid" x="46" y="6" width="102" height="68" fill="none" />
      <path className="draw-cross" d="M78 28H50M57 22L50 28L57 34" />
      <path className="draw-axis" fill="none" d="M126 78L204 70" />
      <circle className="draw-steel" cx="208" cy="70" r="7" />
      {DOTS.map(([x, y, tx, ty], i) => (
        <g key={i}>
          <circle className="draw-node" cx={x} cy={y} r="4" />
          <text className="draw-figure draw-clear" x={tx} y={ty} fontSize="13">
            {i + 1}
          </text>
        </g>
      ))}
    </svg>
    <figcaption className="small">
      Belted in, helmet on: 1 the highest place of the helmet, 2 the eye, 3 where a belt leaves the shoulder for its
      bar. The dotted box is the helmet with the room that the head moves in.
    </figcaption>
  </figure>
);

const DOTS = [
  [112, 14, 118, 11],
  [92, 48, 100, 53],
  [126, 78, 133, 93],
] as const;
