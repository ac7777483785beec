import { BARE, codeAt, LINK, tidy, withoutStops } from './code-text.ts';
import type { Part } from './link.ts';
import { CODE_MAX } from './packet.ts';
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
 * Characters that are looked at in all for joining lines before giving up: a text that is nothing
 * but beginnings of links costs no more than this.
 */
const WORK_MAX = 4 * 1024 * 1024;

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
  const work = { left: WORK_MAX };
  const parts: Part[] = [];
  let broken: string | undefined;
  const links = [...text.matchAll(LINK)].map((match) => [match, match[2] ?? ''] as const);
  const bare = [...text.matchAll(BARE)].map((match) => [match, match[0]] as const);
  for (const [match, letters] of [...links, ...bare]) {
    const first = withoutStops(letters);
    const part = readPart(first);
    if (part !== undefined) parts.push(part);
    else {
      const whole = codeAt(text, first, match.index + match[0].length, work);
      if (whole !== undefined) return { whole: whole.code, parts };
      broken ??= first;
    }
    if (work.left <= 0) break;
  }
  return { parts, ...(broken === undefined ? {} : { broken }) };
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
