/** Reads `dist` as the build left it: what loads at the start, what loads later, how large. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { ROOT } from './tree.ts';

export const DIST = join(ROOT, 'dist');

interface Chunk {
  readonly file: string;
  readonly isEntry?: boolean;
  readonly imports?: readonly string[];
  readonly dynamicImports?: readonly string[];
  readonly css?: readonly string[];
}

type Manifest = Readonly<Record<string, Chunk>>;

const manifest = (): Manifest =>
  JSON.parse(readFileSync(join(DIST, '.vite/manifest.json'), 'utf8')) as Manifest;

/** Size as a browser receives it, in bytes (gzip, level 9). */
export const compressed = (file: string): number =>
  gzipSync(readFileSync(join(DIST, file)), { level: 9 }).byteLength;

/** Files that a first visit must have before the first screen: page, scripts, styles. */
export function firstLoad(): readonly string[] {
  const chunks = manifest();
  const files = new Set<string>(['index.html']);
  const visit = (key: string): void => {
    const chunk = chunks[key];
    if (chunk === undefined || files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const css of chunk.css ?? []) files.add(css);
    for (const next of chunk.imports ?? []) visit(next);
  };
  for (const [key, chunk] of Object.entries(chunks)) if (chunk.isEntry) visit(key);
  // Asked for early by the page itself, because its first screen waits for them.
  for (const [, file] of textOf('index.html').matchAll(
    /rel="modulepreload"[^>]*href="\.\/([^"]+)"/g,
  )) {
    if (file !== undefined) files.add(file);
  }
  return [...files];
}

/** Scripts and styles that are loaded when they are needed. */
export function laterLoad(): readonly string[] {
  const first = new Set(firstLoad());
  return allFiles().filter((file) => /^assets\/.*\.(js|css)$/.test(file) && !first.has(file));
}

/** The script of the screens that nobody sees first. Throws when the build has none. */
export function laterScreens(): string {
  const chunk = manifest()['src/ui/screens/later.ts'];
  if (chunk === undefined) throw new Error('no script of later screens in the build');
  return chunk.file;
}

/** Every file of the build, as addresses below it. */
export function allFiles(folder = ''): readonly string[] {
  return readdirSync(join(DIST, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    return entry.isDirectory() ? allFiles(path) : [path];
  });
}

export const bytesOf = (file: string): number => statSync(join(DIST, file)).size;

export const textOf = (file: string): string => readFileSync(join(DIST, file), 'utf8');
