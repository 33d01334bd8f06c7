/** Two tabs race on one job: each renames it again and again, sometimes at once, sometimes after a reload. What each did last can be found. */
import type { Page } from '@playwright/test';
import { enter, undoKey, untilThere } from '../browser/journey.ts';
import { drawFrom, type Draw } from '../reference/oracles/seeded.ts';
import { complaintsOf, withProgram, type Program } from './browser.ts';
import { atOnce, type Failure, type Part } from './part.ts';

const ROUNDS = 10;
const EDITS = 12;

const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job' });

/** No edit of this tab waits to be written. */
const atRest = (page: Page): Promise<void> =>
  page
    .getByText(/^(Saved in this browser|Kept apart in this browser)/)
    .first()
    .waitFor();

async function open(page: Page, origin: string): Promise<void> {
  await page.goto(origin);
  await untilThere(page);
  const hints = page.getByRole('button', { name: 'Got it' });
  if (await hints.isVisible()) await hints.click();
}

/** Everything that a person can find: the earlier versions, the open job, and what undo leads back to. */
async function found(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('listitem').first().waitFor();
  const names = [await dialog.innerText(), await jobName(page).inputValue()];
  await page.keyboard.press('Escape');
  // A tab that is loaded again may go on from what the other did last: that is then one of its steps.
  while (await undoKey(page).isEnabled()) {
    await undoKey(page).click();
    names.push(await jobName(page).inputValue());
  }
  return names.join('\n');
}

async function round(program: Program, draw: Draw): Promise<string[]> {
  const context = await program.launch(program.profile(), 'no bay');
  const first = context.pages()[0] ?? (await context.newPage());
  const complaints = complaintsOf(first, program.origin);
  await open(first, program.origin);
  await enter(jobName(first), 'Start');
  await atRest(first);
  const second = await context.newPage();
  const more = complaintsOf(second, program.origin);
  await open(second, program.origin);

  const tabs = [first, second] as const;
  const last = ['Start', 'Start'];
  for (let count = 1; count <= EDITS; count += 1) {
    const both = draw.chance(0.3);
    const one = draw.chance(0.5) ? 0 : 1;
    await Promise.all(
      tabs.map(async (tab, at) => {
        if (!both && at !== one) return;
        const name = `${'AB'[at]}${count}`;
        last[at] = name;
        await enter(jobName(tab), name);
      }),
    );
    if (draw.chance(0.15)) {
      // What a tab shows after a reload is what it goes on from.
      await atRest(tabs[one]);
      await tabs[one].reload();
      await untilThere(tabs[one]);
    } else {
      await first.waitForTimeout(draw.between(0, 700));
    }
  }
  await Promise.all(tabs.map(atRest));
  await second.close();
  await first.close();
  const later = await context.newPage();
  await open(later, program.origin);
  const all = await found(later);
  const lost = last.filter((name) => !all.includes(name)).map((name) => `“${name}” is nowhere to be found`);
  await context.close();
  return [...lost, ...complaints, ...more];
}

export const tabsPart: Part = {
  name: 'tabs',
  about: 'two tabs racing on one job: what each did last is found',
  async run(scale, seed) {
    const rounds = Array.from({ length: Math.max(1, Math.round(ROUNDS * scale)) }, (_, at) => seed + at);
    const failures: Failure[] = [];
    await withProgram(
      (program) =>
        atOnce(2, rounds, async (own, at) => {
          const wrong = await round(program, drawFrom(own)).catch((error: unknown) => [String(error)]);
          failures.push(...wrong.map((why) => ({ what: `round ${at + 1}`, why })));
        }),
      scale,
    );
    return { tries: rounds.length, failures };
  },
};
