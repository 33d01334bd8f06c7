/**
 * What a person is asked where shop and job differ: once a job and difference. The answers are kept by what was asked, values on
 * both sides included, so that another radius is another question. A job has no name of its own but the one that it is given.
 */
import { differences, type Difference } from '../../core/shop/differences.ts';
import type { Shop } from '../../core/shop/types.ts';
import type { Job } from '../../core/job/types.ts';

/** Answers that are kept, the newest. */
const MOST_ANSWERS = 300;

/** The differences that were not answered yet. */
export function openQuestions(shop: Shop, job: Job, answers: readonly string[]): readonly Difference[] {
  const known = new Set(answers);
  return differences(shop, job).filter((one) => !known.has(questionOf(job, one)));
}

/** Of those that were asked, the ones that are there still. */
export function stillOpen(shop: Shop, job: Job, asked: readonly Difference[]): readonly Difference[] {
  const keys = new Set(asked.map((one) => questionOf(job, one)));
  return differences(shop, job).filter((one) => keys.has(questionOf(job, one)));
}

/** The answers with these among them. */
export const answered = (answers: readonly string[], job: Job, questions: readonly Difference[]): readonly string[] =>
  [...new Set([...answers, ...questions.map((one) => questionOf(job, one))])].slice(-MOST_ANSWERS);

/** Names and the number of pulls do not count: a die that is renamed, or one more pull, is no other question. */
const questionOf = ({ name }: Job, one: Difference): string =>
  JSON.stringify([name, one], (key, value: unknown) => (UNASKED.includes(key) ? undefined : value));
const UNASKED: readonly string[] = ['name', 'names', 'count'];
