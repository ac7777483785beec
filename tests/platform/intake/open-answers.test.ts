import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, Zip, ZipDeflate, zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import type { IntakeBatch, IntakeSource } from '../../../src/app/intake-contract.ts';
import { ZIP_LIMITS } from '../../../src/domain/exchange/zip.ts';
import { openAnswers } from '../../../src/platform/intake/open-answers.ts';
import { TEXT_MAX } from '../../../src/platform/intake/pieces.ts';
import type { SealPair } from '../../../src/platform/keys/seal.ts';
import { sealPair } from '../../drivers/exchange/answers.ts';
import {
  answerLink,
  chatLine,
  otherCode,
  sealedCode,
  weekly,
} from '../../drivers/exchange/sealed.ts';
import { ROOT } from '../../drivers/tree.ts';

let pair: SealPair;
let stranger: SealPair;
beforeAll(async () => {
  [pair, stranger] = await Promise.all([sealPair(), sealPair()]);
});

async function all(sources: readonly IntakeSource[], by = pair): Promise<readonly IntakeBatch[]> {
  const batches: IntakeBatch[] = [];
  for await (const batch of openAnswers(sources, by)) batches.push(batch);
  return batches;
}

/** All batches as one: what was opened, and what was left and how often. */
async function opened(sources: readonly IntakeSource[]) {
  const batches = await all(sources);
  const left: Record<string, number> = {};
  for (const { why, count } of batches.flatMap((batch) => batch.left))
    left[why] = (left[why] ?? 0) + count;
  return {
    responses: batches.flatMap((batch) => batch.responses),
    from: batches.flatMap((batch) => batch.from),
    found: batches.reduce((sum, batch) => sum + batch.found, 0),
    left,
  };
}

const fixture = (name: string): Blob =>
  new Blob([new Uint8Array(readFileSync(join(ROOT, 'tests/fixtures/zips', name)))]);
const file = (bytes: Uint8Array | string): Blob => new Blob([bytes as BlobPart]);

describe('answers opened from what somebody has', () => {
  it('IN-12 a chat with answers that two implementations of RFC 9180 sealed', async () => {
    const told = [weekly(1, 1), weekly(2, 1)] as const;
    const codes = [await sealedCode(pair.seal, told[0]), await otherCode(pair.seal, told[1])];
    const chat = codes.map((code, n) => chatLine(n, answerLink(code))).join('');
    const { responses, from, found, left } = await opened([{ name: 'chat.txt', content: chat }]);
    expect(responses).toEqual(told);
    expect([from, found, left]).toEqual([['chat.txt', 'chat.txt'], 2, {}]);
  });

  it('IN-12 what cannot be opened has its reason and the name of where it was', async () => {
    const other = answerLink(await sealedCode(stranger.seal, weekly(1, 1)));
    const own = answerLink(await sealedCode(pair.seal, weekly(2, 1)));
    const batches = await all([
      { name: 'monday.txt', content: `${other} ${own.slice(0, -9)}` },
      { name: 'tuesday.txt', content: file(own) },
    ]);
    expect(batches.flatMap((batch) => batch.left)).toEqual([
      { why: 'not-for-this-key', count: 1, from: ['monday.txt'] },
      { why: 'damaged', count: 1, from: ['monday.txt'] },
    ]);
    expect(batches.flatMap((batch) => batch.from)).toEqual(['tuesday.txt']);
  });

  it('IN-12 texts in UTF-8 and UTF-16, with byte order marks and without', async () => {
    const told = [weekly(1, 1), weekly(2, 1), weekly(3, 1), weekly(4, 1)];
    const texts = await Promise.all(
      told.map(async (each) => `Été à la mer 🦆 ${answerLink(await sealedCode(pair.seal, each))}`),
    );
    const [a = '', b = '', c = '', d = ''] = texts;
    const bigEndian = Buffer.from(`\ufeff${d}`, 'utf16le').swap16();
    const contents = [
      file(a),
      file(`\ufeff${b}`),
      file(Buffer.from(`\ufeff${c}`, 'utf16le')),
      file(bigEndian),
    ];
    const { responses } = await opened(contents.map((content, n) => ({ name: `${n}`, content })));
    expect(responses).toEqual(told);
  });

  it('IN-12 never more than a hundred at a time, and the next only when it is asked for', async () => {
    const code = await sealedCode(pair.seal, weekly(1, 1));
    // Each is whole in its own way, and only the first is an answer of this leader.
    const { encodeAnswer } = await import('../../../src/domain/exchange/packet.ts');
    const others = Array.from({ length: 249 }, (_, n) =>
      encodeAnswer(Uint8Array.of(4, n, ...new Uint8Array(150))),
    );
    const batches = await all([
      { name: '', content: [code, ...others].map(answerLink).join('\n') },
    ]);
    expect(batches.map(({ found }) => found)).toEqual([100, 100, 50]);
    expect(batches.map(({ share }) => share).every((share) => share >= 0 && share <= 1)).toBe(true);
    expect(batches.at(-1)?.share).toBe(1);
    const first = await openAnswers([{ name: '', content: answerLink(code) }], pair).next();
    expect(first.value?.responses).toHaveLength(1);
  });

  it('IN-12 how far it is is told also where there is nothing to find', async () => {
    const talk = chatLine(1, 'See you at the hide').repeat(150_000);
    const batches = await all([{ name: 'talk.txt', content: file(talk) }]);
    const shares = batches.map(({ share }) => share);
    expect(batches.length).toBeGreaterThan(3);
    expect(shares).toEqual([...shares].sort((x, y) => x - y));
  });
});

