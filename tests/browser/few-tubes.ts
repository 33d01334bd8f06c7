/** A job for journeys that make every file of every tube: the demo's hoop, stays and diagonal alone; all of the demo in the long run. */
import { expect, type Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { LONG } from '../draws.ts';
import { openFile } from './journey.ts';

const NAME = 'Few tubes';

interface Part {
  readonly members: readonly { readonly path: readonly string[] }[];
  readonly nodes: readonly { readonly id: string }[];
}

function fewTubes(): string {
  const job = JSON.parse(demoText()) as Part;
  const members = LONG ? job.members : job.members.slice(0, 3);
  const ends = new Set(members.flatMap(({ path }) => path.map((id) => id.replace(/'$/u, ''))));
  const nodes = LONG ? job.nodes : job.nodes.filter(({ id }) => ends.has(id));
  return JSON.stringify({ ...job, name: NAME, members, nodes });
}

/** Opens it, and answers its text. */
export async function openFewTubes(page: Page): Promise<string> {
  const text = fewTubes();
  await openFile(page, 'few.cagewright.json', text);
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(NAME);
  return text;
}
