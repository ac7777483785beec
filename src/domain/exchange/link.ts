import { toBase64Url } from './base64url.ts';
import { crc32, crcBytes } from './crc32.ts';
import { toUtf8 } from './utf8.ts';

/** Where a code stands in a link: behind the `#`, so that no server is ever sent it. */
export const JOIN = '#/join/';
/** The same for what a participant tells a leader. */
export const ANSWER = '#/answer/';

/** Where in the app a link leads: to receiving a programme, or to opening an answer. */
export type Door = typeof JOIN | typeof ANSWER;

/** Most parts that a code is cut into: more than four symbols are not scanned, they are given up. */
export const PARTS_MAX = 4;

/** A link that opens a code in the app at this address. */
export const joinLink = (base: string, code: string, door: Door = JOIN): string =>
  `${base.replace(/#.*$/, '')}${door}${code}`;

/** One of several links that together hold a code. `n` counts from 1. */
export interface Part {
  readonly n: number;
  readonly of: number;
  /** The same for all parts of a code: six letters made of its checksum. */
  readonly whole: string;
  readonly piece: string;
}

/** Six letters that tell the parts of one code from those of another. */
export const wholeOf = (code: string): string => toBase64Url(crcBytes(crc32(toUtf8(code))));

const partText = ({ n, of, whole, piece }: Part): string => `${n}.${of}.${whole}.${piece}`;

/** A code cut into `count` links of about the same length. */
export function partLinks(
  base: string,
  code: string,
  count: number,
  door: Door = JOIN,
): readonly string[] {
  if (count === 1) return [joinLink(base, code, door)];
  const size = Math.ceil(code.length / count);
  const whole = wholeOf(code);
  return Array.from({ length: count }, (_, i) => {
    const piece = code.slice(i * size, (i + 1) * size);
    return joinLink(base, partText({ n: i + 1, of: count, whole, piece }), door);
  });
}

/**
 * The fewest links, 1 to 4, that are each at most `longest` bytes; nothing when four do not do.
 * Links are ASCII but for a host's own name, so bytes are counted.
 */
export function fewestLinks(
  base: string,
  code: string,
  longest: number,
  door: Door = JOIN,
): readonly string[] | undefined {
  for (let count = 1; count <= PARTS_MAX; count++) {
    const links = partLinks(base, code, count, door);
    if (links.every((link) => toUtf8(link).length <= longest)) return links;
  }
  return undefined;
}

const LOCAL_HOSTS: readonly RegExp[] = [
  /^localhost$/,
  /\.(local|localhost|lan|home\.arpa|internal)$/,
  /^[^.:]+$/,
  /^127(\.\d+){3}$/,
  /^10(\.\d+){3}$/,
  /^192\.168(\.\d+){2}$/,
  /^172\.(1[6-9]|2\d|3[01])(\.\d+){2}$/,
  /^169\.254(\.\d+){2}$/,
  /^0\.0\.0\.0$/,
  /^\[(::1|f[cd][0-9a-f]{2}:.*|fe[89ab][0-9a-f]:.*)\]$/,
];

/**
 * Whether other phones cannot reach an address: the machine itself, private and link-local
 * networks (RFC 1918, RFC 3927, RFC 4193, RFC 4291), names without a dot or for home use (RFC 6761,
 * RFC 6762, RFC 8375), and files.
 */
export function isLocalAddress(address: string): boolean {
  const parts = /^https?:\/\/(?:[^/?#@]*@)?(\[[^\]]*\]|[^/?#:]*)/i.exec(address);
  if (parts === null) return true;
  const host = (parts[1] ?? '').toLowerCase().replace(/\.$/, '');
  return LOCAL_HOSTS.some((local) => local.test(host));
}
