/**
 * The browser is killed in mid-edit and started again on the same profile: what was on the screen half a second before is there, and undo
 * leads back to the start, to the byte. Some rounds edit every 80 ms, one holds an arrow key, the others mix typing, undo and dragging.
 */
import { parseLength } from '../../src/core/units/length.ts';
import { drawFrom, type Draw } from '../reference/oracles/seeded.ts';
import type { BrowserContext, Page } from '@playwright/test';
import { choose, enter, goTo, savedText, undoKey, untilKept, untilThere, typeItsPlace } from '../browser/journey.ts';
import { enterQuickly } from '../browser/wreck.ts';
import { complaintsOf, kill, withProgram, type Program } from './browser.ts';
import { atOnce, type Failure, type Part } from './part.ts';

/** What is older than this when the browser dies must be there, ms. */
const OLD = 500;
const POINTS = 'Measured points, in inches';
const POINT = 'Floor at A-pillar, left';

type Way = 'every 80 ms' | 'held key' | 'mixed';
type View = 'bay' | 'no bay';

/** Of ten rounds; a short run does the first two. Some have the bay beside them, which keeps the page busy with drawing. */
const ROUNDS: readonly (readonly [way: Way, view: View])[] = [
  ['every 80 ms', 'no bay'],
  ['held key', 'no bay'],
  ['mixed', 'bay'],
  ['every 80 ms', 'bay'],
  ['mixed', 'no bay'],
  ['mixed', 'no bay'],
  ['every 80 ms', 'no bay'],
  ['mixed', 'no bay'],
  ['mixed', 'no bay'],
  ['mixed', 'no bay'],
];
const LEAST = 2;

/** A value of the job as the page showed it, and since when, ms by the machine's clock. */
interface Seen {
  readonly value: string;
  readonly at: number;
}

/** Watches what a field shows. The page reports by its console, so that what it said before it died has been heard. */
async function watch(page: Page, seen: Seen[]): Promise<void> {
  page.on('console', (message) => {
    const text = message.text();
    if (text.startsWith('seen ')) seen.push(JSON.parse(text.slice(5)) as Seen);
  });
  await page.evaluate(() => {
    let last = '';
    const report = (value: string): void => {
      if (value === last) return;
      last = value;
      console.log(`seen ${JSON.stringify({ value, at: Date.now() })}`);
    };
    const input = document.querySelector<HTMLInputElement>('input[data-watched]')!;
    // What the program puts into the field is heard as it does so: a page that is busy with a held key lets timers wait.
    const own = Object.getOwnPropertyDescriptor(input, 'value')!;
    Object.defineProperty(input, 'value', {
      ...own,
      set(value: string) {
        own.set!.call(this, value);
        report(value);
      },
    });
    setInterval(() => report(input.value), 10);
    report(input.value);
  });
}

const height = (page: Page) =>
  page.getByRole('article', { name: `Point ${POINT}` }).getByRole('textbox', { name: 'Height' });
const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job' });

/** The field that is watched, which each way of editing changes. */
const watched = (page: Page, way: Way) => (way === 'held key' ? height(page) : jobName(page));

/** How far the edits had come when the field showed this: the height in mm, else the number of the name, 0 for the first name. */
function comeTo(way: Way, value: string): number {
  if (way !== 'held key') return Number(/^(?:Edit|Mixed) (\d+)$/u.exec(value)?.[1] ?? 0);
  const typed = parseLength(value, 'in');
  return typed.ok ? typed.value : -Infinity;
}

