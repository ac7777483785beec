import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { build, defineConfig, type Plugin } from 'vite';
import { injectManifest } from 'workbox-build';
import { CONTENT_POLICY } from './.ci/headers.ts';

const root = fileURLToPath(new URL('.', import.meta.url));

/** The policy travels in the page too, for hosts that cannot send headers. */
function contentPolicy(): Plugin {
  return {
    name: 'towpath-content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

/** The router's way of reading whole addresses: places are in the fragment here, so it is weight only. */
function fragmentOnly(): Plugin {
  return {
    name: 'towpath-fragment-only',
    apply: 'build',
    transform(_, id) {
      if (!id.endsWith('/wouter/src/use-browser-location.js')) return null;
      return [
        "export { useHashLocation as useBrowserLocation } from './use-hash-location.js';",
        "export const useSearch = () => '';",
      ].join('\n');
    },
  };
}

const sumOf = async (path: string): Promise<string> =>
  `sha256-${createHash('sha256')
    .update(await readFile(path))
    .digest('base64')}`;

/**
 * Builds `src/sw/sw.ts` beside the app and writes into it the list of files to keep on the phone.
 * It is a build of its own because a worker must be one file whose address never changes.
 */
function serviceWorker(): Plugin {
  let outDir = '';
  return {
    name: 'towpath-service-worker',
    apply: 'build',
    configResolved: (config) => {
      outDir = fileURLToPath(new URL(`${config.build.outDir}/`, `file://${config.root}/`));
    },
    closeBundle: {
      sequential: true,
      order: 'post',
      async handler() {
        await build({
          root,
          configFile: false,
          logLevel: 'warn',
          publicDir: false,
          define: { 'process.env.NODE_ENV': '"production"' },
          build: {
            outDir,
            emptyOutDir: false,
            target: 'es2022',
            license: false,
            rolldownOptions: {
              input: `${root}src/sw/sw.ts`,
              output: { format: 'es', entryFileNames: 'sw.js', codeSplitting: false },
            },
          },
        });
        const { count, size, warnings } = await injectManifest({
          swSrc: `${outDir}sw.js`,
          swDest: `${outDir}sw.js`,
          globDirectory: outDir,
          globPatterns: ['**/*.{html,js,css,json,webmanifest,png,svg,woff2,mp3,bin}'],
          globIgnores: ['sw.js'],
          dontCacheBustURLsMatching: /^assets\//,
          maximumFileSizeToCacheInBytes: 4 * 1024 * 1024,
          // By which the worker finds what the phone's disk has damaged.
          manifestTransforms: [
            async (entries) => ({
              manifest: await Promise.all(
                entries.map(async (entry) => ({ ...entry, sum: await sumOf(outDir + entry.url) })),
              ),
            }),
          ],
        });
        if (warnings.length > 0) throw new Error(warnings.join('\n'));
        const html = await readFile(`${outDir}index.html`, 'utf8');
        if (/<script(?![^>]*\bsrc=)/.test(html)) throw new Error('index.html has an inline script');
        console.log(`kept on the phone: ${count} files, ${(size / 1024).toFixed(0)} KiB`);
      },
    },
  };
}

export default defineConfig({
  // Relative addresses: the same build works at the top of a host and under any path.
  base: './',
  // React has had this hook itself since version 18; the stand-in for older ones is weight only.
  resolve: {
    alias: [{ find: /^use-sync-external-store\/shim(\/index\.js)?$/, replacement: 'react' }],
  },
  plugins: [react(), fragmentOnly(), contentPolicy(), serviceWorker()],
  // A worker is a file of its own under `assets/`, written as the app's own scripts are.
  worker: { format: 'es', rolldownOptions: { external: ['crypto'] } },
  build: {
    target: 'es2022',
    // Nothing becomes a data: address: the voice pack must be a file that can be kept and checked.
    assetsInlineLimit: 0,
    // The polyfill would be an inline script's twin for browsers that cannot run the app anyway.
    modulePreload: { polyfill: false },
    manifest: true,
    license: { fileName: 'licences.md' },
    reportCompressedSize: false,
    rolldownOptions: {
      // Node's own cryptography, for which a library asks where there is no browser's.
      external: ['crypto'],
      output: {
        codeSplitting: {
          // Split by who shares what, these would come in seven pieces each and weigh more than in one.
          groups: [
            // What a programme's text is read with. A phone that follows nothing yet does without.
            {
              name: 'reading',
              test: /src\/domain\/programme\/(?!format|tidy|plan|programme\.|dates|calendar|totals)|node_modules\/valibot/,
              priority: 2,
            },
            {
              name: 'times',
              test: /src\/copy\/(times|date-format)|src\/domain\/(units|result|programme\/(plan|programme\.|dates|calendar|totals))/,
              priority: 3,
            },
          ],
        },
      },
    },
  },
});
