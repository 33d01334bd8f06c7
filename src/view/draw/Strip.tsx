/** What one is about to do, along the upper edge: of what tube, for which side, and the ways out. */
import { useLayoutEffect, useRef, type ReactNode } from 'react';
import { shownName } from '../../core/job/shown.ts';
import type { Drawing } from '../../store/types.ts';
import { LATELY, SIGNS } from './signs.ts';
import type { DrawingHands } from './useDrawing.ts';

/** What comes next, by how many places there are. */
export const nextStep = ({ places }: Drawing): string => WHAT_NEXT[Math.min(places.length, 2)]!;

const WHAT_NEXT = [
  'Press where it begins: a point, a node, a tube, the floor.',
  'Press where it goes, or type how long the leg is.',
  'Go on to the next corner, or end it here: Enter.',
] as const;

/** What is drawn: on both sides, on one, or as its places lie. */
const SIDES = { lies: null, both: true, one: false } as const;

const HINT = 'Rest on a place, and what comes next lines up with it.';
/** How to look from elsewhere, which a person wants half-way: by mouse or keys, and by finger, where one finger aims. */
const LOOK = 'Drag beside the tubes to turn the view, or Alt + arrows.';
const LOOK_BY_FINGER = 'Two fingers move the view, its keys below turn it.';

const LEGEND = [
  { d: SIGNS.named, means: 'place' },
  { d: SIGNS.along, means: 'on a tube' },
  { d: SIGNS.space, means: 'in the air' },
  { d: LATELY, means: 'lines up' },
] as const;

/** The signs at the pointer, with what they mean. */
const Legend = (): ReactNode => (
  <ul className="draw-legend">
    {LEGEND.map(({ d, means }) => (
      <li key={means}>
        <svg viewBox="-17 -12 34 24" aria-hidden="true">
          <path d={d} />
        </svg>
        {means}
      </li>
    ))}
  </ul>
);

interface Props {
  readonly hands: DrawingHands;
  /** Opens the fields of numbers, where there is no key to type one with. */
  readonly onNumbers: () => void;
  readonly onCover: (pixels: number) => void;
}

export function Strip({ hands, onNumbers, onCover }: Props): ReactNode {
  const strip = useRef<HTMLElement>(null);
  // As it is at first: it grows and shrinks a line on the way, for which the picture must not move.
  useLayoutEffect(() => {
    const { offsetTop, offsetHeight } = strip.current!;
    onCover(offsetTop + offsetHeight);
    return () => onCover(0);
  }, [onCover]);
  const { refused, drawing, job, stock, bothSides, change, takeBack, end, giveUp } = hands;
  const count = drawing.places.length;
  return (
    <section className="draw-strip" ref={strip} aria-label="Draw a tube">
      <div className="draw-head">
        <p className={refused === null ? 'draw-next' : 'draw-refused'} role={refused === null ? undefined : 'alert'}>
          {refused !== null && <span aria-hidden="true">▲ </span>}
          {refused ?? nextStep(drawing)}
        </p>
        {count > 0 && (
          <button type="button" className="press press-small draw-key" onClick={onNumbers}>
            By numbers
          </button>
        )}
        <button type="button" className="press press-small press-quiet draw-key" onClick={giveUp}>
          Give up
        </button>
      </div>
      {count === 0 && <Legend />}
      {count === 1 && <p className="draw-hint">{HINT}</p>}
      {count > 1 && (
        <p className="draw-hint">
          <span className="draw-by-mouse">{LOOK}</span>
          <span className="draw-by-finger">{LOOK_BY_FINGER}</span>
        </p>
      )}
      <div className="draw-keys">
        {job.sections.length > 1 && (
          <label className="draw-choice">
            <span>Tube</span>
            <select value={stock.section} onChange={(event) => change({ section: event.currentTarget.value })}>
              {job.sections.map(({ id, name }) => (
                <option key={id} value={id}>
                  {shownName(name) || id}
                </option>
              ))}
            </select>
          </label>
        )}
        <label className="draw-choice">
          <span>Sides</span>
          <select
            value={drawing.bothSides === null ? 'lies' : drawing.bothSides ? 'both' : 'one'}
            onChange={(event) => change({ bothSides: SIDES[event.currentTarget.value as keyof typeof SIDES] })}
          >
            <option value="lies">{bothSides ? 'automatic: both' : 'automatic: one'}</option>
            <option value="both">both sides</option>
            <option value="one">one side</option>
          </select>
        </label>
        {count > 0 && (
          <>
            <button
              type="button"
              className={count < 2 ? 'press press-small draw-key' : 'press press-small press-live draw-key'}
              disabled={count < 2}
              onClick={end}
            >
              End the tube
            </button>
            <button type="button" className="press press-small draw-key" onClick={takeBack}>
              Take back
            </button>
          </>
        )}
      </div>
    </section>
  );
}
