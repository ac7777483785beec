/** What stands in texts and in bytes, at the places where it just fits and just does not. */
import { crc32 as crcOf } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCalendar } from '../../../src/domain/exchange/calendar.ts';
import { foldLine } from '../../../src/domain/exchange/content-line.ts';
import { toCsv } from '../../../src/domain/exchange/csv.ts';
import { ownId } from '../../../src/domain/exchange/decide.ts';
import { isDeeper } from '../../../src/domain/exchange/depth.ts';
import {
  encodingOf,
  isPictureFile,
  isTextFile,
  isZipFile,
} from '../../../src/domain/exchange/file-kind.ts';
import { createJoining } from '../../../src/domain/exchange/joining.ts';
import { isLocalAddress } from '../../../src/domain/exchange/link.ts';
import { logExport } from '../../../src/domain/exchange/log-export.ts';
import { encodePacket } from '../../../src/domain/exchange/packet.ts';
import { isLongEnough, tidyPassphrase } from '../../../src/domain/exchange/passphrase.ts';
import { expandPoint } from '../../../src/domain/exchange/point.ts';

describe('lines of a calendar', () => {
  it('REC-6 are folded as late as 75 octets of UTF-8 allow, whatever the signs (Node’s own count)', () => {
    // The ends of one, two, three and four octets: RFC 3629, section 3.
    const signs = fc.constantFrom(
      'a',
      '\u007f',
      '\u0080',
      '\u07ff',
      '\u0800',
      '\uffff',
      '\u{10000}',
    );
    fc.assert(
      fc.property(fc.array(signs, { minLength: 20, maxLength: 120 }), (line) => {
        const lines = foldLine(line.join('')).slice(0, -2).split('\r\n');
        lines.forEach((part, n) => {
          expect(Buffer.byteLength(part)).toBeLessThanOrEqual(75);
          const [, next = ''] = [...(lines[n + 1] ?? '')];
          if (next !== '') expect(Buffer.byteLength(part + next)).toBeGreaterThan(75);
        });
      }),
    );
  });

  it('REC-5 what has nothing to say has no description', () => {
    const event = { uid: 'x@towpath.invalid', date: '2027-03-01', summary: 'Heron Loop' };
    expect(toCalendar([{ ...event, description: '' }], 0)).not.toContain('DESCRIPTION');
    expect(toCalendar([{ ...event, description: 'At the hut' }], 0)).toContain(
      'DESCRIPTION:At the hut\r\n',
    );
  });
});

describe('a passphrase', () => {
  it('XCHG-17 is the same however a keyboard composes it, with spaces at its ends or without', () => {
    // U+FB01 and U+00C5 under NFKC: Unicode Standard Annex 15, figures 3 and 6.
    expect(tidyPassphrase(' \ufb01sh and A\u030angstr\u00f6m \n')).toBe(
      'fish and \u00c5ngstr\u00f6m',
    );
    expect(tidyPassphrase('\uff11\uff12')).toBe('12');
  });

  it('XCHG-17 is long enough from fifteen characters on, spaces at its ends not counted', () => {
    expect(isLongEnough('123456789012345')).toBe(true);
    expect(isLongEnough('12345678901234')).toBe(false);
    expect(isLongEnough(' 12345678901234 ')).toBe(false);
    expect(isLongEnough('🦆'.repeat(14))).toBe(false);
    expect(isLongEnough('🦆'.repeat(15))).toBe(true);
  });
});

describe('a key of a programme', () => {
  it('XCHG-6 is 33 bytes: the generator of P-256 (SEC 2, section 2.4.2) and nothing shorter or longer', () => {
    const g = Buffer.from(
      '036b17d1f2e12c4247f8bce6e563a440f277037d812deb33a0f4a13945d898c296',
      'hex',
    );
    const taken = (bytes: Uint8Array) => expandPoint(Buffer.from(bytes).toString('base64url'));
    expect(taken(g)).toMatchObject({ ok: true });
    const refused = { ok: false, error: 'key' };
    expect(taken(g.subarray(0, 32))).toEqual(refused);
    // With a nought before it, or behind it, the number would be one that has a point, or none.
    expect(taken(Buffer.concat([g.subarray(0, 1), Buffer.alloc(1), g.subarray(1)]))).toEqual(
      refused,
    );
    expect(taken(Buffer.concat([g, Buffer.alloc(1)]))).toEqual(refused);
    expect(expandPoint('*'.repeat(44))).toEqual(refused);
  });
});

