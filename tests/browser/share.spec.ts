/** Job files that come and go by the platform: the share sheet, files opened with the installed program, files sent to it. */
import { expect, FEW, savedText, start, test, untilThere } from './journey.ts';

test.use({ ...FEW, serviceWorkers: 'allow' });

const renamed = (text: string, name: string): string => text.replace(/"name": "[^"]*"/u, `"name": "${name}"`);

test('Send the job stands in the menu where the platform takes it, and gives it the file that Save gives', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.assign(navigator, {
      canShare: () => true,
      share: async ({ files }: { files: File[] }) => Object.assign(window, { sent: await files[0]!.text() }),
    });
  });
  await start(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Send the job' }).click();
  await page.waitForFunction(() => 'sent' in window);
  const sent = await page.evaluate(() => (window as unknown as { sent: string }).sent);
  expect(sent).toBe(await savedText(page));
});

test('and not where it takes none', async ({ page }) => {
  await page.addInitScript(() => Object.assign(navigator, { canShare: () => false }));
  await start(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await expect(page.getByRole('button', { name: 'Keys' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Send the job' })).toBeHidden();
});

test('a file sent to the installed program waits for the page, once, and goes through the same door', async ({
  page,
}) => {
  await start(page);
  const manifest = await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]')!;
    return (await (await fetch(link.href)).json()) as {
      share_target: { action: string; params: { files: { name: string }[] } };
    };
  });
  const text = renamed(await savedText(page), 'Sent from the tablet');
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  const { action, params } = manifest.share_target;
  const send = (body: string): Promise<boolean> =>
    page.evaluate(
      async ([to, field, content]) => {
        const form = new FormData();
        form.append(field!, new File([content!], 'täblet.json', { type: 'application/json' }));
        return (await fetch(to!, { method: 'POST', body: form })).ok;
      },
      [action, params.files[0]!.name, body],
    );
  expect(await send(text)).toBe(true);
  await page.goto('about:blank');
  await page.goto('/#sent');
  const question = page.getByRole('dialog', { name: 'Another state of this job' });
  await expect(question).toContainText('täblet.json');
  await question.getByRole('radio', { name: 'There' }).check();
  await question.getByRole('button', { name: 'Take over 1' }).click();
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('Sent from the tablet');
  expect(new URL(page.url()).hash).toBe('');

  await page.goto('about:blank');
  await page.goto('/#sent');
  await expect(page.getByText('What was sent was not opened.')).toBeVisible();
});

test('a file that the system opens with the program goes through it too', async ({ page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(window, 'launchQueue', {
      value: { setConsumer: (take: unknown) => Object.assign(window, { launched: take }) },
    }),
  );
  await start(page);
  const text = await savedText(page);
  await page.waitForFunction(() => 'launched' in window); // what takes it comes after the first load
  await page.evaluate(
    (content) => {
      const { launched } = window as unknown as { launched: (params: object) => void };
      launched({ files: [{ getFile: () => Promise.resolve(new File([content], 'broken.json')) }] });
    },
    text.slice(0, 500),
  );
  await expect(page.getByText('broken.json was not opened.')).toBeVisible();
  await untilThere(page);
});
