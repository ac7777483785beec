/** `npx vite tests/drivers/gallery`: every screen with made-up data, apart from the product. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react()],
  cacheDir: fileURLToPath(new URL('../../../.cache/gallery', import.meta.url)),
  server: { port: 5391, strictPort: true, fs: { allow: ['../../..'] } },
});
