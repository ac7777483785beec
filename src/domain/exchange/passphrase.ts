/**
 * Fewest characters of a passphrase. NIST SP 800-63B-4, section 3.1.1.2, asks for 15 where a
 * password stands alone, as this one does (number from memory).
 */
export const PASSPHRASE_MIN = 15;

/** Spaces at the ends and the way in which a keyboard composes letters do not matter. */
export const tidyPassphrase = (typed: string): string => typed.normalize('NFKC').trim();

/** Whether a passphrase is long enough, spaces at its ends not counted. */
export const isLongEnough = (passphrase: string): boolean =>
  [...tidyPassphrase(passphrase)].length >= PASSPHRASE_MIN;
