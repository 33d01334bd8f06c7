/** The Shop with what is seldom there: a run that stands in the way, pulls by the dozen at odds, endless names, very many tubes. */
import { latticeOf } from '../bench/lattice.ts';
import {
  FEW,
  choose,
  chooseTube,
  expect,
  goTo,
  openFile,
  savedText,
  showPart,
  start,
  test,
  undoKey,
} from './journey.ts';

test.use(FEW);

/** A leg with one bend on the left, its twin on the right, whose run has begun. */
const LEGS = {
  format: 'cagewright/job',
  version: 1,
  name: 'Two legs',
  lengthUnit: 'mm',
  sections: [{ id: 's', name: '40 x 3', outerDiameter: 40, wall: 3 }],
  dies: [{ id: 'd', name: 'Die', outerDiameter: 40, centrelineRadius: 120 }],
  nodes: [
    { id: 'foot', at: { kind: 'fixed', position: [0, 500, 0] } },
    { id: 'knee', at: { kind: 'fixed', position: [0, 500, 700] } },
    { id: 'top', at: { kind: 'fixed', position: [600, 400, 1000] } },
  ],
  members: [
    {
      id: 'leg',
      name: 'Leg',
      path: ['foot', 'knee', 'top'],
      section: 's',
      die: 'd',
      mirror: true,
      ends: [{ fit: 'square' }, { fit: 'square' }],
    },
  ],
  bent: [{ tube: "leg'", order: [{ bend: 1, front: 'A' }], done: [], bends: [], checks: [] }],
};

test('what is seldom there: endless names, a begun twin, very many tubes', async ({ page }) => {
  await start(page);
  await test.step('endless names stay inside the panel; of many contradictions the first few are shown; nodes have their ellipsoids', async () => {
    const job = JSON.parse(await savedText(page)) as typeof LEGS;
    const endless = 'W'.repeat(200);
    const hoop = job.members.find(({ id }) => id === 'hoop')!;
    const pulls = Array.from({ length: 20 }, (_, i) => ({
      die: hoop.die,
      section: hoop.section,
      pulled: i % 2 === 0 ? 61 : 68,
      net: 60,
      on: '',
    }));
    const named = <Thing extends object>(things: readonly Thing[]) =>
      things.map((each) => ({ ...each, name: endless }));
    await openFile(
      page,
      'endless.cagewright.json',
      JSON.stringify({ ...job, pulls, dies: named(job.dies), sections: named(job.sections), nodes: named(job.nodes) }),
    );
    await goTo(page, 'Shop');
    await chooseTube(page, 'Main hoop', 'Pulls');
    // Ten pulls that opened by 1 degree against ten that opened by 8.
    const warnings = page.locator('.pull-log > .notice-warning');
    await expect(warnings).toHaveCount(4);
    await expect(warnings.last()).toContainText('And 97 more like these');
    await showPart(page, 'Marks');
    await page.getByText('At each node on the tube').click();
    await expect(page.locator('.marks-nodes tbody').first()).toContainText(endless);
    for (const size of [
      { width: 1440, height: 900 },
      { width: 1024, height: 768 },
    ]) {
      await page.setViewportSize(size);
      for (const [shown, part] of [
        ['Pulls', '.pull-log'],
        ['Bending', '.verdict'],
        ['Ends', '.facts'],
        ['Marks', '.marks-nodes'],
      ] as const) {
        await showPart(page, shown);
        await expect(page.locator(part).first()).toBeAttached();
        const wider = await page
          .locator(part)
          .evaluateAll((all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1).length);
        expect(wider, part).toBe(0);
      }
    }
  });
  await page.setViewportSize({ width: 1440, height: 900 });

  await test.step('a twin whose bend run has begun stays until the run is taken out in the Shop, and that is said', async () => {
    await openFile(page, 'legs.cagewright.json', JSON.stringify(LEGS));
    await goTo(page, 'Frame');
    await choose(page, /^Members/, 'Leg');
    const away = page.getByRole('button', { name: 'Take the mirror image away' });
    await away.click();
    await expect(page.getByRole('alert').filter({ hasText: 'take that out first, in the Shop' })).toBeVisible();
    await goTo(page, 'Shop');
    await chooseTube(page, 'Leg (right)', 'Bending');
    const out = page.getByRole('button', { name: 'Take the bend run out' });
    await out.click();
    await expect(out).toHaveCount(0);
    await goTo(page, 'Frame');
    await choose(page, /^Members/, 'Leg');
    await away.click();
    await expect(undoKey(page)).toContainText('No mirror image of Leg');
    await choose(page, /^Members/, 'Leg');
    await expect(page.getByText('On this side only.')).toBeVisible();
  });

  await test.step('solids of more than a hundred tubes are announced as slow before they are asked for', async () => {
    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    await expect(page.getByRole('button', { name: 'cage.step' })).toBeVisible();
    await expect(page.getByText('takes minutes and much memory')).toHaveCount(0);
    await openFile(page, 'many.cagewright.json', JSON.stringify(latticeOf(120)));
    await goTo(page, 'Shop');
    await expect(page.getByText('120 tubes: takes minutes and much memory.')).toBeVisible();
  });
});
