/** What a file is, by its first bytes: names and types are what somebody says it is. */

/** First bytes of PNG, JPEG, GIF and of RIFF, in which WebP stands. */
const PICTURES: readonly (readonly number[])[] = [
  [0x89, 0x50, 0x4e, 0x47],
  [0xff, 0xd8, 0xff],
  [0x47, 0x49, 0x46, 0x38],
  [0x52, 0x49, 0x46, 0x46],
];
/** Of an archive with something in it, and of an empty one (APPNOTE 6.3.10, 4.3.7 and 4.3.16). */
const ZIPS: readonly (readonly number[])[] = [
  [0x50, 0x4b, 3, 4],
  [0x50, 0x4b, 5, 6],
];

const beginsAs = (first: Uint8Array, all: readonly (readonly number[])[]): boolean =>
  all.some((marks) => marks.every((mark, n) => first[n] === mark));

/** Whether a file is a picture, by its first four bytes or more. */
export const isPictureFile = (first: Uint8Array): boolean => beginsAs(first, PICTURES);
/** Whether a file is a ZIP archive, by its first four bytes or more. */
export const isZipFile = (first: Uint8Array): boolean => beginsAs(first, ZIPS);

/** How a text is written, by its byte order mark; without one it is UTF-8 (Unicode 16, 23.8). */
export function encodingOf(first: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  if (first[0] === 0xff && first[1] === 0xfe) return 'utf-16le';
  return first[0] === 0xfe && first[1] === 0xff ? 'utf-16be' : 'utf-8';
}

/** Whether bytes are of a text: in UTF-8 no text that people write has a zero. */
export const isTextFile = (first: Uint8Array): boolean =>
  encodingOf(first) !== 'utf-8' || !first.includes(0);
