/**
 * Archives as PKWARE's APPNOTE.TXT 6.3.10 has them, as far as an exported chat needs: stored and
 * deflated files, read by the directory at the end. Archives over 4 GB, in several pieces or
 * encrypted are not read.
 */
import { Inflate } from 'fflate';
import { fail, ok, type Result } from '../result.ts';

/** What is taken of one archive at most. */
export const ZIP_LIMITS = {
  /** A chat of years with every picture in it; each is a line of the directory. */
  entries: 20_000,
  directoryBytes: 8 * 1024 * 1024,
  /** Of all texts of an archive together: a bomb ends here. */
  inflatedBytes: 64 * 1024 * 1024,
} as const;

const END_BYTES = 22;
/** Bytes at the end of an archive among which its directory is named: that line and a comment. */
export const ZIP_TAIL_BYTES = END_BYTES + 0xffff;
/** Bytes before a file's name. */
export const LOCAL_BYTES = 30;
const CENTRAL_BYTES = 46;

/** Signatures of sections 4.3.16, 4.3.12 and 4.3.7, and the bits and methods of 4.4.4 and 4.4.5. */
const END_MARK = 0x06054b50;
const CENTRAL_MARK = 0x02014b50;
const LOCAL_MARK = 0x04034b50;
const ENCRYPTED = 1;
const STORED = 0;
const DEFLATED = 8;

/** Where the list of an archive's files lies, in bytes from its beginning. */
export interface ZipDirectory {
  readonly offset: number;
  readonly bytes: number;
  readonly entries: number;
}

/** A file in an archive. */
export interface ZipEntry {
  readonly name: string;
  /** Of what can be read; nothing: another method, or a passphrase is needed. */
  readonly how?: 'stored' | 'deflated';
  /** In the archive, as the directory says. */
  readonly bytes: number;
  /** Where its own header begins. */
  readonly offset: number;
}

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/**
 * Where the directory of an archive is.
 *
 * @param tail its last bytes, at most `ZIP_TAIL_BYTES`; @param size of the whole archive
 */
export function directoryOf(
  tail: Uint8Array,
  size: number,
): Result<ZipDirectory, 'damaged' | 'too-large'> {
  const view = viewOf(tail);
  for (let at = tail.length - END_BYTES; at >= 0; at--) {
    if (view.getUint32(at, true) !== END_MARK) continue;
    // A comment may hold the mark too: behind the true one is a comment as long as it says.
    if (view.getUint16(at + 20, true) !== tail.length - at - END_BYTES) continue;
    const entries = view.getUint16(at + 10, true);
    const bytes = view.getUint32(at + 12, true);
    const offset = view.getUint32(at + 16, true);
    if (offset + bytes > size) return fail('damaged');
    const isLarge = entries > ZIP_LIMITS.entries || bytes > ZIP_LIMITS.directoryBytes;
    return isLarge ? fail('too-large') : ok({ offset, bytes, entries });
  }
  return fail('damaged');
}

const nameOf = (bytes: Uint8Array): string => {
  // Only how it ends is looked at: letters beyond ASCII may stand for whatever they like.
  let name = '';
  for (const byte of bytes) name += String.fromCharCode(byte);
  return name;
};

/** The files that a directory names, as far as it can be read. */
export function entriesIn(
  directory: Uint8Array,
  count: number,
): Result<readonly ZipEntry[], 'damaged'> {
  const view = viewOf(directory);
  const entries: ZipEntry[] = [];
  let at = 0;
  for (let n = 0; n < count; n++) {
    if (at + CENTRAL_BYTES > directory.length) return fail('damaged');
    if (view.getUint32(at, true) !== CENTRAL_MARK) return fail('damaged');
    const isEncrypted = (view.getUint16(at + 8, true) & ENCRYPTED) !== 0;
    const method = view.getUint16(at + 10, true);
    const nameBytes = view.getUint16(at + 28, true);
    const more = view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    const start = at + CENTRAL_BYTES;
    const how = method === STORED ? 'stored' : method === DEFLATED ? 'deflated' : undefined;
    entries.push({
      name: nameOf(directory.subarray(start, start + nameBytes)),
      ...(how === undefined || isEncrypted ? {} : { how }),
      bytes: view.getUint32(at + 20, true),
      offset: view.getUint32(at + 42, true),
    });
    at = start + nameBytes + more;
  }
  return ok(entries);
}

/** How far behind its own header a file's bytes begin; nothing: it has none. */
export function dataStart(local: Uint8Array): number | undefined {
  if (local.length < LOCAL_BYTES) return undefined;
  const view = viewOf(local);
  if (view.getUint32(0, true) !== LOCAL_MARK) return undefined;
  return LOCAL_BYTES + view.getUint16(26, true) + view.getUint16(28, true);
}

/**
 * Pushed at a time. Deflate gives at most 1032 bytes for one (258 bytes for two bits), so no push
 * makes more than four megabytes before they are counted.
 */
const PUSH_BYTES = 4096;

/** A file's bytes as they were before they were packed, some at a time. */
export interface Unpacking {
  /** @throws nothing: what is no deflate stream is `damaged` */
  push(bytes: Uint8Array, isLast: boolean): Generator<Result<Uint8Array, 'damaged'>>;
}

/** Unpacks one file of an archive. */
export function createUnpacking(how: 'stored' | 'deflated'): Unpacking {
  const out: Uint8Array[] = [];
  const stream = new Inflate((chunk) => out.push(chunk));
  let isOver = false;
  return {
    *push(bytes, isLast) {
      if (how === 'stored') yield ok(bytes);
      else
        for (let at = 0; at < bytes.length && !isOver; at += PUSH_BYTES) {
          try {
            const isEnd = isLast && at + PUSH_BYTES >= bytes.length;
            stream.push(bytes.subarray(at, at + PUSH_BYTES), isEnd);
          } catch {
            isOver = true;
          }
          for (const chunk of out.splice(0)) yield ok(chunk);
          if (isOver) yield fail('damaged');
        }
    },
  };
}
