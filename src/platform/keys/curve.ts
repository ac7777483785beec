import { fromBase64Url, toBase64Url } from '../../domain/exchange/base64url.ts';
import { compressPoint, expandPoint } from '../../domain/exchange/point.ts';
import { fail, ok, type Result } from '../../domain/result.ts';

const SIGN = { name: 'ECDSA', namedCurve: 'P-256' } as const;
const SEAL = { name: 'ECDH', namedCurve: 'P-256' } as const;
const HOW = { name: 'ECDSA', hash: 'SHA-256' } as const;

/** What of the two pairs goes into a backup. */
export interface SecretKeys {
  readonly sign: JsonWebKey;
  readonly seal: JsonWebKey;
}

/** The private halves as they are kept: to be used, never read out. */
export interface KeptKeys {
  readonly signWith: CryptoKey;
  readonly openWith: CryptoKey;
}

/** Only pages that came over https or from this machine may use cryptography. */
export const subtle = (): SubtleCrypto | undefined => globalThis.crypto?.subtle;

/** Two new pairs that can still be read out, once, for their backup. */
export async function makePairs(
  crypto: SubtleCrypto,
): Promise<{ readonly sign: CryptoKeyPair; readonly seal: CryptoKeyPair }> {
  return {
    sign: await crypto.generateKey(SIGN, true, ['sign', 'verify']),
    seal: await crypto.generateKey(SEAL, true, ['deriveBits']),
  };
}

/** A public key as it stands in a programme: a compressed point, base64url. */
export const publicText = async (crypto: SubtleCrypto, key: CryptoKey): Promise<string> =>
  compressPoint(new Uint8Array(await crypto.exportKey('raw', key)));

/** What makes a pair, without what a browser says of its use. */
const plain = ({ kty, crv, x, y, d }: JsonWebKey): JsonWebKey =>
  ({ kty, crv, x, y, d }) as JsonWebKey;

/** Two pairs, read out. */
export const readOut = async (
  crypto: SubtleCrypto,
  sign: CryptoKey,
  seal: CryptoKey,
): Promise<SecretKeys> => ({
  sign: plain(await crypto.exportKey('jwk', sign)),
  seal: plain(await crypto.exportKey('jwk', seal)),
});

/** The private halves such that they can no longer be read out. */
export const lock = async (crypto: SubtleCrypto, keys: SecretKeys): Promise<KeptKeys> => ({
  signWith: await crypto.importKey('jwk', plain(keys.sign), SIGN, false, ['sign']),
  openWith: await crypto.importKey('jwk', plain(keys.seal), SEAL, false, ['deriveBits']),
});

/** The public half of a pair that was read out. */
export function publicOf({ x = '', y = '' }: JsonWebKey): string | undefined {
  const [left, right] = [fromBase64Url(x), fromBase64Url(y)];
  if (!left.ok || !right.ok) return undefined;
  return compressPoint(Uint8Array.of(4, ...left.value, ...right.value));
}

/** ECDSA with P-256 and SHA-256 (FIPS 186-5), r and s, base64url. */
export const signBytes = async (
  crypto: SubtleCrypto,
  key: CryptoKey,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<string> => toBase64Url(new Uint8Array(await crypto.sign(HOW, key, bytes)));

/** Whether a signature by the key of a programme is right. A key that is none signs nothing. */
export async function isRight(
  crypto: SubtleCrypto,
  key: string,
  bytes: Uint8Array<ArrayBuffer>,
  signature: string,
): Promise<boolean> {
  const [point, given] = [expandPoint(key), fromBase64Url(signature)];
  if (!point.ok || !given.ok) return false;
  try {
    const imported = await crypto.importKey('raw', point.value, SIGN, false, ['verify']);
    return await crypto.verify(HOW, imported, given.value, bytes);
  } catch {
    return false;
  }
}

/**
 * Rounds that make it slow to search for another key with the same digits. Six digits are few:
 * they are worth something because they are compared in person and once.
 */
const DIGIT_ROUNDS = 600_000;
const DIGITS = 6;

/** Six digits of a key in a programme, "402 917". */
export async function digitsOf(
  crypto: SubtleCrypto,
  key: string,
  programmeId: string,
): Promise<Result<string, 'not-secure'>> {
  const words = new TextEncoder();
  try {
    const material = await crypto.importKey('raw', words.encode(key), 'PBKDF2', false, [
      'deriveBits',
    ]);
    const salt = words.encode(`towpath-digits/1 ${programmeId}`);
    const how = { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: DIGIT_ROUNDS };
    const bits = new DataView(await crypto.deriveBits(how, material, 64)).getBigUint64(0);
    const digits = String(bits % 10n ** BigInt(DIGITS)).padStart(DIGITS, '0');
    return ok(`${digits.slice(0, 3)} ${digits.slice(3)}`);
  } catch {
    return fail('not-secure');
  }
}
