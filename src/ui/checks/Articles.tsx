/** The articles of a sheet one by one: figures in sight, everything else of an article under it. */
import { useState, type ReactNode } from 'react';
import { RULE_KINDS, type RuleCheck, type RuleKind, type RuleMark } from '../../core/job/kinds/rule-check.ts';
import type { RuleSheet } from '../../core/job/kinds/rule-sheet.ts';
import { hasOldWords } from '../../core/rules/as-it-came.ts';
import { figuresOf, withTyped, type FigureName } from '../../core/rules/figures.ts';
import { FIGURE_LABELS, OF_WORDS, OWN_WORDS } from '../../core/words/rule-book.ts';
import { askedInWords, MARK_WORDS, RULE_KIND_WORDS } from '../../core/words/rules.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField } from '../fields/EntryField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { SelectField, TextField, type Choice } from '../fields/Fields.tsx';
import { rolesKind } from '../fields/rule-figures.ts';
import { OldWords } from './OldWords.tsx';
import type { ChangeSheet } from './SheetEditor.tsx';

interface Props {
  readonly sheet: RuleSheet;
  readonly mark: RuleMark;
  readonly change: ChangeSheet;
}

export function Articles({ sheet, mark, change }: Props): ReactNode {
  const setAll = (how: (checks: readonly RuleCheck[]) => readonly RuleCheck[]) =>
    change((before) => ({ ...before, checks: how(before.checks) }));
  return (
    <div className="articles">
      {sheet.checks.length === 0 && <p className="small">No article yet: answer the questions, or add one here.</p>}
      <ol className="question-list">
        {sheet.checks.map((check, at) => (
          <Article
            // Articles have no name of their own.
            key={`${at} ${sheet.checks.length}`}
            check={check}
            mark={mark}
            set={(next) => setAll((checks) => checks.with(at, next))}
            remove={() => setAll((checks) => checks.toSpliced(at, 1))}
          />
        ))}
      </ol>
      <AddArticle add={(check) => setAll((checks) => [...checks, { ...check, mark }])} />
    </div>
  );
}

/** Everything that can be measured: "Plates and bolts: area". */
const MEASURES: readonly Choice[] = (Object.keys(RULE_KINDS) as RuleKind[]).flatMap((kind) =>
  Object.entries<string>(OF_WORDS[kind]).map(([of, words]) => ({
    value: `${kind} ${of}`,
    label: words === '' ? RULE_KIND_WORDS[kind] : `${RULE_KIND_WORDS[kind]}: ${words}`,
  })),
);

function AddArticle({ add }: { add: (check: RuleCheck) => void }): ReactNode {
  const [chosen, choose] = useState(MEASURES[0]!.value);
  return (
    <div className="article-add">
      <SelectField label="Add an article" value={chosen} choices={MEASURES} onChoose={choose} />
      <button
        type="button"
        className="press"
        onClick={() => {
          const [kind, of] = chosen.split(' ');
          // That `of` is one of its kind's own is how the choices are made.
          add({ article: '', text: '', mark: 'own', roles: [], kind, of } as unknown as RuleCheck);
        }}
      >
        Add it
      </button>
    </div>
  );
}

/** Of those that a kind has the ones that most articles use; the others stand under "more". */
const IN_SIGHT: readonly FigureName[] = ['sizes', 'least', 'most'];

type Picked = 'only' | 'end' | 'from' | 'runs' | 'box';

