/** A page with bringing in alone, under the app's own policy, its worker a file as in the app. */
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { CONTENT_POLICY } from '../../../.ci/headers.ts';
import { ROOT } from '../tree.ts';
import type { Site } from './site.ts';

/** Files by their address. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

export async function buildIntake(): Promise<Files> {
  const result = await build({
    root: ROOT,
    base: './',
    configFile: false,
    logLevel: 'error',
    worker: { format: 'es', rolldownOptions: { external: ['crypto'] } },
    build: {
      write: false,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rolldownOptions: {
        external: ['crypto'],
        input: `${ROOT}tests/drivers/browser/intake-in-page.ts`,
        output: { entryFileNames: 'intake.js' },
      },
    },
  });
  const [first] = Array.isArray(result) ? result : [result];
  if (first === undefined || !('output' in first)) throw new Error('nothing was built');
  return Object.fromEntries(
    first.output.map((part) => [part.fileName, part.type === 'chunk' ? part.code : part.source]),
  );
}

export async function visitIntake(page: Page, site: Site, files: Files): Promise<void> {
  for (const [name, content] of Object.entries(files)) site.replace(`/${name}`, content);
  const policy = `<meta http-equiv="Content-Security-Policy" content="${CONTENT_POLICY}">`;
  const script = '<script type="module" src="./intake.js"></script>';
  site.replace('/intake.html', `<!doctype html>${policy}<link rel="icon" href="data:,">${script}`);
  await page.goto(`${site.url}intake.html`);
  await page.waitForFunction(() => 'intake' in window);
}
