/**
 * Serves the build on a free port for as long as the browser tests run; and once more with a demo of few tubes (tests/few-tubes.ts), for
 * tests in which the job is nothing but a job: to derive, rehearse and list the demo's thirty tubes is half of what a page loaded costs.
 */
import { existsSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { portOf, serve } from '../../src/scripts/serve.mjs';
import { fewTubes } from '../few-tubes.ts';
import { build } from './build.ts';

const DEMO = 'demo.cagewright.json';

export default async function serveBuild() {
  if (!existsSync(join(build, 'index.html'))) throw new Error('There is no build to test: npm run build');
  const small = mkdtempSync(join(tmpdir(), 'cagewright-'));
  for (const name of readdirSync(build)) if (name !== DEMO) symlinkSync(join(build, name), join(small, name));
  writeFileSync(join(small, DEMO), fewTubes());
  const servers = [await serve(build, 0), await serve(small, 0)] as const;
  const [url, smallUrl] = servers.map((server) => `http://localhost:${portOf(server)}`);
  process.env.CAGEWRIGHT_URL = url;
  process.env.CAGEWRIGHT_SMALL_URL = smallUrl;
  return () => {
    for (const server of servers) {
      server.closeAllConnections();
      server.close();
    }
    rmSync(small, { recursive: true });
  };
}
