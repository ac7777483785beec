import { firstForbidden } from '../programme/unseen.ts';

/** A text with what it may not hold taken out; line ends and tabs become spaces. */
export function inOneLine(text: string): string {
  if (firstForbidden(text, { lines: false }) === undefined) return text;
  return [...text.replace(/\r\n|[\t\n\r\u0085]/g, ' ')]
    .filter((letter) => firstForbidden(letter, { lines: false }) === undefined)
    .join('');
}
