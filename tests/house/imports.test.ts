import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { code, importsOf, projectFiles, ROOT, read } from '../drivers/tree.ts';

const sources = projectFiles().filter((path) => /^src\/.*\.(ts|tsx|js)$/.test(path));
const folderOf = (path: string): string => path.split('/')[1] ?? '';

/** Folder by folder, which others it may use. `main.tsx` is the one file that may use all. */
const MAY_USE: Readonly<Record<string, readonly string[]>> = {
  domain: [],
  copy: ['domain'],
  app: ['domain', 'copy'],
  ui: ['app', 'domain', 'copy'],
  platform: ['domain'],
  voice: ['domain'],
  sw: [],
  cli: ['domain', 'voice', 'copy'],
};

/** Types that a port is described by may be named by the side that fills the port. */
const TYPES_MAY_BE_NAMED: Readonly<Record<string, RegExp>> = {
  platform: /^src\/app\/(board-|exchange-|intake-|records-)?(contract|ports)\.ts$/,
};

/** Packages that belong to one folder only. */
const BELONGS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^react(-dom)?(\/|$)/, ['ui', 'main.tsx']],
  [/^wouter(\/|$)/, ['ui', 'main.tsx']],
  [/^idb$/, ['platform']],
  [/^d3-/, ['ui']],
  [/^(qr|uqr)(\/|$)/, ['platform']],
  [/^fflate$/, ['domain']],
  [/^@hpke\/core$/, ['platform']],
  [/^workbox-window$/, ['platform']],
  [/^workbox-(precaching|routing)$/, ['sw']],
  [/^zustand\/vanilla$/, ['app', 'platform']],
  [/^zustand$/, ['ui']],
  [/^node:/, ['cli', 'voice']],
];

const crossings = sources
  .filter((path) => path !== 'src/main.tsx')
  .flatMap((path) =>
    importsOf(path)
      .filter(({ own, target }) => own && folderOf(target) !== folderOf(path))
      .filter(({ target, typeOnly }) => {
        const from = folderOf(path);
        if (typeOnly && TYPES_MAY_BE_NAMED[from]?.test(target)) return false;
        return !(MAY_USE[from] ?? []).includes(folderOf(target));
      })
      .map(({ target }) => `${path} uses ${target}`),
  );

describe('who may use whom', () => {
  it('HOUSE-1 sees every folder of the house, so that the rules below are about something', () => {
    const folders = new Set(sources.map(folderOf));
    for (const folder of Object.keys(MAY_USE)) expect(folders).toContain(folder);
    expect(sources.flatMap(importsOf).filter(({ own }) => own).length).toBeGreaterThan(100);
  });

  it('HOUSE-1 the core uses nothing of the other folders', () => {
    expect(crossings.filter((line) => line.startsWith('src/domain/'))).toEqual([]);
  });

  it('HOUSE-2 folders use each other in one direction only', () => {
    expect(crossings).toEqual([]);
  });

  it('HOUSE-2 every top folder of the sources is known to the rule', () => {
    const known = [...Object.keys(MAY_USE), 'main.tsx', 'vite-env.d.ts'];
    expect(sources.map(folderOf).filter((folder) => !known.includes(folder))).toEqual([]);
  });

  it('HOUSE-3 a package is used only where it belongs', () => {
    const strays = sources.flatMap((path) =>
      importsOf(path)
        .filter(({ own }) => !own)
        .filter(({ target }) => {
          const rule = BELONGS.find(([name]) => name.test(target));
          return rule !== undefined && !rule[1].includes(folderOf(path));
        })
        .map(({ target }) => `${path} uses ${target}`),
    );
    expect(strays).toEqual([]);
  });

  it('HOUSE-4 the core reads no clock, rolls no dice, and waits for nothing', () => {
    const impure =
      /\bDate\.now\b|\bnew Date\(\s*\)|\bMath\.random\b|\bperformance\b|\bset(Timeout|Interval)\b|\bcrypto\b|\blocalStorage\b|\bfetch\(/;
    const found = sources
      .filter((path) => path.startsWith('src/domain/') && !path.includes('.generated.'))
      .filter((path) => impure.test(code(read(path))));
    expect(found).toEqual([]);
  });

  it('HOUSE-10 only one file of the app reads a clock', () => {
    const reading = /\bDate\.now\b|\bperformance\.now\b|\bnew Date\(\s*\)/;
    const found = sources
      .filter((path) => !/^src\/(cli|voice)\//.test(path))
      .filter((path) => reading.test(code(read(path))));
    expect(found).toEqual(['src/platform/clock.ts']);
  });

  it('HOUSE-5 the core is compiled without the DOM, and a use of it is refused', () => {
    const folder = join(ROOT, '.cache/no-dom');
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'probe.ts'), 'export const title = document.title;\n');
    writeFileSync(
      join(folder, 'tsconfig.json'),
      JSON.stringify({ extends: '../../src/domain/tsconfig.json', include: ['probe.ts'] }),
    );
    const compile = (): string => {
      try {
        return execFileSync(
          process.execPath,
          [join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', folder],
          { encoding: 'utf8' },
        );
      } catch (error) {
        return String((error as { stdout?: string }).stdout);
      }
    };
    expect(compile()).toContain("Cannot find name 'document'");
    writeFileSync(join(folder, 'probe.ts'), 'export const sum = [1, 2].map((n) => n + 1);\n');
    expect(compile()).toBe('');
  });
});
