import { createHash } from 'node:crypto';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32, crcBytes } from '../../../src/domain/exchange/crc32.ts';
import { deflate, INFLATED_MAX, inflate } from '../../../src/domain/exchange/deflate.ts';
import { DICTIONARY_1 } from '../../../src/domain/exchange/dictionary.ts';
import { CODE_MAX, decodePacket, encodePacket } from '../../../src/domain/exchange/packet.ts';
import { toUtf8 } from '../../../src/domain/exchange/utf8.ts';
import { marshProgramme } from '../../drivers/exchange/programmes.ts';
import { randomFrom } from '../../fuzz/random.ts';

const dictionary = Buffer.from(DICTIONARY_1, 'utf8');
const text = JSON.stringify(marshProgramme(8));
const content = fc.oneof(
  fc.uint8Array({ maxLength: 3000 }),
  fc.string({ maxLength: 400 }).map((part) => toUtf8(`${part}${text}${part}`)),
);

/** Rows of many bytes are compared as one text: the runner compares arrays entry by entry. */
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const inflated = (bytes: Uint8Array): string => {
  const result = inflate(bytes);
  return result.ok ? latin(result.value) : result.error;
};

/** A code with these bytes in it, its checksum right. */
function codeOfBytes(...rows: readonly Uint8Array[]): string {
  const packet = Buffer.concat(rows);
  return Buffer.concat([packet, crcBytes(crc32(packet))]).toString('base64url');
}

describe('deflate, beside Node’s zlib', () => {
  it('XCHG-3 zlib inflates what is deflated here', () => {
    fc.assert(
      fc.property(content, (bytes) => {
        expect(latin(inflateRawSync(deflate(bytes), { dictionary }))).toBe(latin(bytes));
      }),
    );
  });

  it('XCHG-3 what zlib deflates is inflated here, at every level and in every kind of block', () => {
    const how = fc.record({
      level: fc.integer({ min: 0, max: 9 }),
      strategy: fc.integer({ min: 0, max: 4 }),
    });
    fc.assert(
      fc.property(content, how, (bytes, { level, strategy }) => {
        const deflated = deflateRawSync(bytes, { level, strategy, dictionary });
        expect(inflated(new Uint8Array(deflated))).toBe(latin(bytes));
      }),
    );
  });

  it('XCHG-3 the dictionary is the one that codes were made with', () => {
    const hash = createHash('sha256').update(DICTIONARY_1, 'utf8').digest('hex');
    expect(hash).toBe('0121a08190645a0d7b5a3ab2c228baa3790ae4479b013658cd6722cba9fd9c1e');
    expect(dictionary.length).toBeLessThanOrEqual(32768);
  });

  it('XCHG-3 a stream without its end is refused, wherever it ends', () => {
    const whole = deflate(toUtf8(text));
    for (let length = 0; length < whole.length; length++)
      expect(inflate(whole.subarray(0, length)).ok, `${length}`).toBe(false);
    expect(inflate(whole).ok).toBe(true);
  });

  it('XCHG-3 comes back whole where what was deflated fills its last piece', () => {
    const random = randomFrom(20_270_307);
    const full = Array.from({ length: 3000 }, (_, n) => random.bytes(n)).filter(
      (bytes) => deflate(bytes).length % 256 === 0,
    );
    expect(full.length).toBeGreaterThan(5);
    for (const bytes of full) expect(inflate(deflate(bytes))).toEqual({ ok: true, value: bytes });
  });
});

