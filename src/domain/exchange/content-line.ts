/** Longest line in octets of UTF-8, the line break left out (RFC 5545, section 3.1). */
const LINE_OCTETS = 75;

const octetsOf = (sign: string): number => {
  const code = sign.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
};

/**
 * A content line cut into lines of at most 75 octets; every further one begins with a space,
 * which counts (RFC 5545, section 3.1). No sign is cut in two. Ends with CRLF.
 */
export function foldLine(line: string): string {
  let folded = '';
  let octets = 0;
  for (const sign of line) {
    const more = octetsOf(sign);
    if (octets + more > LINE_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += sign;
    octets += more;
  }
  return `${folded}\r\n`;
}

/** Control characters other than the line break, and halves of surrogate pairs, are no text. */
const tidy = (text: string): string =>
  Array.from(text.replace(/\r\n?|[\u2028\u2029]/g, '\n'), (sign) =>
    /^[\ud800-\udfff]$/.test(sign) ? '\ufffd' : sign,
  )
    .join('')
    .replace(/[^\P{Cc}\n\t]/gu, '');

/** A value of the type TEXT (RFC 5545, section 3.3.11). */
export const escapeText = (text: string): string =>
  tidy(text)
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replaceAll('\n', '\\n');

/**
 * A length as RFC 5545, section 3.3.6, writes it: `PT1H30M`, `-PT15M`.
 *
 * @param seconds whole seconds; a negative length is before something
 */
export function durationText(seconds: number): string {
  const whole = Math.abs(seconds);
  const parts = [
    [Math.floor(whole / 3600), 'H'],
    [Math.floor((whole % 3600) / 60), 'M'],
    [whole % 60, 'S'],
  ] as const;
  const first = parts.findIndex(([n]) => n > 0);
  const last = parts.findLastIndex(([n]) => n > 0);
  // The grammar wants the units between the first and the last, also where there are none of them.
  const said =
    first < 0
      ? '0S'
      : parts
          .slice(first, last + 1)
          .map((part) => part.join(''))
          .join('');
  return `${seconds < 0 ? '-' : ''}PT${said}`;
}
