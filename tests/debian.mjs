/** What the tests take from Debian's packages, where they run on Debian as root: on a clean machine of a contributor's checks. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';

/**
 * Runs a command that fetches something, while others go on. What it says is printed once it has ended, in one piece.
 *
 * @param {string} command
 * @returns {Promise<boolean>} whether it ended well
 */
export async function fetching(command) {
  const child = spawn(`${command} 2>&1`, { shell: true, stdio: ['ignore', 'pipe', 'inherit'] });
  /** @type {Buffer[]} */
  const said = [];
  child.stdout.on('data', (chunk) => said.push(chunk));
  const [status] = await once(child, 'close');
  process.stdout.write(Buffer.concat(said));
  return status === 0;
}

/**
 * @param {string} name of the package
 * @returns {Promise<boolean>} whether it was installed; false where it may not be, or could not
 */
export async function installDebian(name) {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return false;
  await (updated ??= fetching('apt-get update'));
  return fetching(`DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends ${name}`);
}

/**
 * The lists of packages are fetched once.
 *
 * @type {Promise<boolean> | undefined}
 */
let updated;

/** ezdxf reads the DXF files back. Where it cannot be had, the checks with it are left out, and say so. */
export async function ensureEzdxf() {
  if (spawnSync('/usr/bin/python3', ['-c', 'import ezdxf']).status === 0) return;
  console.log('No ezdxf to read DXF files back with: installing it ...');
  await installDebian('python3-ezdxf');
}
