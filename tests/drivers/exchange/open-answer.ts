/**
 * A leader's side without Towpath: the backup of the keys opened with Node's own cryptography, the
 * seal with the package `hpke` (another author's than the app's library, and no code in common; it
 * is asked for the RFC's vectors in `tests/platform/keys/seal.test.ts`), the content with zlib.
 */
import { createDecipheriv, pbkdf2Sync } from 'node:crypto';
import { inflateRawSync } from 'node:zlib';
import { AEAD_AES_128_GCM, CipherSuite, KDF_HKDF_SHA256, KEM_DHKEM_P256_HKDF_SHA256 } from 'hpke';
import { RESPONSE_DICTIONARY_1 } from '../../../src/domain/exchange/dictionary.ts';

const TAG_BYTES = 16;
const POINT_BYTES = 65;
const HEAD_BYTES = 2;
const CRC_BYTES = 4;

interface KeyFile {
  readonly format: string;
  readonly rounds: number;
  readonly salt: string;
  readonly iv: string;
  readonly sealed: string;
}

/** The pair for sealing in a backup file, as a JSON Web Key (RFC 7517). */
function sealKey(file: string, passphrase: string): JsonWebKey {
  const { format, rounds, salt, iv, sealed } = JSON.parse(file) as KeyFile;
  const key = pbkdf2Sync(passphrase, Buffer.from(salt, 'base64url'), rounds, 32, 'sha256');
  const bytes = Buffer.from(sealed, 'base64url');
  const cipher = createDecipheriv('aes-256-gcm', key, Buffer.from(iv, 'base64url'));
  cipher.setAAD(Buffer.from(`${format} ${rounds} ${salt}`));
  cipher.setAuthTag(bytes.subarray(-TAG_BYTES));
  const text = Buffer.concat([cipher.update(bytes.subarray(0, -TAG_BYTES)), cipher.final()]);
  return (JSON.parse(text.toString()) as { seal: JsonWebKey }).seal;
}

/**
 * What a participant sealed.
 *
 * @param link ends in the code; @param backup the file that the leader's phone saved
 */
export async function openAnswer(
  link: string,
  backup: string,
  passphrase: string,
): Promise<unknown> {
  const packet = Buffer.from(link.split('#/answer/')[1] ?? '', 'base64url');
  const sealed = packet.subarray(HEAD_BYTES, -CRC_BYTES);
  const { x = '', y = '', d } = sealKey(backup, passphrase);
  const how = { name: 'ECDH', namedCurve: 'P-256' };
  const jwk = { kty: 'EC', crv: 'P-256', x, y };
  const point = Buffer.concat([
    Uint8Array.of(4),
    Buffer.from(x, 'base64url'),
    Buffer.from(y, 'base64url'),
  ]);
  const suite = new CipherSuite(KEM_DHKEM_P256_HKDF_SHA256, KDF_HKDF_SHA256, AEAD_AES_128_GCM);
  const pair = {
    privateKey: await crypto.subtle.importKey('jwk', { ...jwk, d: d ?? '' }, how, true, [
      'deriveBits',
    ]),
    publicKey: await suite.DeserializePublicKey(new Uint8Array(point)),
  };
  const opened = await suite.Open(
    pair,
    new Uint8Array(sealed.subarray(0, POINT_BYTES)),
    new Uint8Array(sealed.subarray(POINT_BYTES)),
    { info: new TextEncoder().encode('towpath-response/1'), aad: Uint8Array.of(1, 2) },
  );
  const dictionary = Buffer.from(RESPONSE_DICTIONARY_1);
  return JSON.parse(inflateRawSync(opened, { dictionary }).toString());
}
