/** A tube rehearsed on its bender: opened from the Shop, stepped, scrubbed with keys, said in words, left again. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { countDraws, drawn, untilStill } from './drawn.ts';
import { bay, chooseTube, expect, FEW, goTo, IN_THE_BAY, openFile, SIZES, start, stationKey, test } from './journey.ts';

const DEMO = readFileSync(new URL('../../public/demo.cagewright.json', import.meta.url), 'utf8');

const WITH_CABINET = 'With a cabinet';
/** The demo with one thing more in its shop: a cabinet that the hoop's last bends swing into. */
function withCabinet(): string {
  const job = { ...JSON.parse(DEMO), name: WITH_CABINET };
  for (const die of job.dies) {
    die.bender.room.push({
      name: 'Cabinet',
      kind: 'box',
      centre: [600, 1300, 900],
      size: [300, 300, 1800],
      rotation: [0, 0, 0],
    });
  }
  return JSON.stringify(job);
}

const room = (page: Page): Locator => page.getByRole('region', { name: /^Rehearsal of tube/ });
const slider = (page: Page): Locator => page.getByRole('slider', { name: 'Place in the rehearsal' });
const spoken = (page: Page): Locator => room(page).getByRole('status');
const steps = (page: Page): Locator => page.getByRole('list', { name: 'Steps' }).getByRole('button');
const forward = (page: Page): Locator => page.getByRole('button', { name: 'Step forward' });
const opener = (page: Page): Locator => page.getByRole('button', { name: 'Rehearse on the bender' });

async function toTube(page: Page, name: string): Promise<void> {
  await goTo(page, 'Shop');
  await chooseTube(page, name, 'Bending');
}

async function rehearse(page: Page, name = 'Main hoop'): Promise<void> {
  await toTube(page, name);
  await opener(page).click();
  await slider(page).waitFor();
}

test('the rehearsal of the main hoop, with keys and at rest', IN_THE_BAY, async ({ page }) => {
  await countDraws(page);
  await start(page);
  await test.step("the main hoop's rehearsal is stepped and scrubbed with keys, and Escape brings the frame back", async () => {
    await rehearse(page);
    await expect(room(page)).toContainText('Free as it comes');
    await expect(steps(page)).toHaveCount(4);
    await expect(steps(page).first()).toHaveAttribute('aria-current', 'step');
    await expect(spoken(page)).toHaveText(/^Step 1 of 4, bend 1: pull to [\d.]+°\.$/);
    await expect(bay(page), 'the frame cannot be reached behind it').toHaveCount(0);

    await forward(page).click();
    await expect(spoken(page)).toHaveText(/^Step 1 of 4, bend 1: pulled to [\d.]+°\.$/);
    await forward(page).press('Enter');
    await expect(spoken(page)).toHaveText(/^Step 2 of 4, bend 2: pull to/);
    await expect(steps(page).nth(1)).toHaveAttribute('aria-current', 'step');

    await slider(page).focus();
    await expect(slider(page)).toHaveAttribute('aria-valuetext', /^bend 2, 0\.0° of /);
    for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowRight');
    await expect(slider(page)).toHaveAttribute('aria-valuetext', /^bend 2, 3\.0° of /);
    await page.keyboard.press('ArrowLeft');
    await expect(slider(page)).toHaveAttribute('aria-valuetext', /^bend 2, 2\.0° of /);
    await page.keyboard.press('End');
    await expect(spoken(page)).toHaveText(/^Step 4 of 4, bend 4: let go, [\d.]+° stands\.$/);
    await expect(forward(page)).toBeDisabled();
    await page.keyboard.press('Home');
    await expect(spoken(page)).toHaveText(/^Step 1 of 4, bend 1: pull to/);

    await steps(page).nth(2).click();
    await expect(spoken(page)).toHaveText(/^Step 3 of 4, bend 3: pull to/);
    await slider(page).focus();
    await page.keyboard.press('Escape');
    await expect(room(page)).toHaveCount(0);
    await expect(bay(page)).toBeVisible();
    await expect(opener(page), 'one stands where one came from').toBeFocused();
  });

  await test.step('paused it draws nothing; a key, a turned view and another step are drawn; another tube or station ends it', async () => {
    await rehearse(page);
    let before = await untilStill(page);
    await page.waitForTimeout(1_000);
    expect(await drawn(page)).toBe(before);
    const machine = page.getByRole('application', { name: /^Bender with the tube/ });
    for (const [what, act] of [
      ['a key on the slider', () => slider(page).press('ArrowRight')],
      ['a turned view', () => machine.press('ArrowLeft')],
      ['a standard view', () => page.getByRole('button', { name: 'Machine from above' }).click()],
      ['a step', () => forward(page).click()],
    ] as const) {
      await act();
      const after = await untilStill(page);
      expect(after, what).toBeGreaterThan(before);
      before = after;
    }

    await chooseTube(page, 'Dash bar');
    await expect(room(page)).toHaveCount(0);
    await rehearse(page, 'Dash bar');
    await page.keyboard.press('Alt+2');
    await expect(stationKey(page, 'Frame')).toHaveAttribute('aria-current', 'step');
    await expect(room(page)).toHaveCount(0);
    await expect(bay(page)).toBeVisible();
  });
});

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('without a bender the Shop leads to where one is set up', async ({ page }) => {
    const job = JSON.parse(DEMO);
    for (const die of job.dies) delete die.bender;
    await start(page);
    await openFile(page, 'bare.cagewright.json', JSON.stringify(job));
    await toTube(page, 'Main hoop');
    await expect(page.getByText('No bender is set up for 1 3/4 on 6 in CLR.')).toBeVisible();
    await expect(opener(page)).toHaveCount(0);
    await page.getByRole('button', { name: /^Set it up in Frame/ }).click();
    await expect(stationKey(page, 'Frame')).toHaveAttribute('aria-current', 'step');
  });
});

