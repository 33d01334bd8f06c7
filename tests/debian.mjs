/** What the tests take from Debian's packages, where they run on Debian as root: on a clean machine of a contributor's checks. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/**
 * @param {string} name of the package
 * @returns {boolean} whether it was installed; false where it may not be, or could not
 */
export function installDebian(name) {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return false;
  const command = `apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends ${name}`;
  return spawnSync(command, { shell: true, stdio: ['ignore', 'inherit', 'inherit'] }).status === 0;
}

/** ezdxf reads the DXF files back. Where it cannot be had, the checks with it are left out, and say so. */
export function ensureEzdxf() {
  if (spawnSync('/usr/bin/python3', ['-c', 'import ezdxf']).status === 0) return;
  console.log('No ezdxf to read DXF files back with: installing it ...');
  installDebian('python3-ezdxf');
}
