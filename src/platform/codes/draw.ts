import { encode } from 'uqr';
import type { Code } from '../../app/exchange-contract.ts';

/** Largest symbol that a phone's camera reads without trouble from another phone's screen. */
export const VERSION_MAX = 25;
/** Quiet zone, in modules: ISO/IEC 18004, section 6.3.8 (number from memory). */
const QUIET = 4;

/**
 * A text as a QR symbol (ISO/IEC 18004), error correction M, byte mode; nothing when version 25
 * does not hold it. Runs of dark modules are one rectangle each, which keeps the path short.
 */
export function drawCode(text: string): Code | undefined {
  try {
    const { data, size, version } = encode(text, {
      ecc: 'M',
      maxVersion: VERSION_MAX,
      border: QUIET,
    });
    return { size, version, path: data.map(rowPath).join('') };
  } catch {
    return undefined;
  }
}

function rowPath(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue;
    const start = x;
    while (row[x + 1]) x++;
    path += `M${start} ${y}h${x - start + 1}v1h-${x - start + 1}z`;
  }
  return path;
}
