/** Reads the project's own tree, for tests about how it is built. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Every file that git would keep: tracked, or new and not ignored. Paths from the top, sorted. */
export function projectFiles(): readonly string[] {
  const listed = execFileSync('git', ['ls-files', '-co', '--exclude-standard', '--deduplicate'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  return listed.split('\n').filter(Boolean).filter(exists).sort();
}

const exists = (path: string): boolean => {
  try {
    readFileSync(join(ROOT, path));
    return true;
  } catch {
    return false;
  }
};

export const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** Source text without comments, so that words in prose are not taken for code. */
export const code = (text: string): string =>
  text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`])\/\/.*$/gm, '$1');

export interface Import {
  /** A path from the top for the project's own files, else a package's name. */
  readonly target: string;
  readonly own: boolean;
  readonly typeOnly: boolean;
}

const IMPORT =
  /\b(import|export)\s+(type\s+)?(?:[\w*{}\s,$]+?\sfrom\s*)?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/g;

/** What a file imports, statically or when needed. */
export function importsOf(path: string): readonly Import[] {
  return [...code(read(path)).matchAll(IMPORT)].map((found) => {
    const name = (found[3] ?? found[4] ?? '').replace(/\?.*$/, '');
    const own = name.startsWith('.');
    return {
      target: own ? posix.normalize(posix.join(dirname(path), name)) : name,
      own,
      typeOnly: found[2] !== undefined,
    };
  });
}
