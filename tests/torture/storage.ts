/**
 * The browser's storage goes wrong under the program, or lies wrong when it comes: every row of the tables that the
 * browser tests share (tests/browser/mishaps.ts), several times, at other moments and among other edits. Two browsers work through them.
 */
import type { BrowserContext, Page } from '@playwright/test';
import { FOUND } from '../browser/mishaps-found.ts';
import { MISHAPS, type Mishap } from '../browser/mishaps.ts';
import { clearSiteData, limitRoom } from '../browser/stores.ts';
import { prepare } from '../browser/wreck.ts';
import { drawFrom } from '../reference/oracles/seeded.ts';
import { complaintsOf, withProgram, type Program } from './browser.ts';
import type { Failure, Part } from './part.ts';

const ROUNDS = 2;
const BROWSERS = 2;

interface Try {
  readonly mishap: Mishap;
  readonly seed: number;
  readonly share: number;
}

function triesOf(scale: number, seed: number): Try[] {
  const draw = drawFrom(seed);
  const rows = [...MISHAPS, ...FOUND];
  const seedOf = (): number => Math.floor(draw.between(0, 1e9));
  if (scale < 1) {
    return rows.flatMap((mishap) => (mishap.inShortRun ? [{ mishap, seed: seedOf(), share: 0 }] : []));
  }
  // What tries all that it can in one round is tried in the first alone.
  return Array.from({ length: ROUNDS }, (_, round) =>
    rows.map((mishap) => ({ mishap, seed: seedOf(), share: round === 0 ? 1 : 0 })),
  ).flat();
}

/** In a browser that is as good as new: all that it had stored is cleared away. Answers how many were tried, and what was wrong. */
async function tried(program: Program, context: BrowserContext, one: Try): Promise<readonly [number, string[]]> {
  const { origin } = program;
  const complaints: string[][] = [];
  const listen = (page: Page): void => void complaints.push(complaintsOf(page, origin));
  context.on('page', listen);
  const page = await context.newPage();
  let tries = 1;
  const wrong: string[] = [];
  try {
    await limitRoom(page, origin, null);
    await clearSiteData(page, origin);
    await prepare(page);
    const draw = drawFrom(one.seed);
    tries = (await one.mishap.run({ page, context, origin, draw, share: one.share })) ?? 1;
  } catch (error) {
    wrong.push(String(error));
  }
  context.off('page', listen);
  // The last is left open for the next: a browser without a page ends.
  const rest = await context.newPage();
  await Promise.all(context.pages().map((open) => (open === rest ? Promise.resolve() : open.close())));
  return [tries, [...wrong, ...complaints.flat()]];
}

export const storagePart: Part = {
  name: 'storage',
  about: 'storage that fails, is full, closed, cleared, blocked or spoilt: words, no blank page, and kept again',
  async run(scale, seed) {
    const left = triesOf(scale, seed);
    const failures: Failure[] = [];
    let tries = 0;
    await withProgram(async (program) => {
      const work = async (): Promise<void> => {
        const context = await program.launch(program.profile(), 'no bay');
        for (let one = left.shift(); one !== undefined; one = left.shift()) {
          const [count, wrong] = await tried(program, context, one);
          tries += count;
          const what = `${one.mishap.name}, its seed ${one.seed}`;
          failures.push(...wrong.map((why) => ({ what, why })));
        }
      };
      await Promise.all(Array.from({ length: BROWSERS }, work));
    }, scale);
    return { tries, failures };
  },
};
