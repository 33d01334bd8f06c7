/** Where the build under test lies: `dist`, unless CAGEWRIGHT_BUILD names another folder. */
import { resolve } from 'node:path';
import { root } from '../../src/scripts/install.mjs';

export const build = resolve(root, process.env['CAGEWRIGHT_BUILD'] ?? 'dist');
