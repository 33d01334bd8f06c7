import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { policy } from './src/scripts/policy.mjs';

/** Writes the Content-Security-Policy into the built page, ahead of everything it governs. */
const statePolicy: Plugin = {
  name: 'state-policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
  ],
};

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  plugins: [
    react(),
    statePolicy,
    // Keeps the whole build for offline use. A new build takes over at once, so the load after it shows it.
    VitePWA({
      includeManifestIcons: false, // the pattern below finds them too
      injectRegister: 'script-defer',
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,woff2,json,wasm,webmanifest}'],
        maximumFileSizeToCacheInBytes: 16 * 1024 * 1024,
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
        icons: [{ src: 'favicon.svg', sizes: 'any', type: 'image/svg+xml' }],
      },
    }),
  ],
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
    // Room for a busy machine: how long a test takes is never what it asserts.
    testTimeout: 180_000,
  },
});
