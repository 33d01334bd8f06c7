/**
 * Runs one of the project's TypeScript programs in Node: `node launch.mjs ENTRY ARGUMENTS`. Node 20 reads no
 * TypeScript, so the program is bundled into one file, which is kept until a source changes. This script prints
 * nothing of its own.
 *
 * A program exports `main(arguments)`, which answers the exit code or a promise of it.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, root } from './install.mjs';

/**
 * Names the state of the sources: differs after each file added, removed or saved.
 *
 * @param {string} entry
 */
function fingerprint(entry) {
  const hash = createHash('sha256');
  for (const folder of entry.startsWith('tests/') ? ['src', 'tests'] : ['src']) {
    for (const file of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).toSorted()) {
      const { mtimeMs, size } = statSync(join(root, folder, file));
      hash.update(`${folder}/${file} ${mtimeMs} ${size}\n`);
    }
  }
  return hash
    .update(String(statSync(join(root, 'package-lock.json')).mtimeMs))
    .digest('hex')
    .slice(0, 16);
}

/**
 * @param {string} entry
 * @returns {Promise<string>} the program as one ES module
 */
async function bundle(entry) {
  const { build } = await import('vite');
  const built = await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    // These find files beside themselves, so they stay where they are.
    ssr: { noExternal: true, external: ['manifold-3d', 'replicad-opencascadejs', 'pdfjs-dist', '@playwright/test'] },
    build: { ssr: entry, write: false, target: 'node20', rolldownOptions: { output: { codeSplitting: false } } },
  });
  return /** @type {import('vite').Rolldown.RolldownOutput} */ (built).output[0].code;
}

const [entry = '', ...rest] = process.argv.slice(2);
ensureInstalled();

// One folder for each program, named by its whole path: two may stand in one folder, or be called alike. Inside node_modules, so
// that what stays outside the bundle is found from there.
const cache = join(root, 'node_modules/.cache/cagewright', entry.replaceAll(/[^\w.-]/gu, '-'));
const state = fingerprint(entry);
const program = join(cache, `${state}.mjs`);
if (!existsSync(program)) {
  const code = await bundle(entry);
  mkdirSync(cache, { recursive: true });
  const outdated = readdirSync(cache).filter((file) => !file.startsWith(state));
  for (const file of outdated) rmSync(join(cache, file), { force: true });
  writeFileSync(`${program}.${process.pid}`, code);
  renameSync(`${program}.${process.pid}`, program); // whole or not at all, should two runs meet
}

// npm starts its scripts in the project's folder; names of files are meant from where the person stands.
if (process.env.npm_lifecycle_event === 'fab') process.chdir(process.env.INIT_CWD ?? '.');
const { main } = await import(pathToFileURL(program).href);
process.exitCode = await main(rest);
