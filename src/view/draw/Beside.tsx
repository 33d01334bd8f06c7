/** At the pointer: the name of what is aimed at and the leg that leads there, or the fields in which its numbers are typed. */
import type { FormEvent, ReactNode, RefObject } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Leg } from '../../core/shape/draw/leg.ts';
import { tubeName } from '../../core/solve/names.ts';
import type { Frame } from '../../core/solve/types.ts';
import { degrees, slopeInWords } from '../../core/words/drawing.ts';
import { Figure } from '../canvas/Figure.tsx';
import { TYPED_FIELDS, TYPED_LABELS, type TypedField, type TypedTexts } from './typed.ts';

interface Props {
  readonly element: RefObject<HTMLDivElement | null>;
  readonly frame: Frame;
  readonly unit: LengthUnit;
  readonly name: string;
  /** Where that is. */
  readonly place: Vec3 | null;
  readonly leg: Leg | null;
  readonly typed: TypedTexts | null;
  /** Why the tube cannot go there; null where it can. */
  readonly off: string | null;
  /** Why the numbers lead nowhere, once they were entered. */
  readonly refused: string | null;
  readonly onType: (texts: TypedTexts) => void;
  readonly onEnter: () => void;
}

export function Beside({
  element,
  frame,
  unit,
  name,
  place,
  leg,
  typed,
  off,
  refused,
  onType,
  onEnter,
}: Props): ReactNode {
  const enter = (event: FormEvent): void => {
    event.preventDefault();
    onEnter();
  };
  return (
    <div className="draw-beside" ref={element}>
      <div aria-hidden="true">
        <div className="draw-name">{name}</div>
        {leg !== null && (
          <div className="draw-leg">
            <strong>
              <Figure mm={leg.length} unit={unit} />
            </strong>
            <span>{slopeInWords(leg.slope)}</span>
            {leg.turn !== null && <span>turns {degrees(leg.turn)}</span>}
            {leg.meets !== null && (
              <span>
                {degrees(leg.meets.angle)} to {tubeName(frame, leg.meets.tube)}
              </span>
            )}
          </div>
        )}
        {place !== null && (
          <div className="draw-leg">
            {['along', 'offset', 'height'].map((axis, i) => (
              <span key={axis}>
                {axis} <Figure mm={place[i]!} unit={unit} />
              </span>
            ))}
          </div>
        )}
        {off !== null && <div className="draw-refused">▲ {off}</div>}
      </div>
      {typed !== null && (
        <form className="draw-typed" onSubmit={enter}>
          {TYPED_FIELDS.map((field) => (
            <Field key={field} field={field} unit={unit} typed={typed} onType={onType} />
          ))}
          <button type="submit" className="press press-small">
            Enter
          </button>
          {refused !== null && (
            <p className="draw-refused" role="alert">
              ▲ {refused}
            </p>
          )}
        </form>
      )}
    </div>
  );
}

function Field(props: {
  readonly field: TypedField;
  readonly unit: LengthUnit;
  readonly typed: TypedTexts;
  readonly onType: (texts: TypedTexts) => void;
}): ReactNode {
  const { field, unit, typed, onType } = props;
  return (
    <label className="draw-field">
      <span>
        {TYPED_LABELS[field]} {field === 'slope' ? '°' : unit}
      </span>
      <input
        className="draw-input"
        type="text"
        // A number pad has no minus, nor what inches need.
        inputMode={field === 'length' && unit === 'mm' ? 'decimal' : 'text'}
        autoComplete="off"
        spellCheck={false}
        data-pending=""
        // What was typed on the picture goes on here.
        autoFocus={field === 'length'}
        value={typed[field]}
        onChange={(event) => onType({ ...typed, [field]: event.currentTarget.value })}
      />
    </label>
  );
}
