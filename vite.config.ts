import { readFileSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { leanThree } from './src/scripts/lean-three.mjs';
import { policy } from './src/scripts/policy.mjs';

/** Writes the Content-Security-Policy into the built page, ahead of everything it governs. */
const statePolicy: Plugin = {
  name: 'state-policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
  ],
};

/**
 * Licences that ask to go with what they cover: the kernel's file, which anyone may replace with a build of their own, and the typefaces
 * of the screen and of the sheets.
 */
const shipLicences: Plugin = {
  name: 'ship-licences',
  apply: 'build',
  generateBundle() {
    for (const name of ['replicad-opencascadejs', 'highs', 'dejavu-fonts-ttf', '@fontsource/b612']) {
      const source = readFileSync(`${import.meta.dirname}/node_modules/${name}/LICENSE`);
      this.emitFile({ type: 'asset', fileName: `licences/${name.replace(/^@[^/]*\//, '')}.txt`, source });
    }
  },
};

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  plugins: [
    react(),
    leanThree,
    statePolicy,
    shipLicences,
    // Keeps the build for offline use, the kernel's 23 MB only once somebody has asked for solids. A new build takes over at
    // once, so the load after it shows it.
    VitePWA({
      includeManifestIcons: false, // the pattern below finds them too
      injectRegister: 'script-defer',
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,woff2,ttf,icc,json,wasm,webmanifest}'],
        globIgnores: ['**/replicad_*.wasm'],
        runtimeCaching: [
          {
            urlPattern: /\/assets\/replicad_[\w-]+\.wasm$/,
            handler: 'CacheFirst',
            options: { cacheName: 'kernel', expiration: { maxEntries: 1 } },
          },
        ],
        maximumFileSizeToCacheInBytes: 16 * 1024 * 1024,
        importScripts: ['sent.js'],
        skipWaiting: true,
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        inlineWorkboxRuntime: true,
      },
      manifest: {
        name: 'Cagewright',
        short_name: 'Cagewright',
        description: 'From measured points to finished tube data, for roll bars, cages and tube frames.',
        display: 'standalone',
        background_color: '#f3efe3',
        theme_color: '#f3efe3',
        // What other programs hand to the installed one: src/app/arriving.ts.
        share_target: {
          action: 'sent',
          method: 'POST',
          enctype: 'multipart/form-data',
          params: { files: [{ name: 'job', accept: ['application/json', '.json', 'text/plain', '.txt'] }] },
        },
        file_handlers: [{ action: './', accept: { 'application/json': ['.json'] } }],
        launch_handler: { client_mode: 'navigate-existing' },
        icons: [{ src: 'favicon.svg', sizes: 'any', type: 'image/svg+xml' }],
      },
    }),
  ],
  worker: { format: 'es' },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2023',
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0, // data: fonts and scripts would not pass the policy
    reportCompressedSize: false,
    chunkSizeWarningLimit: 1500,
  },
  test: {
    root: import.meta.dirname,
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    pool: 'forks',
    maxWorkers: 2,
    // Two processes for all files: nothing in src remembers anything from one file's tests to the next, and a process of its own for
    // each costs half a second to start.
    isolate: false,
    // The kernel and the mesh library are large, and most of them is run a few times: to optimise it costs more than it saves.
    execArgv: ['--wasm-tiering-budget=1000000000'],
    // Room for a busy machine: how long a test takes is never what it asserts.
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
});
