/** A file that is another state of the open job: what differs is listed, and what is ticked comes in as one step. */
import type { Page } from '@playwright/test';
import { expect, FEW, savedText, SIZES, start, test, undoKey } from './journey.ts';

test.use(FEW);

interface LooseJob {
  name: string;
  carMass?: number;
  points: { id: string; name: string; position: number[] }[];
  nodes: unknown[];
  members: { id: string; name: string }[];
  sections: { id: string }[];
  survey?: { measurements: object[] };
}

/** As it was carried on elsewhere: a point and a reading more, a bar more, another mass and name of a bar. */
async function elsewhere(page: Page): Promise<LooseJob> {
  const job = JSON.parse(await savedText(page)) as LooseJob;
  job.points.push({ id: 'p90', name: 'Harness eye', position: [-900, 200, 500] });
  const measurements = job.survey?.measurements ?? [];
  const reading = { id: 'r900', kind: 'distance', from: 'p90', to: job.points[0]!.id, value: 812.8 };
  job.survey = { ...job.survey, measurements: [...measurements, reading] };
  job.nodes.push({ id: 'n90', name: 'Knee bar, end A', at: { kind: 'fixed', position: [300, 400, 500] } });
  job.members.push({ id: 'm90', name: 'Knee bar', path: ['n90', "n90'"], section: job.sections[0]!.id } as never);
  job.members[0]!.name = 'Hoop, as renamed';
  job.carMass = 1234;
  return job;
}

async function carryIn(page: Page, job: LooseJob, name = 'tablet.cagewright.json'): Promise<void> {
  const dropped = await page.evaluateHandle(
    ([text, called]) => {
      const carried = new DataTransfer();
      carried.items.add(new File([text!], called!, { type: 'application/json' }));
      return carried;
    },
    [JSON.stringify(job), name],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: dropped });
}

test('what was measured there is ticked, a bar brings its node along, and undo takes all of it back', async ({
  page,
}) => {
  await start(page);
  const before = await savedText(page);
  await carryIn(page, await elsewhere(page));
  const question = page.getByRole('dialog', { name: 'Another state of this job' });
  await expect(question).toContainText('tablet.cagewright.json');
  const measured = question.getByRole('region', { name: 'Measured' });
  await expect(measured.getByRole('checkbox', { name: 'Point Harness eye' })).toBeChecked();
  await expect(measured.getByRole('checkbox', { name: /^The tape from Harness eye/ })).toBeChecked();
  const bar = question.getByRole('checkbox', { name: 'Member Knee bar' });
  await expect(bar).not.toBeChecked();
  await bar.check();
  await expect(question).toContainText('Comes along, since it is needed: Node Knee bar, end A.');
  const renamed = question.getByRole('group').filter({ hasText: 'Hoop, as renamed' });
  await expect(renamed.getByRole('radio', { name: 'Here', exact: true })).toBeChecked();
  await renamed.getByRole('radio', { name: 'There' }).check();
  await question.getByRole('button', { name: 'Take over 4' }).press('Enter');
  await expect(question).toBeHidden();

  const after = JSON.parse(await savedText(page)) as LooseJob;
  expect(after.points.at(-1)!.name).toBe('Harness eye');
  expect(after.members.map(({ name }) => name)).toEqual(expect.arrayContaining(['Hoop, as renamed', 'Knee bar']));
  expect(after.carMass).toBe((JSON.parse(before) as LooseJob).carMass);
  await expect(undoKey(page)).toHaveAccessibleName(/Take over from tablet\.cagewright\.json/);
  await undoKey(page).click();
  expect(await savedText(page)).toBe(before);
});

test('it is left alone by Escape, opened in its own place by the other key, and what would not hold together is said', async ({
  page,
}) => {
  await start(page);
  const before = await savedText(page);
  const there = await elsewhere(page);
  const question = page.getByRole('dialog', { name: 'Another state of this job' });

  const lacking = JSON.parse(before) as LooseJob;
  lacking.points[0]!.name = 'Called otherwise';
  const { id } = lacking.nodes[0] as { id: string };
  lacking.members = lacking.members.filter((member) => !JSON.stringify(member).includes(`"${id}`));
  lacking.nodes = [];
  lacking.members = [];
  await carryIn(page, { ...lacking, name: 'Stripped' });
  await question
    .getByRole('checkbox', { name: /^Take out: Node/ })
    .first()
    .check();
  await question.getByRole('button', { name: 'Take over 1' }).click();
  await expect(question.getByRole('alert')).toContainText('leave that, or take both out');
  await page.keyboard.press('Escape');
  await expect(question).toBeHidden();
  expect(await savedText(page)).toBe(before);

  await carryIn(page, there);
  await question.getByRole('button', { name: 'Open it in its own place' }).click();
  await expect(question).toBeHidden();
  expect((JSON.parse(await savedText(page)) as LooseJob).carMass).toBe(1234);
  await expect(undoKey(page)).toBeDisabled();
});

test('at each size every answer is in sight', async ({ page }) => {
  await start(page);
  await carryIn(page, await elsewhere(page));
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const name of [/^Take over \d/, 'Open it in its own place', 'Cancel', 'Close']) {
      await expect(page.getByRole('dialog').getByRole('button', { name })).toBeInViewport({ ratio: 1 });
    }
    const over = await page.getByRole('dialog').evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
    expect(over).toBe(0);
  }
});
