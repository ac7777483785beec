import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromBase64Url, toBase64Url } from '../../../src/domain/exchange/base64url.ts';
import { crc32, crcBytes } from '../../../src/domain/exchange/crc32.ts';
import { fromUtf8, toUtf8 } from '../../../src/domain/exchange/utf8.ts';

const bytes = fc.uint8Array({ maxLength: 400 });

/** RFC 4648, section 10, without padding. */
const RFC_4648: readonly (readonly [string, string])[] = [
  ['', ''],
  ['f', 'Zg'],
  ['fo', 'Zm8'],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg'],
  ['fooba', 'Zm9vYmE'],
  ['foobar', 'Zm9vYmFy'],
];

describe('letters for bytes', () => {
  it.each(RFC_4648)('XCHG-1 "%s" is "%s", as RFC 4648 has it', (plain, text) => {
    expect(toBase64Url(toUtf8(plain))).toBe(text);
    expect(fromBase64Url(text)).toEqual({ ok: true, value: toUtf8(plain) });
  });

  it('XCHG-1 agrees with Node on every row of bytes, both ways', () => {
    fc.assert(
      fc.property(bytes, (row) => {
        const text = Buffer.from(row).toString('base64url');
        expect(toBase64Url(row)).toBe(text);
        expect(fromBase64Url(text)).toEqual({ ok: true, value: new Uint8Array(row) });
      }),
    );
  });

  it('XCHG-1 takes no second text for the same bytes', () => {
    for (const text of ['Zh', 'Zm9', 'Z', 'Zm9v=', 'Zm+v', 'Zm/v', 'Zm v', 'Zm9vY', 'é234'])
      expect(fromBase64Url(text), text).toEqual({ ok: false, error: 'damaged' });
    fc.assert(
      fc.property(fc.stringMatching(/^[\w-]{0,40}$/), (text) => {
        const read = fromBase64Url(text);
        if (read.ok) expect(toBase64Url(read.value)).toBe(text);
      }),
    );
  });
});

describe('the checksum', () => {
  // Check value of CRC-32 in the catalogue of parametrised CRC algorithms (from memory), and
  // the worked example of the PNG specification: an empty IEND chunk.
  it('XCHG-2 of "123456789" is cbf43926, and of a picture’s last chunk ae426082', () => {
    expect(crc32(toUtf8('123456789'))).toBe(0xcbf43926);
    expect([...crcBytes(crc32(toUtf8('IEND')))]).toEqual([0xae, 0x42, 0x60, 0x82]);
  });
});

describe('text for bytes', () => {
  it('XCHG-5 agrees with Node on every text, both ways', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(toUtf8(text)).toEqual(new Uint8Array(Buffer.from(text, 'utf8')));
        expect(fromUtf8(toUtf8(text))).toEqual({ ok: true, value: text });
      }),
    );
    expect(toUtf8('a\ud800b')).toEqual(new Uint8Array(Buffer.from('a\ufffdb', 'utf8')));
  });

  it('XCHG-5 what is read gives the same bytes again, or is refused as Node’s strict decoder does', () => {
    const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
    const nodes = (row: Uint8Array): string | undefined => {
      try {
        return strict.decode(row);
      } catch {
        return undefined;
      }
    };
    const parts = fc.constantFrom(
      ...[
        [0xc0, 0x80],
        [0xed, 0xa0, 0x80],
        [0xf4, 0x90, 0x80, 0x80],
        [0xef, 0xbb, 0xbf],
        [0xe2, 0x82],
      ],
      ...[[0xe2, 0x82, 0xac], [0xf0, 0x9f, 0xa6, 0x86], [0x41], [0x00], [0xff]],
    );
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 6 }), (rows) => {
        const row = Uint8Array.from(rows.flat());
        const read = fromUtf8(row);
        expect(read.ok ? read.value : undefined).toBe(nodes(row));
        if (read.ok) expect(toUtf8(read.value)).toEqual(row);
      }),
    );
  });
});
