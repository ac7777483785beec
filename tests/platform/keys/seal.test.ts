import 'fake-indexeddb/auto';
import { createECDH } from 'node:crypto';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { createLeaderKeys } from '../../../src/platform/keys/leader.ts';
import {
  ENC_BYTES,
  openSealed,
  type SealPair,
  sealFor,
  suite,
} from '../../../src/platform/keys/seal.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { sealPair } from '../../drivers/exchange/answers.ts';
import {
  BOUND,
  otherKey,
  otherOpen,
  otherPair,
  otherSeal,
  otherSuite,
} from '../../drivers/exchange/other-hpke.ts';

const hex = (text: string): Uint8Array<ArrayBuffer> =>
  new Uint8Array(Buffer.from(text.replace(/\s/g, ''), 'hex'));
const toHex = (bytes: ArrayBuffer | Uint8Array): string =>
  Buffer.from(new Uint8Array(bytes)).toString('hex');

/** RFC 9180, appendix A.3.1: DHKEM(P-256, HKDF-SHA256), HKDF-SHA256, AES-128-GCM, base mode. */
const RFC = {
  info: '4f6465206f6e2061204772656369616e2055726e',
  ikmE: '4270e54ffd08d79d5928020af4686d8f6b7d35dbe470265f1f5aa22816ce860e',
  pkRm: `04fe8c19ce0905191ebc298a9245792531f26f0cece2460639e8bc39cb7f706a
         826a779b4cf969b8a0e539c7f62fb3d30ad6aa8f80e30f1d128aafd68a2ce72ea0`,
  skRm: 'f3ce7fdae57e1a310d87f1ebbde6f328be0a99cdbcadf4d6589cf29de4b8ffd2',
  enc: `04a92719c6195d5085104f469a8b9814d5838ff72b60501e2c4466e5e67b325a
        c98536d7b61a1af4b78e5b7f951c0900be863c403ce65c9bfcb9382657222d18c4`,
  pt: '4265617574792069732074727574682c20747275746820626561757479',
  /** Additional data and ciphertext of the first messages, in order. */
  messages: [
    [
      '436f756e742d30',
      '5ad590bb8baa577f8619db35a36311226a896e7342a6d836d8b7bcd2f20b6c7f9076ac232e3ab2523f39513434',
    ],
    [
      '436f756e742d31',
      'fa6f037b47fc21826b610172ca9637e82d6e5801eb31cbd3748271affd4ecb06646e0329cbdf3c3cd655b28e82',
    ],
    [
      '436f756e742d32',
      '895cabfac50ce6c6eb02ffe6c048bf53b7f7be9a91fc559402cbc5b8dcaeb52b2ccc93e466c28fb55fed7a7fec',
    ],
  ],
} as const;

/** The pair of the RFC as this phone keeps a leader's: its private half cannot be read out. */
async function rfcPair(): Promise<{ privateKey: CryptoKey; publicKey: CryptoKey }> {
  const point = hex(RFC.pkRm);
  const part = (from: number): string =>
    Buffer.from(point.subarray(from, from + 32)).toString('base64url');
  const jwk = { kty: 'EC', crv: 'P-256', x: part(1), y: part(33) };
  const d = Buffer.from(hex(RFC.skRm)).toString('base64url');
  const how = { name: 'ECDH', namedCurve: 'P-256' };
  return {
    privateKey: await crypto.subtle.importKey('jwk', { ...jwk, d }, how, false, ['deriveBits']),
    publicKey: await crypto.subtle.importKey('raw', point, how, true, []),
  };
}

let pair: SealPair;
let stranger: SealPair;
beforeAll(async () => {
  [pair, stranger] = await Promise.all([sealPair(), sealPair()]);
});

async function sealed(bytes: Uint8Array, key = pair.seal): Promise<Uint8Array<ArrayBuffer>> {
  const result = await sealFor(key, bytes);
  if (!result.ok) throw new Error(result.error);
  return result.value;
}

describe('the suite of RFC 9180', () => {
  it('TELL-8 opens the messages of the RFC’s test vectors (A.3.1)', async () => {
    const { privateKey, publicKey } = await rfcPair();
    const context = await suite().createRecipientContext({
      recipientKey: { privateKey, publicKey },
      enc: hex(RFC.enc).buffer,
      info: hex(RFC.info),
    });
    for (const [aad, ct] of RFC.messages)
      expect(toHex(await context.open(hex(ct), hex(aad)))).toBe(RFC.pt);
  });

  it('TELL-8 seals them to the same bytes, from the RFC’s own ephemeral key (A.3.1)', async () => {
    const { publicKey } = await rfcPair();
    const context = await suite().createSenderContext({
      recipientPublicKey: publicKey,
      info: hex(RFC.info),
      ekm: hex(RFC.ikmE),
    });
    expect(toHex(context.enc)).toBe(toHex(hex(RFC.enc)));
    for (const [aad, ct] of RFC.messages)
      expect(toHex(await context.seal(hex(RFC.pt), hex(aad)))).toBe(ct);
  });

  it('TELL-8 has its private key for P-256 where Node’s own elliptic curves have it', () => {
    const curve = createECDH('prime256v1');
    curve.setPrivateKey(Buffer.from(hex(RFC.skRm)));
    expect(curve.getPublicKey('hex')).toBe(toHex(hex(RFC.pkRm)));
  });
});

