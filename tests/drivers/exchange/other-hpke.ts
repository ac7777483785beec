/**
 * Answers sealed and opened by another implementation of RFC 9180: the package `hpke`, by another
 * author than `@hpke/core`, with which the app seals, and sharing no code with it.
 */
import { ECDH } from 'node:crypto';
import {
  AEAD_AES_128_GCM,
  CipherSuite,
  KDF_HKDF_SHA256,
  KEM_DHKEM_P256_HKDF_SHA256,
  type KeyPair,
} from 'hpke';

export const otherSuite = new CipherSuite(
  KEM_DHKEM_P256_HKDF_SHA256,
  KDF_HKDF_SHA256,
  AEAD_AES_128_GCM,
);

/** What a seal is bound to, as another side has to know it: written out, not taken from the app. */
export const BOUND = {
  info: new TextEncoder().encode('towpath-response/1'),
  aad: Uint8Array.of(1, 2),
} as const;
const ENC_BYTES = 65;

/** A key as it stands in a programme, its point made whole by Node's own elliptic curves. */
export const otherKey = (seal: string) =>
  otherSuite.DeserializePublicKey(
    new Uint8Array(ECDH.convertKey(Buffer.from(seal, 'base64url'), 'prime256v1') as Buffer),
  );

export async function otherSeal(
  seal: string,
  bytes: Uint8Array,
  bound: { readonly info: Uint8Array; readonly aad: Uint8Array } = BOUND,
): Promise<Uint8Array<ArrayBuffer>> {
  const sealed = await otherSuite.Seal(await otherKey(seal), bytes, bound);
  return new Uint8Array([...sealed.encapsulatedSecret, ...sealed.ciphertext]);
}

export const otherOpen = (pair: KeyPair<CryptoKey>, sealed: Uint8Array): Promise<Uint8Array> =>
  otherSuite.Open(pair, sealed.subarray(0, ENC_BYTES), sealed.subarray(ENC_BYTES), BOUND);

/** A pair of the other implementation, and its public key as it would stand in a programme. */
export async function otherPair(): Promise<{
  readonly pair: KeyPair<CryptoKey>;
  readonly seal: string;
}> {
  const pair = await otherSuite.GenerateKeyPair();
  const point = Buffer.from(await otherSuite.SerializePublicKey(pair.publicKey));
  const short = ECDH.convertKey(point, 'prime256v1', undefined, undefined, 'compressed');
  return { pair, seal: Buffer.from(short as Buffer).toString('base64url') };
}
