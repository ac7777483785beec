import { describe, expect, it } from 'vitest';
import { allFiles, textOf } from '../drivers/built.ts';

const kept = [...textOf('sw.js').matchAll(/\{\s*"?(?:revision|url)"?:\s*[^{}]+\}/g)].flatMap(
  (entry) => /"?url"?:\s*["'`]([^"'`]+)/.exec(entry[0])?.[1] ?? [],
);

describe('what stays on the phone', () => {
  it('OFF-3 the service worker keeps every file that the app may ask for', () => {
    const needed = allFiles().filter(
      (file) => !file.startsWith('.vite/') && file !== 'sw.js' && file !== 'licences.md',
    );
    expect(needed.length).toBeGreaterThan(6);
    expect([...kept].sort()).toEqual([...needed].sort());
  });

  it('OFF-3 the service worker is one file that loads nothing more', () => {
    expect(textOf('sw.js')).not.toMatch(/\bimport\s*[('"{]|importScripts\s*\(/);
  });

  it('OFF-4 the page has no inline script and a policy that allows none', () => {
    const html = textOf('index.html');
    expect(html).not.toMatch(/<script(?![^>]*\bsrc=)/);
    expect(html).not.toMatch(/\son\w+=|<style|\sstyle=/);
    const written = /Content-Security-Policy"\s+content="([^"]+)"/.exec(html)?.[1] ?? '';
    const policy = written.replaceAll('&#39;', "'");
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  });

  it('OFF-5 every address in the page and the install card is relative', () => {
    const card = JSON.parse(textOf('manifest.webmanifest')) as {
      id: string;
      start_url: string;
      scope: string;
      icons: { src: string; sizes: string; purpose?: string }[];
    };
    expect([card.start_url, card.scope]).toEqual(['./', './']);
    const files = allFiles();
    for (const { src } of card.icons) expect(files).toContain(src);
    expect(card.icons.map(({ sizes }) => sizes)).toEqual(
      expect.arrayContaining(['192x192', '512x512']),
    );
    expect(card.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true);
    const addresses = [...textOf('index.html').matchAll(/\s(?:src|href)="([^"]+)"/g)];
    expect(addresses.map((found) => found[1] ?? '').filter((to) => !/^(\.\/|#)/.test(to))).toEqual(
      [],
    );
  });
});