describe('bounds', () => {
  it('XCHG-4 exactly 256 KiB come out, and not one byte more', () => {
    const most = new Uint8Array(INFLATED_MAX).fill(65);
    expect(inflated(deflate(most))).toBe(latin(most));
    expect(inflate(deflate(new Uint8Array(INFLATED_MAX + 1)))).toEqual({
      ok: false,
      error: 'too-large',
    });
  });

  it('XCHG-4 a bomb of 150 MB costs no more memory than an honest file', () => {
    const bomb = new Uint8Array(deflateRawSync(Buffer.alloc(150_000_000), { level: 9 }));
    expect(bomb.length).toBeLessThan(160_000);
    const before = process.memoryUsage().arrayBuffers;
    const result = inflate(bomb);
    // At most a few chunks: each is under the quarter of a megabyte that one push can give.
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(16_000_000);
    expect(result).toEqual({ ok: false, error: 'too-large' });
    const code = codeOfBytes(Uint8Array.of(1, 1), bomb);
    expect(decodePacket(code)).toEqual({ ok: false, error: 'too-large' });
  });

  it('XCHG-4 what breaks off is damaged, and too large if too much had come out by then', () => {
    const noise = new Uint8Array(1000).fill(255);
    const broken = (length: number) => {
      const whole = deflateRawSync(Buffer.alloc(length), { level: 9 });
      return inflate(Uint8Array.from([...whole.subarray(0, whole.length - 20), ...noise]));
    };
    expect(broken(INFLATED_MAX / 2)).toEqual({ ok: false, error: 'damaged' });
    expect(broken(INFLATED_MAX * 2)).toEqual({ ok: false, error: 'too-large' });
    expect(inflate(noise)).toEqual({ ok: false, error: 'damaged' });
  });

  it('XCHG-4 a limit of one’s own holds to the byte', () => {
    const bytes = new Uint8Array(deflateRawSync(Buffer.alloc(5000)));
    expect(inflate(bytes, 5000)).toMatchObject({ ok: true, value: { length: 5000 } });
    expect(inflate(bytes, 4999)).toEqual({ ok: false, error: 'too-large' });
  });

  it('XCHG-4 nothing is let out where nothing may be', () => {
    expect(inflate(deflate(Uint8Array.of(7)), 0)).toEqual({ ok: false, error: 'too-large' });
  });

  it('XCHG-4 a code longer than an honest one can be is not even read', () => {
    expect(decodePacket('A'.repeat(CODE_MAX + 1))).toEqual({ ok: false, error: 'too-large' });
    expect(decodePacket('A'.repeat(CODE_MAX))).toEqual({ ok: false, error: 'damaged' });
  });
});

describe('a code', () => {
  const bytes = toUtf8(text);
  const signature = new Uint8Array(64).map((_, n) => n * 3);

  it('XCHG-5 gives back exactly what went in, with its signature or without', () => {
    expect(decodePacket(encodePacket({ bytes }))).toEqual({ ok: true, value: { bytes } });
    expect(decodePacket(encodePacket({ bytes, signature }))).toEqual({
      ok: true,
      value: { bytes, signature },
    });
  });

  it('XCHG-2 one letter changed, taken out or put in is told as damage', () => {
    const code = encodePacket({ bytes, signature });
    fc.assert(
      fc.property(
        fc.nat(code.length - 1),
        fc.constantFrom('A', 'z', '-', '_', '7', ''),
        fc.boolean(),
        (at, letter, isInserted) => {
          const changed = code.slice(0, at) + letter + code.slice(isInserted ? at : at + 1);
          fc.pre(changed !== code);
          const read = decodePacket(changed);
          expect(read.ok).toBe(false);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('XCHG-2 every beginning of a code is refused', () => {
    const code = encodePacket({ bytes, signature });
    for (let length = 0; length < code.length; length++)
      expect(decodePacket(code.slice(0, length)).ok).toBe(false);
  });

  it('XCHG-2 a later version is told from damage', () => {
    expect(decodePacket(codeOfBytes(Uint8Array.of(2, 1), deflate(bytes)))).toEqual({
      ok: false,
      error: 'newer',
    });
    expect(decodePacket(codeOfBytes(Uint8Array.of(1, 9), deflate(bytes)))).toEqual({
      ok: false,
      error: 'newer',
    });
    // Signed, and nothing left behind the signature.
    for (const length of [0, 63, 64])
      expect(decodePacket(codeOfBytes(Uint8Array.of(1, 0x11), signature.slice(0, length)))).toEqual(
        { ok: false, error: 'damaged' },
      );
  });
});