/** It is asked for the RFC's own message first, so that it is known to be one. */
describe('beside another implementation', () => {
  const bytes = new TextEncoder().encode('what was told');

  it('TELL-9 the other implementation opens the RFC’s first message (A.3.1)', async () => {
    const [aad, ct] = RFC.messages[0];
    const opened = await otherSuite.Open(await rfcPair(), hex(RFC.enc), hex(ct), {
      info: hex(RFC.info),
      aad: hex(aad),
    });
    expect(toHex(opened)).toBe(RFC.pt);
  });

  it('TELL-9 it opens what the app sealed, with a pair of its own or a leader’s', async () => {
    const own = await otherPair();
    expect(await otherOpen(own.pair, await sealed(bytes, own.seal))).toEqual(bytes);
    const leaders = { privateKey: pair.openWith, publicKey: await otherKey(pair.seal) };
    expect(await otherOpen(leaders, await sealed(bytes))).toEqual(bytes);
  });

  it('TELL-9 it seals what the app opens', async () => {
    const opened = await openSealed(pair, await otherSeal(pair.seal, bytes));
    expect(opened).toEqual({ ok: true, value: bytes });
  });
});

describe('a seal', () => {
  it('TELL-10 opens to what went in, and never looks the same twice', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 600 }), async (bytes) => {
        const [one, two] = [await sealed(bytes), await sealed(bytes)];
        expect(toHex(one)).not.toBe(toHex(two));
        expect(one.length).toBe(bytes.length + ENC_BYTES + 16);
        const opened = await openSealed(pair, one);
        expect(opened.ok && toHex(opened.value)).toBe(toHex(bytes));
      }),
      { numRuns: 40 },
    );
  });

  it('TELL-11 with any one bit of it flipped is refused, without an exception', async () => {
    const packet = await sealed(Uint8Array.of(1, 2, 3, 4, 5));
    const opened: number[] = [];
    for (let bit = 0; bit < packet.length * 8; bit++) {
      const changed = packet.slice();
      changed[bit >> 3] = (changed[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      const result = await openSealed(pair, changed);
      if (result.ok) opened.push(bit);
    }
    expect(opened).toEqual([]);
    expect((await openSealed(pair, packet)).ok).toBe(true);
  });

  it('TELL-11 cut short anywhere, or of any other bytes, is refused', async () => {
    const packet = await sealed(Uint8Array.of(1, 2, 3));
    for (let length = 0; length < packet.length; length++)
      expect(await openSealed(pair, packet.subarray(0, length)), `${length}`).toEqual({
        ok: false,
        error: 'not-for-this-key',
      });
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (bytes) => {
        expect((await openSealed(pair, bytes)).ok).toBe(false);
      }),
    );
  });

  it('TELL-12 of another leader, or for another use of the same key, does not open', async () => {
    const bytes = Uint8Array.of(7);
    const packet = await sealed(bytes, stranger.seal);
    expect(await openSealed(pair, packet)).toEqual({ ok: false, error: 'not-for-this-key' });
    expect((await openSealed(stranger, packet)).ok).toBe(true);
    for (const bound of [
      { ...BOUND, info: new TextEncoder().encode('towpath-other/1') },
      { ...BOUND, aad: Uint8Array.of(1, 3) },
    ])
      expect((await openSealed(pair, await otherSeal(pair.seal, bytes, bound))).ok).toBe(false);
  });

  it('TELL-12 is not made for what is no key of the curve', async () => {
    for (const key of ['', 'A'.repeat(44), 'not a key', pair.seal.slice(0, 43)])
      expect(await sealFor(key, Uint8Array.of(1)), key).toEqual({ ok: false, error: 'seal' });
  });

  it('TELL-12 opens with the keys that this phone keeps for a leader, and not before there are any', async () => {
    const keys = createLeaderKeys(connect('seals'));
    const packet = await sealed(Uint8Array.of(9), stranger.seal);
    expect(await keys.open(packet)).toEqual({ ok: false, error: { code: 'no-keys' } });
    const wish = { passphrase: 'four herons by the gate', words: 'Backup.', at: 1 };
    const made = await keys.make(wish);
    if (!made.ok) throw new Error(made.error.code);
    expect(await keys.open(packet)).toEqual({ ok: false, error: { code: 'not-for-this-key' } });
    const own = await sealed(Uint8Array.of(9), made.value.seal);
    expect(await keys.open(own)).toEqual({ ok: true, value: Uint8Array.of(9) });
  });
});
