import { Aes128Gcm, CipherSuite, DhkemP256HkdfSha256, HkdfSha256 } from '@hpke/core';
import { ANSWER_HEAD, ANSWER_INFO } from '../../domain/exchange/packet.ts';
import { expandPoint } from '../../domain/exchange/point.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { subtle } from './curve.ts';

/**
 * HPKE in base mode (RFC 9180) with DHKEM(P-256, HKDF-SHA256), HKDF-SHA256 and AES-128-GCM. P-256
 * is the curve of every browser's own cryptography, so that the leader's private half never has to
 * be read out of it. Such a key is worth about 128 bits, and a longer AES key adds nothing to that
 * (NIST SP 800-57 part 1, table 2); the RFC publishes test vectors for this suite (A.3).
 */
export const suite = (): CipherSuite =>
  new CipherSuite({
    kem: new DhkemP256HkdfSha256(),
    kdf: new HkdfSha256(),
    aead: new Aes128Gcm(),
  });

/** Bytes of an encapsulated key: a point of the curve in full (RFC 9180, section 7.1). */
export const ENC_BYTES = 65;

const exact = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;

/** A leader's key for sealing as it stands in a programme. */
async function publicKey(key: string): Promise<CryptoKey | undefined> {
  const point = expandPoint(key);
  if (!point.ok) return undefined;
  return suite().kem.deserializePublicKey(exact(point.value));
}

/**
 * Bytes such that only the private half of a key opens them: the encapsulated key, then the
 * ciphertext with its tag. Every call makes a new key of its own, so the same bytes are never
 * sealed twice alike.
 *
 * @param key `leader.seal` of a programme; `seal`: it is no key of the curve
 */
export async function sealFor(
  key: string,
  bytes: Uint8Array,
): Promise<Result<Uint8Array<ArrayBuffer>, 'seal' | 'not-secure'>> {
  if (subtle() === undefined) return fail('not-secure');
  try {
    const recipientPublicKey = await publicKey(key);
    if (recipientPublicKey === undefined) return fail('seal');
    const wanted = { recipientPublicKey, info: ANSWER_INFO };
    const { enc, ct } = await suite().seal(wanted, exact(bytes), exact(ANSWER_HEAD));
    const sealed = new Uint8Array(enc.byteLength + ct.byteLength);
    sealed.set(new Uint8Array(enc));
    sealed.set(new Uint8Array(ct), enc.byteLength);
    return ok(sealed);
  } catch {
    return fail('seal');
  }
}

/** Both halves of a leader's pair; the private one cannot be read out. */
export interface SealPair {
  readonly seal: string;
  readonly openWith: CryptoKey;
}

/** Opens what was sealed for one pair. The pair is made ready once, however many there are. */
export function openerFor({
  seal,
  openWith,
}: SealPair): (
  sealed: Uint8Array,
) => Promise<Result<Uint8Array<ArrayBuffer>, 'not-for-this-key' | 'not-secure'>> {
  let own: Promise<CryptoKey | undefined> | undefined;
  return async (sealed) => {
    if (subtle() === undefined) return fail('not-secure');
    try {
      own ??= publicKey(seal);
      const half = await own;
      if (half === undefined) return fail('not-for-this-key');
      const opened = await suite().open(
        // As a pair: without the public half the library would have to read the private one out.
        {
          recipientKey: { privateKey: openWith, publicKey: half },
          enc: exact(sealed.subarray(0, ENC_BYTES)),
          info: ANSWER_INFO,
        },
        exact(sealed.subarray(ENC_BYTES)),
        exact(ANSWER_HEAD),
      );
      return ok(new Uint8Array(opened));
    } catch {
      return fail('not-for-this-key');
    }
  };
}

/** What was sealed for this pair. Another key and a changed byte cannot be told apart. */
export const openSealed = (
  pair: SealPair,
  sealed: Uint8Array,
): Promise<Result<Uint8Array<ArrayBuffer>, 'not-for-this-key' | 'not-secure'>> =>
  openerFor(pair)(sealed);
