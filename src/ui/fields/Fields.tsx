/** The fields that stations use: one for each kind of value. */
import { useId, type ReactNode } from 'react';
import { formatLength } from '../../core/units/length.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField, type Committing, type Leaving, type Note } from './EntryField.tsx';
import {
  angleKind,
  bendAngleKind,
  dayKind,
  deviationKind,
  lengthKind,
  numberKind,
  orNothing,
  sizeKind,
  textKind,
  wallKind,
} from './kinds.ts';
import { Rounded } from './Readings.tsx';

export interface FieldProps<T> extends Committing<T> {
  readonly label: string;
  readonly labelUnseen?: boolean;
  readonly value: T;
  readonly startWith?: string;
  readonly takesFocus?: boolean;
  onLeave?(how: Leaving): void;
  onNote?(note: Note | null): void;
}

/** A length in mm, typed and shown in the job's unit. `size`: only more than zero will do. */
export function LengthField({
  size = false,
  ...props
}: FieldProps<number> & { size?: boolean; unsaid?: boolean }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const shown = formatLength(props.value, unit);
  return (
    <EntryField
      {...props}
      kind={size ? sizeKind(unit) : lengthKind(unit)}
      unit={unit}
      numeric
      drawn={<Rounded shown={shown} />}
    />
  );
}

/** A length above zero, or nothing where it is not said. */
export function SizeOrNothingField(props: FieldProps<number | null>): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const drawn = props.value === null ? undefined : <Rounded shown={formatLength(props.value, unit)} />;
  return <EntryField {...props} kind={orNothing(sizeKind(unit))} unit={unit} numeric drawn={drawn} />;
}

/** A length of either sign, or nothing where it is not said. */
export function LengthOrNothingField(props: FieldProps<number | null>): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const drawn = props.value === null ? undefined : <Rounded shown={formatLength(props.value, unit)} />;
  return <EntryField {...props} kind={orNothing(lengthKind(unit))} unit={unit} numeric drawn={drawn} />;
}

/** The wall of a tube, in decimals of the job's unit. */
export function WallField(props: FieldProps<number>): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return <EntryField {...props} kind={wallKind(unit)} unit={unit} numeric />;
}

/** An angle in degrees. */
export function AngleField(props: FieldProps<number>): ReactNode {
  return <EntryField {...props} kind={angleKind} unit="°" numeric />;
}

/** An angle that a bender is pulled to, or that a bend came out with. */
export function BendAngleField(props: FieldProps<number>): ReactNode {
  return <EntryField {...props} kind={bendAngleKind} unit="°" numeric />;
}

/** A day, or nothing. */
export function DayField(props: FieldProps<string>): ReactNode {
  return <EntryField {...props} kind={dayKind} />;
}

/** A plain number from `least` to `greatest`; a nudge is `step`. */
export function NumberField(props: FieldProps<number> & { least: number; greatest: number; step: number }): ReactNode {
  const { least, greatest, step, ...rest } = props;
  return <EntryField {...rest} kind={numberKind(least, greatest, step)} numeric />;
}

/** How far marks lie off, from 0 to `greatest` mm, in decimals of the job's unit. */
export function DeviationField({ greatest, ...props }: FieldProps<number> & { greatest: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return <EntryField {...props} kind={deviationKind(unit, greatest)} numeric />;
}

/** A name or a word. */
export function TextField(
  props: FieldProps<string> & { mayBeEmpty?: boolean; suggestions?: readonly string[] },
): ReactNode {
  const { mayBeEmpty = false, ...rest } = props;
  return <EntryField {...rest} kind={textKind(mayBeEmpty)} />;
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** One of a list; the choice is taken at once. A value that is not in the list is shown as it is. */
export function SelectField(props: {
  label: string;
  labelUnseen?: boolean;
  value: string;
  choices: readonly Choice[];
  refusal?: string | null;
  takesFocus?: boolean;
  onChoose: (value: string) => void;
  onLeave?: (how: Leaving) => void;
}): ReactNode {
  const { value, choices, refusal, onLeave } = props;
  const id = useId();
  const known = choices.some((choice) => choice.value === value);
  return (
    <div className={refusal ? 'entry entry-refused' : 'entry'}>
      <label htmlFor={id} className={props.labelUnseen ? 'spoken-only' : 'entry-label'}>
        {props.label}
      </label>
      <select
        id={id}
        className="entry-input entry-select"
        value={value}
        autoFocus={props.takesFocus}
        aria-invalid={refusal ? true : undefined}
        aria-describedby={refusal ? `${id}-note` : undefined}
        onChange={(event) => props.onChoose(event.currentTarget.value)}
        onKeyDown={(event) => {
          const how =
            event.key === 'Enter' ? 'enter' : event.key === 'Escape' ? 'escape' : event.key === 'Tab' ? 'tab' : null;
          if (how === null || onLeave === undefined) return;
          event.preventDefault();
          event.stopPropagation();
          onLeave(how === 'tab' && event.shiftKey ? 'back-tab' : how);
        }}
        onBlur={() => onLeave?.('blur')}
      >
        {!known && <option value={value}>{value === '' ? 'choose…' : value}</option>}
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      {refusal && (
        <p id={`${id}-note`} className="entry-note entry-note-refused" role="alert">
          <span aria-hidden="true">▲ </span>
          {refusal}
        </p>
      )}
    </div>
  );
}
