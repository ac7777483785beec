/**
 * Makes the two committed font files from the @fontsource package (SIL Open Font License 1.1,
 * OFL.txt beside this file). Run by hand after the package or the character list changes:
 *   node src/ui/styles/fonts/subset.mjs
 * Kept: what English, names in western European spelling and our own signs need, and the
 * tabular figures (tnum) of the countdown.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';

const here = dirname(fileURLToPath(import.meta.url));
const source = dirname(
  createRequire(import.meta.url).resolve('@fontsource/atkinson-hyperlegible-next/package.json'),
);

const range = (from, to) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join('');
const characters = `${range(0x20, 0x7e)}${range(0xa0, 0xff)}‘’“”–—…•′″×→−`;

for (const weight of [400, 700]) {
  const from = join(source, 'files', `atkinson-hyperlegible-next-latin-${weight}-normal.woff2`);
  const font = await subsetFont(await readFile(from), characters, {
    targetFormat: 'woff2',
    keepFeatures: ['ccmp', 'locl', 'kern', 'mark', 'tnum'],
    noHinting: true,
  });
  await writeFile(join(here, `hyperlegible-${weight}.woff2`), font);
  console.log(`hyperlegible-${weight}.woff2: ${font.length} bytes`);
}
