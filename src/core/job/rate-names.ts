/** The figures of a shop's rates by their names, for whoever shows or changes one of them. */
import { MINUTES, PRICES, type Priced, type Rates, type Timed } from './kinds/rates.ts';

export type RateName = 'hourly' | 'overhead' | 'margin' | 'tax' | Timed | Priced;

const isTimed = (name: RateName): name is Timed => (MINUTES as readonly string[]).includes(name);
const isPriced = (name: RateName): name is Priced => (PRICES as readonly string[]).includes(name);

/** As it is kept: money by the hour, percent, minutes, or money by the kilogram, metre or piece. Null: nobody has said. */
export function rateOf(rates: Rates, name: RateName): number | null {
  if (isTimed(name)) return rates.minutes?.[name] ?? null;
  if (isPriced(name)) return rates.prices?.[name] ?? null;
  if (name === 'tax') return rates.tax?.percent ?? null;
  return rates[name] ?? null;
}

/** The rates with another figure; null takes it out. */
export function withRate(rates: Rates, name: RateName, value: number | null): Rates {
  if (isTimed(name)) return withPart(rates, 'minutes', put(rates.minutes ?? {}, name, value));
  if (isPriced(name)) return withPart(rates, 'prices', put(rates.prices ?? {}, name, value));
  if (name === 'tax') return put(rates, 'tax', value === null ? null : { name: rates.tax?.name ?? '', percent: value });
  return put(rates, name, value);
}

/** The same with what the tax is called; of rates without one the same rates. */
export const withTaxName = (rates: Rates, name: string): Rates =>
  rates.tax === undefined ? rates : put(rates, 'tax', { ...rates.tax, name });

/** The same with what the money is called; '' takes that out. */
export const withCurrency = (rates: Rates, currency: string): Rates =>
  put(rates, 'currency', currency === '' ? null : currency);

const withPart = (rates: Rates, part: 'minutes' | 'prices', figures: object): Rates =>
  put(rates, part, Object.keys(figures).length === 0 ? null : figures);

function put<R extends object, K extends keyof R>(record: R, key: K, value: R[K] | null): R {
  const { [key]: _, ...rest } = record;
  return (value === null ? rest : { ...rest, [key]: value }) as R;
}
