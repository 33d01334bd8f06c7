/** Serves the build on a free port for as long as the browser tests run; and beside it the one with few tubes (small-build.ts). */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { portOf, serve } from '../../src/scripts/serve.mjs';
import { build } from './build.ts';
import { smallBuild } from './small-build.ts';

export default async function serveBuild() {
  if (!existsSync(join(build, 'index.html'))) throw new Error('There is no build to test: npm run build');
  const small = smallBuild(build);
  const servers = await Promise.all([build, small.folder].map((folder) => serve(folder, 0)));
  const urls = servers.map((server) => `http://localhost:${portOf(server)}`);
  [process.env.CAGEWRIGHT_URL, process.env.CAGEWRIGHT_SMALL_URL] = urls;
  return () => {
    for (const server of servers) {
      server.closeAllConnections();
      server.close();
    }
    small.takeAway();
  };
}