test.describe('for those who did not ask for less motion', () => {
  test.use({ contextOptions: { reducedMotion: 'no-preference' } });

  test('it plays to its end, can be paused on the way, and is still after it', IN_THE_BAY, async ({ page }) => {
    test.slow();
    await countDraws(page);
    await start(page);
    await rehearse(page);
    // The last two of four bends are as good as all, and drawn in half the time.
    await steps(page).nth(2).click();
    const play = page.getByRole('button', { name: 'Play' });
    await play.press('Enter');
    await page.getByRole('button', { name: 'Pause' }).press('Enter');
    await expect(play).toBeVisible();
    const paused = await untilStill(page);
    const place = await slider(page).inputValue();
    expect(Number(place)).toBeLessThan(Number(await slider(page).getAttribute('max')));
    await page.waitForTimeout(1_000);
    expect(await drawn(page)).toBe(paused);
    expect(await slider(page).inputValue()).toBe(place);
    await play.press('Enter');
    // However slowly the frames come: it ends by itself.
    await expect(spoken(page)).toHaveText(/^Step 4 of 4, bend 4: let go/, { timeout: 50_000 });
    await expect(play).toBeVisible({ timeout: 10_000 });
    expect(await slider(page).inputValue()).toBe(await slider(page).getAttribute('max'));
    expect(await untilStill(page)).toBeGreaterThan(paused);
  });
});

test('the rehearsal at each size, and with a cabinet in the way', IN_THE_BAY, async ({ page }) => {
  await start(page);
  await test.step('at each size: nothing runs off sideways, thumbs find the keys, and nothing moves as it is stepped', async () => {
    await rehearse(page);
    const machine = page.getByRole('application', { name: /^Bender with the tube/ });
    for (const size of SIZES) {
      await page.setViewportSize(size);
      const overflow = await room(page).evaluate((element) =>
        [element, ...element.querySelectorAll('header, ol, .rehearsal-desk')]
          .filter((each) => each.scrollWidth > each.clientWidth + 1)
          .map((each) => each.className),
      );
      expect(overflow).toEqual([]);
      const keys = room(page).getByRole('button').filter({ visible: true });
      for (const key of await keys.all()) {
        const { width, height } = (await key.boundingBox())!;
        expect(Math.min(width, height), await key.innerText()).toBeGreaterThanOrEqual(44);
      }
      await steps(page).first().click();
      const first = await machine.boundingBox();
      expect(first!.height).toBeGreaterThan(250);
      for (let stepped = 0; stepped < 8; stepped += 1) {
        await forward(page).click();
        expect(await machine.boundingBox()).toEqual(first);
      }
    }
  });

  await page.keyboard.press('Escape');
  await expect(room(page)).toHaveCount(0);
  await page.setViewportSize(SIZES[0]!);
  await test.step('a cabinet in the way: the plain order touches it, another is proposed with its reason, the checks say so', async () => {
    await openFile(page, 'cabinet.cagewright.json', withCabinet());
    await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(WITH_CABINET);
    await rehearse(page);
    await expect(room(page)).toContainText(
      'Take bends 1, 2 and 4 in that order with end A in front, then bend 3 with end B in front',
    );
    await expect(room(page)).toContainText('As it comes, bend 3 swings into Cabinet at');
    await expect(steps(page).last()).toHaveText(
      /Bend 3.*Turn the tube end for end, end B in front\. Turn the tube .*free/,
    );

    await page.getByRole('radio', { name: 'Bend after bend' }).check({ force: true });
    const touching = steps(page).filter({ hasText: 'swings into Cabinet at' });
    await expect(touching).not.toHaveCount(0);
    const words = /swings into Cabinet at (\d+)°/.exec((await touching.first().textContent())!)!;
    await touching.first().click();
    await forward(page).click();
    await expect(spoken(page)).toHaveText(`Step 3 of 4, bend 3: ${words[0]}.`);
    await expect(slider(page)).toHaveAttribute(
      'aria-valuetext',
      new RegExp(`^bend 3, ${words[1]}\\.\\d°.*${words[0]}$`),
    );
    await expect(room(page).locator('.bay-label-dimension')).toHaveText(`× ${words[0]}`);

    await page.getByRole('button', { name: 'Back to the frame' }).first().click();
    await goTo(page, 'Checks');
    await expect(
      page.getByText(/Main hoop: bent one after the other with end A in front, bend 3 .*Cabinet/),
    ).toBeVisible();
  });
});