describe('archives', () => {
  /** Written by Info-ZIP's zip 3.0 and by Python 3.11's zipfile; all hold the text beside them. */
  it.each(['info-zip.zip', 'info-zip-streamed.zip', 'python.zip', 'python-streamed.zip'])(
    'IN-13 %s of another program holds what its text holds',
    async (name) => {
      const inText = await opened([{ name, content: fixture('chat.txt') }]);
      expect(inText).toMatchObject({ found: 1, left: { damaged: 1 } });
      const inZip = await opened([{ name, content: fixture(name) }]);
      // What is beside the chat in the archive is a picture, which is not opened there.
      const others = name.includes('streamed') ? {} : { file: 1 };
      expect(inZip).toMatchObject({ found: 1, left: { damaged: 1, ...others } });
    },
  );

  it('IN-13 one that is locked is counted as a file that cannot be read', async () => {
    const { found, left } = await opened([{ name: '', content: fixture('info-zip-locked.zip') }]);
    expect([found, left]).toEqual([0, { file: 1 }]);
  });

  it('IN-13 several texts, stored and deflated, written all at once or as a stream', async () => {
    const told = [weekly(1, 1), weekly(2, 1), weekly(3, 1)];
    const codes = await Promise.all(told.map((each) => sealedCode(pair.seal, each)));
    const [a, b, c] = codes.map((code) => strToU8(answerLink(code))) as [
      Uint8Array,
      Uint8Array,
      Uint8Array,
    ];
    const atOnce = zipSync({ 'a.txt': [a, { level: 0 }], folder: { 'b.json': [b, { level: 9 }] } });
    const chunks: Uint8Array[] = [];
    const stream = new Zip((_, chunk) => chunks.push(chunk));
    const one = new ZipDeflate('_chat.txt');
    stream.add(one);
    one.push(c, true);
    stream.end();
    const { responses } = await opened([
      { name: 'one.zip', content: file(atOnce) },
      { name: 'two.zip', content: new Blob(chunks as BlobPart[]) },
    ]);
    expect(responses).toEqual(told);
  });

  it('IN-14 a bomb ends as too large, and what stood before it is found', async () => {
    const link = answerLink(await sealedCode(pair.seal, weekly(1, 1)));
    const zeros = new Uint8Array(ZIP_LIMITS.inflatedBytes);
    const bomb = file(zipSync({ 'a.txt': strToU8(link), 'b.txt': zeros, 'c.txt': strToU8(link) }));
    const before = process.memoryUsage().arrayBuffers;
    const { responses, left } = await opened([{ name: '', content: bomb }]);
    expect(responses).toHaveLength(1);
    expect(left).toEqual({ 'too-large': 1 });
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(48 * 1024 * 1024);
  });

  it('IN-14 a directory that names one file a thousand times, or more files than are looked at', async () => {
    const zeros = new Uint8Array(4_000_000);
    const one = zipSync({ 'a.txt': zeros });
    const view = new DataView(one.buffer);
    const end = one.length - 22;
    const from = view.getUint32(end + 16, true);
    const line = one.slice(from, end);
    // End of the directory, APPNOTE 4.3.16: entries at 8 and 10, bytes at 12.
    const many = (count: number): Blob => {
      const tail = one.slice(end);
      const tailView = new DataView(tail.buffer);
      tailView.setUint16(8, count, true);
      tailView.setUint16(10, count, true);
      tailView.setUint32(12, line.length * count, true);
      return new Blob([one.slice(0, from), ...Array.from({ length: count }, () => line), tail]);
    };
    expect((await opened([{ name: '', content: many(1000) }])).left).toEqual({ 'too-large': 1 });
    expect((await opened([{ name: '', content: many(20_001) }])).left).toEqual({ 'too-large': 1 });
  });

  it('IN-14 cut short anywhere, it is damaged and nothing worse', async () => {
    const whole = new Uint8Array(await fixture('info-zip.zip').arrayBuffer());
    for (let length = 4; length < whole.length; length += 7) {
      const { left } = await opened([{ name: '', content: file(whole.slice(0, length)) }]);
      expect(left, `${length}`).toEqual({ damaged: 1 });
    }
  });
});

describe('what is no text', () => {
  it('IN-15 an empty file, a file of bytes, one that is gone, a text that is too long', async () => {
    const gone = file('x');
    Object.defineProperty(gone, 'slice', {
      value: () => ({
        arrayBuffer: () => Promise.reject(new DOMException('', 'NotReadableError')),
      }),
    });
    const contents = {
      empty: file(''),
      bytes: file(Uint8Array.of(0x25, 0x50, 0x44, 0x46, 0, 1, 2)),
      gone,
      picture: file(Uint8Array.of(0xff, 0xd8, 0xff, 0)),
    };
    for (const [name, content] of Object.entries(contents))
      expect((await opened([{ name, content }])).left, name).toEqual({ file: 1 });
    const long = ' '.repeat(TEXT_MAX + 1);
    expect((await opened([{ name: '', content: long }])).left).toEqual({ 'too-large': 1 });
    expect((await opened([{ name: '', content: file(long) }])).left).toEqual({ 'too-large': 1 });
  });
});
