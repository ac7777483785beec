import type { Vault } from '../../app/board-contract.ts';
import { toBase64Url } from '../../domain/exchange/base64url.ts';
import { deflate, inflate } from '../../domain/exchange/deflate.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { subtle } from './curve.ts';
import { type LockedKind, lockFile, openFile } from './locked-file.ts';

/**
 * A board of 500 people over 12 weeks is some 6 MB of JSON and less than a tenth of it in such a
 * file: these hold what ten programmes of the largest kind would be.
 */
const BOARDS: LockedKind = { name: 'towpath-boards', version: 1, most: 64 * 1024 * 1024 };
const INSIDE_MOST = 128 * 1024 * 1024;

const utf8 = new TextEncoder();

/** Not `domain/exchange/utf8.ts`, which takes many times a text's room: these are long. */
function textOf(bytes: Uint8Array): Result<string, 'damaged'> {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    return fail('damaged');
  }
}

const NO_DICTIONARY = new Uint8Array(0);

/** What others told, under a passphrase. */
export const openVault = (): Vault => ({
  async lock(text, passphrase, words) {
    const crypto = subtle();
    if (crypto === undefined) return fail({ code: 'not-secure' });
    const inside = deflate(utf8.encode(text), NO_DICTIONARY);
    return ok(await lockFile(crypto, BOARDS, inside, passphrase, words));
  },
  async open(file, passphrase) {
    const crypto = subtle();
    if (crypto === undefined) return fail({ code: 'not-secure' });
    const inside = await openFile(crypto, BOARDS, file, passphrase);
    if (!inside.ok) return inside;
    const bytes = inflate(inside.value, INSIDE_MOST, NO_DICTIONARY);
    const text = bytes.ok ? textOf(bytes.value) : bytes;
    return text.ok ? text : fail({ code: 'backup-damaged' });
  },
  async digest(text) {
    const crypto = subtle();
    if (crypto === undefined) return fail('not-secure');
    return ok(toBase64Url(new Uint8Array(await crypto.digest('SHA-256', utf8.encode(text)))));
  },
});
