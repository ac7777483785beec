import {
  createUnpacking,
  dataStart,
  directoryOf,
  entriesIn,
  LOCAL_BYTES,
  ZIP_LIMITS,
  ZIP_TAIL_BYTES,
  type ZipEntry,
} from '../../domain/exchange/zip.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { bytesOf, createDecoding, left, type TextPiece } from './piece.ts';

/** Read of a file in an archive at a time. */
const STEP = 256 * 1024;

/** How the names of texts end; a name without an ending may be one. Pictures and sounds are not opened. */
const TEXT_NAME = /(?:^|\/)[^/.]+$|\.(?:txt|text|json|html?|csv|tsv|md|eml|mbox|xml|log)$/i;
const isFolder = ({ name }: ZipEntry): boolean => name.endsWith('/');

/** What may still be unpacked of one archive. */
interface Allowance {
  bytes: number;
}

async function entriesOf(
  file: Blob,
): Promise<Result<readonly ZipEntry[], 'damaged' | 'too-large' | 'file'>> {
  const tail = await bytesOf(file, Math.max(0, file.size - ZIP_TAIL_BYTES), file.size);
  if (!tail.ok) return tail;
  const directory = directoryOf(tail.value, file.size);
  if (!directory.ok) return directory;
  const { offset, bytes, entries } = directory.value;
  const read = await bytesOf(file, offset, offset + bytes);
  return read.ok ? entriesIn(read.value, entries) : read;
}

/** Where a file's packed bytes lie in the archive; nothing where they lie outside of it. */
async function placeOf(
  file: Blob,
  { offset, bytes }: ZipEntry,
): Promise<Result<readonly [from: number, to: number], 'damaged' | 'file'>> {
  const local = await bytesOf(file, offset, offset + LOCAL_BYTES);
  if (!local.ok) return local;
  const start = dataStart(local.value);
  if (start === undefined || offset + start + bytes > file.size) return fail('damaged');
  return ok([offset + start, offset + start + bytes]);
}

async function* piecesOfEntry(
  file: Blob,
  entry: ZipEntry & { readonly how: 'stored' | 'deflated' },
  allowance: Allowance,
): AsyncGenerator<TextPiece> {
  const place = await placeOf(file, entry);
  if (!place.ok) return yield left(place.error);
  const [begin, end] = place.value;
  const unpacking = createUnpacking(entry.how);
  let decoding: TextDecoder | undefined;
  for (let from = begin; from < end; from += STEP) {
    const to = Math.min(end, from + STEP);
    const packed = await bytesOf(file, from, to);
    if (!packed.ok) return yield left(packed.error);
    for (const unpacked of unpacking.push(packed.value, to === end)) {
      if (!unpacked.ok) {
        // What was found before stays found.
        yield left(unpacked.error);
        return yield { kind: 'end' };
      }
      allowance.bytes -= unpacked.value.length;
      if (allowance.bytes < 0) return;
      decoding ??= createDecoding(unpacked.value);
      yield { kind: 'text', text: decoding.decode(unpacked.value, { stream: true }) };
    }
    yield { kind: 'read', amount: to - from };
  }
  yield { kind: 'end' };
}

/** The texts in an archive, one after another; what is not opened is counted. */
export async function* piecesOfZip(file: Blob): AsyncGenerator<TextPiece> {
  const found = await entriesOf(file);
  if (!found.ok) return yield left(found.error);
  const allowance = { bytes: ZIP_LIMITS.inflatedBytes };
  let others = 0;
  for (const entry of found.value) {
    if (isFolder(entry)) continue;
    const { how } = entry;
    if (how === undefined || !TEXT_NAME.test(entry.name)) {
      others += 1;
      continue;
    }
    yield* piecesOfEntry(file, { ...entry, how }, allowance);
    if (allowance.bytes < 0) {
      yield left('too-large');
      yield { kind: 'end' };
      break;
    }
  }
  if (others > 0) yield left('file', others);
}
