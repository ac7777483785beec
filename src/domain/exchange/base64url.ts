import { fail, ok, type Result } from '../result.ts';

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES: ReadonlyMap<string, number> = new Map(
  Array.from(LETTERS, (letter, value) => [letter, value]),
);

/** Six bits of a letter; nothing where it is none of base64url's. */
export const bitsOf = (letter: string): number | undefined => VALUES.get(letter);

/** Bytes as base64url without padding (RFC 4648, section 5). */
export function toBase64Url(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const left = bytes.length - at;
    const bits = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    for (let n = 0; n <= Math.min(left, 3); n++) text += LETTERS[(bits >> (18 - 6 * n)) & 63];
  }
  return text;
}

/**
 * The bytes of a base64url text without padding. One text for one row of bytes: other letters,
 * impossible lengths and set bits behind the last byte are refused.
 */
export function fromBase64Url(text: string): Result<Uint8Array<ArrayBuffer>, 'damaged'> {
  const rest = text.length % 4;
  if (rest === 1) return fail('damaged');
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const letter of text) {
    const value = VALUES.get(letter);
    if (value === undefined) return fail('damaged');
    bits = ((bits << 6) | value) & 0xffff;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at] = (bits >> held) & 255;
    at += 1;
  }
  return (bits & ((1 << held) - 1)) === 0 ? ok(bytes) : fail('damaged');
}
