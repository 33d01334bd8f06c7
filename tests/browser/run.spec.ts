/**
 * A bend run of the main hoop, on an invented machine with 0.8 degrees of slack and 4 % of spring.
 * By hand: a pull p comes out as (p - slack) / (1 + spring), and n net takes n + slack + spring n.
 */
import type { Locator, Page } from '@playwright/test';
import {
  chooseTube,
  enter,
  expect,
  FEW,
  goTo,
  openFile,
  savedText,
  showPart,
  start,
  test,
  undoKey,
  untilKept,
} from './journey.ts';

test.use(FEW);

const SPRING = 0.04;
const SLACK = 0.8;
/** What a digital level reads after a pull, to a tenth of a degree. */
const opened = (pulled: number): number => Number(((pulled - SLACK) / (1 + SPRING)).toFixed(1));
/** The demo's machine is read to half a degree. */

const key = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name });
const title = (page: Page): Locator => page.locator('.run-title');
const figure = (page: Page): Locator => page.locator('.run-step .run-figure').first();
const reads = (page: Page): Locator =>
  page
    .getByRole('form', { name: /^Reading/ })
    .getByRole('textbox')
    .first();
const pulledTo = (page: Page): Locator => page.getByRole('textbox', { name: 'Pulled to' }).first();
const said = (page: Page): Locator => page.getByRole('status', { name: 'What the reading says' });

async function chooseHoop(page: Page): Promise<void> {
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop', 'Bending');
}

/** To the first bend, cut and marked. */
async function begin(page: Page, beforeIt: () => Promise<void> = async () => {}): Promise<void> {
  await chooseHoop(page);
  await key(page, 'Bend this tube').click();
  await beforeIt();
  await key(page, 'Begin').click();
  await expect(title(page)).toHaveText('Cut the blank');
  await key(page, 'It is cut').click();
  await expect(title(page)).toHaveText('Mark the bends');
  await key(page, 'They are marked').click();
}

/** Clamps and goes to the pull; what the page then says to pull to. */
async function clamp(page: Page, bend: number): Promise<number> {
  await expect(title(page)).toHaveText(`Bend ${bend}: clamp`);
  await key(page, /^(It is clamped|Clamped and turned)$/u).click();
  await expect(title(page)).toHaveText(`Bend ${bend}: pull`);
  return Number.parseFloat(await figure(page).innerText());
}

async function log(page: Page, reading: number | string): Promise<void> {
  await reads(page).fill(String(reading));
  await key(page, 'Log the reading').first().click();
}

async function pullAndRead(page: Page, reading: number | string): Promise<void> {
  await key(page, 'It is pulled').click();
  await log(page, reading);
}

