/**
 * Where each tape figure is taken: the car seen from behind at the hoop, at the windscreen, and from the side, drawn by the figures themselves.
 * Each figure has its letter; the one whose field is in hand stands out, and its view stays in sight beside the fields.
 */
import type { ReactNode } from 'react';
import type { Asked, FigureName } from '../../core/shape/starters/asked.ts';
import '../kit/draw.css';

interface Sketch {
  readonly asked: Asked;
  readonly letters: ReadonlyMap<FigureName, string>;
  readonly pointed: FigureName | null;
}

type At = readonly [number, number];

interface Dimension {
  readonly figure: FigureName;
  readonly from: At;
  readonly to: At;
}

export function CarSketch(sketch: Sketch): ReactNode {
  const { asked } = sketch;
  const of = (figure: FigureName): number => asked.figures[figure].value;
  const hasFront = asked.layout !== 'roll-bar';
  const half = (figure: FigureName): number => of(figure) / 2;
  const [belt, roof] = [of('beltHeight'), of('roofHeight')];
  const section = (widths: readonly (readonly [y: number, z: number])[]): string => {
    const left = widths.map(([y, z]): At => [-y, z]);
    return lineOf([...left, ...widths.toReversed()]);
  };
  const wide = (figure: FigureName, z: number): Dimension => ({
    figure,
    from: [-half(figure), z],
    to: [half(figure), z],
  });
  const high = (figure: FigureName, y: number): Dimension => ({ figure, from: [y, 0], to: [y, of(figure)] });
  const aside = half('beltWidth');
  return (
    <>
      <View
        {...sketch}
        title="At the hoop, from behind"
        box={[-aside - 300, -110, 2 * aside + 520, roof + 220]}
        body={section([
          [half('floorWidth'), 0],
          [aside, belt],
          [half('roofWidth'), roof],
        ])}
        dimensions={[
          wide('floorWidth', 0),
          wide('beltWidth', belt),
          wide('roofWidth', roof),
          high('beltHeight', aside + 90),
          high('roofHeight', -aside - 70),
          high('harnessHeight', -aside - 210),
          wide('towerWidth', of('towerHeight')),
        ]}
      />
      {hasFront && (
        <View
          {...sketch}
          title="At the windscreen, from behind"
          box={[-aside - 300, -110, 2 * aside + 520, roof + 220]}
          body={section([
            [half('frontFootWidth'), of('frontFootHeight')],
            [half('screenFootWidth'), of('screenFootHeight')],
            [half('screenTopWidth'), of('screenTopHeight')],
          ])}
          dimensions={[
            wide('frontFootWidth', of('frontFootHeight')),
            wide('screenFootWidth', of('screenFootHeight')),
            wide('screenTopWidth', of('screenTopHeight')),
            high('frontFootHeight', aside + 90),
            high('screenFootHeight', -aside - 70),
            high('screenTopHeight', -aside - 210),
          ]}
        />
      )}
      <View
        {...sketch}
        title="From the side, ahead is right"
        box={[-of('towerBehind') - 350, -260, of('towerBehind') + of('screenFootAhead') + 800, roof + 360]}
        body={lineOf([
          [-of('towerBehind') - 300, belt],
          [-of('towerBehind') + 120, belt + 40],
          [-150, roof],
          [of('screenTopAhead'), of('screenTopHeight')],
          [of('screenFootAhead'), of('screenFootHeight')],
          [of('screenFootAhead') + 400, of('screenFootHeight') - 60],
        ])}
        dimensions={[
          { figure: 'towerBehind', from: [0, -90], to: [-of('towerBehind'), -90] },
          { figure: 'towerHeight', from: [-of('towerBehind'), 0], to: [-of('towerBehind'), of('towerHeight')] },
          ...(hasFront
            ? ([
                { figure: 'frontFootAhead', from: [0, -90], to: [of('frontFootAhead'), -90] },
                {
                  figure: 'screenTopAhead',
                  from: [0, of('screenTopHeight') - 130],
                  to: [of('screenTopAhead'), of('screenTopHeight') - 130],
                },
                {
                  figure: 'screenFootAhead',
                  from: [0, of('screenFootHeight') - 90],
                  to: [of('screenFootAhead'), of('screenFootHeight') - 90],
                },
              ] as const)
            : []),
        ]}
        plumb={roof}
      />
    </>
  );
}

const lineOf = (places: readonly At[]): string => `M${places.map(([x, z]) => `${x} ${-z}`).join('L')}`;

interface ViewProps extends Sketch {
  readonly title: string;
  /** Left, low, width, height, mm. */
  readonly box: readonly [number, number, number, number];
  readonly body: string;
  readonly dimensions: readonly Dimension[];
  /** Height of the hoop's plumb line where it is seen from the side. */
  readonly plumb?: number;
}

/** mm on the sketch: letters, and the ticks at a dimension's ends. */
const LETTER = 120;
const TICK = 30;

function View({
  title,
  box: [left, low, width, height],
  body,
  dimensions,
  letters,
  pointed,
  plumb,
}: ViewProps): ReactNode {
  return (
    <figure className="start-view">
      <svg className="drawing" viewBox={`${left} ${-low - height} ${width} ${height}`} role="img" aria-label={title}>
        <path className="start-floor" d={`M${left} 0H${left + width}`} />
        <path className="start-body" d={body} />
        {plumb !== undefined && <path className="start-plumb" d={`M0 90V${-plumb - 60}`} />}
        {dimensions.map(({ figure, from, to }) => {
          const letter = letters.get(figure);
          if (letter === undefined) return null;
          const level = from[1] === to[1];
          const tick = level ? `V${-from[1] + TICK}V${-from[1] - TICK}` : `H${from[0] + TICK}H${from[0] - TICK}`;
          const tock = level
            ? `M${to[0]} ${-to[1] - TICK}V${-to[1] + TICK}`
            : `M${to[0] - TICK} ${-to[1]}H${to[0] + TICK}`;
          const middle: At = level
            ? [from[0] + (figure === 'towerWidth' ? 0.8 : 0.56) * (to[0] - from[0]), from[1]]
            : [from[0], from[1] + 0.5 * (to[1] - from[1])];
          return (
            <g key={figure} className={figure === pointed ? 'start-dimension start-pointed' : 'start-dimension'}>
              <path d={`M${from[0]} ${-from[1]}${tick}M${lineOf([from, to]).slice(1)}${tock}`} />
              <circle cx={middle[0]} cy={-middle[1]} r={LETTER * 0.62} />
              <text x={middle[0]} y={-middle[1] + LETTER * 0.34} textAnchor="middle">
                {letter}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption className="small">{title}</figcaption>
    </figure>
  );
}
