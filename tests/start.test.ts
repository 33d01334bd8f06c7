import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../src/scripts/install.mjs';

describe('npm start', () => {
  it.each(['abc', '70000', '-1', '4680.5'])('refuses PORT=%s in one plain line, before it builds anything', (port) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'src/start.mjs')], {
      env: { ...process.env, PORT: port },
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toBe(`PORT=${port} is no port: a whole number from 0 to 65535 is wanted.\n`);
  });
});