/** Edits until it is over. */
const EDITS: Readonly<Record<Way, (page: Page, draw: Draw, until: number) => Promise<void>>> = {
  async 'every 80 ms'(page, _, until) {
    void enterQuickly(jobName(page), 'Edit', Infinity).catch(() => undefined); // it ends with the browser
    await page.waitForTimeout(until - Date.now());
  },
  async 'held key'(page, _, until) {
    await height(page).focus();
    while (Date.now() < until) {
      await page.keyboard.down('ArrowUp');
      await page.waitForTimeout(30);
    }
  },
  async mixed(page, draw, until) {
    for (let count = 1; Date.now() < until; count += 1) {
      const chance = draw.between(0, 1);
      if (chance < 0.5) await enter(jobName(page), `Mixed ${count}`);
      else if (chance < 0.7) await enter(height(page), String(1 + Math.round(draw.between(0, 16)) / 16));
      else if (chance < 0.85 && (await undoKey(page).isEnabled())) await undoKey(page).click();
      else await page.waitForTimeout(draw.between(0, 400));
    }
  },
};

async function begin(context: BrowserContext, origin: string): Promise<Page> {
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(origin);
  await untilThere(page);
  const hints = page.getByRole('button', { name: 'Got it' });
  if (await hints.isVisible()) await hints.click();
  await goTo(page, 'Survey');
  await choose(page, POINTS, POINT);
  await typeItsPlace(page);
  return page;
}

/** The last that was shown early enough to be there after a kill at that time. */
const dueIn = (seen: readonly Seen[], died: number): number => seen.findLastIndex(({ at }) => at <= died - OLD);

async function round(program: Program, way: Way, view: View, draw: Draw): Promise<string[]> {
  const profile = program.profile();
  const before = await program.launch(profile, view);
  const page = await begin(before, program.origin);
  const atFirst = await savedText(page);
  const seen: Seen[] = [];
  await watched(page, way).evaluate((input) => input.setAttribute('data-watched', ''));
  await watch(page, seen);
  await EDITS[way](page, draw, Date.now() + draw.between(2500, 5000));
  // A busy machine shows the first edit when it comes to it: it is killed in mid-edit all the same.
  for (let more = 0; more < 30 && dueIn(seen, Date.now()) < 1; more += 1)
    await EDITS[way](page, draw, Date.now() + 1000);
  const died = await kill(before, page);

  const due = dueIn(seen, died);
  if (due < 1) return [`the page showed no edit in time: ${JSON.stringify(seen)}`];
  const after = await program.launch(profile, view);
  const again = await begin(after, program.origin);
  const complaints = complaintsOf(again, program.origin);
  const back = await watched(again, way).inputValue();
  const wrong: string[] = [];
  // By its place in the order in which it was shown; one that the page had no time to report by how far the edits had come.
  const place = seen.findLastIndex(({ value }) => value === back);
  const isOlder = place >= 0 ? place < due : comeTo(way, back) < comeTo(way, seen[due]!.value);
  if (isOlder) {
    const when = place < 0 ? 'never reported' : `shown ${died - seen[place]!.at} ms before the kill`;
    wrong.push(`came back with “${back}”, ${when}; due was “${seen[due]!.value}”`);
  }
  let steps = 0;
  for (; await undoKey(again).isEnabled(); steps += 1) await undoKey(again).click();
  if (way === 'held key' && steps !== 1) wrong.push(`a key that was held is ${steps} steps`);
  if ((await savedText(again)) !== atFirst) wrong.push('undo does not lead back to the start');
  await untilKept(again);
  await after.close();
  return [...wrong, ...complaints];
}

export const killPart: Part = {
  name: 'kill',
  about: 'the browser killed in mid-edit: what is older than 0.5 s is there, undo right to the start',
  async run(scale, seed) {
    const rounds = ROUNDS.slice(0, Math.max(LEAST, Math.round(ROUNDS.length * scale)));
    const failures: Failure[] = [];
    await withProgram(
      (program) =>
        atOnce(2, rounds, async ([way, view], at) => {
          const what = `round ${at + 1}, ${way}, ${view}`;
          const wrong = await round(program, way, view, drawFrom(seed + at)).catch((error: unknown) => [String(error)]);
          failures.push(...wrong.map((why) => ({ what, why })));
        }),
      scale,
    );
    return { tries: rounds.length, failures };
  },
};
