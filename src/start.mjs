/**
 * `npm start`: installs what is missing, builds, and serves the program on this machine. PORT asks for another port;
 * exit 2 when it is none.
 */
import { join } from 'node:path';
import { ensureInstalled, root } from './scripts/install.mjs';
import { portOf, serve } from './scripts/serve.mjs';

const usualPort = 4680;
const dist = join(root, 'dist');

const wanted = Number(process.env.PORT || usualPort);
if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) {
  console.error(`PORT=${process.env.PORT} is no port: a whole number from 0 to 65535 is wanted.`);
  process.exit(2);
}

ensureInstalled();
const { build } = await import('vite'); // only now is it sure to be there
await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });

const server = await serve(dist, wanted).catch((error) => {
  if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') throw error;
  return serve(dist, 0);
});

const port = portOf(server);
if (port !== wanted) {
  console.log(
    `Port ${wanted} is taken. The browser keeps work by address: jobs saved under another port are not lost,`,
  );
  console.log('they show again when the program is served there.');
}
console.log(`Cagewright is ready:  http://localhost:${port}/   (Ctrl+C ends it)`);
