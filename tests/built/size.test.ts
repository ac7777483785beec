import { describe, expect, it } from 'vitest';
import { allFiles, bytesOf, compressed, firstLoad, laterLoad } from '../drivers/built.ts';

describe('size budgets', () => {
  it('OFF-1 the first load is at most 110 kB of compressed script, style and page', () => {
    const parts = firstLoad().map((file) => ({ file, bytes: compressed(file) }));
    console.table(parts);
    expect(parts.some(({ file }) => file.endsWith('.js'))).toBe(true);
    expect(parts.some(({ file }) => file.endsWith('.css'))).toBe(true);
    expect(parts.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(110_000);
  });

  it('OFF-11 no part that comes later is larger than 50 kB compressed, and all of them 400 kB', () => {
    const parts = laterLoad().map((file) => ({ file, bytes: compressed(file) }));
    expect(parts.length).toBeGreaterThan(20);
    expect(parts.filter(({ bytes }) => bytes > 50_000)).toEqual([]);
    const sum = parts.reduce((all, { bytes }) => all + bytes, 0);
    console.log(`later: ${parts.length} parts, ${sum} bytes`);
    expect(sum).toBeLessThanOrEqual(400_000);
  });

  it('OFF-2 the voice pack is at most 1 MB, manifest included', () => {
    const pack = allFiles().filter((file) =>
      /^assets\/(voice|pack|manifest)[\w.-]*\.(mp3|json|bin)$/.test(file),
    );
    console.table(pack.map((file) => ({ file, bytes: bytesOf(file) })));
    expect(pack.length).toBeGreaterThanOrEqual(2);
    expect(pack.reduce((sum, file) => sum + bytesOf(file), 0)).toBeLessThanOrEqual(1_000_000);
  });
});
