/** How codes stand in texts, and how one that was broken into lines is joined again. */
import { createJoining } from './joining.ts';
import { CODE_MAX } from './packet.ts';

/** Marks without width, which some programs put where a line may break. */
const INVISIBLE = /[\u00ad\u200b-\u200d\u2060\ufeff]/g;

/**
 * Some keyboards make one dash of two hyphens. Each letter by itself, so that a long text may be
 * tidied in pieces.
 */
export const tidy = (text: string): string =>
  text.replace(INVISIBLE, '').replace(/[\u2013\u2014]/g, '--');

/**
 * A code behind its door. The slashes may have been escaped on the way: as in a link, or as in a
 * JSON text (RFC 8259, section 7).
 */
export const LINK = /(?:\\?\/|%2f)(join|answer)(?:\\?\/|%2f)([\w.-]+)/gi;
/** A code alone: version 1 and a kind that is known make its first letters. */
export const BARE = /(?<![\w-])A[QR][\w-]{40,}/g;

/** A full stop ends a sentence, not a code. */
export function withoutStops(text: string): string {
  let end = text.length;
  while (end > 0 && text[end - 1] === '.') end -= 1;
  return text.slice(0, end);
}

/** Letters that may still be looked at for joining lines. What is looked at is taken off. */
export interface Work {
  left: number;
}

/** A code that is whole, and where the text goes on behind it. */
export interface Whole {
  readonly code: string;
  readonly end: number;
}

/**
 * The code that begins with some letters, its lines joined where it was broken into several;
 * nothing when none is whole.
 *
 * @param after where the text goes on behind the first letters
 */
export function codeAt(text: string, first: string, after: number, work: Work): Whole | undefined {
  const joining = createJoining();
  if (!joining.add(first)) return undefined;
  let at = after;
  const until = Math.min(text.length, after + CODE_MAX);
  while (!joining.isWhole()) {
    if (work.left <= 0) return undefined;
    const [start, end] = nextLine(text, at, until);
    work.left -= end - at + 1;
    if (start === end || !joining.add(text.slice(start, end))) return undefined;
    at = end;
  }
  return { code: joining.code(), end: at };
}

const isIn = (pattern: RegExp, letter: string | undefined): boolean =>
  letter !== undefined && pattern.test(letter);
const SPACE = /\s/;
const QUOTE = /[>| \t]/;
const LETTER = /[\w-]/;
const AFTER = /[\s.,;:!)>\]"'=]/;

/**
 * A line of nothing but code, behind a quoting mark or none. Where it begins and ends; an empty
 * one, at the place that was looked at, where there is none.
 */
function nextLine(text: string, from: number, until: number): readonly [number, number] {
  let at = from;
  // A soft line break of quoted-printable mail (RFC 2045, section 6.7, rule 5).
  if (text[at] === '=' && isIn(/[\r\n]/, text[at + 1])) at += 1;
  if (!isIn(SPACE, text[at])) return [at, at];
  while (at < until && isIn(SPACE, text[at])) at += 1;
  if (text[at] === '>' || text[at] === '|') while (at < until && isIn(QUOTE, text[at])) at += 1;
  const start = at;
  while (at < until && isIn(LETTER, text[at])) at += 1;
  const isLine = at === text.length || at === until || isIn(AFTER, text[at]);
  return isLine ? [start, at] : [at, at];
}
