/** The job held against what was kept of it by name, or two of these against each other; and the way back to one. */
import { useEffect, useMemo, useState, type ReactNode } from 'react';
import { figuresOf, type Figures } from '../../core/compare/figures.ts';
import { variants as stage, type VariantFigures } from '../../core/compare/variants.ts';
import { backToVariant, keepVariant, nameVariant, removeVariant } from '../../core/edit/variants.ts';
import { fault } from '../../core/job/fault.ts';
import type { Variant } from '../../core/job/kinds/variant.ts';
import { MOST_VARIANTS } from '../../core/job/limits.ts';
import { shownName } from '../../core/job/shown.ts';
import { toCut } from '../../core/stock/to-cut.ts';
import { compareRows } from '../../core/words/compare.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { results, useDocument, useResults } from '../../store/page.ts';
import { SelectField, TextField } from '../fields/Fields.tsx';
import { Delete } from '../fields/Delete.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { usePlans } from './plans.ts';

const NOW = '';

export function Variants(): ReactNode {
  const variants = useDocument((state) => state.job.variants);
  useEffect(() => results.lookAt(stage), []);
  return (
    <>
      <p className="small">
        Keep the job as it stands under a name, change it, and see here what the change comes to. What is kept travels
        in the job’s file.
      </p>
      <Command
        step="Keep a variant"
        disabled={variants.length >= MOST_VARIANTS}
        run={(job) => keepVariant(job, `Variant ${job.variants.length + 1}`, dayOf(new Date()))}
      >
        Keep the job as it stands
      </Command>
      {variants.length > 0 && <Compared variants={variants} />}
      {variants.map((variant) => (
        <Kept key={variant.id} variant={variant} />
      ))}
    </>
  );
}

function Compared({ variants }: { variants: readonly Variant[] }): ReactNode {
  const [sides, setSides] = useState<readonly [string, string]>([variants.at(-1)!.id, NOW]);
  const unit = useDocument((state) => state.job.lengthUnit);
  const choices = [
    { value: NOW, label: 'As it stands now' },
    ...variants.map(({ id, name }) => ({ value: id, label: shownName(name) })),
  ];
  // One that was deleted meanwhile is no choice any more.
  const shown = sides.map((side) => (choices.some(({ value }) => value === side) ? side : NOW)) as [string, string];
  const found = [useSide(shown[0]), useSide(shown[1])] as const;
  const rows = compareRows([figuresIn(found[0]), figuresIn(found[1])], { unit });
  const side = (at: 0 | 1, label: string): ReactNode => (
    <SelectField
      label={label}
      value={shown[at]}
      choices={choices}
      onChoose={(value) => setSides(at === 0 ? [value, shown[1]] : [shown[0], value])}
    />
  );
  const isWorking = found.includes(null);
  return (
    <section aria-label="Side by side" className="compared">
      <div className="fields fields-two">
        {side(0, 'This')}
        {side(1, 'beside this')}
      </div>
      <p role="status" className="small">
        {isWorking ? 'Working out what they come to…' : ''}
      </p>
      {found.map((each, i) =>
        each !== null && !each.ok ? (
          <p key={i} className="word-error" role="alert">
            × {each.faults[0]?.message}
          </p>
        ) : null,
      )}
      <table className="compare">
        <thead>
          <tr>
            <th scope="col">What</th>
            {shown.map((value, i) => (
              <th key={i} scope="col">
                {choices.find((choice) => choice.value === value)!.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ title, texts, differ }) => (
            <tr key={title} className={differ ? 'compare-differs' : undefined}>
              <th scope="row">
                {title}
                {differ && <span className="spoken-only">, differs</span>}
              </th>
              {texts.map((text, i) => (
                <td key={i} className="figure">
                  {text}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const unmeasuredInWords = (why: string): string =>
  `What it comes to could not be worked out, which is a fault of the program: ${why}.`;

const figuresIn = (found: VariantFigures | null): Figures | null => (found?.ok ? found.figures : null);

/** Null while it is worked out. */
function useSide(id: string): VariantFigures | null {
  const derived = useDocument((state) => state.derived);
  const plans = useResults((state) => state.plans);
  const findings = useResults((state) => state.findings);
  const kept = useResults((state) => state.variants.get(id));
  const why = useResults((state) => state.unmeasured.get(id));
  const { failed } = usePlans(derived);
  const isNow = id === NOW;
  // It goes through every end and article: once for each state of the job, and not each time this is drawn.
  const now = useMemo((): VariantFigures | null => {
    if (!isNow) return null;
    const sections = toCut(derived).flatMap((section) => {
      const planned = plans.get(section.section);
      return planned === undefined ? [] : [{ ...section, ...planned }];
    });
    return sections.length === toCut(derived).length
      ? { ok: true, figures: figuresOf(derived, sections, findings) }
      : null;
  }, [isNow, derived, plans, findings]);
  const trouble = isNow ? failed : why !== undefined ? unmeasuredInWords(why) : null;
  const failing = useMemo(
    () => (trouble === null ? null : { ok: false as const, faults: [fault('', trouble)] }),
    [trouble],
  );
  return (isNow ? now : kept) ?? failing;
}

function Kept({ variant: { id, name, on } }: { variant: Variant }): ReactNode {
  return (
    <article className="card" aria-label={`Variant ${shownName(name)}`}>
      <TextField
        label={on === '' ? 'Variant' : `Variant, kept ${on}`}
        value={name}
        {...jobEdit<string>('Rename a variant', (job, next) => nameVariant(job, id, next))}
      />
      <div className="row">
        <Command quiet step={`Back to ${shownName(name)}`} run={(job) => backToVariant(job, id)}>
          Go back to it
        </Command>
        <Delete id={id} name={`variant ${shownName(name)}`} remove={(job) => removeVariant(job, id)} />
      </div>
      <p className="small">
        Going back puts the drawing as it was then. What was sawn, bent, read, printed and paid since stays. Undo takes
        it back.
      </p>
    </article>
  );
}
