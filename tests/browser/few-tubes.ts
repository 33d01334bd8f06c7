/** The job of few tubes opened in the page, for journeys that make every file of every tube. */
import { expect, type Page } from '@playwright/test';
import { FEW_TUBES_NAME, fewTubes } from '../few-tubes.ts';
import { openFile } from './journey.ts';

/** Opens it, and answers its text. */
export async function openFewTubes(page: Page): Promise<string> {
  const text = fewTubes();
  await openFile(page, 'few.cagewright.json', text);
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(FEW_TUBES_NAME);
  return text;
}
