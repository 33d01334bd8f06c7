/**
 * The build with a demo of few tubes (tests/few-tubes.ts), for tests in which the job is nothing but a job: to derive, rehearse and list the
 * demo's thirty tubes is half of what a page loaded costs.
 */
import { mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fewTubes } from '../few-tubes.ts';

const DEMO = 'demo.cagewright.json';

/** A folder that holds the files of the build but for its demo, and how to take it away again. */
export function smallBuild(build: string): { readonly folder: string; readonly takeAway: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'cagewright-'));
  for (const name of readdirSync(build)) if (name !== DEMO) symlinkSync(join(build, name), join(folder, name));
  writeFileSync(join(folder, DEMO), fewTubes());
  return { folder, takeAway: () => rmSync(folder, { recursive: true }) };
}
