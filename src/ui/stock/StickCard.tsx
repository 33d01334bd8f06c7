/** One stick of the plan: drawn to scale, its parts in their order, what is left of it, and the key that says it was sawn. */
import { useMemo, type ReactNode } from 'react';
import { sawStick, type StillToSaw } from '../../core/shape/saw-stick.ts';
import { isKept } from '../../core/stock/kept.ts';
import type { CutStick, Part, Sawing } from '../../core/stock/types.ts';
import { leftInWords, stickInWords } from '../../core/words/stock.ts';
import { stickDrawing } from '../../drawing/stick.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { editor, jobDocument, useDocument, useEditor } from '../../store/page.ts';
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
  /** What of the plan is still to come then. */
  readonly rest: StillToSaw;
  readonly sawing: Sawing;
  /** mm: how long a stick is that fills the width. */
  readonly longest: number;
}

export function StickCard({ number, stick, rest, sawing, longest }: StickCardProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const sort = useDocument((state) => state.job.stickSorts.find(({ id }) => id === stick.stick));
  const kept = useDocument((state) => isKept(state.job, stick.left));
  const byId = useDocument((state) => state.derived.byId);
  const { frame, width } = useSpace();
  const scale = scaleOn(width);
  const names = useMemo(() => stick.parts.map((part) => shortName(part, byId)), [stick, byId]);
  const length = sort?.length ?? 0;
  const picture = useMemo(() => {
    const parts = stick.parts.map((part, i) => ({ name: names[i]!, length: part.length }));
    const drawn = { ...sawing, length, parts, left: stick.left, isKept: kept };
    return stickDrawing(screenLetters, drawn, { longest, width: width / scale, unit });
  }, [stick, sawing, length, kept, longest, width, scale, unit, names]);
  if (sort === undefined) return null;
  const said = stickInWords(sort, unit);
  return (
    <li className="stick">
      <div className="stick-head">
        <h4>
          Stick {number}: {said}
        </h4>
        <Command
          quiet
          step={`Stick ${number} sawn`}
          label={`Stick ${number} is sawn`}
          run={(job) => sawStick(job, jobDocument.getState().derived, stick, { on: dayOf(new Date()), rest })}
        >
          Sawn
        </Command>
      </div>
      <div ref={frame}>
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
            <PartName part={part} name={names[i]!} /> <Length mm={part.length} />
          </li>
        ))}
        <li className="stick-left">{leftInWords(stick.left, kept, unit)}</li>
      </ol>
    </li>
  );
}

type Tubes = ReadonlyMap<string, { readonly number: number; readonly name: string }>;

/** As it stands on the bar: a tube's number, S for a spare. */
const shortName = ({ id, spare }: Part, byId: Tubes): string =>
  spare === null ? String(byId.get(id)?.number ?? '?') : 'S';

/** A tube is chosen by its name, here as in every list. */
function PartName({ part, name }: { part: Part; name: string }): ReactNode {
  const tube = useDocument((state) => state.derived.byId.get(part.id));
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
