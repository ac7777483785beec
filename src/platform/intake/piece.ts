import type { LeftWhy } from '../../app/intake-contract.ts';
import { encodingOf } from '../../domain/exchange/file-kind.ts';
import { fail, ok, type Result } from '../../domain/result.ts';

/** What a source holds, some at a time. Each text ends with `end`. */
export type TextPiece =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'end' }
  | { readonly kind: 'left'; readonly why: LeftWhy; readonly count: number }
  /** So much of the source was gone through: bytes of a file, letters of a text. */
  | { readonly kind: 'read'; readonly amount: number };

/** Bytes of a file; nothing where it cannot be read, because it was moved or is not there any more. */
export async function bytesOf(
  file: Blob,
  from: number,
  to: number,
): Promise<Result<Uint8Array<ArrayBuffer>, 'file'>> {
  try {
    return ok(new Uint8Array(await file.slice(from, to).arrayBuffer()));
  } catch {
    return fail('file');
  }
}

/** Letters of a text from its bytes. A byte that is none of a text is nobody's answer either. */
export function createDecoding(first: Uint8Array): TextDecoder {
  return new TextDecoder(encodingOf(first));
}

/** Something of a source that is not read, and why. */
export const left = (why: LeftWhy, count = 1): TextPiece => ({ kind: 'left', why, count });
