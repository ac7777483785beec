import { type Part, wholeOf } from './link.ts';

/** The parts of one code that are there. */
export interface Parts {
  readonly whole: string;
  readonly of: number;
  readonly pieces: Readonly<Record<number, string>>;
}

/** What some parts of a code come to. */
export type Collected =
  | { readonly kind: 'waiting'; readonly parts: Parts }
  | { readonly kind: 'complete'; readonly code: string }
  /** They were of one code, and what they make is not it. */
  | { readonly kind: 'damaged' };

/** Reads `2.3.whole.piece`: one of up to `PARTS_MAX` parts. */
export function readPart(text: string): Part | undefined {
  const found = /^([1-4])\.([2-4])\.([\w-]{6})\.([\w-]+)$/.exec(text);
  if (found === null) return undefined;
  const [, n, of, whole = '', piece = ''] = found;
  const part = { n: Number(n), of: Number(of), whole, piece };
  return part.n <= part.of ? part : undefined;
}

/**
 * Adds a part to those that are there, in any order. A part that is there already changes
 * nothing; one of another code begins anew with that code.
 */
export function collect(parts: Parts | undefined, part: Part): Collected {
  const ofThese = parts !== undefined && parts.whole === part.whole && parts.of === part.of;
  const before = ofThese ? parts.pieces : {};
  const pieces = { ...before, [part.n]: part.piece };
  const numbers = Array.from({ length: part.of }, (_, i) => i + 1);
  if (numbers.some((n) => pieces[n] === undefined))
    return { kind: 'waiting', parts: { whole: part.whole, of: part.of, pieces } };
  const code = numbers.map((n) => pieces[n]).join('');
  return wholeOf(code) === part.whole ? { kind: 'complete', code } : { kind: 'damaged' };
}

/** Numbers of the parts that are there, in order. */
export const partsThere = (parts: Parts): readonly number[] =>
  Object.keys(parts.pieces).map(Number);
