import { firstForbidden } from '../programme/unseen.ts';

/** Line ends as Unicode 16, section 5.8, counts them, and tabs. */
const BREAKS = /\r\n|[\t\n\v\f\r\u0085\u2028\u2029]/g;

/** A text with what it may not hold taken out; line ends and tabs become spaces. */
export function inOneLine(text: string): string {
  const line = text.replace(BREAKS, ' ');
  if (firstForbidden(line, { lines: false }) === undefined) return line;
  return [...line]
    .filter((letter) => firstForbidden(letter, { lines: false }) === undefined)
    .join('');
}
