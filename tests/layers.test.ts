/** The layer rule holds in every source file, and the check of it would see a breach. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { breaches, layerOf, layers, packages } from './layers.ts';

const src = join(import.meta.dirname, '../src');
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.(tsx?|mjs)$/.test(file));

describe('the sources', () => {
  it('are seen', () => {
    expect(files.length).toBeGreaterThanOrEqual(20);
    expect(new Set(files.map(layerOf)).size).toBeGreaterThanOrEqual(8);
  });

  it('keep the layer rule', () => {
    expect(files.flatMap((file) => breaches(file, readFileSync(join(src, file), 'utf8')))).toEqual([]);
  });
});

describe('the table', () => {
  it('has no way round: no layer imports itself through others', () => {
    const reached = (from: string, seen: Set<string>): Set<string> => {
      for (const to of layers[from]!) if (!seen.has(to)) reached(to, seen.add(to));
      return seen;
    };
    for (const layer of Object.keys(layers)) expect(reached(layer, new Set()), layer).not.toContain(layer);
  });

  it('names only layers that exist in it', () => {
    const rooms = Object.keys(layers);
    expect(rooms).toEqual(expect.arrayContaining(Object.values(layers).flat()));
    for (const room of Object.values(packages).flat())
      expect(
        rooms.some((each) => each === room || each.startsWith(`${room}/`)),
        room,
      ).toBe(true);
  });

  it('speaks of the packages that package.json names', () => {
    const { dependencies } = JSON.parse(readFileSync(join(src, '../package.json'), 'utf8'));
    const outside = Object.keys(packages).filter((name) => name !== 'node' && name !== 'vite');
    expect(outside.toSorted()).toEqual(Object.keys(dependencies).toSorted());
  });
});

describe('a planted breach is caught', () => {
  it.each([
    ['an import upwards', 'core/job/a.ts', "import { solve } from '../solve/solve.ts';", 'core/job imports core/solve'],
    ['a type import', 'core/solve/a.ts', "import type { D } from '../derive.ts';", 'core/solve imports core/derive.ts'],
    ['a re-export', 'core/units/a.ts', "export * from '../job/types.ts'; export const a = 1;", 'imports core/job'],
    ['a dynamic import', 'drawing/a.ts', "export const a = () => import('../ui/kit/a.tsx');", 'drawing imports ui/kit'],
    ['a task reaching into its neighbour', 'ui/frame/a.tsx', "import '../shop/shop.css';", 'ui/frame imports ui/shop'],
    ['the kit reaching for a task', 'ui/kit/a.tsx', "import '../run/a.ts';", 'ui/kit imports ui/run'],
    ['wraps reaching into the sheets', 'exports/wraps/a.ts', "import '../sheets/page.ts';", 'imports exports/sheets'],
    ['a drawing that knows a file', 'drawing/a.ts', "import '../exports/shared/files.ts';", 'imports exports/shared'],
    [
      'a type named in place',
      'store/tabs/a.ts',
      "export type A = import('../../view/bay/a.ts').A;",
      'imports view/bay',
    ],
    ['siblings', 'core/checks/a.ts', "import { a } from '../run/a.ts';", 'core/checks imports core/run'],
    [
      'an edit of the solved frame that reaches for the screen',
      'core/shape/a.ts',
      "import '../../view/gizmo/grips.ts';",
      'core/shape imports view/gizmo',
    ],
    [
      'a plain edit that asks for the solved frame',
      'core/edit/a.ts',
      "import '../shape/given-as.ts';",
      'core/edit imports core/shape',
    ],
    [
      'the store in an export',
      'exports/mesh/a.ts',
      "import '../../store/page.ts';",
      'exports/mesh imports store/page.ts',
    ],
    ['the command line in the store', 'store/keeping/a.ts', "import { main } from '../../fab.ts';", 'imports fab.ts'],
    [
      'the document that knows where it is kept',
      'store/document/a.ts',
      "import '../keeping/a.ts';",
      'imports store/keeping',
    ],
    ['the shop record that knows the screen', 'store/shop/a.ts', "import '../editor/a.ts';", 'imports store/editor'],
    [
      'the storage that knows the job that is open',
      'store/storage/a.ts',
      "import '../document/a.ts';",
      'imports store/document',
    ],
    [
      'a screen that makes a store of its own',
      'ui/kit/a.tsx',
      "import '../../store/editor/createEditor.ts';",
      'imports store/editor',
    ],
    [
      'the scene reaching for labels',
      'view/scene/a.ts',
      "import '../labels/label.ts';",
      'view/scene imports view/labels',
    ],
    ['the bender reaching into the bay', 'view/rehearsal/a.ts', "import '../bay/Bay.tsx';", 'imports view/bay'],
    ['a file of no folder in view', 'view/a.ts', 'export const a = 1;', 'belongs to no layer'],
    ['a file outside', 'ui/kit/a.tsx', "import a from '../../../tests/a.ts';", 'which no layer holds'],
    ['a name made at run time', 'ui/kit/a.tsx', 'export const a = (b: string) => import(b);', 'made when it runs'],
    ['three in ui', 'ui/kit/a.tsx', "import { Mesh } from 'three/webgpu';", 'ui/kit uses the package three'],
    [
      'fiber in app',
      'app/a.tsx',
      "import { Canvas } from '@react-three/fiber';",
      'uses the package @react-three/fiber',
    ],
    ['React in the store', 'store/page.ts', "import { useMemo } from 'react';", 'store/page.ts uses the package react'],
    ['zustand in ui', 'ui/kit/a.tsx', "import { useStore } from 'zustand';", 'ui/kit uses the package zustand'],
    ['Node in an export', 'exports/products/a.ts', "import { readFileSync } from 'node:fs';", 'uses the package node'],
    ['Node by its bare name', 'fab.ts', "import { readFileSync } from 'fs';", 'uses the package fs'],
    ['gl-matrix in solve', 'core/solve/a.ts', "import { vec3 } from 'gl-matrix';", 'uses the package gl-matrix'],
    ['a package unheard of', 'ui/kit/a.tsx', "import a from 'left-pad';", 'ui/kit uses the package left-pad'],
    ['the clock', 'core/job/a.ts', 'export const now = () => new Date();', 'Date in the core'],
    ['the other clock', 'core/job/a.ts', 'export const now = () => performance.now();', 'performance in the core'],
    ['chance', 'core/job/a.ts', 'export const a = Math.random();', 'Math.random in the core'],
    ['chance in brackets', 'core/job/a.ts', "export const a = Math['random']();", 'Math.random in the core'],
    ['the console', 'core/job/a.ts', "console.log('');", 'console in the core'],
    ['the window', 'core/job/a.ts', 'export const a = window.innerWidth;', 'window in the core'],
    ['the document', 'core/derive.ts', "export const a = document.title + 'a';", 'document in the core'],
    ['a short-hand', 'core/job/a.ts', 'export const a = { process };', 'process in the core'],
    ['try', 'core/job/a.ts', 'export function a() { try { return 1; } catch { return 2; } }', 'try/catch in the core'],
    ['a barrel', 'ui/kit/index.ts', "export { A } from './a.tsx';\nexport * from './b.tsx';", 'is a barrel'],
    ['a file in no layer', 'helpers/a.ts', 'export const a = 1;', 'belongs to no layer'],
    ['a file that does not parse', 'ui/kit/a.tsx', 'export const = 1;', 'does not parse'],
  ])('%s', (_, file, code, expected) => {
    expect(breaches(file, code)).toEqual([expect.stringContaining(expected)]);
  });

  it('and what is allowed is not', () => {
    const code = `
      import { add } from '../geometry/vector.ts';
      import type { Job } from '../job/types.ts';
      import { local } from './local.ts';
      export interface Sheet { readonly document: string; readonly window: number }
      export const sheet = (job: Job): Sheet => ({ document: job.name, window: add(local, 1) });
      export const read = (sheet: Sheet) => sheet.document + sheet.window + Math.max(1, 2);`;
    expect(breaches('core/solve/sheet.ts', code)).toEqual([]);
    expect(breaches('app/look.ts', "import './look.css'; import '@fontsource/b612/latin-400.css';")).toEqual([]);
  });
});
