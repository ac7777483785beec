import type { IntakeSource } from '../../app/intake-contract.ts';
import { isTextFile, isZipFile } from '../../domain/exchange/file-kind.ts';
import { bytesOf, createDecoding, left, type TextPiece } from './piece.ts';
import { piecesOfZip } from './zip-pieces.ts';

/** Longest text that is looked through: a group's chat of years has a few megabytes. */
export const TEXT_MAX = 32 * 1024 * 1024;
/** Read at a time. */
const STEP = 1024 * 1024;
/** Bytes by which a file is told to be a text. */
const FIRST_BYTES = 4096;

/** Of how much a source is, for saying how far it is. */
export const sizeOf = ({ content }: IntakeSource): number =>
  typeof content === 'string' ? content.length : content.size;

function* piecesOfText(text: string): Generator<TextPiece> {
  if (text.length > TEXT_MAX) return yield left('too-large');
  for (let from = 0; from < text.length; from += STEP) {
    const piece = text.slice(from, from + STEP);
    yield { kind: 'text', text: piece };
    yield { kind: 'read', amount: piece.length };
  }
  yield { kind: 'end' };
}

async function* piecesOfFile(file: Blob): AsyncGenerator<TextPiece> {
  const first = await bytesOf(file, 0, FIRST_BYTES);
  if (!first.ok || file.size === 0) return yield left('file');
  if (isZipFile(first.value)) return yield* piecesOfZip(file);
  if (!isTextFile(first.value)) return yield left('file');
  if (file.size > TEXT_MAX) return yield left('too-large');
  const decoding = createDecoding(first.value);
  for (let from = 0; from < file.size; from += STEP) {
    const bytes = await bytesOf(file, from, from + STEP);
    if (!bytes.ok) {
      yield left(bytes.error);
      break;
    }
    yield { kind: 'text', text: decoding.decode(bytes.value, { stream: true }) };
    yield { kind: 'read', amount: bytes.value.length };
  }
  yield { kind: 'end' };
}

/** All that a source holds, whatever it is; nothing of it is kept here. */
export async function* piecesOf({ content }: IntakeSource): AsyncGenerator<TextPiece> {
  if (typeof content === 'string') yield* piecesOfText(content);
  else yield* piecesOfFile(content);
}
