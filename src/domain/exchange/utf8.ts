import { fail, ok, type Result } from '../result.ts';

/**
 * Bytes of a text in UTF-8 (RFC 3629). A lone half of a surrogate pair has none and becomes the
 * replacement character.
 */
export function toUtf8(text: string): Uint8Array<ArrayBuffer> {
  const escaped = encodeURIComponent(text.replace(LONE_HALVES, '\ufffd'));
  const bytes = new Uint8Array(escaped.length);
  let length = 0;
  for (let at = 0; at < escaped.length; at++) {
    const isEscape = escaped[at] === '%';
    bytes[length++] = isEscape
      ? Number.parseInt(escaped.slice(at + 1, at + 3), 16)
      : escaped.charCodeAt(at);
    if (isEscape) at += 2;
  }
  return bytes.slice(0, length);
}

const LONE_HALVES = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const HEX = Array.from({ length: 256 }, (_, byte) => `%${byte.toString(16).padStart(2, '0')}`);

/**
 * The text of UTF-8 bytes. Strict, so that the same bytes come out again: no overlong forms, no
 * halves of surrogate pairs (ECMA-262, `decodeURIComponent`, refuses both); a byte order mark stays.
 */
export function fromUtf8(bytes: Uint8Array): Result<string, 'damaged'> {
  let escaped = '';
  for (const byte of bytes) escaped += HEX[byte];
  try {
    return ok(decodeURIComponent(escaped));
  } catch {
    return fail('damaged');
  }
}
