/** What a job is quoted with, what is charged beside, and what a line took. */
import { sameData } from '../job/equal.ts';
import type { Extra, Quote, Took } from '../job/kinds/quote.ts';
import type { Rates } from '../job/kinds/rates.ts';
import type { Job } from '../job/types.ts';

export const setRates = (job: Job, rates: Rates): Job => withPart(job, 'rates', rates);

/** Texts of the customer's page; '' takes one out. */
export const setQuoteText = (
  job: Job,
  which: 'heading' | 'customer' | 'number' | 'validUntil' | 'terms',
  text: string,
): Job => withPart(job, which, text === '' ? undefined : text);

export const addExtra = (job: Job, extra: Extra): Job => withPart(job, 'extras', [...extrasOf(job), extra]);

export const setExtra = (job: Job, at: number, fields: Partial<Extra>): Job =>
  withPart(
    job,
    'extras',
    extrasOf(job).map((extra, i) => (i === at ? { ...extra, ...fields } : extra)),
  );

/** With what it took; what later ones took goes with them. */
export function removeExtra(job: Job, at: number): Job {
  const numberOf = (line: string): number => Number(/^extra (\d+)$/u.exec(line)?.[1] ?? 0);
  const took = tookOf(job)
    .filter(({ line }) => numberOf(line) !== at + 1)
    .map((entry) => (numberOf(entry.line) > at + 1 ? { ...entry, line: `extra ${numberOf(entry.line) - 1}` } : entry));
  const extras = extrasOf(job).filter((_, i) => i !== at);
  return withPart(withPart(job, 'extras', extras), 'took', took);
}

/** One more that was noted of a line, beside what was noted of it before. */
export const addTook = (job: Job, took: Took): Job => withPart(job, 'took', [...tookOf(job), took]);

/** Another in the place of this one; null: it is taken out. The same job where it has no such entry. */
export const changeTook = (job: Job, entry: Took, next: Took | null): Job =>
  withPart(
    job,
    'took',
    tookOf(job).flatMap((each) => (each !== entry ? [each] : next === null ? [] : [next])),
  );

const tookOf = ({ quote }: Job): readonly Took[] => quote?.took ?? [];

const extrasOf = ({ quote }: Job): readonly Extra[] => quote?.extras ?? [];

/** What is empty is left out, and a quote that has nothing. */
function withPart<K extends keyof Quote>(job: Job, key: K, value: Quote[K] | undefined): Job {
  const { [key]: _, ...rest } = job.quote ?? {};
  const isEmpty = value === undefined || (typeof value === 'object' && Object.keys(value).length === 0);
  const quote: Quote = isEmpty ? rest : { ...rest, [key]: value };
  if (sameData(quote, job.quote ?? {})) return job;
  const { quote: __, ...without } = job;
  return Object.keys(quote).length === 0 ? without : { ...without, quote };
}
