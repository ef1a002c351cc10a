// The app is built once into dist/; the server serves it with a policy that allows no inline code.

import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/app',
  base: '/',
  plugins: [react()],
  build: {
    outDir: '../../dist',
    emptyOutDir: true,
    assetsDir: 'built',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
