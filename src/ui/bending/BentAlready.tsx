/** In the Shop, of a tube without a bend run: it was bent elsewhere, or nobody read it at the machine, and there is a tape. */
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { findRun } from '../../core/edit/bent.ts';
import { asBent } from '../../core/run/as-bent.ts';
import type { CheckDimension } from '../../core/run/check-dimensions.ts';
import { onBlank } from '../../core/solve/as-built.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { checkInWords, whenChecked } from '../../core/words/run.ts';
import { letteredChecks } from '../../drawing/bent/bent-views.ts';
import { useDocument } from '../../store/page.ts';
import { DraftField } from '../fields/DraftField.tsx';
import { orNothing, readBackOf, tapeKind } from '../fields/kinds.ts';
import { Length } from '../fields/Readings.tsx';
import { Section } from '../kit/Section.tsx';
import { TapeFit } from './TapeFit.tsx';
import { useFeed } from './useFeed.ts';
import { WhereTaken } from './WhereTaken.tsx';

export function BentAlready({ tube }: { tube: SolvedTube }): ReactNode {
  const begun = useDocument((state) => findRun(state.job, tube.id) !== undefined);
  const taken = useRef(false);
  // Whoever entered it stands before what comes next: whether the tube leads.
  useEffect(() => {
    if (begun && taken.current) document.querySelector<HTMLElement>('.leads')?.focus();
    taken.current = false;
  }, [begun]);
  if (begun) return null;
  return (
    <Section title="It is bent already" onlyOpen>
      <Figures key={tube.id} tube={tube} onTaken={() => (taken.current = true)} />
    </Section>
  );
}

function Figures({ tube, onTaken }: { tube: SolvedTube; onTaken: () => void }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { order, grip } = useFeed(tube);
  const [texts, type] = useState<Partial<Record<CheckDimension['id'], string>>>({});
  const kind = orNothing(tapeKind(unit));
  const { run, blank, form, lettered } = useMemo(() => {
    const none = { order, bends: [] };
    const { form } = asBent(tube, none);
    return { run: none, blank: onBlank(tube, order), form, lettered: letteredChecks(form) };
  }, [tube, order]);
  const fields = lettered.map(({ check, letter }) => ({
    check,
    letter,
    text: texts[check.id] ?? '',
    entered: kind.read(texts[check.id] ?? ''),
  }));
  const read = fields.flatMap(({ check, entered }) =>
    entered.ok && entered.value !== null ? [{ check, measured: entered.value }] : [],
  );
  return (
    <>
      <p>
        Bent elsewhere, or not read at the machine? Enter what the tape reads, {whenChecked(grip)}: what you have of it.
      </p>
      <WhereTaken form={form} lettered={lettered} />
      <div className="tape-figures">
        {fields.map(({ check, letter, text, entered }) => (
          <div key={check.id} className="tape-figure">
            <DraftField
              label={checkInWords(check)}
              letter={letter !== null && <span className="dimension-letter">{letter}</span>}
              unit={unit}
              inputMode={kind.inputMode}
              text={text}
              entered={entered}
              asked={false}
              mayBeEmpty
              readBack={entered.ok ? readBackOf(entered, kind) : ''}
              onType={(typed) => type({ ...texts, [check.id]: typed })}
            />
            <p className="small">
              drawn <Length mm={check.value} withUnit />
            </p>
          </div>
        ))}
      </div>
      <TapeFit tube={tube} run={run} laid={tube} blank={blank} read={read} onTaken={onTaken} />
    </>
  );
}
