/**
 * Characters that a person cannot see and that can make a name or a note lie: controls, and marks
 * that turn the direction of writing (Unicode Technical Report 36, section 2.10, from memory).
 */
const isControl = (code: number): boolean => code < 32 || (code >= 127 && code < 160);
const isTurning = (code: number): boolean =>
  code === 0x61c ||
  code === 0x200e ||
  code === 0x200f ||
  (code >= 0x202a && code <= 0x202e) ||
  (code >= 0x2066 && code <= 0x2069);
const isLine = (code: number): boolean => [9, 10, 13, 0x85].includes(code);
const isHalf = (code: number): boolean => code >= 0xd800 && code <= 0xdfff;

/** Offset of the first character that a text may not hold. `lines`: line ends and tabs may stand. */
export function firstForbidden(
  text: string,
  allow: { readonly lines: boolean },
): number | undefined {
  let at = 0;
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? 0;
    const allowed = allow.lines && isLine(code);
    if (!allowed && (isControl(code) || isTurning(code) || isHalf(code))) return at;
    at += letter.length;
  }
  return undefined;
}
