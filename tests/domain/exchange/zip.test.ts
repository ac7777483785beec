import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import {
  createUnpacking,
  dataStart,
  directoryOf,
  entriesIn,
  ZIP_LIMITS,
  type ZipEntry,
} from '../../../src/domain/exchange/zip.ts';
import { randomFrom } from '../../fuzz/random.ts';

const fixture = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../fixtures/zips/${name}`, import.meta.url)));

/** What a whole archive holds. */
function listed(archive: Uint8Array): readonly ZipEntry[] | 'damaged' | 'too-large' {
  const directory = directoryOf(archive, archive.length);
  if (!directory.ok) return directory.error;
  const { offset, bytes, entries } = directory.value;
  const read = entriesIn(archive.subarray(offset, offset + bytes), entries);
  return read.ok ? read.value : read.error;
}

/** The line at the end of an archive, APPNOTE.TXT 6.3.10, section 4.3.16. */
function endOf(entries: number, bytes: number, offset: number, comment = ''): Uint8Array {
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries, 8);
  end.writeUInt16LE(entries, 10);
  end.writeUInt32LE(bytes, 12);
  end.writeUInt32LE(offset, 16);
  end.writeUInt16LE(comment.length, 20);
  return Uint8Array.from([...end, ...Buffer.from(comment, 'latin1')]);
}

const joined = (...parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

describe('the list of an archive', () => {
  /** As `unzip -v` of Info-ZIP and Python's zipfile list them. */
  it('IN-13 names the files of another program’s archive, where each begins and how it is packed', () => {
    expect(listed(fixture('info-zip.zip'))).toEqual([
      { name: 'chat/', how: 'stored', bytes: 0, offset: 0 },
      { name: 'chat/media/', how: 'stored', bytes: 0, offset: 35 },
      { name: 'chat/media/one.jpg', how: 'stored', bytes: 259, offset: 76 },
      { name: 'chat/chat.txt', how: 'deflated', bytes: 1204, offset: 383 },
    ]);
    expect(listed(fixture('python-streamed.zip'))).toEqual([
      { name: 'chat.txt', how: 'deflated', bytes: 1204, offset: 0 },
    ]);
  });

  it('IN-13 what is locked has a name and no way to be read', () => {
    expect(listed(fixture('info-zip-locked.zip'))).toEqual([
      { name: 'chat/chat.txt', bytes: 1216, offset: 0 },
    ]);
  });

  it('IN-13 the mark of an end in the comment behind it is not taken for the end', () => {
    const inner = Buffer.from(endOf(0, 0, 0)).toString('latin1');
    const archive = fixture('info-zip-streamed.zip');
    const bare = archive.subarray(0, archive.length - 22);
    const directory = directoryOf(archive, archive.length);
    if (!directory.ok) throw new Error(directory.error);
    const { entries, bytes, offset } = directory.value;
    for (const comment of ['', 'a chat', `a chat ${inner}, and words`, `${inner}${inner} `])
      expect(listed(joined(bare, endOf(entries, bytes, offset, comment)))).toEqual(listed(archive));
  });

  it('IN-13 an archive that lost a byte at its end, or more, has none', () => {
    const archive = joined(fixture('info-zip.zip').subarray(0, -22), endOf(4, 247, 1630, 'a chat'));
    for (const lost of [1, 5, 6, 7, 27, 28, 200])
      expect([lost, listed(archive.subarray(0, -lost))]).toEqual([lost, 'damaged']);
    expect(listed(new Uint8Array(0))).toBe('damaged');
    // As long as an end without a comment, and none.
    expect(listed(new Uint8Array(22))).toBe('damaged');
  });

  it('IN-13 one that says it lies beyond the archive is damaged', () => {
    expect(listed(endOf(0, 0, 22))).toEqual([]);
    expect(listed(endOf(0, 0, 23))).toBe('damaged');
    expect(listed(endOf(0, 23, 0))).toBe('damaged');
  });

  it('IN-13 one that is larger than any chat’s is not read', () => {
    const tail = (entries: number, bytes: number) => directoryOf(endOf(entries, bytes, 0), 2 ** 31);
    const { entries, directoryBytes } = ZIP_LIMITS;
    expect(tail(entries, directoryBytes)).toMatchObject({ ok: true });
    expect(tail(entries + 1, 10)).toEqual({ ok: false, error: 'too-large' });
    expect(tail(1, directoryBytes + 1)).toEqual({ ok: false, error: 'too-large' });
  });

  it('IN-13 a line that is cut off, or is none, makes all of it damaged', () => {
    const archive = fixture('info-zip.zip');
    const whole = directoryOf(archive, archive.length);
    if (!whole.ok) throw new Error(whole.error);
    const { offset, bytes } = whole.value;
    const list = archive.slice(offset, offset + bytes);
    const damaged = { ok: false, error: 'damaged' };
    expect(entriesIn(list, 4)).toMatchObject({ ok: true, value: { length: 4 } });
    expect(entriesIn(list, 5)).toEqual(damaged);
    expect(entriesIn(list.subarray(0, 45), 1)).toEqual(damaged);
    list[0] = 0;
    expect(entriesIn(list, 4)).toEqual(damaged);
  });

  it('IN-13 packed in another way than those two a file has a name and cannot be read', () => {
    const archive = fixture('python-streamed.zip').slice();
    // Bytes 10 and 11 of the directory's line are the method (section 4.4.5); 14 is LZMA.
    archive[1258 + 10] = 14;
    expect(listed(archive)).toStrictEqual([{ name: 'chat.txt', bytes: 1204, offset: 0 }]);
  });
});

describe('the lines of a directory', () => {
  it('IN-13 have other fields and a comment behind their names, which are passed over', () => {
    // APPNOTE.TXT 6.3.10, section 4.3.12: 46 bytes, then name, other fields and comment.
    const lineOf = (name: string, other: string, comment: string): Uint8Array => {
      const line = Buffer.alloc(46);
      line.writeUInt32LE(0x02014b50, 0);
      line.writeUInt16LE(name.length, 28);
      line.writeUInt16LE(other.length, 30);
      line.writeUInt16LE(comment.length, 32);
      return Uint8Array.from([...line, ...Buffer.from(name + other + comment, 'latin1')]);
    };
    const list = joined(
      lineOf('a.txt', 'UT-time', 'said'),
      lineOf('b', '', 'x'),
      lineOf('c', 'y', ''),
    );
    const read = entriesIn(list, 3);
    expect(read.ok && read.value.map(({ name }) => name)).toEqual(['a.txt', 'b', 'c']);
    expect(entriesIn(lineOf('', '', ''), 1)).toMatchObject({ ok: true, value: [{ name: '' }] });
  });
});

describe('a file in an archive', () => {
  it('IN-13 begins behind its own header, its name and what else stands there', () => {
    for (const [name, at] of [
      ['info-zip.zip', 383],
      ['python-streamed.zip', 0],
    ] as const) {
      const local = fixture(name).subarray(at);
      // Section 4.3.7: 30 bytes, then as many as bytes 26 to 29 say.
      const begin = 30 + Buffer.from(local).readUInt16LE(26) + Buffer.from(local).readUInt16LE(28);
      expect(dataStart(local)).toBe(begin);
      expect(dataStart(local.subarray(0, 30))).toBe(begin);
      expect(dataStart(local.subarray(0, 29))).toBeUndefined();
      expect(dataStart(local.subarray(1))).toBeUndefined();
    }
  });

  it('IN-13 begins behind other fields too, of any length', () => {
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(5, 26);
    local.writeUInt16LE(0x0109, 28);
    expect(dataStart(local)).toBe(30 + 5 + 265);
  });

  const words = Buffer.from('Done, windy out there. '.repeat(2000));
  const packed = deflateRawSync(words, { level: 1 });
  const unpacked = (pieces: readonly Uint8Array[], how: 'stored' | 'deflated' = 'deflated') => {
    const unpacking = createUnpacking(how);
    return pieces.flatMap((piece, n) => [...unpacking.push(piece, n === pieces.length - 1)]);
  };
  const bytesOf = (results: ReturnType<typeof unpacked>): Buffer =>
    Buffer.concat(results.map((each) => (each.ok ? each.value : Buffer.from('damaged'))));

  it('IN-13 what zlib deflated is what it was, however it is cut', () => {
    for (const size of [1, 7, 100, packed.length]) {
      const pieces = Array.from({ length: Math.ceil(packed.length / size) }, (_, n) =>
        packed.subarray(n * size, (n + 1) * size),
      );
      expect(bytesOf(unpacked(pieces)).equals(words)).toBe(true);
    }
  });

  it('IN-13 one that is long when packed, too, and one that is cut off is damaged', () => {
    const noise = Buffer.from(randomFrom(20_270_310).bytes(30_000));
    const long = deflateRawSync(noise, { level: 9 });
    // Kept as it is, with 5 bytes before it (RFC 1951, section 3.2.4): twice what goes in at once.
    const exact = deflateRawSync(noise.subarray(0, 8192 - 5), { level: 0 });
    expect(exact).toHaveLength(8192);
    for (const [packed, was] of [
      [long, noise],
      [exact, noise.subarray(0, 8192 - 5)],
    ] as const) {
      expect(bytesOf(unpacked([packed])).equals(was)).toBe(true);
      expect(bytesOf(unpacked([packed.subarray(0, 100), packed.subarray(100)])).equals(was)).toBe(
        true,
      );
      for (const length of [packed.length - 1, 4096, 100])
        expect(unpacked([packed.subarray(0, length)]).at(-1)).toEqual({
          ok: false,
          error: 'damaged',
        });
    }
  });

  it('IN-13 what is stored is given as it is', () => {
    expect(unpacked([words], 'stored')).toEqual([{ ok: true, value: words }]);
  });

  it('IN-13 what is no deflate stream is damaged, once, and nothing after it is given', () => {
    // A block of the type that RFC 1951, section 3.2.3, keeps for an error.
    const results = unpacked([Uint8Array.of(0b111), packed, packed]);
    expect(results).toEqual([{ ok: false, error: 'damaged' }]);
  });
});
