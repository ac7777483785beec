import { deflateSync, Inflate } from 'fflate';
import { fail, ok, type Result } from '../result.ts';
import { DICTIONARY_1 } from './dictionary.ts';
import { toUtf8 } from './utf8.ts';

/** Most bytes that come out, and that go in. */
export const INFLATED_MAX = 256 * 1024;

/**
 * Pushed at a time. Deflate gives at most 1032 bytes for one (258 bytes for two bits), so no push
 * makes more than a quarter of a megabyte before the count is looked at again.
 */
const PUSH_BYTES = 256;

const programmes = toUtf8(DICTIONARY_1);

/** Raw deflate (RFC 1951) with a preset dictionary: that of programmes, where none is given. */
export const deflate = (
  bytes: Uint8Array,
  dictionary: Uint8Array = programmes,
): Uint8Array<ArrayBuffer> => new Uint8Array(deflateSync(bytes, { level: 9, mem: 4, dictionary }));

/**
 * What was deflated. Stops as soon as more than `limit` bytes have come out, whatever would
 * follow, so that a bomb costs no more than an honest file. A stream without its end is refused.
 */
export function inflate(
  bytes: Uint8Array,
  limit: number = INFLATED_MAX,
  dictionary: Uint8Array = programmes,
): Result<Uint8Array<ArrayBuffer>, 'damaged' | 'too-large'> {
  const out: Uint8Array[] = [];
  let length = 0;
  const stream = new Inflate({ dictionary }, (chunk) => {
    length += chunk.length;
    if (length <= limit) out.push(chunk);
  });
  try {
    for (let at = 0; at < bytes.length && length <= limit; at += PUSH_BYTES) {
      stream.push(bytes.subarray(at, at + PUSH_BYTES), at + PUSH_BYTES >= bytes.length);
    }
  } catch {
    return fail(length > limit ? 'too-large' : 'damaged');
  }
  if (length > limit) return fail('too-large');
  return bytes.length === 0 ? fail('damaged') : ok(joined(out, length));
}

function joined(chunks: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
