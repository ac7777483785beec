/** Pages with made-up data in a real browser, before there is a way to them in the app. */
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { createServer } from 'vite';
import { ROOT } from '../tree.ts';
import { PATIENCE } from './browser.ts';

export const PHONE = { width: 390, height: 844 };

export interface Gallery {
  readonly page: Page;
  /** Opens one of the gallery's states. @param more such as `&theme=dark` */
  show(state: string, more?: string): Promise<void>;
  close(): Promise<void>;
}

/** Three device pixels a CSS pixel: a phone's screen, and 288 to the inch in print. */
export async function openGallery(): Promise<Gallery> {
  const server = await createServer({
    configFile: join(ROOT, 'tests/drivers/gallery/vite.config.ts'),
    logLevel: 'error',
    server: { port: 0, strictPort: false },
  });
  await server.listen();
  const base = server.resolvedUrls?.local[0] ?? '';
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--disable-background-networking'],
  });
  const page = await browser.newPage({ viewport: PHONE, deviceScaleFactor: 3 });
  page.setDefaultTimeout(PATIENCE);
  return {
    page,
    async show(state, more = '') {
      await page.goto(`${base}?state=${state}${more}`);
      await page.locator('h1').waitFor();
      await page.evaluate(() => document.fonts.ready);
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}
