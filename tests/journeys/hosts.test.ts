/**
 * The ready files for web hosts, with Debian's own servers: what they send is what our server sends
 * (HTTP semantics: RFC 9110; caching: RFC 9111), and the service worker installs, lasts without the
 * host and finds a next version on each.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cacheRule, SECURITY_HEADERS } from '../../.ci/headers.ts';
import { common } from '../../src/copy/common.ts';
import { install } from '../../src/copy/install.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { HOSTS, openHost } from '../drivers/browser/hosts.ts';
import { lookForUpdate, nextVersion } from '../drivers/browser/next-version.ts';
import { button } from '../drivers/browser/visit.ts';
import { allFiles, DIST } from '../drivers/built.ts';

const named = (pattern: RegExp): string => {
  const found = allFiles().find((file) => pattern.test(file));
  if (found === undefined) throw new Error(`the build has no ${pattern}`);
  return found;
};

describe.each(HOSTS)('%s with its ready file', (name) => {
  it('HOST-1 sends the policy with every file, says what may be kept, and names each kind', async () => {
    const host = await openHost(name);
    try {
      const asked: readonly (readonly [path: string, type: RegExp])[] = [
        ['', /^text\/html/],
        ['sw.js', /^text\/javascript/],
        ['manifest.webmanifest', /^application\/manifest\+json/],
        [named(/^assets\/index-.*\.js$/), /^text\/javascript/],
        [named(/^assets\/.*\.css$/), /^text\/css/],
        [named(/^assets\/.*\.woff2$/), /^font\/woff2/],
        [named(/^assets\/voice-.*\.bin$/), /^application\/octet-stream/],
      ];
      for (const [path, type] of asked) {
        const answer = await fetch(`${host.url}${path}`);
        const body = Buffer.from(await answer.arrayBuffer());
        expect([path, answer.status]).toEqual([path, 200]);
        expect(answer.headers.get('content-type'), path).toMatch(type);
        expect(answer.headers.get('cache-control'), path).toBe(cacheRule(`/${path}`));
        for (const [header, value] of Object.entries(SECURITY_HEADERS))
          expect(answer.headers.get(header), `${path} ${header}`).toBe(value);
        expect(body.equals(readFileSync(join(DIST, path || 'index.html'))), path).toBe(true);
        const isText = !/woff2|octet/.test(type.source);
        expect(answer.headers.get('content-encoding'), path).toBe(isText ? 'gzip' : null);
      }
      expect((await fetch(`${host.url}no-such-file`)).status).toBe(404);
    } finally {
      await host.close();
    }
  });

  it('HOST-2 the app stays on the phone without the host, and a next version is found and taken', async () => {
    const host = await openHost(name);
    const profile = newProfile();
    const browser = await openBrowser(profile);
    try {
      const page = await browser.tab();
      const complaints: string[] = [];
      page.on('pageerror', (error) => complaints.push(error.message));
      await page.goto(host.url);
      await page.getByText(install.offlineReady).waitFor();
      await host.stop();
      await page.reload();
      await page.getByRole('link', { name: welcome.choose }).first().waitFor();

      await host.start();
      host.publish(nextVersion());
      await lookForUpdate(page);
      await page.getByText(common.update.waiting).waitFor();
      await button(page, common.update.apply).click();
      await page.locator('meta[name=version]').waitFor({ state: 'attached' });
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
      profile.remove();
      await host.close();
    }
  });
});
