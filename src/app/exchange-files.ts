import { isPictureFile } from '../domain/exchange/file-kind.ts';
import type { ExchangeCode } from '../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { Codes } from './exchange-ports.ts';

/** Largest text file that is looked at: a programme of 256 KiB with some words around it. */
const FILE_MAX_BYTES = 320 * 1024;

/** What a file that the person chose says: its text, or the codes in its picture. */
export async function textsOf(
  file: Blob,
  codes: Codes,
): Promise<Result<readonly string[], ExchangeCode>> {
  if (file.size === 0) return fail('empty');
  if (await isPicture(file)) return codes.inPicture(file);
  if (file.size > FILE_MAX_BYTES) return fail('too-large');
  const { fromUtf8 } = await import('./exchange-reader.ts');
  const text = fromUtf8(new Uint8Array(await file.arrayBuffer()));
  return text.ok ? ok([text.value]) : fail('file-kind');
}

async function isPicture(file: Blob): Promise<boolean> {
  if (file.type.startsWith('image/')) return true;
  return isPictureFile(new Uint8Array(await file.slice(0, 4).arrayBuffer()));
}
