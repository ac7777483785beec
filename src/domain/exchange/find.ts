import { fromBase64Url } from './base64url.ts';
import type { Part } from './link.ts';
import { CODE_MAX, isWhole } from './packet.ts';
import { readPart } from './parts.ts';

/** What a text that someone pasted, opened or scanned turned out to hold. */
export type Found =
  | { readonly kind: 'code'; readonly code: string }
  | { readonly kind: 'parts'; readonly parts: readonly Part[] }
  | { readonly kind: 'file'; readonly text: string }
  | { readonly kind: 'too-large' }
  | { readonly kind: 'empty' }
  | { readonly kind: 'nothing' };

/** A text longer than this is not searched: a code in some words around it. */
const TEXT_MAX = CODE_MAX + 64 * 1024;
/**
 * Characters that are decoded in all before giving up: a text that is nothing but beginnings of
 * links costs no more than this.
 */
const WORK_MAX = 4 * 1024 * 1024;

/** Marks without width, which some programs put where a line may break. */
const INVISIBLE = /[\u00ad\u200b-\u200d\u2060\ufeff]/g;

/** Some keyboards make one dash of two hyphens. */
const tidy = (text: string): string => text.replace(INVISIBLE, '').replace(/[\u2013\u2014]/g, '--');

/** The `#` and the slashes may have been escaped on the way. */
const LINK = /(?:\/|%2f)(?:join|answer)(?:\/|%2f)([\w.-]+)/gi;
/** A code alone: version 1 and a kind that is known make its first letters. */
const BARE = /(?<![\w-])A[QR][\w-]{40,}/g;

/** Tells whole codes from others until its work is used up. */
function createTester(): { isWhole(code: string): boolean; isTired(): boolean } {
  let work = 0;
  return {
    isTired: () => work > WORK_MAX,
    isWhole(code) {
      work += code.length;
      if (work > WORK_MAX || code.length > CODE_MAX) return false;
      const bytes = fromBase64Url(code);
      return bytes.ok && isWhole(bytes.value);
    },
  };
}

type Tester = ReturnType<typeof createTester>;

/** A line of nothing but code, behind a quoting mark or none. */
const NEXT_LINE = /\s+(?:[>|][>| \t]*)?([\w-]+)(?=[\s.,;:!)>\]"']|$)/gy;

/**
 * The code that begins here, its lines joined where it was broken into several; nothing when
 * none is whole.
 */
function codeAt(text: string, first: string, after: number, tester: Tester): string | undefined {
  let code = first;
  if (tester.isWhole(code)) return code;
  for (const [, more] of text.slice(after, after + CODE_MAX).matchAll(NEXT_LINE)) {
    code += more;
    if (tester.isWhole(code)) return code;
    if (tester.isTired()) return undefined;
  }
  return undefined;
}

/** A JSON object that says that it is a programme, with anything around it. */
function fileIn(text: string): string | undefined {
  if (text.trimStart().startsWith('{')) return text;
  if (!text.includes('"towpath-programme/')) return undefined;
  const start = text.indexOf('{');
  const end = text.lastIndexOf('}');
  return start >= 0 && end > start ? text.slice(start, end + 1) : undefined;
}

interface Codes {
  readonly whole?: string;
  /** The first that is not whole, as it stands, so that what is wrong with it can be told. */
  readonly broken?: string;
  readonly parts: readonly Part[];
}

function codesIn(text: string): Codes {
  const tester = createTester();
  const parts: Part[] = [];
  const broken: string[] = [];
  const found = [LINK, BARE].flatMap((pattern) => [...text.matchAll(pattern)]);
  for (const match of found) {
    // A full stop ends a sentence, not a code.
    const first = (match[1] ?? match[0]).replace(/[.]+$/, '');
    const part = readPart(first);
    if (part !== undefined) parts.push(part);
    else {
      const whole = codeAt(text, first, match.index + match[0].length, tester);
      if (whole !== undefined) return { whole, parts };
      broken.push(first);
    }
    if (tester.isTired()) break;
  }
  return { parts, ...(broken[0] === undefined ? {} : { broken: broken[0] }) };
}

/**
 * Looks for a link, a code, parts of a code or a programme file in a text with anything around
 * it. Bounded in length and in tries, whatever the text is.
 */
export function findIn(text: string): Found {
  if (text.length > TEXT_MAX) return { kind: 'too-large' };
  if (text.trim() === '') return { kind: 'empty' };
  const file = fileIn(text);
  if (file !== undefined) return { kind: 'file', text: file };
  const { whole, broken, parts } = codesIn(tidy(text));
  if (whole !== undefined) return { kind: 'code', code: whole };
  if (parts.length > 0) return { kind: 'parts', parts };
  return broken === undefined ? { kind: 'nothing' } : { kind: 'code', code: broken };
}
