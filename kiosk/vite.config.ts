import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [svelte()],
  build: {
    outDir: '../dist/kiosk',
    emptyOutDir: true,
    // The page is served under a policy that forbids data: addresses.
    assetsInlineLimit: 0,
  },
});