test('a whole run from typed readings; and one in which marks move', async ({ page }) => {
  await start(page);
  await test.step('the hoop is bent from typed readings: a short bend is pulled on, each pull follows the last, a reload loses nothing', async () => {
    const atFirst = await savedText(page);
    await begin(page);

    const estimate = await clamp(page, 1);
    await expect(page.getByText('an estimate from the steel’s spring alone')).toBeVisible();
    await pullAndRead(page, opened(estimate));
    await expect(said(page)).toContainText('Short by');
    const corrected = Number(await pulledTo(page).inputValue());
    expect(corrected).toBeGreaterThan(estimate);
    await expect(said(page)).toContainText(`Pull ${corrected - estimate}° more, to ${corrected}°`);
    // In the log at once, and only the last reading of the bend.
    expect(JSON.parse(await savedText(page)).pulls).toHaveLength(1);
    await log(page, opened(corrected));
    await expect(said(page)).toContainText('Good');
    const { pulls, bent } = JSON.parse(await savedText(page));
    expect(pulls).toMatchObject([{ tube: 'hoop', bend: 1, pulled: corrected, net: opened(corrected) }]);
    expect(bent[0].bends).toEqual([
      { bend: 1, pulled: corrected, net: opened(corrected), start: expect.closeTo(bent[0].drawn.starts[0], 6) },
    ]);
    // By calipers: one figure stands for both until the other is typed, and the lesser comes first.
    await page.getByText('How far from round').click();
    const over = page.getByRole('group', { name: 'Over bend 1, by calipers' });
    await enter(over.getByRole('textbox', { name: 'Least across' }), '1.78');
    await enter(over.getByRole('textbox', { name: 'Greatest across' }), '1.72');
    await expect(over.getByRole('textbox', { name: 'Least across' })).toHaveValue('1.720');
    expect(JSON.parse(await savedText(page)).bent[0].bends[0].across.map((mm: number) => mm.toFixed(3))).toEqual([
      '43.688',
      '45.212',
    ]);
    await key(page, 'On to bend 2').click();

    // One small pull cannot tell slack from spring: to spring alone this would be 84 for the hoop's second bend of 76 degrees
    // (docs/architecture.md), by the machine's own slack and spring it is 80. So it is first pulled as if all were slack,
    // to the division below.
    const second = await clamp(page, 2);
    expect(second).toBe(Math.floor(2 * (76 + corrected - opened(corrected))) / 2);
    await expect(page.getByText(`Pull to ${second.toFixed(1)}° first, let go, read, then go on`)).toBeVisible();
    await expect(page.getByText('pulls at one angle cannot tell slack from spring').first()).toBeVisible();
    await key(page, 'It is pulled').click();
    await expect(pulledTo(page)).toHaveValue(String(second));
    await log(page, opened(second));
    await expect(said(page)).toContainText('Short by');
    const pulled = Number(await pulledTo(page).inputValue());
    expect(Math.abs(pulled - (76 + SLACK + SPRING * 76))).toBeLessThanOrEqual(0.75);
    await log(page, opened(pulled));
    await expect(said(page)).toContainText('Good');

    await untilKept(page);
    await page.reload();
    await expect(title(page)).toHaveText('Bend 3: clamp');
    const third = await clamp(page, 3);
    // Two readings to a tenth of a degree leave the scale's half degree open by one division.
    expect(Math.abs(third - pulled)).toBeLessThanOrEqual(0.5);
    expect(third).not.toBe(second);
    await expect(page.getByText('From 2 pulls')).toBeVisible();
    await pullAndRead(page, opened(third));
    await expect(said(page)).toContainText('Good');

    // One looks back, and comes back.
    await page
      .getByRole('navigation', { name: 'Steps of the run' })
      .getByRole('button', { name: 'Mark, done' })
      .click();
    await expect(title(page)).toHaveText('Mark the bends');
    await key(page, /^Back to where you are/u).click();
    const fourth = await clamp(page, 4);
    await expect(page.getByText('From 3 pulls')).toBeVisible();
    await expect(figure(page)).toContainText('known to');
    await pullAndRead(page, opened(fourth));
    await expect(said(page)).toContainText('Good');
    await key(page, 'On to the check').click();

    const width = page.getByRole('listitem').filter({ hasText: 'Overall width' });
    await width.getByRole('textbox', { name: 'Measured' }).fill('49 1/2');
    await width.getByRole('textbox', { name: 'Measured' }).press('Enter');
    await expect(width.getByRole('status')).toContainText(/than predicted/u);
    await key(page, 'It is checked').click();
    await key(page, 'Back to the Shop').click();
    await expect(page.getByText('Bent and checked.')).toBeVisible();
    await expect(page.getByRole('table', { name: 'Bends as made' }).getByRole('row')).toHaveCount(5);
    const done = JSON.parse(await savedText(page));
    expect(done.pulls).toHaveLength(4);
    expect(done.bent[0].checks).toEqual([{ check: 'width', measured: 1257.3 }]);
    // Its steps have marked it, and as it came out it leads: what is drawn follows, and what is cut does not.
    expect(done.made).toMatchObject([{ tube: 'hoop', stage: 'bent' }]);
    await showPart(page, 'Tubes');
    await expect(page.getByLabel('Made so far')).toHaveValue('bent');
    await key(page, 'Next tube: 2, Rear stay (left)').click();
    await page.getByLabel('Made so far').selectOption('notched');
    await key(page, 'Tube before: 1, Main hoop').click();
    await showPart(page, 'Bending');
    const lead = page.getByRole('region', { name: 'As it came out' });
    await expect(lead).toContainText('The frame stands as drawn.');
    await lead.getByText('What changes').click();
    await expect(lead.getByRole('listitem').filter({ hasText: 'Main diagonal' })).toContainText('blank');
    await expect(lead).toContainText('1 more changes by less than a tape reads.');
    await expect(lead.getByRole('listitem').filter({ hasText: 'Rear stay (left)' })).toHaveCount(0);
    await key(page, 'Let it lead').click();
    await expect(lead).toContainText('This tube leads.');
    expect(JSON.parse(await savedText(page)).bent[0].stands).toBe(true);

    while (await undoKey(page).isEnabled()) await undoKey(page).click();
    expect(await savedText(page)).toBe(atFirst);
  });

  await test.step('marks stay as drawn after one small bend; once another angle is pulled, one that moved is to be drawn anew', async () => {
    const demo = JSON.parse(await savedText(page));
    for (const die of demo.dies) die.radius = 'from-pulls';
    demo.name = 'By the pulls';
    await openFile(page, 'pulls.cagewright.json', JSON.stringify(demo));
    await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(demo.name);
    await begin(page);
    await expect(page.getByText('This mark has moved')).toBeHidden();
    const estimate = await clamp(page, 1);
    await pullAndRead(page, opened(estimate));
    await log(page, opened(Number(await pulledTo(page).inputValue())));
    await key(page, 'On to bend 2').click();
    await expect(title(page)).toHaveText('Bend 2: clamp');
    const moved = page.getByText(/^▲ This mark has moved .* towards end A since the run began/u);
    await expect(moved).toBeHidden();
    const first = await clamp(page, 2);
    await pullAndRead(page, opened(first));
    await log(page, opened(Number(await pulledTo(page).inputValue())));
    await key(page, 'On to bend 3').click();
    await expect(title(page)).toHaveText('Bend 3: clamp');
    // Bends open more than the steel alone would: a larger radius, so the third starts sooner.
    await expect(moved).toBeVisible();
  });
});

