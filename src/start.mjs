/**
 * `npm start`: installs what is missing, builds, and serves the program: on this machine, or with `-- --network` on the shop's network
 * too. PORT asks for another port. Exit 2 when what is asked for cannot be meant.
 */
import { join } from 'node:path';
import { ensureInstalled, root } from './scripts/install.mjs';
import { readArguments } from './scripts/network/arguments.mjs';
import { readPair } from './scripts/network/certificate.mjs';
import { portOf, serve } from './scripts/serve.mjs';

const usualPort = 4680;
const dist = join(root, 'dist');

/** @param {string} sentence @returns {never} */
function refuse(sentence) {
  console.error(sentence);
  process.exit(2);
}

const wanted = Number(process.env.PORT || usualPort);
if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) {
  refuse(`PORT=${process.env.PORT} is no port: a whole number from 0 to 65535 is wanted.`);
}
const asked = readArguments(process.argv.slice(2));
if ('trouble' in asked) refuse(asked.trouble);
const pair = asked.pair && readPair(asked.pair);
if (pair && 'trouble' in pair) refuse(pair.trouble);

ensureInstalled();
const { build } = await import('vite'); // only now is it sure to be there
await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });

/**
 * On the wanted port, or on a free one where it is taken.
 *
 * @template T
 * @param {(port: number) => Promise<T>} start
 */
const onAPort = (start) =>
  start(wanted).catch((error) => {
    if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') throw error;
    return start(0);
  });

/** @param {number} port */
function say(port) {
  if (port !== wanted) {
    console.log(
      `Port ${wanted} is taken. The browser keeps work by address: jobs saved under another port are not lost,`,
    );
    console.log('they show again when the program is served there.');
  }
  console.log(`Cagewright is ready:  http://localhost:${port}/   (Ctrl+C ends it)`);
}

if (asked.network) {
  const { openFolder, usualFolder } = await import('./scripts/relay/folder.mjs');
  const { serveOnNetwork, writeBeforeTheEnd } = await import('./scripts/network/serve.mjs');
  const { networkLines } = await import('./scripts/network/words.mjs');
  /** @type {ReturnType<typeof openFolder> | undefined} */
  let folder;
  try {
    folder = openFolder(usualFolder());
  } catch (error) {
    const { code } = /** @type {NodeJS.ErrnoException} */ (error);
    refuse(`What devices share cannot be kept in ${usualFolder()} (${code}). CAGEWRIGHT_SHARED names another folder.`);
  }
  const served = await onAPort((port) => serveOnNetwork(dist, port, folder, pair));
  say(served.port);
  const lines = networkLines({
    addresses: served.addresses(),
    shared: folder.path,
    isSecure: pair !== undefined,
    isColoured: process.stdout.isTTY,
  });
  for (const line of lines) console.log(line);
  writeBeforeTheEnd(served);
} else say(portOf(await onAPort((port) => serve(dist, port))));
