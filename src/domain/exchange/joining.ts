import { bitsOf } from './base64url.ts';
import { CRC_BYTES, CRC_START, crcEnd, crcStep } from './crc32.ts';
import { CODE_MAX, HEAD_BYTES } from './packet.ts';

/** A code that is read letter by letter, so that each line more costs only its own letters. */
export interface Joining {
  /** @returns whether it may still become a code */
  add(letters: string): boolean;
  /** Whether it arrived as it was made. */
  isWhole(): boolean;
  code(): string;
}

/** A code of no letters yet. */
export function createJoining(): Joining {
  const pieces: string[] = [];
  let length = 0;
  let bits = 0;
  let held = 0;
  let count = 0;
  /** The last four bytes, which may be the checksum of those before. */
  let tail = 0;
  let crc = CRC_START;
  let isBroken = false;

  function take(byte: number): void {
    if (count >= CRC_BYTES) crc = crcStep(crc, tail >>> 24);
    tail = (tail << 8) | byte;
    count += 1;
  }

  return {
    add(letters) {
      length += letters.length;
      if (length > CODE_MAX) isBroken = true;
      for (let at = 0; at < letters.length && !isBroken; at++) {
        const value = bitsOf(letters[at] ?? '');
        if (value === undefined) isBroken = true;
        else {
          bits = ((bits << 6) | value) & 0xffff;
          held += 6;
          if (held >= 8) {
            held -= 8;
            take((bits >> held) & 255);
          }
        }
      }
      pieces.push(letters);
      return !isBroken;
    },
    isWhole: () =>
      !isBroken &&
      // Six bits left over are no byte (RFC 4648, section 5), and bits behind the last are none.
      held < 6 &&
      (bits & ((1 << held) - 1)) === 0 &&
      count >= HEAD_BYTES + CRC_BYTES &&
      crcEnd(crc) === tail >>> 0,
    code: () => pieces.join(''),
  };
}
