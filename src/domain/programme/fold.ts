import type { Place } from './problem.ts';

/** Text with phone typography made plain, and where each of its characters came from. */
export interface Folded {
  readonly text: string;
  /** Offset in the original of each folded character, and of the end. */
  readonly origin: readonly number[];
}

const DOUBLE_QUOTES = '"\u201c\u201d\u201e\u201f\u2033\u2036\u00ab\u00bb\u02ba\u301d\u301e';
const SINGLE_QUOTES = "'\u2018\u2019\u201a\u201b\u2032\u2035\u02b9\u02bc\u00b4`";
const DASHES = '-\u2010\u2011\u2012\u2013\u2014\u2015\u2212';
const CROSSES = 'x\u00d7\u2715\u2716\u2a2f*';
const LINE_ENDS = '\n\r\u0085\u2028\u2029';
const UNSEEN = '\u00ad\u200b\u200c\u200d\u2060\ufeff';

const PLAIN = new Map<string, string>();
for (const [letters, plain] of [
  [DOUBLE_QUOTES, '"'],
  [SINGLE_QUOTES, "'"],
  [DASHES, '-'],
  [CROSSES, 'x'],
  [LINE_ENDS, '\n'],
  [UNSEEN, ''],
  ['[{', '('],
  [']}', ')'],
] as const) {
  for (const letter of letters) PLAIN.set(letter, plain);
}

function plainOf(letter: string): string {
  const known = PLAIN.get(letter);
  if (known !== undefined) return known;
  if (/\s/.test(letter)) return ' ';
  const code = letter.charCodeAt(0);
  // Full-width forms, which some phone keyboards write for ; , ( ) and digits.
  if (code >= 0xff01 && code <= 0xff5e) return plainOf(String.fromCharCode(code - 0xfee0));
  return code < 128 ? letter.toLowerCase() : letter;
}

/** Fold quotes, primes, dashes, spaces and crosses of phone keyboards, brackets and letter case. */
export function fold(original: string): Folded {
  const letters: string[] = [];
  const origin: number[] = [];
  for (let at = 0; at < original.length; at += 1) {
    const plain = plainOf(original.charAt(at));
    if (plain === '') continue;
    letters.push(plain);
    origin.push(at);
  }
  origin.push(original.length);
  return { text: letters.join(''), origin };
}

/** Line and column from 1 (columns count characters as a person sees them), for a range of offsets. */
export function placeAt(original: string, start: number, end: number): Place {
  const before = original.slice(0, start).split(/\r\n|[\n\r\u0085\u2028\u2029]/);
  return {
    line: before.length,
    column: [...(before.at(-1) ?? '')].length + 1,
    offset: start,
    length: Math.max(0, end - start),
  };
}
