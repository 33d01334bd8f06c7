/** Serves the build on a free port for as long as the browser tests run. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { portOf, serve } from '../../src/scripts/serve.mjs';
import { build } from './build.ts';

export default async function serveBuild() {
  if (!existsSync(join(build, 'index.html'))) throw new Error('There is no build to test: npm run build');
  const server = await serve(build, 0);
  process.env.CAGEWRIGHT_URL = `http://localhost:${portOf(server)}`;
  return () => {
    server.closeAllConnections();
    server.close();
  };
}
