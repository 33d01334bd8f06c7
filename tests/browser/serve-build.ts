/** Serves the build on a free port for as long as the browser tests run. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../../src/scripts/install.mjs';
import { portOf, serve } from '../../src/scripts/serve.mjs';

export default async function serveBuild() {
  const dist = join(root, 'dist');
  if (!existsSync(join(dist, 'index.html'))) throw new Error('There is no build to test: npm run build');
  const server = await serve(dist, 0);
  process.env.CAGEWRIGHT_URL = `http://localhost:${portOf(server)}`;
  return () => {
    server.closeAllConnections();
    server.close();
  };
}
