import type { RawSession } from './raw.ts';

/**
 * Reads folded text by grammar.peggy (`npm run grammar` makes this module from it).
 * With `peg$library` it stops where nothing fits any more instead of throwing.
 */
export function parse(
  folded: string,
  options: { readonly peg$library: true },
): { readonly peg$result: RawSession; readonly peg$currPos: number };
