/** The rates and prices that a shop quotes with, of its record or of a job: what nobody has said stays empty. */
import { useId, type ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import { MINUTES, PRICES, type Rates } from '../../core/job/kinds/rates.ts';
import { GREATEST_COST, GREATEST_MINUTES, GREATEST_SHARE, LONGEST_CURRENCY } from '../../core/job/limits.ts';
import { rateOf, withCurrency, withRate, withTaxName, type RateName } from '../../core/job/rate-names.ts';
import { rateBy, rateKept, perBase } from '../../core/quote/units.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { rateNamed, rateUnit } from '../../core/words/quote.ts';
import { EntryField } from './EntryField.tsx';
import { TextField } from './Fields.tsx';
import { numberKind, orNothing, type ValueKind } from './kinds.ts';

interface RateFieldsProps {
  readonly rates: Rates;
  readonly unit: LengthUnit;
  /** `label` names the change; answers the faults for which it was refused. */
  readonly commit: (label: string, rates: Rates) => readonly Fault[];
}

const GROUPS: readonly (readonly [string, readonly RateName[]])[] = [
  ['Work, overhead, margin and tax', ['hourly', 'overhead', 'margin', 'tax']],
  ['Minutes', MINUTES],
  ['Prices', PRICES],
];

export function RateFields({ rates, unit, commit }: RateFieldsProps): ReactNode {
  return (
    <>
      <p className="small">What is left empty counts for nothing, and its line says so.</p>
      <TextField
        label="Money is called"
        mayBeEmpty
        value={rates.currency ?? ''}
        commit={(word) =>
          word.length > LONGEST_CURRENCY
            ? [{ place: 'currency', message: `more than ${LONGEST_CURRENCY} letters` }]
            : commit('What money is called', withCurrency(rates, word))
        }
      />
      {rates.tax !== undefined && (
        <TextField
          label="Tax is called"
          mayBeEmpty
          value={rates.tax.name}
          commit={(word) => commit('What the tax is called', withTaxName(rates, word))}
        />
      )}
      {GROUPS.map(([title, names]) => (
        <RateGroup key={title} title={title}>
          {names.map((name) => (
            <RateField key={name} name={name} rates={rates} unit={unit} commit={commit} />
          ))}
        </RateGroup>
      ))}
    </>
  );
}

function RateGroup({ title, children }: { title: string; children: ReactNode }): ReactNode {
  const id = useId();
  return (
    <div role="group" aria-labelledby={id}>
      <h4 id={id}>{title}</h4>
      <div className="fields-two">{children}</div>
    </div>
  );
}

function RateField({ name, rates, unit, commit }: RateFieldsProps & { readonly name: RateName }): ReactNode {
  const label = rateNamed(name).name;
  return (
    <EntryField
      label={label}
      unit={rateUnit(name, unit).label}
      kind={orNothing(rateKind(name, unit))}
      value={rateOf(rates, name)}
      numeric
      commit={(value) => commit(label, withRate(rates, name, value))}
    />
  );
}

/** Typed by the foot and the pound in a job in inches, and kept by the metre and the kilogram. */
function rateKind(name: RateName, unit: LengthUnit): ValueKind<number> {
  const { measure } = rateUnit(name, unit);
  const figure = numberKind(
    0,
    measure === 'each' ? greatestOf(name) : Math.floor(greatestOf(name) / perBase(measure)),
    1,
  );
  return {
    ...figure,
    show: (rate) => figure.show(rateBy(rate, measure)),
    read(text) {
      const entered = figure.read(text);
      return entered.ok ? { ...entered, value: rateKept(entered.value, measure) } : entered;
    },
  };
}

function greatestOf(name: RateName): number {
  if (name === 'overhead' || name === 'margin' || name === 'tax') return GREATEST_SHARE;
  return (MINUTES as readonly string[]).includes(name) ? GREATEST_MINUTES : GREATEST_COST;
}