describe('addresses that other phones cannot reach', () => {
  it('XCHG-10 are whole numbers of four parts, as RFC 1918, RFC 1122 and RFC 3927 have them', () => {
    for (const host of ['127.0.0.1', '127.10.200.3', '10.1.22.133', '192.168.10.200', '0.0.0.0'])
      expect([host, isLocalAddress(`http://${host}/`)]).toEqual([host, true]);
    for (const host of [
      '8.127.0.0.1',
      '127.0.0.1.example',
      '127.0.0.1.8',
      '11.1.2.3',
      '110.1.2.3',
      '10.1.2.3.example',
      '192.168.1.1.example',
      '172.20.1.1.example',
      '169.254.1.1.example',
      '0.0.0.0.example',
    ])
      expect([host, isLocalAddress(`http://${host}/`)]).toEqual([host, false]);
  });

  it('XCHG-10 are told whoever is named before them, and with a full stop behind them', () => {
    expect(isLocalAddress('http://imogen@localhost/')).toBe(true);
    expect(isLocalAddress('http://imogen:x@heron.local./app')).toBe(true);
    expect(isLocalAddress('https://localhost@club.example/')).toBe(false);
    expect(isLocalAddress('HTTPS://HERON.LAN:8443?x')).toBe(true);
  });

  it('XCHG-14 the number that a phone gives a programme is at the end of its id', () => {
    expect(['marsh', 'marsh.2', 'marsh.12', 'marsh.2b', 'marsh.2.3'].map(ownId)).toEqual([
      'marsh',
      'marsh',
      'marsh',
      'marsh.2b',
      'marsh.2',
    ]);
  });
});

describe('a code that is read letter by letter', () => {
  const joined = (letters: string): boolean => {
    const joining = createJoining();
    return joining.add(letters) && joining.isWhole();
  };
  /** Bytes with their checksum behind them, by Node's zlib. */
  const summed = (bytes: Buffer): string => {
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crcOf(bytes));
    return Buffer.concat([bytes, sum]).toString('base64url');
  };

  it('XCHG-2 is whole with its checksum, from the two bytes of its head on', () => {
    expect(joined(summed(Buffer.from([1, 1])))).toBe(true);
    expect(joined(summed(Buffer.from([1])))).toBe(false);
    expect(joined(summed(Buffer.from([])))).toBe(false);
    expect(joined('')).toBe(false);
  });

  it('XCHG-2 is not whole with a letter more, one less, or another', () => {
    const code = encodePacket({ bytes: Uint8Array.from({ length: 300 }, (_, n) => (n * 7) % 256) });
    expect(joined(code)).toBe(true);
    expect(joined(code.slice(0, -1))).toBe(false);
    expect(joined(`${code}A`)).toBe(false);
    for (let at = 0; at < code.length; at += 5) {
      const other = code[at] === 'A' ? 'B' : 'A';
      expect(joined(`${code.slice(0, at)}${other}${code.slice(at + 1)}`)).toBe(false);
    }
    const joining = createJoining();
    expect(joining.add('AB*C')).toBe(false);
    expect(joining.add(code)).toBe(false);
  });
});

describe('what a file is', () => {
  it('IN-12 is told by its first bytes (PNG, JPEG, GIF, RIFF; APPNOTE; byte order marks)', () => {
    const of = (...bytes: number[]) => Uint8Array.from(bytes);
    const pictures = [
      of(0x89, 0x50, 0x4e, 0x47),
      of(0xff, 0xd8, 0xff, 0xe0),
      of(0x47, 0x49, 0x46, 0x38),
      of(0x52, 0x49, 0x46, 0x46),
    ];
    expect(pictures.map(isPictureFile)).toEqual([true, true, true, true]);
    expect(pictures.map((each) => isPictureFile(each.subarray(1)))).not.toContain(true);
    expect([of(0x50, 0x4b, 3, 4), of(0x50, 0x4b, 5, 6)].map(isZipFile)).toEqual([true, true]);
    expect([of(0x50, 0x4b, 3, 6), of(0x50, 0x4b), of()].map(isZipFile)).not.toContain(true);
    expect(encodingOf(of(0xff, 0xfe))).toBe('utf-16le');
    expect(encodingOf(of(0xfe, 0xff))).toBe('utf-16be');
    expect([of(0xff), of(0xfe, 0xfe), of(0xff, 0xff)].map(encodingOf)).toEqual([
      'utf-8',
      'utf-8',
      'utf-8',
    ]);
    expect(isTextFile(of(0x68, 0x69))).toBe(true);
    expect(isTextFile(of(0x68, 0, 0x69))).toBe(false);
    expect(isTextFile(of(0xff, 0xfe, 0x68, 0))).toBe(true);
  });

  it('XCHG-4 brackets in its words do not count for its depth', () => {
    expect(isDeeper('[[1]]', 2)).toBe(false);
    expect(isDeeper('[[[1]]]', 2)).toBe(true);
    expect(isDeeper('[{"a":[1]}]', 2)).toBe(true);
    expect(isDeeper('["[[[", [1], {"a": 2}, [3]]', 2)).toBe(false);
    expect(isDeeper('["\\"[[[", [1]]', 2)).toBe(false);
    expect(isDeeper('["\\\\", [[1]]]', 2)).toBe(true);
  });

  it('REC-18 the log as JSON has an entry on each line', () => {
    expect(logExport([{ id: 'a' }, { id: 'b' }], 5)).toBe(
      '{\n"format": "towpath-log-export/1",\n"madeAt": 5,\n"entries": [\n{"id":"a"},\n{"id":"b"}\n]\n}\n',
    );
  });

  it('REC-14 a cell that is a row’s only one and empty is no blank line', () => {
    expect(toCsv([[''], ['', ''], [' a', 'b '], ['a,b'], ['say "hi"']])).toBe(
      '""\r\n,\r\n" a","b "\r\n"a,b"\r\n"say ""hi"""\r\n',
    );
  });
});