/** The choices of an article, where its kind has them. */
function picksOf({
  kind,
  of,
}: RuleCheck): readonly { readonly name: Picked; readonly label: string; readonly choices: readonly Choice[] }[] {
  const choice = (...values: readonly (readonly [string, string])[]): readonly Choice[] =>
    values.map(([value, label]) => ({ value, label }));
  const hasEnd = kind === 'reach' || (kind === 'tilt' && of === 'joint');
  return [
    {
      name: 'only' as const,
      label: 'Of these',
      choices: choice(['', 'all'], ['straight', 'the straight ones'], ['bent', 'the bent ones']),
    },
    ...(hasEnd
      ? [
          {
            name: 'end' as const,
            label: 'Which end',
            choices: choice(['', 'both'], ['upper', 'the upper'], ['lower', 'the lower']),
          },
        ]
      : []),
    ...(kind === 'plate' && of === 'area'
      ? [
          {
            name: 'box' as const,
            label: 'A box counts with',
            choices: choice(
              ['', 'not asked of the book yet'],
              ['covers', 'what it covers'],
              ['touches', 'the foot of its walls'],
            ),
          },
        ]
      : []),
    ...(kind === 'tilt'
      ? [
          { name: 'from' as const, label: 'Counted from', choices: choice(['', 'the vertical'], ['level', 'level']) },
          {
            name: 'runs' as const,
            label: 'Runs, from its upper end',
            choices: choice(['', 'either way'], ['rearward', 'rearward'], ['forward', 'forward']),
          },
        ]
      : []),
  ];
}

const measuresTo = ({ kind, of }: RuleCheck): boolean =>
  kind === 'gap-window' || (kind === 'reach' && of !== 'opening') || (kind === 'tilt' && of === 'joint');

interface ArticleProps {
  readonly check: RuleCheck;
  /** How sure what is typed now is. */
  readonly mark: RuleMark;
  readonly set: (check: RuleCheck) => ReturnType<ChangeSheet>;
  readonly remove: () => void;
}

function Article({ check, mark, set, remove }: ArticleProps): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const figures = figuresOf(check);
  const isInSight = (name: FigureName): boolean => IN_SIGHT.includes(name) || check[name] !== undefined;
  const field = (name: FigureName): ReactNode => (
    <div key={name} className={name === 'sizes' ? 'question-wide' : undefined}>
      <FigureField
        label={FIGURE_LABELS[name]}
        check={check}
        name={name}
        value={check[name] ?? null}
        commit={(value) => set(withTyped(check, name, value, mark))}
      />
    </div>
  );
  const asked = check.kind === 'ask' ? check.text : askedInWords(check, unit);
  return (
    <li className="question">
      <p className="small">{RULE_KIND_WORDS[check.kind]}</p>
      <p className="question-asks">{asked}</p>
      <div className="question-fields" role="group" aria-label={asked}>
        {figures.filter(isInSight).map(field)}
        <div className="question-words">
          <TextField
            label="Article"
            value={check.article}
            mayBeEmpty
            commit={(article) => set({ ...check, article })}
          />
          <TextField label={OWN_WORDS} value={check.text} mayBeEmpty commit={(text) => set({ ...check, text })} />
          {hasOldWords(check) && <OldWords clear={() => set({ ...check, text: '' })} />}
        </div>
      </div>
      <details className="verdict-more">
        <summary>Which bars, other figures, how sure</summary>
        <div className="question-fields">
          {check.kind !== 'ask' && (
            <div className="question-whole">
              <EntryField
                label="Bars, with commas between; none: every tube"
                kind={rolesKind}
                value={check.roles}
                commit={(roles) => set({ ...check, roles })}
              />
            </div>
          )}
          {measuresTo(check) && (
            <div className="question-whole">
              <EntryField
                label="Measured to these bars"
                kind={rolesKind}
                value={check.onto ?? []}
                commit={(onto) => set({ ...check, onto })}
              />
            </div>
          )}
          {check.kind !== 'ask' &&
            picksOf(check).map(({ name, label, choices }) => (
              <SelectField
                key={name}
                label={label}
                value={check[name] === 'vertical' ? '' : (check[name] ?? '')}
                choices={choices}
                onChoose={(value) => {
                  const { [name]: _before, ...rest } = check;
                  set(value === '' ? rest : { ...rest, [name]: value });
                }}
              />
            ))}
          {figures.filter((name) => !isInSight(name)).map(field)}
          <SelectField
            label="How sure its figures are"
            value={check.mark}
            choices={(Object.keys(MARK_WORDS) as RuleMark[]).map((value) => ({ value, label: MARK_WORDS[value] }))}
            onChoose={(value) => set({ ...check, mark: value as RuleMark })}
          />
        </div>
        <button type="button" className="press press-quiet press-small" onClick={remove}>
          Delete this article
        </button>
      </details>
    </li>
  );
}
