/** What each way of giving a place measures, in a small picture; the words beside it say the same. */
import type { ReactNode } from 'react';
import type { Way } from '../../core/shape/ways.ts';
import '../kit/draw.css';

export function PlacePicture({ way }: { way: Way }): ReactNode {
  const { says, drawn } = PICTURES[way];
  return (
    <figure className="way">
      <svg className="drawing" viewBox="0 0 120 64" width="120" height="64" aria-hidden="true">
        {drawn}
      </svg>
      <figcaption className="small">{says}</figcaption>
    </figure>
  );
}

const Tube = ({ d }: { d: string }): ReactNode => <path className="way-tube" d={d} />;
const Axis = ({ d }: { d: string }): ReactNode => <path className="draw-axis" fill="none" d={d} />;
const Measured = ({ d }: { d: string }): ReactNode => <path className="draw-cross" d={d} />;
const Other = ({ at: [x, y] }: { at: readonly [number, number] }): ReactNode => (
  <circle className="draw-steel" cx={x} cy={y} r="4" />
);
const Node = ({ at: [x, y] }: { at: readonly [number, number] }): ReactNode => (
  <circle className="draw-node" cx={x} cy={y} r="5" />
);

const HOOP = 'M20 60V26Q20 10 36 10H84Q100 10 100 26V60';

const PICTURES: Readonly<Record<Way, { readonly says: string; readonly drawn: ReactNode }>> = {
  fixed: {
    says: 'Measured from the datum, along, across and up.',
    drawn: (
      <>
        <Axis d="M12 56H112M12 56V6" />
        <Measured d="M12 22H80M80 56V22" />
        <Node at={[80, 22]} />
      </>
    ),
  },
  point: {
    says: 'So far from a measured point; it follows the point.',
    drawn: (
      <>
        <Measured d="M30 46H82V20" />
        <Other at={[30, 46]} />
        <Node at={[82, 20]} />
      </>
    ),
  },
  clear: {
    says: 'The tube’s outside stands off the trim by the gap; a wider tube moves the node away. At a corner the bend stands further off.',
    drawn: (
      <>
        <path className="draw-steel" d="M20 4H28V60H20Z" />
        <path className="draw-steel" d="M70 4H94V60H70Z" />
        <Axis d="M82 4V60" />
        <Measured d="M28 32H70M34 27L28 32L34 37M64 27L70 32L64 37" />
        <Node at={[82, 32]} />
      </>
    ),
  },
  on: {
    says: 'So far along the tube’s centreline, round its bends, from an end or from a bend.',
    drawn: (
      <>
        <Tube d={HOOP} />
        <Measured d="M20 60V26Q20 10 36 10H62" />
        <Node at={[66, 10]} />
      </>
    ),
  },
  until: {
    says: 'Where the tube comes to that height, or that place along or across the car.',
    drawn: (
      <>
        <Tube d={HOOP} />
        <Axis d="M4 34H116" />
        <Measured d="M60 60V34M55 54L60 60L65 54M55 40L60 34L65 40" />
        <Node at={[20, 34]} />
      </>
    ),
  },
  crossing: {
    says: 'Where the endless line through two nodes crosses the tube, or passes nearest to it.',
    drawn: (
      <>
        <Tube d="M18 58L102 8" />
        <Axis d="M4 20L116 46" />
        <Other at={[22, 24]} />
        <Other at={[100, 42]} />
        <Node at={[61, 33]} />
      </>
    ),
  },
  between: {
    says: 'On the line from one node to another, a share of the way.',
    drawn: (
      <>
        <Axis d="M16 52L104 12" />
        <Measured d="M16 52L56 34" />
        <Other at={[16, 52]} />
        <Other at={[104, 12]} />
        <Node at={[60, 32]} />
      </>
    ),
  },
  ray: {
    says: 'From a node in a direction, until a height, an offset or a place along the car is reached.',
    drawn: (
      <>
        <Axis d="M4 54H116" />
        <Measured d="M34 10L80 50M70 49L80 50L78 40" />
        <Other at={[34, 10]} />
        <Node at={[84, 54]} />
      </>
    ),
  },
  'lined-up': {
    says: 'Each coordinate on its own: a number, or in line with a node or a point.',
    drawn: (
      <>
        <Axis d="M10 20H112M82 6V60" />
        <Other at={[24, 20]} />
        <Other at={[82, 52]} />
        <Node at={[82, 20]} />
      </>
    ),
  },
};
