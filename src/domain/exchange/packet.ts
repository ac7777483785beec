import { fail, ok, type Result } from '../result.ts';
import { fromBase64Url, toBase64Url } from './base64url.ts';
import { CRC_BYTES, crc32, crcBytes } from './crc32.ts';
import { deflate, INFLATED_MAX, inflate } from './deflate.ts';
import { toUtf8 } from './utf8.ts';

/** ECDSA with P-256: r and s, 32 bytes each (IEEE P1363, as WebCrypto has it). */
export const SIGNATURE_BYTES = 64;
/** Longest code that is looked at, in characters. Deflate makes honest content far shorter. */
export const CODE_MAX = INFLATED_MAX;

const VERSION = 1;
/** What is inside: a programme, or what a participant tells a leader, which is sealed. */
const KINDS = { programme: 1, answer: 2 } as const;
const SIGNED = 0x10;
/** Bytes before what is packed: version and kind. */
export const HEAD_BYTES = 2;

/** Exactly what was signed, and the signature where there is one. */
export interface Packet {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly signature?: Uint8Array<ArrayBuffer>;
}

/** Why a code cannot be opened, whichever kind it is of. */
export type PacketFault = 'cut-short' | 'damaged' | 'newer' | 'too-large';

/** `answer`, `not-an-answer`: whole, and of the other kind. */
export type ProgrammeFault = PacketFault | 'answer';
/** The same of what should be an answer. */
export type AnswerFault = PacketFault | 'not-an-answer';

/** Version and kind of an answer: what its seal is bound to, besides what is in it. */
export const ANSWER_HEAD: Uint8Array<ArrayBuffer> = Uint8Array.of(VERSION, KINDS.answer);

/**
 * What else a seal is bound to (`info` of RFC 9180, section 5.1): nothing that was sealed for
 * another use of the same key opens as an answer.
 */
export const ANSWER_INFO: Uint8Array<ArrayBuffer> = toUtf8('towpath-response/1');

/** Head, content and checksum as base64url. */
function closed(...content: readonly Uint8Array[]): string {
  const length = content.reduce((sum, part) => sum + part.length, 0);
  const packet = new Uint8Array(length + CRC_BYTES);
  let at = 0;
  for (const part of content) {
    packet.set(part, at);
    at += part.length;
  }
  packet.set(crcBytes(crc32(packet.subarray(0, at))), at);
  return toBase64Url(packet);
}

/**
 * A programme as a code for links and QR symbols: base64url of version, kind, signature (when
 * signed), raw deflate with preset dictionary 1, and CRC-32 of all that.
 */
export function encodePacket({ bytes, signature }: Packet): string {
  const head = Uint8Array.of(VERSION, KINDS.programme | (signature ? SIGNED : 0));
  return closed(head, signature ?? new Uint8Array(), deflate(bytes));
}

/** What was sealed as a code: base64url of version, kind, the sealed bytes and CRC-32 of all that. */
export const encodeAnswer = (sealed: Uint8Array): string => closed(ANSWER_HEAD, sealed);

/** Whether a code that has a checksum arrived as it was made. Cheap: nothing is inflated. */
function isWhole(bytes: Uint8Array): boolean {
  const end = bytes.length - CRC_BYTES;
  const said = crcBytes(crc32(bytes.subarray(0, end)));
  return said.every((byte, n) => byte === bytes[end + n]);
}

/** Length bounded, checksum compared, version known: kind and content of a code. */
function opened(
  code: string,
): Result<{ readonly kind: number; readonly content: Uint8Array<ArrayBuffer> }, PacketFault> {
  if (code.length > CODE_MAX) return fail('too-large');
  const read = fromBase64Url(code);
  if (!read.ok) return read;
  const bytes = read.value;
  if (bytes.length < HEAD_BYTES + CRC_BYTES) return fail('cut-short');
  if (!isWhole(bytes)) return fail('damaged');
  const [version, kind = 0] = bytes;
  // A newer version keeps its checksum in the same place, so that it is told from damage.
  if (version !== VERSION) return fail('newer');
  return ok({ kind, content: bytes.slice(HEAD_BYTES, bytes.length - CRC_BYTES) });
}

/**
 * What is in a code. Length is bounded before anything is read, the checksum compared before
 * anything is inflated, and inflating stops at its own bound. The signature is not verified here.
 */
export function decodePacket(code: string): Result<Packet, ProgrammeFault> {
  const read = opened(code);
  if (!read.ok) return read;
  const { kind, content } = read.value;
  if (kind === KINDS.answer) return fail('answer');
  if ((kind & ~SIGNED) !== KINDS.programme) return fail('newer');
  const start = kind & SIGNED ? SIGNATURE_BYTES : 0;
  const body = inflate(content.subarray(start));
  if (!body.ok) return body;
  const signature = content.slice(0, start);
  return ok({ bytes: body.value, ...(signature.length > 0 ? { signature } : {}) });
}

/** The sealed bytes in a code of an answer, within the same bounds. Only their key opens them. */
export function decodeAnswer(code: string): Result<Uint8Array<ArrayBuffer>, AnswerFault> {
  const read = opened(code);
  if (!read.ok) return read;
  const { kind, content } = read.value;
  if ((kind & ~SIGNED) === KINDS.programme) return fail('not-an-answer');
  if (kind !== KINDS.answer) return fail('newer');
  return content.length === 0 ? fail('damaged') : ok(content);
}
