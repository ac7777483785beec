import { describe, expect, it } from 'vitest';
import { projectFiles, read } from '../drivers/tree.ts';

const files = projectFiles();
const texts = files.filter((path) => !/\.(png|jpe?g|woff2|mp3|wav|bin|ico)$/.test(path));

describe('what is in the tree', () => {
  it('HOUSE-7 no file names a place on one machine', () => {
    const place = /(^|[\s"'`(=])\/(home|root|Users|work|farm|mnt|var\/folders)\/[\w.-]/m;
    const self = 'tests/house/tree.test.ts';
    expect(texts.filter((path) => path !== self && place.test(read(path)))).toEqual([]);
  });

  it('HOUSE-7 no file names a host to download packages from', () => {
    const host = /"resolved":\s*"https?:|^registry\s*=|registry\.[a-z-]+\.(org|com|dev)/m;
    const self = 'tests/house/tree.test.ts';
    expect(texts.filter((path) => path !== self && host.test(read(path)))).toEqual([]);
  });

  it('HOUSE-8 the app asks no other host for anything', () => {
    const shipped = texts.filter((path) => /^(src|public)\/|^index\.html$/.test(path));
    expect(shipped.length).toBeGreaterThan(20);
    // Names of formats are not addresses that anything is fetched from.
    const names = /https?:\/\/(www\.w3\.org\/|json-schema\.org\/)/g;
    const fetched = /(?:src|href|url|fetch|import)\s*[=(:]\s*["'`(]*https?:\/\//i;
    expect(shipped.filter((path) => fetched.test(read(path).replace(names, '')))).toEqual([]);
  });
});
