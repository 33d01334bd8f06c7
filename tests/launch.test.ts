import { spawnSync } from 'node:child_process';
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { root } from '../src/scripts/install.mjs';

it('two programs that stand in one folder are two, each run again from what was kept of it', () => {
  const cache = join(root, 'node_modules/.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'programs-'));
  const entry = (name: string) => relative(root, join(folder, `${name}.ts`)).replaceAll('\\', '/');
  onTestFinished(() => {
    rmSync(folder, { recursive: true });
    for (const name of ['one', 'two'])
      rmSync(join(cache, 'cagewright', entry(name).replaceAll('/', '-')), { recursive: true, force: true });
  });
  for (const name of ['one', 'two']) {
    writeFileSync(
      join(folder, `${name}.ts`),
      `export const main = ([given]: string[]): number => (process.stdout.write('${name} ' + given), 3);`,
    );
  }
  for (const name of ['one', 'two', 'one']) {
    const { status, stdout } = spawnSync(process.execPath, [join(root, 'src/scripts/launch.mjs'), entry(name), 'x'], {
      encoding: 'utf8',
    });
    expect([status, stdout]).toEqual([3, `${name} x`]);
  }
});
