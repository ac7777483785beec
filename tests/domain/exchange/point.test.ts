import { createECDH, ECDH } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compressPoint, expandPoint } from '../../../src/domain/exchange/point.ts';

const hex = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'hex'));
const base64Url = (text: string): string => Buffer.from(text, 'hex').toString('base64url');

/** The base point of P-256: NIST SP 800-186, section 3.2.1.3. */
const GX = '6b17d1f2e12c4247f8bce6e563a440f277037d812deb33a0f4a13945d898c296';
const GY = '4fe342e2fe1a7f9b8ee7eb4a7c0f9e162bce33576b315ececbb6406837bf51f5';
const P = 'ffffffff00000001000000000000000000000000ffffffffffffffffffffffff';

describe('public keys in a programme', () => {
  it('XCHG-6 the base point is written short and read back in full', () => {
    expect(compressPoint(hex(`04${GX}${GY}`))).toBe(base64Url(`03${GX}`));
    expect(expandPoint(base64Url(`03${GX}`))).toEqual({ ok: true, value: hex(`04${GX}${GY}`) });
  });

  it('XCHG-6 agrees with OpenSSL, through Node, on every key', () => {
    const secret = fc
      .uint8Array({ minLength: 31, maxLength: 31 })
      .filter((row) => row.some(Boolean));
    fc.assert(
      fc.property(secret, (row) => {
        const pair = createECDH('prime256v1');
        pair.setPrivateKey(Buffer.concat([Buffer.of(0), row]));
        const full = new Uint8Array(pair.getPublicKey());
        const short = pair.getPublicKey('base64url', 'compressed');
        expect(compressPoint(full)).toBe(short);
        expect(expandPoint(short)).toEqual({ ok: true, value: full });
      }),
      { numRuns: 50 },
    );
  });

  it('XCHG-6 takes for a key what OpenSSL takes for one, and nothing else', () => {
    const opensslTakes = (row: Uint8Array): boolean => {
      try {
        return ECDH.convertKey(row, 'prime256v1', undefined, undefined, 'uncompressed').length > 0;
      } catch {
        return false;
      }
    };
    const rows = fc
      .tuple(fc.constantFrom(2, 3), fc.uint8Array({ minLength: 32, maxLength: 32 }))
      .map(([sign, x]) => Uint8Array.of(sign, ...x));
    const seen = { yes: 0, no: 0 };
    fc.assert(
      fc.property(rows, (row) => {
        const point = expandPoint(Buffer.from(row).toString('base64url'));
        const taken = point.ok;
        expect(taken).toBe(opensslTakes(row));
        if (!point.ok) expect(point.error).toBe('key');
        seen[taken ? 'yes' : 'no'] += 1;
      }),
    );
    // About half of all x lie on the curve: both answers were tried.
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(10);
    for (const wrong of ['', base64Url(`02${P}`), base64Url(`04${GX}${GY}`), base64Url(`05${GX}`)])
      expect(expandPoint(wrong)).toEqual({ ok: false, error: 'key' });
  });
});
