/** Every file that failed once, judged again: small ones, in tests/fixtures/torture, named by what they did. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { sampleFile } from '../../core/job/sample.ts';
import { judge } from './judge.ts';

const FOLDER = 'tests/fixtures/torture';

export interface Judged {
  readonly name: string;
  /** Null where nothing is wrong with it any more. */
  readonly wrong: string | null;
}

export function corpus(): readonly Judged[] {
  const before = sample();
  return readdirSync(FOLDER).map((name) => {
    const result = judge(readFileSync(join(FOLDER, name), 'utf8'), before, true);
    return { name, wrong: 'wrong' in result ? result.wrong : null };
  });
}

function sample(): Derived {
  const parsed = parseJob(JSON.stringify(sampleFile()));
  const derivation = parsed.ok ? derive(parsed.job) : parsed;
  if (!derivation.ok) throw new Error('the sample derives');
  return derivation.value;
}
