// The app is built once into dist/; the server serves it with a policy that allows no inline code.

import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

export default defineConfig({
  root: 'src/app',
  base: '/',
  plugins: [
    react(),
    VitePWA({
      // The page registers it itself: the policy would stop a script written into the page.
      injectRegister: null,
      registerType: 'autoUpdate',
      includeManifestIcons: true,
      manifest: {
        name: 'Boxup',
        short_name: 'Boxup',
        description: 'The job from the last turn before to the first turn after.',
        start_url: '/',
        display: 'standalone',
        background_color: '#ffffff',
        theme_color: '#ffffff',
        icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
      },
      workbox: {
        globPatterns: ['**/*.{html,js,css,svg,png,ttf,woff2,wasm,webmanifest}'],
        maximumFileSizeToCacheInBytes: 12_000_000,
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//],
        sourcemap: false,
      },
    }),
  ],
  build: {
    outDir: '../../dist',
    emptyOutDir: true,
    assetsDir: 'built',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
