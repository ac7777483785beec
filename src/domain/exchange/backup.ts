import { crc32 } from './crc32.ts';
import { isPlainObject } from './own.ts';

/** The format that this version writes. */
export const BACKUP_FORMAT = 'towpath-backup/1';

/** A record and the key that it lies under. */
export type Row = readonly [key: string, value: unknown];

/** By the name of the store. A store that is not there is empty. */
export type Stores = Readonly<Record<string, readonly Row[]>>;

/**
 * What a backup never holds: the session under way, whose turn it is, the leader's keys, whose
 * private halves have a backup of their own under a passphrase, and what other people told, which
 * has one too.
 */
export const LEFT_OUT: ReadonlySet<string> = new Set([
  'journal',
  'meta',
  'keys',
  'heard',
  'days',
  'boards',
]);

/** What is true of one phone only: another has to be checked anew. */
const OF_THIS_PHONE: ReadonlySet<string> = new Set([
  'pocketCheck',
  'pocketCheckSkipped',
  'boardsGoOn',
]);

/** Whether JSON gives a value back as it was. Other things (keys, pictures) are not copied. */
function isPlain(value: unknown): boolean {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return true;
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value)) return value.every(isPlain);
  if (typeof value !== 'object') return false;
  const proto = Object.getPrototypeOf(value);
  // Another realm's objects have another prototype, and that one has none.
  const isRecord = proto === null || Object.getPrototypeOf(proto) === null;
  return isRecord && Object.values(value).every((each) => each === undefined || isPlain(each));
}

const withoutPhone = (settings: object): object =>
  Object.fromEntries(Object.entries(settings).filter(([name]) => !OF_THIS_PHONE.has(name)));

const rowsOf = (store: string, rows: readonly Row[]): readonly Row[] =>
  rows
    .filter(([key, value]) => typeof key === 'string' && isPlain(value))
    .map(
      ([key, value]): Row => [
        key,
        // A list is no settings: left as it is, a restore tells that it was not taken.
        store === 'settings' && isPlainObject(value) ? withoutPhone(value) : value,
      ],
    );

/** What of a phone goes into a backup. Stores that this version does not know go along. */
export const backedUp = (stores: Stores): Stores =>
  Object.fromEntries(
    Object.entries(stores)
      .filter(([name]) => !LEFT_OUT.has(name))
      .map(([name, rows]) => [name, rowsOf(name, rows)]),
  );

/** A sign beyond ASCII as JSON may write it (RFC 8259, section 7). */
const escaped = (sign: string): string => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;

function asciiBytes(text: string): Uint8Array {
  const ascii = text.replace(/[\u0080-\uffff]/g, escaped);
  const bytes = new Uint8Array(ascii.length);
  for (let at = 0; at < ascii.length; at++) bytes[at] = ascii.charCodeAt(at);
  return bytes;
}

/**
 * CRC-32 in hexadecimal over the names of the stores and their rows, each on a line, a row as JSON
 * without spare space and in ASCII: the same however the file around them is laid out.
 */
export function checkOf(stores: Stores): string {
  const lines = Object.entries(stores).flatMap(([name, rows]) => [
    name,
    ...rows.map((row) => JSON.stringify(row)),
  ]);
  return crc32(asciiBytes(lines.join('\n')))
    .toString(16)
    .padStart(8, '0');
}

/**
 * Everything that a phone keeps, as a file: JSON with one record on each line, so that a file
 * that was cut off can still be read as far as it goes.
 *
 * @param about what the file says of itself to whoever opens it
 * @param at UTC milliseconds at which it is made
 */
export function writeBackup(stores: Stores, about: string, at: number): string {
  const kept = backedUp(stores);
  const blocks = Object.entries(kept).map(
    ([name, rows]) =>
      `${JSON.stringify(name)}: [\n${rows.map((row) => JSON.stringify(row)).join(',\n')}\n]`,
  );
  return [
    '{',
    `"format": ${JSON.stringify(BACKUP_FORMAT)},`,
    `"about": ${JSON.stringify(about)},`,
    `"madeAt": ${at},`,
    `"check": "${checkOf(kept)}",`,
    `"stores": {\n${blocks.join(',\n')}\n}`,
    '}',
    '',
  ].join('\n');
}
