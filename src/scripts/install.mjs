/** Installs the packages of package-lock.json when any of them is missing, and only then. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The project's top folder. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * @param {string} path
 * @returns {Record<string, { version?: string, optional?: boolean }>} by folder, as npm lists them
 */
function lockedPackages(path) {
  return JSON.parse(readFileSync(root + path, 'utf8')).packages;
}

/** True if every package of the lock file stands in node_modules in its version; those for other machines may lack. */
function isInstalled() {
  try {
    const installed = lockedPackages('node_modules/.package-lock.json');
    return Object.entries(lockedPackages('package-lock.json')).every(
      ([folder, { version, optional }]) =>
        folder === '' || installed[folder]?.version === version || (optional && !installed[folder]),
    );
  } catch {
    return false; // npm writes its list last: none, or half of one, means that nothing can be relied on
  }
}

/** Makes the packages present; ends the process with a plain sentence if that fails. npm speaks on standard error. */
export function ensureInstalled() {
  if (isInstalled()) return;
  process.stderr.write('Installing packages (npm ci) ...\n');
  const { status } = spawnSync('npm ci --include=dev --no-audit --no-fund', {
    cwd: root,
    shell: true, // on Windows npm is a script that only a shell starts
    stdio: ['ignore', 2, 2],
  });
  if (status === 0) return;
  process.stderr.write('The packages could not be installed: npm ci failed, see above.\n');
  process.exit(1);
}
