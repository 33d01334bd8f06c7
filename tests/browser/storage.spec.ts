/** Storage that goes wrong under the page, or lies wrong when it comes: the rows of mishaps.ts and mishaps-found.ts that the short torture run leaves out. */
import { drawFrom } from '../reference/oracles/seeded.ts';
import { LONG } from '../draws.ts';
import { FEW, test } from './journey.ts';
import { FOUND } from './mishaps-found.ts';
import { MISHAPS } from './mishaps.ts';
import { prepare } from './wreck.ts';

const SEED = 4;

test.use({ ...FEW, reuseContext: false });

const rows = [...MISHAPS, ...FOUND].filter(({ inShortRun, inLongRun }) => !inShortRun && (LONG || !inLongRun));

for (const { name, run } of rows) {
  test(name, async ({ page, context, baseURL }) => {
    await prepare(page);
    await run({ page, context, origin: baseURL!, draw: drawFrom(SEED), share: 0 });
  });
}