test('readings that are refused or go too far, a tube that must not be bent, a telephone', async ({ page }) => {
  await start(page);
  const demo = await savedText(page);
  /** The demo once more: another document, in which nothing is bent yet. */
  const anew = async (): Promise<void> => {
    await openFile(page, 'anew.cagewright.json', demo);
    await expect(page.locator('.run-page')).toBeHidden();
  };

  await test.step('a reading that is none is refused beside its field, and nothing is logged', async () => {
    await begin(page);
    await clamp(page, 1);
    await key(page, 'It is pulled').click();
    await expect(reads(page)).toBeFocused();
    const before = await savedText(page);
    for (const [text, reason] of [
      ['', 'type an angle'],
      ['400', 'more than a full turn'],
      ['250', 'beyond 200°'],
      ['12,6', 'use a point: 12.6'],
      ['-3', 'more than 0°'],
      ['0', 'more than 0°'],
      ['steep', 'not an angle'],
    ] as const) {
      await log(page, text);
      await expect(page.getByRole('alert')).toHaveText(new RegExp(reason, 'u'));
      await expect(reads(page)).toBeFocused();
      await expect(reads(page)).toHaveAttribute('aria-invalid', 'true');
    }
    expect(await savedText(page)).toBe(before);
    // More than it was pulled to: it is taken as read, and called what it is.
    await log(page, 60);
    await expect(said(page)).toContainText('This cannot be');
    await undoKey(page).click();
    expect(await savedText(page)).toBe(before);
    // By far too little: it is not pulled on from there, and is no pull for the log.
    await pulledTo(page).fill('64');
    await log(page, '6.1');
    await expect(said(page)).toContainText('This cannot be');
    await expect(said(page)).toContainText('Pulled to 64°, read as 6.1°.');
    await expect(said(page)).toContainText('Read both again');
    await expect(key(page, 'Leave it as it is')).toHaveCount(0);
    expect(JSON.parse(await savedText(page)).pulls).toHaveLength(JSON.parse(before).pulls.length);
  });

  await anew();
  await test.step('a bend that went too far is shown by what it does to the far end, and may be left so', async () => {
    await begin(page);
    await clamp(page, 1);
    await key(page, 'It is pulled').click();
    await pulledTo(page).fill('18.5');
    await log(page, 16.6);
    await expect(said(page)).toContainText(/Bent too far, by 4.0°.*takes end B .* in from its place/u);
    await key(page, 'Leave it as it is').click();
    await expect(said(page)).toContainText('Left as it is');
    await key(page, 'On to bend 2').click();
    await expect(title(page)).toHaveText('Bend 2: clamp');
    expect(JSON.parse(await savedText(page)).bent[0].bends[0].kept).toBe(true);
    await undoKey(page).click();
    await expect(title(page)).toHaveText('Bend 1: let go and read');
  });

  await anew();
  await test.step('what must not be bent says why; what is begun goes on; a run of another tube than is drawn now offers to start anew', async () => {
    await begin(page);
    const job = JSON.parse(await savedText(page));
    // What is opened is another document: its run is opened anew.
    const goOn = async (file: string, other: object, door = 'On with the bend run'): Promise<void> => {
      await openFile(page, file, JSON.stringify(other));
      await expect(page.locator('.run-page')).toBeHidden();
      await chooseHoop(page);
      await key(page, door).click();
    };

    const shallow = job.dies.map((die: object) => ({ ...die, greatestAngle: 60 }));
    await goOn('shallow.json', { ...job, dies: shallow, bent: [] }, 'Bend this tube');
    await expect(page.getByRole('heading', { name: /it is not to be bent/u })).toBeFocused();
    await expect(page.getByText(/bend 2 turns 76.0°.* goes to 60°/u)).toBeVisible();
    await key(page, 'Shop').click();
    await goOn('shallow begun.json', { ...job, dies: shallow });
    await expect(page.getByText('Found since this run began')).toBeVisible();
    const why = page.locator('.run-found').getByText(/bend 2 turns 76.0°.* goes to 60°/u);
    await expect(why).toBeVisible();
    await page.getByText('Found since this run began').click();
    await expect(why).toBeHidden();
    await clamp(page, 1);

    const { drawn } = job.bent[0];
    const otherwise = { ...job.bent[0], drawn: { ...drawn, angles: drawn.angles.with(1, 70) } };
    await goOn('otherwise.json', { ...job, bent: [otherwise] });
    await expect(page.getByText('Bend 2 was 70.0°, now it is 76.0°.')).toBeVisible();
    await expect(title(page)).toHaveText('Bend 1: clamp');

    const fewer = {
      ...job.bent[0],
      order: job.bent[0].order.slice(0, 3),
      bends: [{ bend: 2, pulled: 21.5, net: 20, kept: true }],
      drawn: { ...drawn, angles: [10, 20, 30] },
    };
    await goOn('fewer.json', { ...job, bent: [fewer] });
    await expect(page.getByText('It had 3 bends, now it has 4.')).toBeVisible();
    const kept = page.getByRole('region', { name: 'What was measured, kept with the run' });
    await expect(kept.getByRole('listitem')).toHaveText(['Bend 2: pulled to 21.5°, read 20.0°, left so']);
    await key(page, 'Shop').click();
    await expect(page.getByText('This run is of another tube than is drawn now.')).toBeVisible();
    await expect(kept.getByRole('listitem')).toHaveCount(1);
    await expect(
      page.getByText(/these readings of its bend run are of none of them: bend 2 read as 20.0°/u),
    ).toBeVisible();
    await expect(key(page, 'On with the bend run')).toBeFocused();
    await key(page, 'On with the bend run').click();
    await key(page, 'Start anew').click();
    await expect(title(page)).toHaveText('4 bends to make');
  });

  await anew();
  await test.step('390 x 844: each step fits, its keys are for thumbs; the run waits while one is elsewhere', async () => {
    // With a log that bears a law, so that beside what to pull to stands how well it is known.
    const job = JSON.parse(await savedText(page));
    const { die, section } = job.members[0];
    job.pulls = [20, 45, 60, 80, 95].map((pulled, i) => ({ die, section, pulled, net: opened(pulled) + (i % 2) / 10 }));
    await openFile(page, 'logged.cagewright.json', JSON.stringify(job));
    await page.setViewportSize({ width: 390, height: 844 });
    const fits = async (): Promise<void> => {
      const wide = await page.locator('.run-page').evaluate((element) => element.scrollWidth - element.clientWidth);
      expect(wide).toBe(0);
      for (const one of await page.locator('.run').getByRole('button').filter({ visible: true }).all()) {
        const { width, height } = (await one.boundingBox())!;
        expect(Math.min(width, height), await one.innerText()).toBeGreaterThanOrEqual(48);
      }
    };
    // Its pulls say that bends open: which radius the marks follow is said before anything is cut.
    await begin(page, async () => {
      await expect(
        page.getByRole('listitem').filter({ hasText: /^As the die says, .*: end B comes out/u }),
      ).toBeVisible();
      await expect(
        page.getByRole('listitem').filter({ hasText: /^As the pulls say, .*: it comes out as drawn/u }),
      ).toBeVisible();
      await expect(key(page, 'Begin')).toBeDisabled();
      await fits();
      await page.getByText('As the die says', { exact: true }).click();
      await expect(page.getByRole('radio', { name: 'As the die says' })).toBeChecked();
    });
    expect(JSON.parse(await savedText(page)).seen).toMatchObject([{ finding: 'bend/radius-opens', tube: 'hoop' }]);
    await fits();
    await clamp(page, 1);
    await expect(figure(page)).toContainText('known to');
    await fits();
    await pullAndRead(page, 10);
    await expect(said(page)).toContainText('Short');
    await fits();
    await page.keyboard.press('Alt+1');
    await expect(page.getByRole('grid', { name: /^Measured points/u })).toBeVisible();
    await goTo(page, 'Shop');
    await expect(title(page)).toHaveText('Bend 1: let go and read');
    await key(page, 'Shop').click();
    await key(page, 'On with the bend run').click();
    await expect(title(page)).toHaveText('Bend 1: let go and read');
  });
});

