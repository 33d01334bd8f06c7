/**
 * Every file that failed once, judged again: small ones, in tests/fixtures/torture, named by what is odd about them. Those
 * that the door now refuses never come to the code that failed, so each has a neighbour just within the limits that does.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { sampleFile } from '../../core/job/sample.ts';
import { judge } from './judge.ts';

const FOLDER = 'tests/fixtures/torture';

/** What has to become of each: derived, or the fault's place, at the door (refused) or in the derivation (no frame). */
const FATES: Readonly<Record<string, string>> = {
  'box-of-the-least-size.json': 'derived',
  'box-too-small-to-square.json': 'refused at envelopes[0].size[0]',
  'cope-to-51-tubes.json': 'refused at members[51].ends[0].against',
  'curve-torn-where-a-run-takes-over.json': 'derived',
  'dip-within-a-degree.json': 'derived',
  'ids-nearly-equal.json': 'derived',
  'ids-with-line-breaks.json': 'refused at members[1].id',
  'name-of-16000-letters.json': 'derived',
  'name-of-200-letters.json': 'derived',
  'names-odd-but-allowed.json': 'derived',
  'tube-of-a-metre-and-a-hair.json': 'refused at sections[0].outerDiameter',
  'tube-of-a-metre.json': 'derived',
  'tube-of-the-least-diameter.json': 'derived',
  'tubes-50-before-one.json': 'derived',
  'tubes-51-before-one.json': 'no frame at members[51].ends[0]',
  'wall-of-no-thickness.json': 'refused at sections[0].wall',
  'wall-of-the-least-thickness.json': 'derived',
};

export interface Judged {
  readonly name: string;
  /** Null where nothing is wrong with it any more. */
  readonly wrong: string | null;
}

export function corpus(): readonly Judged[] {
  const before = sample();
  const names = new Set([...Object.keys(FATES), ...readdirSync(FOLDER)]);
  return [...names].toSorted().map((name) => ({ name, wrong: wrongWith(name, before) }));
}

/** What a file of the corpus holds. */
export const corpusText = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

function wrongWith(name: string, before: Derived): string | null {
  const text = corpusText(name);
  const result = judge(text, before, true);
  if ('wrong' in result) return result.wrong;
  const fate = fateWithPlace(text);
  return fate === FATES[name] ? null : `${fate}, instead of ${FATES[name] ?? 'a fate that the corpus names'}`;
}

function fateWithPlace(text: string): string {
  const parsed = parseJob(text);
  if (!parsed.ok) return `refused at ${parsed.faults[0]!.place}`;
  const derivation = derive(parsed.job);
  return derivation.ok ? 'derived' : `no frame at ${derivation.faults[0]!.place}`;
}

function sample(): Derived {
  const parsed = parseJob(JSON.stringify(sampleFile()));
  const derivation = parsed.ok ? derive(parsed.job) : parsed;
  if (!derivation.ok) throw new Error('the sample derives');
  return derivation.value;
}
