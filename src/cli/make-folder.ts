import { mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

/**
 * Make a folder and those above it that are missing, one by one: Node's own recursive way never
 * ends where the file system answers "no such folder" to every attempt.
 *
 * @throws as `mkdir` does
 */
export async function makeFolder(folder: string): Promise<void> {
  const there = await stat(folder).catch(() => undefined);
  if (there?.isDirectory()) return;
  const above = dirname(folder);
  if (above !== folder) await makeFolder(above);
  await mkdir(folder);
}