test('a second press on a key does not tick the next step off as well; a keyboard need not wait', async ({ page }) => {
  await page.clock.install();
  await start(page);
  await chooseHoop(page);
  await key(page, 'Bend this tube').click();
  await key(page, 'Begin').click();
  await expect(key(page, 'It is cut')).toBeEnabled();
  // From here on no time goes by but what the test lets go by.
  await page.clock.pauseAt(new Date(Date.now() + 3_600_000));
  await key(page, 'It is cut').click();
  await expect(title(page)).toHaveText('Mark the bends');
  const marked = key(page, 'They are marked');
  await expect(marked).toBeDisabled();
  await marked.click({ force: true });
  await page.clock.runFor(100);
  await marked.click({ force: true });
  await expect(title(page)).toHaveText('Mark the bends');
  await page.clock.runFor(1000);
  await expect(marked).toBeEnabled();
  await marked.click();
  await expect(title(page)).toHaveText('Bend 1: clamp');
  await key(page, 'It is clamped').press('Enter');
  await expect(title(page)).toHaveText('Bend 1: pull');
});

/** By the keyboard from where it stands now, as far as that control. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  for (let presses = 0; presses < 25; presses++) {
    await page.keyboard.press('Tab');
    if (await control.evaluate((element) => element === document.activeElement)) return;
  }
  await expect(control).toBeFocused();
}

test('a tube that is bent already, by the keyboard: what the tape reads, what that changes, and where it stands in the car', async ({
  page,
}) => {
  await start(page);
  const atFirst = await savedText(page);
  await chooseHoop(page);
  const fold = page.locator('summary').filter({ hasText: 'It is bent already' });
  await fold.focus();
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('textbox', { name: 'Overall width, along both ends' }));
  await page.keyboard.type('50');
  await tabTo(page, page.getByRole('textbox', { name: 'Overall height, square to that' }));
  await page.keyboard.type('46');
  const says = page.getByRole('region', { name: 'What the figures say' });
  await expect(says.getByRole('status')).toContainText('does not agree with the rest');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('43');
  await expect(says.getByRole('status')).not.toContainText('does not agree');
  await expect(says.getByRole('row', { name: /^2 76.0°/u })).toContainText('°');

  await tabTo(page, key(page, 'Fit the bends to these figures'));
  await page.keyboard.press('Enter');
  const lead = page.getByRole('region', { name: 'As it came out' });
  // The fold is gone with the figures; what comes next has the focus.
  await expect(lead).toBeFocused();
  await expect(lead).toContainText('The frame stands as drawn.');
  await tabTo(page, lead.locator('summary').filter({ hasText: 'What changes' }));
  await page.keyboard.press('Enter');
  await expect(lead.getByRole('listitem').filter({ hasText: 'Main diagonal' })).toContainText(/blank|cut/u);
  await tabTo(page, key(page, 'Let it lead'));
  await page.keyboard.press('Enter');
  await expect(lead).toContainText('This tube leads.');

  await tabTo(page, lead.locator('summary').filter({ hasText: 'As it stands in the car: measured' }));
  await page.keyboard.press('Enter');
  const endA = lead.getByRole('group', { name: 'End A' });
  await tabTo(page, endA.getByRole('textbox', { name: 'Along' }));
  await page.keyboard.type('1/4');
  await page.keyboard.press('Enter');
  await expect(endA).toContainText('Stands at along 1/4 in');
  const fitted = JSON.parse(await savedText(page));
  expect(fitted.bent).toMatchObject([{ tube: 'hoop', stands: true, seat: [{ at: 'A', x: 6.35 }] }]);
  expect(fitted.bent[0].bends.every(({ fitted: isFitted }: { fitted?: boolean }) => isFitted)).toBe(true);
  expect(fitted.made).toMatchObject([{ tube: 'hoop', stage: 'bent' }]);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Enter');
  expect(JSON.parse(await savedText(page)).bent[0].seat).toBeUndefined();

  while (await undoKey(page).isEnabled()) await undoKey(page).click();
  expect(await savedText(page)).toBe(atFirst);
});
