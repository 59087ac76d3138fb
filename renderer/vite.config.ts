import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Built once and served by every host; relative addresses, so that no host needs a path of its own. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: 'built',
    emptyOutDir: true,
    target: 'es2023',
    // Fonts stay files of their own: a content security policy without data: can then load them.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1_500,
  },
});
