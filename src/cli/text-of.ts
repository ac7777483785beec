import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { PROGRAMME_MAX_BYTES } from '../domain/programme/programme.ts';
import type { Result } from '../domain/result.ts';
import { fail, ok } from '../domain/result.ts';

const SYSTEM: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file.',
  EACCES: 'The file may not be read.',
  EISDIR: 'This is a folder. Give a programme file.',
};

/** The text of a file. No more than a programme may have is ever read, whatever the file is. */
export async function textOf(file: string): Promise<Result<string, string>> {
  const chunks: Buffer[] = [];
  try {
    if ((await stat(file)).isDirectory()) return fail(SYSTEM.EISDIR ?? '');
    for await (const chunk of createReadStream(file, { end: PROGRAMME_MAX_BYTES }))
      chunks.push(chunk as Buffer);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return fail(SYSTEM[code] ?? 'The file cannot be read.');
  }
  const bytes = Buffer.concat(chunks);
  if (bytes.length > PROGRAMME_MAX_BYTES) return ok(' '.repeat(PROGRAMME_MAX_BYTES + 1));
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return fail('The file is not text. A programme is JSON in UTF-8.');
  }
}
