/** One stick of the plan: drawn to scale, its parts in their order, what is left of it, and the key that says it was sawn. */
import { useEffect, useMemo, useRef, type ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import { sawStick, type StillToSaw } from '../../core/shape/saw-stick.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { isKept } from '../../core/stock/kept.ts';
import { lastCut } from '../../core/stock/last-cut.ts';
import type { CutStick, Part, Sawing } from '../../core/stock/types.ts';
import {
  lastCutInWords,
  leftInWords,
  offListInWords,
  partInWords,
  sawnInWords,
  stickInWords,
} from '../../core/words/stock.ts';
import { stickDrawing } from '../../drawing/stick.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { editor, jobDocument, useEditor } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { Command } from '../kit/Command.tsx';
import { Drawn } from '../kit/Drawn.tsx';
import { screenLetters } from '../kit/letters.ts';
import { scaleOn } from '../kit/scale.ts';
import { useSpace } from '../kit/useSpace.ts';

interface StickCardProps {
  /** 1 = the first that is sawn. */
  readonly number: number;
  readonly stick: CutStick;
  /** That the plan is of. */
  readonly frame: Pick<Derived, 'job' | 'byId'>;
  /** What of the plan is still to come then. */
  readonly rest: StillToSaw;
  readonly sawing: Sawing;
  /** mm: how long a stick is that fills the width. */
  readonly longest: number;
  /** The hand goes on to it: the one before was sawn. */
  readonly isNext: boolean;
  readonly onArrived: () => void;
  readonly onSawn: (number: number, words: string) => void;
}

export function StickCard(props: StickCardProps): ReactNode {
  const { number, stick, frame, sawing, longest } = props;
  const { job, byId } = frame;
  const unit = job.lengthUnit;
  const sort = useMemo(() => job.stickSorts.find(({ id }) => id === stick.stick), [job, stick]);
  const kept = isKept(job, stick.left);
  const { frame: space, width } = useSpace();
  const scale = scaleOn(width);
  const names = useMemo(() => stick.parts.map((part) => shortName(part, byId)), [stick, byId]);
  const length = sort?.length ?? 0;
  const picture = useMemo(() => {
    const parts = stick.parts.map((part, i) => ({ name: names[i]!, length: part.length }));
    const drawn = { ...sawing, length, parts, left: stick.left, isKept: kept };
    return stickDrawing(screenLetters, drawn, { longest, width: width / scale, unit });
  }, [stick, sawing, length, kept, longest, width, scale, unit, names]);
  if (sort === undefined) return null;
  const atLast = lastCutInWords(lastCut(length, stick.parts, sawing), unit);
  const said = stickInWords(sort, unit);
  return (
    <li className="stick">
      <StickHead {...props} said={said} />
      <div ref={space}>
        {width > 0 && (
          <Drawn
            {...picture}
            scale={scale}
            label={`Stick ${number}, ${said}, to scale: ${names.join(', ')}; ${leftInWords(stick.left, kept, unit)}`}
          />
        )}
      </div>
      <ol className="stick-parts">
        {stick.parts.map((part, i) => (
          <li key={part.id}>
            <PartName part={part} name={names[i]!} tube={byId.get(part.id)} /> <Length mm={part.length} />
          </li>
        ))}
        <li className="stick-left">{leftInWords(stick.left, kept, unit)}</li>
        {atLast !== null && <li className="stick-left">{atLast}</li>}
      </ol>
    </li>
  );
}

/** What it is, and the key that says it was sawn. */
function StickHead({
  number,
  stick,
  frame: { byId },
  rest,
  said,
  ...moved
}: StickCardProps & { said: string }): ReactNode {
  const { isNext, onArrived, onSawn } = moved;
  // Not its key: a key pressed twice would saw two sticks.
  const heading = useRef<HTMLHeadingElement | null>(null);
  useEffect(() => {
    if (!isNext) return;
    heading.current?.focus();
    onArrived();
  }, [isNext, onArrived]);
  const sayIt = (): void => {
    const names = stick.parts.map((part) => partInWords(part, byId));
    const { job } = jobDocument.getState();
    const off = offListInWords(stick.left, job);
    if (off !== null) editor.getState().say({ message: off, damaged: [] });
    onSawn(number, sawnInWords(number, names, stick.left, job));
  };
  return (
    <div className="stick-head">
      <h4 ref={heading} tabIndex={-1}>
        Stick {number}: {said}
      </h4>
      <Command
        quiet
        step={`Stick ${number} sawn`}
        label={`Stick ${number} is sawn`}
        run={(now) => sawStick(now, jobDocument.getState().derived, stick, { on: dayOf(new Date()), rest })}
        onDone={sayIt}
      >
        Sawn
      </Command>
    </div>
  );
}

type Tubes = ReadonlyMap<string, { readonly number: number; readonly name: string }>;

/** As it stands on the bar: a tube's number, S for a spare. */
const shortName = ({ id, spare }: Part, byId: Tubes): string =>
  spare === null ? String(byId.get(id)?.number ?? '?') : 'S';

/** A tube is chosen by its name, here as in every list. */
function PartName({ part, name, tube }: { part: Part; name: string; tube: SolvedTube | undefined }): ReactNode {
  const isChosen = useEditor(({ selection }) => selection?.kind === 'tube' && selection.id === part.id);
  if (tube === undefined) return <span>Spare</span>;
  return (
    <button
      type="button"
      className="stick-part"
      aria-pressed={isChosen}
      onClick={() => editor.getState().select({ kind: 'tube', id: tube.id })}
    >
      <span className="figure">{name}</span> {tube.name}
    </button>
  );
}
