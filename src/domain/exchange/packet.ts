import { fail, ok, type Result } from '../result.ts';
import { fromBase64Url, toBase64Url } from './base64url.ts';
import { CRC_BYTES, crc32, crcBytes } from './crc32.ts';
import { deflate, INFLATED_MAX, inflate } from './deflate.ts';

/** ECDSA with P-256: r and s, 32 bytes each (IEEE P1363, as WebCrypto has it). */
export const SIGNATURE_BYTES = 64;
/** Longest code that is looked at, in characters. Deflate makes honest content far shorter. */
export const CODE_MAX = INFLATED_MAX;

const VERSION = 1;
/** What is inside. A response is sealed and comes from elsewhere; its number is taken. */
const KINDS = { programme: 1 } as const;
const SIGNED = 0x10;
const HEAD_BYTES = 2;

/** Exactly what was signed, and the signature where there is one. */
export interface Packet {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly signature?: Uint8Array<ArrayBuffer>;
}

export type PacketFault = 'cut-short' | 'damaged' | 'newer' | 'too-large';

/**
 * A programme as a code for links and QR symbols: base64url of version, kind, signature (when
 * signed), raw deflate with preset dictionary 1, and CRC-32 of all that.
 */
export function encodePacket({ bytes, signature }: Packet): string {
  const body = deflate(bytes);
  const signed = signature?.length ?? 0;
  const packet = new Uint8Array(HEAD_BYTES + signed + body.length + CRC_BYTES);
  packet.set([VERSION, KINDS.programme | (signature ? SIGNED : 0)]);
  packet.set(signature ?? [], HEAD_BYTES);
  packet.set(body, HEAD_BYTES + signed);
  const end = packet.length - CRC_BYTES;
  packet.set(crcBytes(crc32(packet.subarray(0, end))), end);
  return toBase64Url(packet);
}

/** Whether a code arrived as it was made. Cheap: nothing is inflated. */
export function isWhole(bytes: Uint8Array): boolean {
  const end = bytes.length - CRC_BYTES;
  if (end < HEAD_BYTES) return false;
  const said = crcBytes(crc32(bytes.subarray(0, end)));
  return said.every((byte, n) => byte === bytes[end + n]);
}

/**
 * What is in a code. Length is bounded before anything is read, the checksum compared before
 * anything is inflated, and inflating stops at its own bound. The signature is not verified here.
 */
export function decodePacket(code: string): Result<Packet, PacketFault> {
  if (code.length > CODE_MAX) return fail('too-large');
  const read = fromBase64Url(code);
  if (!read.ok) return read;
  const bytes = read.value;
  if (bytes.length < HEAD_BYTES + CRC_BYTES) return fail('cut-short');
  if (!isWhole(bytes)) return fail('damaged');
  const [version, kind] = bytes;
  // A newer version keeps its checksum in the same place, so that it is told from damage.
  if (version !== VERSION || ((kind ?? 0) & ~SIGNED) !== KINDS.programme) return fail('newer');
  const start = HEAD_BYTES + ((kind ?? 0) & SIGNED ? SIGNATURE_BYTES : 0);
  const end = bytes.length - CRC_BYTES;
  if (start >= end) return fail('damaged');
  const body = inflate(bytes.subarray(start, end));
  if (!body.ok) return body;
  const signature = bytes.slice(HEAD_BYTES, start);
  return ok({ bytes: body.value, ...(signature.length > 0 ? { signature } : {}) });
}
